import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { LessonSheet, Need, Place } from '@haversack/language/sheets/sheet';
import type { ClassTerm } from './term.js';

/** A line under `materials` that asks for a thing, with the file it stands in. */
export interface NeedLine {
    uri: string;
    need: Need;
    option: Need['options'][number];
    lesson: LessonSheet;
}

/** That line, and the day of its meeting where the plan has dates. */
export type NeedAtMeeting = NeedLine & { on?: string };

/** The first line that asks for a thing from a day (or a week, where the plan has no dates) on. */
export function firstNeed(name: string, from: { date?: string; week?: number }, { schedule }: ClassTerm, view: ProgrammeView): NeedAtMeeting | undefined {
    for (const week of schedule.weeks) {
        if (from.week !== undefined && week.number < from.week) continue;
        for (const meeting of week.meetings) {
            if (from.date !== undefined && meeting.date !== undefined && meeting.date < from.date) continue;
            for (const taught of meeting.lessons) {
                const lesson = view.programme.lessons.get(taught);
                const found = lesson && needIn(lesson, name, view);
                if (found) return { ...found, on: meeting.date };
            }
        }
    }
    return undefined;
}

/** The line that stands at a place. */
export function needAt(place: Place, name: string, lessonName: string, view: ProgrammeView): NeedLine | undefined {
    const lesson = view.programme.lessons.get(lessonName);
    return lesson && linesOf(lesson, name, view).find(({ uri, need }) => uri === place.uri && need.at.start.line === place.range.start.line);
}

function needIn(lesson: LessonSheet, name: string, view: ProgrammeView): NeedLine | undefined {
    return linesOf(lesson, name, view)[0];
}

function linesOf(lesson: LessonSheet, name: string, view: ProgrammeView): NeedLine[] {
    const { needs, games } = view.factsOf(lesson);
    const own = needs.map(need => ({ uri: lesson.uri, need }));
    const ofGames = games.flatMap(game => game.needs.map(need => ({ uri: game.uri, need })));
    return [...own, ...ofGames].flatMap(line => {
        const option = line.need.options.find(({ thing }) => thing.name === name);
        return option ? [{ ...line, option, lesson }] : [];
    });
}
