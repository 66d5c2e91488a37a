import type { LessonFigures, Prose, WeekBrief } from './figures.js';
import type { Cue, SpeakingNotes, SpokenSection } from './speaking-figures.js';
import { cautionCues } from './speaking/cautions.js';
import type { Telling } from './speaking/cues.js';
import { lessonCues } from './speaking/lesson.js';
import { nextWeekCues } from './speaking/next-week.js';
import { fastestRate, slowestRate, spokenTime, usualRate } from './speaking/spoken-time.js';
import { thingCues } from './speaking/things.js';
import { welcomeCues } from './speaking/welcome.js';
import { quoted } from '@haversack/language/facts/wording';

export interface SpeakingOptions {
    /** Words a minute, a whole number; 170 where none is given. */
    rate?: number;
    /** A writer's prose as plain text on one line, with the titles of names in braces. */
    inWords(prose: Prose): string;
}

/**
 * An outline for walking families through a week aloud, from the figures of its brief, with the minutes it takes: words at a rate, and
 * a stated time for each thing that is shown. Never throws.
 */
export function speakingNotes(brief: WeekBrief, options: SpeakingOptions): SpeakingNotes {
    const { rate, assumptions } = rateOf(options.rate);
    const telling: Telling = { brief, inWords: options.inWords };
    const numbered = new Map<string, number>();
    const sections: SpokenSection[] = [
        section('welcome', 'Welcome and the week at a glance', welcomeCues(telling)),
        section('things', 'What to fetch, print and buy', brief.lessons.length + brief.fetch.length + brief.buy.length === 0 ? [] : thingCues(telling)),
        ...brief.lessons.map(lesson => section(lessonId(lesson), lessonTitle(lesson), lessonCues(lesson, telling))),
        section('cautions', 'Cautions', cautionCues(telling)),
        section('next', brief.next ? `Next week, week ${brief.next.week}` : 'Next week', nextWeekCues(telling))
    ].filter(({ cues }) => cues.length > 0);
    const { words, shown, time } = spokenTime(sections.flatMap(({ cues }) => cues), rate);
    return { course: brief.course.title, class: brief.class?.title, week: brief.week, weeks: brief.weeks, rate, sections, words, shown, time, assumptions };

    function section(id: string, title: string, cues: Cue[]): SpokenSection {
        return { id, title, cues, ...spokenTime(cues, rate) };
    }

    function lessonId({ name }: LessonFigures): string {
        const number = (numbered.get(name) ?? 0) + 1;
        numbered.set(name, number);
        return number === 1 ? `lesson-${name}` : `lesson-${name}-${number}`;
    }
}

function lessonTitle({ title, meeting, minutes, piece }: LessonFigures): string {
    return [quoted(title), ...(piece ? [`part ${piece.number} of ${piece.of}`] : []), meeting, ...(minutes > 0 ? [`${minutes} min of lesson`] : [])].join(', ');
}

function rateOf(asked: number | undefined): { rate: number; assumptions: string[] } {
    if (asked === undefined) return { rate: usualRate, assumptions: [] };
    if (Number.isInteger(asked) && asked >= slowestRate && asked <= fastestRate) return { rate: asked, assumptions: [] };
    return { rate: usualRate, assumptions: [`Nobody speaks at ${asked} words a minute: ${usualRate} are counted.`] };
}
