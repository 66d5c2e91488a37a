/** What a meeting teaches, in words that the page and the Markdown share. */
import type { Place, WeekBrief } from '../planning/figures.js';
import type { Meeting, TaughtFigures } from '../planning/schedule-figures.js';
import type { View } from './view.js';
import { whyWords, words } from './words.js';

export interface TaughtLine {
    title: string;
    /** Index of the lesson in the brief. */
    lesson?: number;
    /** "part 1 of 2; again: the children were unsure on Thu 10 Sep" */
    remark: string;
    because?: Place;
}

export function taughtAt(meeting: Meeting, brief: WeekBrief, view: View): TaughtLine[] {
    const of = (name: string): number | undefined => {
        const here = brief.lessons.findIndex(lesson => lesson.name === name && lesson.meeting === meeting.label);
        const at = here < 0 ? brief.lessons.findIndex(lesson => lesson.name === name) : here;
        return at < 0 ? undefined : at;
    };
    if (meeting.taught.length > 0) {
        return meeting.taught.map(taught => ({ title: taught.title, lesson: of(taught.lesson), remark: taughtRemark(taught), because: taught.because }));
    }
    return meeting.lessons.map(name => {
        const lesson = of(name);
        return { title: (lesson === undefined ? undefined : brief.lessons[lesson]?.title) ?? view.titleOf(name), lesson, remark: '' };
    });
}

/** "part 1 of 2"; nothing for a whole lesson. */
export function pieceWords({ piece }: Pick<TaughtFigures, 'piece'>): string | undefined {
    return piece && `${words.part} ${piece.number} of ${piece.of}`;
}

/** "part 1 of 2; fixed for this day: Market visit"; empty where a whole lesson stands in its turn. */
export function taughtRemark(taught: Pick<TaughtFigures, 'piece' | 'why' | 'remark'>): string {
    return [pieceWords(taught), taught.remark ?? (taught.why && whyWords[taught.why])].filter(Boolean).join('; ');
}
