import type { Programme } from '@haversack/language/sheets/programme';
import type { LessonSheet, Need, Place } from '@haversack/language/sheets/sheet';
import { meetingsOf } from './meetings.js';
import type { ClassTerm } from './term.js';

/** A line under `materials` that asks for a thing, with the file it stands in. */
export interface NeedLine {
    uri: string;
    /** What stands there may be something else than what an adaptation has made of it. */
    need: Need;
    option: Need['options'][number];
    lesson: LessonSheet;
}

/** That line, and the day of its meeting. */
export type NeedAtMeeting = NeedLine & { on: string };

/** The first line that asks for a thing from a day on. */
export function firstNeed(name: string, from: string, { schedule, taught: programme }: ClassTerm): NeedAtMeeting | undefined {
    for (const { date, lessons } of meetingsOf(schedule)) {
        if (date === undefined || date < from) continue;
        for (const taught of lessons) {
            const lesson = programme.lessons.get(taught);
            const found = lesson && linesOf(lesson, name, programme)[0];
            if (found) return { ...found, on: date };
        }
    }
    return undefined;
}

/** The line that stands at a place. */
export function needAt(place: Place, name: string, lessonName: string, { taught }: ClassTerm): NeedLine | undefined {
    const lesson = taught.lessons.get(lessonName);
    return lesson && linesOf(lesson, name, taught).find(({ uri, need }) => uri === place.uri && need.at.start.line === place.range.start.line);
}

function linesOf(lesson: LessonSheet, name: string, { games }: Programme): NeedLine[] {
    const { needs, parts, uri } = lesson;
    const own = needs.map(need => ({ uri: need.uri ?? uri, need }));
    const ofParts = parts.flatMap(part => part.needs.map(need => ({ uri: need.uri ?? part.uri ?? uri, need })));
    const played = parts.flatMap(part => (part.kind === 'game' ? games.get(part.name) ?? [] : []));
    const ofGames = played.flatMap(game => game.needs.map(need => ({ uri: game.uri, need })));
    return [...own, ...ofParts, ...ofGames].flatMap(line => {
        const option = line.need.options.find(({ thing }) => thing.name === name);
        return option ? [{ ...line, option, lesson }] : [];
    });
}
