import type { Change, ChangeMark } from '../sheets/adaptation-sheet.js';
import type { LessonSheet, Mention, Need, PartSheet } from '../sheets/sheet.js';
import { askedOnce, asMuch, namedApart, thingsOf } from './moved-parts.js';
import { isGoingOn, speaksOf } from './split-lesson.js';
import { fromFile, markOf, marked, originsOf, without, type Line, type Outcome, type Taught, type WorkingCourse } from './working-course.js';
import { listing, quoted } from '../facts/wording.js';

/** One lesson of several, in the place of the first that is named: part after part, with what all of them need, name and follow. */
export function joinLessons(course: WorkingCourse, { lesson, others }: Extract<Change, { does: 'join lessons' }>, line: Line): Outcome {
    const wanted = [lesson, ...others];
    const again = others.find(({ name }, i) => wanted.findIndex(other => other.name === name) <= i);
    if (again) return { at: again.at, idle: again.name === lesson.name ? 'a lesson cannot be joined with itself' : `the line names ${quoted(course.lesson(again.name))} twice` };
    const missing = wanted.find(({ name }) => course.meant(name).length === 0);
    if (missing) return course.missing(missing);
    const lines = [...new Set(wanted.flatMap(({ name }) => course.meant(name)))];
    const names = [...new Set(lines.map(({ name }) => name))];
    const [name, ...rest] = names;
    if (name === undefined || rest.length === 0) return { idle: 'they are one lesson already' };
    const sheets = names.flatMap(one => course.sheet(one) ?? []);
    const first = sheets[0];
    if (!first || sheets.length < names.length) return course.missing({ name: names.find(one => !course.sheet(one)) ?? name, at: lesson.at });
    const kept = lines.find(taught => taught.name === name)!;
    const madeOf = [...new Set(lines.flatMap(taught => taught.madeOf))];
    const says = `joined with ${listing(rest.map(one => quoted(course.sheet(one)?.title ?? one)))}`;
    const title = kept.whole ?? first.title;
    const inputs = [line.change, says, title, ...madeOf, ...sheets, ...course.thingsIn(sheets)];
    const joined = course.memo.of(first, inputs, () => join(sheets, { course, gone: new Set([...names, ...madeOf]), mark: words => markOf(line, words), says, title }));
    course.sheets.set(name, joined);
    const now: Taught = { name, mention: kept.mention, madeOf };
    course.put([now], 'before', [kept]);
    course.take(new Set(lines));
    for (const one of rest) course.renamed(one, [name]);
    return { touched: [name] };
}

interface Joining {
    course: WorkingCourse;
    /** What the lesson no longer waits for: its own parts. */
    gone: ReadonlySet<string>;
    mark: (says: string) => ChangeMark;
    says: string;
    title: string;
}

function join(sheets: readonly LessonSheet[], { course, gone, mark, says, title }: Joining): LessonSheet {
    const first = sheets[0]!;
    const into = first.uri;
    const parts: PartSheet[] = [];
    const needs: Need[] = [];
    for (const sheet of sheets) {
        const own = sheet === first ? [...sheet.parts] : broughtParts(sheet, parts, into, mark(`from ${quoted(sheet.title)}`));
        for (const need of sheet.needs) addNeed(fromFile(need, sheet.uri, into), { needs, own, into }, course.usedUp);
        parts.push(...own);
    }
    const union = (pick: (sheet: LessonSheet) => readonly Mention[]): Mention[] => {
        const all = sheets.flatMap(sheet => pick(sheet).map(mention => fromFile(mention, sheet.uri, into)));
        return all.filter((mention, i) => all.findIndex(({ name }) => name === mention.name) === i);
    };
    const needed = new Set([...thingsOf(needs), ...thingsOf(parts.flatMap(part => part.needs))]);
    return askedOnce({
        ...first, title,
        draft: sheets.some(({ draft }) => draft),
        steps: sheets.flatMap(sheet => sheet.steps.filter(step => !isGoingOn(step) || !speaksOf(step, needed)).map(step => fromFile(step, sheet.uri, into))),
        follows: union(({ follows }) => follows).filter(({ name }) => !gone.has(name)),
        introduces: union(({ introduces }) => introduces),
        practises: union(({ practises }) => practises),
        checks: union(({ checks }) => checks),
        needs,
        notNeeded: union(({ notNeeded }) => notNeeded).filter(({ name }) => !needed.has(name)),
        words: union(({ words }) => words),
        cautions: sheets.flatMap(sheet => sheet.cautions.map(caution => fromFile(caution, sheet.uri, into))),
        parts,
        adapted: [...sheets.flatMap(({ adapted = [] }) => adapted), mark(says)]
    }, course.usedUp);
}

/** Parts with names apart from those that are there; what a checkpoint repeats keeps its meaning. */
function broughtParts(sheet: LessonSheet, there: readonly PartSheet[], into: string, mark: ChangeMark): PartSheet[] {
    const renamed = new Map<string, string>();
    const parts: PartSheet[] = [];
    for (const part of sheet.parts) {
        const apart = namedApart(part, there, [...sheet.parts, ...parts]);
        if (!renamed.has(part.name)) renamed.set(part.name, apart.name);
        const file = part.uri ?? sheet.uri;
        parts.push(marked({ ...without(apart, 'uri'), ...(file !== into && { uri: file }), from: originsOf(part, sheet.name) }, mark));
    }
    return parts.map((part): PartSheet => (part.unsure?.then === 'repeat' && part.unsure.of === undefined
        ? { ...part, unsure: { ...part.unsure, activity: { ...part.unsure.activity, name: renamed.get(part.unsure.activity.name) ?? part.unsure.activity.name } } } : part));
}

/** What is used up adds; what is handed back and there already is asked for where the later lesson begins, so that it is not counted twice. */
function addNeed(need: Need, { needs, own, into }: { needs: Need[]; own: PartSheet[]; into: string }, usedUp: (name: string) => boolean): void {
    const names = thingsOf([need]);
    const same = needs.filter(other => [...thingsOf([other])].some(name => names.has(name)));
    if (same.length === 0 || [...names].some(usedUp)) needs.push(need);
    else if (!same.some(other => asMuch(other) === asMuch(need))) {
        const [first] = own;
        if (first) own[0] = { ...first, needs: [...first.needs, fromFile(need, into, first.uri ?? into)] };
        else needs.push(need);
    }
}
