import type { Change } from '../sheets/adaptation-sheet.js';
import type { FoundPart, Line, Outcome, WorkingCourse } from './working-course.js';
import { markOf, marked } from './working-course.js';
import { lessonsOf } from './part-changes.js';
import { quoted } from '../facts/wording.js';
import { minutesInWords } from './words.js';

export function retimeLesson(course: WorkingCourse, { lesson, minutes }: Extract<Change, { does: 'retime lesson' }>, line: Line): Outcome {
    const names = [...new Set(course.meant(lesson.name).map(({ name }) => name))];
    if (names.length === 0) return course.missing(lesson);
    const parts = names.flatMap(name => (course.sheet(name)?.parts ?? []).map((part, index): FoundPart => ({ lesson: name, index, part })));
    const outcome = retime(course, parts, minutes, line, quoted(course.lesson(lesson.name)));
    if ('idle' in outcome) return outcome;
    const before = total(parts);
    for (const name of names) {
        const says = names.length > 1 ? `${minutesInWords(minutes)} together instead of ${before}` : `${minutesInWords(minutes)} instead of ${before}`;
        course.change(name, [line.change, says, 'whole'], sheet => marked(sheet, markOf(line, says)));
    }
    return { ...outcome, says: `${quoted(course.lesson(lesson.name))} takes ${minutesInWords(minutes)} instead of ${before}` };
}

export function retimeActivity(course: WorkingCourse, { activity, minutes }: Extract<Change, { does: 'retime activity' }>, line: Line): Outcome {
    const found = course.parts(activity);
    if (found.length === 0) return course.missingPart(activity);
    const title = quoted(course.part(activity));
    if (isWhole(minutes) && found.length === 1 && found[0]!.part.minutes === undefined) {
        setMinutes(course, found, [minutes], line);
        return { touched: lessonsOf(found), says: `${title} of ${quoted(course.lesson(activity.lesson.name))} takes ${minutesInWords(minutes)}` };
    }
    const before = total(found);
    const outcome = retime(course, found, minutes, line, title);
    return 'idle' in outcome ? outcome : { ...outcome, says: `${title} of ${quoted(course.lesson(activity.lesson.name))} takes ${minutesInWords(minutes)} instead of ${before}` };
}

/** Parts with minutes share the new time as they shared the old. */
function retime(course: WorkingCourse, found: readonly FoundPart[], minutes: number, line: Line, title: string): Outcome {
    const timed = found.filter(({ part }) => part.minutes !== undefined);
    if (timed.length === 0) return { idle: `no part of ${title} says its minutes` };
    if (!isWhole(minutes)) return { idle: 'time is given in whole minutes, at least one' };
    if (minutes < timed.length) return { idle: `${title} has ${timed.length} parts, and each takes at least a minute` };
    const shares = timed.map(({ part }) => part.minutes!);
    if (total(timed) === minutes) return { idle: `${title} takes ${minutesInWords(minutes)} already` };
    setMinutes(course, timed, apportioned(minutes, shares), line);
    return { touched: lessonsOf(timed) };
}

function isWhole(minutes: number): boolean {
    return Number.isSafeInteger(minutes) && minutes > 0;
}

function setMinutes(course: WorkingCourse, found: readonly FoundPart[], minutes: readonly number[], line: Line): void {
    for (const name of lessonsOf(found)) {
        const own = found.flatMap(({ lesson, index }, i) => (lesson === name ? [[index, minutes[i]!] as const] : []));
        const changed = new Map(own);
        course.change(name, [line.change, ...own.flat()], sheet => ({
            ...sheet, parts: sheet.parts.map((part, index) => {
                const now = changed.get(index);
                if (now === undefined || now === part.minutes) return part;
                return marked({ ...part, minutes: now }, markOf(line, part.minutes === undefined ? minutesInWords(now) : `${minutesInWords(now)} instead of ${part.minutes}`));
            })
        }));
    }
}

/**
 * Whole minutes in the given proportion, by largest remainders (Hamilton's method; of equal remainders the first), each at least one.
 * `whole` is at least the number of shares.
 */
export function apportioned(whole: number, shares: readonly number[]): number[] {
    const sum = shares.reduce((all, share) => all + share, 0);
    const exact = shares.map(share => (sum > 0 ? whole * share : whole));
    const divisor = sum > 0 ? sum : shares.length;
    const floors = exact.map(value => Math.floor(value / divisor));
    const left = whole - floors.reduce((all, floor) => all + floor, 0);
    const order = exact.map((value, i) => ({ i, rest: value % divisor })).sort((a, b) => b.rest - a.rest || a.i - b.i);
    for (const { i } of order.slice(0, left)) floors[i]! += 1;
    for (let empty = floors.indexOf(0); empty >= 0; empty = floors.indexOf(0)) {
        floors[empty] = 1;
        floors[floors.indexOf(Math.max(...floors))]! -= 1;
    }
    return floors;
}

function total(found: readonly FoundPart[]): number {
    return found.reduce((sum, { part }) => sum + (part.minutes ?? 0), 0);
}
