import type { Change, ChangeMark } from '../sheets/adaptation-sheet.js';
import type { LessonSheet, Need, PartSheet, Step } from '../sheets/sheet.js';
import { mendUnsure, namesIn } from './moved-parts.js';
import { lostRepeats, repeatingEarlier } from './repeats.js';
import { markOf, marked, originsOf, type Line, type Outcome, type Taught, type WorkingCourse } from './working-course.js';
import { quoted } from '../facts/wording.js';
import { done } from './words.js';

/**
 * Two lessons of one: the first keeps the name, pieces are numbered in their titles. What is introduced and every word stand in the first piece,
 * what is checked in the last. What is handed back is needed in both. What is used up is counted once: in the piece that alone speaks of it, else in
 * the first, and the second says that it goes on with it.
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
    const lost = lostRepeats(course, [sheet]);
    return { touched: [found.lesson, name], ...(lost !== '' && { says: `${done(line.change, course)}${lost}` }) };
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
    const isSpokenOf = (names: ReadonlySet<string>, { options }: Need): boolean => options.some(({ thing }) => names.has(thing.name));
    const isUsedUp = ({ options }: Need): boolean => options.some(({ thing }) => course.usedUp(thing.name));
    const comesLater = (need: Need): boolean => isSpokenOf(spoken[1]!, need) && !isSpokenOf(spoken[0]!, need);
    const goesOn = sheet.needs.filter(need => isUsedUp(need) && isSpokenOf(spoken[1]!, need) && !comesLater(need));
    const before = sheet.steps.filter(isGoingOn);
    const first: LessonSheet = marked({
        ...sheet, parts: early, needs: sheet.needs.filter(need => !isUsedUp(need) || !comesLater(need)), checks: [],
        steps: sheet.steps.filter(step => !before.includes(step) || speaksOf(step, spoken[0]!))
    }, mark(says));
    const second: LessonSheet = marked({
        ...sheet, name,
        steps: [
            ...sheet.steps.filter(({ word }) => word === 'about'), ...before.filter(step => speaksOf(step, spoken[1]!)),
            ...goesOn.map(need => marked(goingOn(need), mark(goesOnSays)))
        ],
        follows: [{ name: sheet.name, at: sheet.at }],
        introduces: [], words: [], needs: sheet.needs.filter(need => !isUsedUp(need) || comesLater(need)),
        parts: late.map(part => repeatingEarlier({ ...part, from: originsOf(part, sheet.name) }, early, sheet.name))
    }, mark(says));
    return [mendUnsure(first, sheet, mark, titleOf), mendUnsure(second, sheet, mark, titleOf)];
}

const goesOnSays = 'counted in the part before';

/** "Go on with sand from the part before, where it is counted." */
function goingOn({ options, at, uri }: Need): Step {
    const { thing } = options[0]!;
    return { word: 'note', prose: { parts: [{ text: 'Go on with ' }, { name: thing.name, at: thing.at }, { text: ' from the part before, where it is counted.' }], at }, under: [], at, ...(uri !== undefined && { uri }) };
}

/** Whether a step says that a piece goes on with what another piece counts. */
export function isGoingOn({ word, adapted }: Step): boolean {
    return word === 'note' && adapted?.some(({ says }) => says === goesOnSays) === true;
}

export function speaksOf({ prose }: Step, names: ReadonlySet<string>): boolean {
    return prose.parts.some(part => 'name' in part && names.has(part.name));
}
