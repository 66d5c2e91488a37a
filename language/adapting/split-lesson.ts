import type { Change, ChangeMark } from '../sheets/adaptation-sheet.js';
import type { LessonSheet, Mention, PartSheet } from '../sheets/sheet.js';
import { mendUnsure, namesIn } from './moved-parts.js';
import { markOf, marked, originsOf, type Line, type Outcome, type Taught, type WorkingCourse } from './working-course.js';
import { quoted } from './words.js';

/**
 * Two lessons of one: the first keeps the name, pieces are numbered in their titles. What is introduced and every word stand in the first piece,
 * what is checked in the last; a thing that only one piece speaks of goes there, of others what is used up comes to the first.
 */
export function splitLesson(course: WorkingCourse, { lesson, after }: Extract<Change, { does: 'split lesson' }>, line: Line): Outcome {
    const meant = course.meant(lesson.name);
    const names = new Set(meant.map(({ name }) => name));
    if (meant.length === 0) return course.missing(lesson);
    const found = course.parts({ lesson, part: after }).filter(part => names.has(part.lesson)).at(-1);
    if (!found) return course.parts({ lesson, part: after }).length > 0 ? { idle: `another change has moved ${quoted(course.part({ lesson, part: after }))} to another lesson` } : course.missingPart({ lesson, part: after });
    const sheet = course.sheet(found.lesson);
    if (!sheet || found.index >= sheet.parts.length - 1) return { idle: `${quoted(course.partTitle(found.part))} is the last part: nothing comes after it` };
    const own = meant.filter(({ name }) => name === found.lesson);
    const whole = own[0]?.whole ?? sheet.title;
    const name = freeName(course, own[0]?.madeOf[0] ?? found.lesson);
    const says = `split after ${quoted(course.partTitle(found.part))}`;
    const [first, second] = course.memo.of(sheet, [line.change, says, name, ...course.thingsIn([sheet])], () => split(sheet, found.index + 1, name, { course, mark: words => markOf(line, words), says }));
    course.sheets.set(found.lesson, first);
    course.sheets.set(name, second);
    for (const taught of own) {
        const piece: Taught = { name, mention: taught.mention, madeOf: taught.madeOf, whole };
        taught.whole = whole;
        course.put([piece], 'after', [taught]);
    }
    course.renamed(found.lesson, [found.lesson, name]);
    numberPieces(course, own[0]?.madeOf ?? []);
    return { touched: [found.lesson, name] };
}

/** The title of each piece with its place among them. */
function numberPieces(course: WorkingCourse, madeOf: readonly string[]): void {
    const pieces = course.all().filter(({ whole, madeOf: of }) => whole !== undefined && of.some(name => madeOf.includes(name)));
    const names = [...new Set(pieces.map(({ name }) => name))];
    names.forEach((name, i) => {
        const title = `${pieces[0]?.whole}, part ${i + 1}`;
        course.change(name, ['title', title], sheet => (sheet.title === title ? sheet : { ...sheet, title }));
    });
}

function freeName(course: WorkingCourse, whole: string): string {
    const taken = new Set(course.all().map(({ name }) => name));
    for (let n = 2; ; n++) {
        const name = `${whole}-part-${n}`;
        if (!taken.has(name) && !course.programme.lessons.has(name)) return name;
    }
}

function split(sheet: LessonSheet, at: number, name: string, { course, mark, says }: { course: WorkingCourse; mark: (says: string) => ChangeMark; says: string }): [LessonSheet, LessonSheet] {
    const titleOf = (part: PartSheet): string => course.partTitle(part);
    const [early, late] = [sheet.parts.slice(0, at), sheet.parts.slice(at)];
    const spoken = [early, late].map(parts => namesIn(parts.flatMap(({ steps }) => steps)));
    const comesTo = (second: boolean) => ({ thing }: { thing: Mention }): boolean => {
        const [own, other] = second ? [spoken[1]!, spoken[0]!] : [spoken[0]!, spoken[1]!];
        if (own.has(thing.name) !== other.has(thing.name)) return own.has(thing.name);
        return !second || !course.usedUp(thing.name);
    };
    const needs = (second: boolean): LessonSheet['needs'] => sheet.needs.filter(({ options }) => options.some(comesTo(second)));
    const first: LessonSheet = marked({ ...sheet, parts: early, needs: needs(false), checks: [] }, mark(says));
    const second: LessonSheet = marked({
        ...sheet, name,
        steps: sheet.steps.filter(({ word }) => word === 'about'),
        follows: [{ name: sheet.name, at: sheet.at }],
        introduces: [], words: [], needs: needs(true),
        parts: late.map(part => ({ ...part, from: originsOf(part, sheet.name) }))
    }, mark(says));
    return [mendUnsure(first, sheet, mark, titleOf), mendUnsure(second, sheet, mark, titleOf)];
}
