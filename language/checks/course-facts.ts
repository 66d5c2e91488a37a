import type { ClassSheet, CourseSheet, LessonSheet } from '../sheets/sheet.js';
import type { ProgrammeView, Taught } from './programme-view.js';

/** What several checks ask of one course. */
export interface CourseFacts {
    course: CourseSheet;
    lessons: readonly Taught[];
    /** True when every lesson that it names is there and could be read, so that what none of them says is truly not said. */
    complete: boolean;
    classes: readonly ClassSheet[];
    /** Where each objective is introduced first, checked last and practised last. */
    introduced: ReadonlyMap<string, Taught>;
    checked: ReadonlyMap<string, Taught>;
    practised: ReadonlyMap<string, Taught>;
    /** Where each word is taught first. */
    words: ReadonlyMap<string, Taught>;
    /** Those words by their first word: "place" for place-value. */
    wordsByStart: ReadonlyMap<string, readonly string[]>;
    /** Things that its lessons and their games need, with those lessons in order; gathered when first asked for. */
    readonly things: ReadonlyMap<string, readonly LessonSheet[]>;
    /** What its kits hold; absent where it uses no kit, or one that is not known. */
    kitHolds?: ReadonlySet<string>;
}

export function courseFacts(course: CourseSheet, view: ProgrammeView): CourseFacts {
    const lessons = view.courses.get(course.name) ?? [];
    const introduced = new Map<string, Taught>();
    const checked = new Map<string, Taught>();
    const practised = new Map<string, Taught>();
    const words = new Map<string, Taught>();
    for (const taught of lessons) {
        const { lesson } = taught;
        if (!lesson) continue;
        for (const { name } of lesson.introduces) keepFirst(introduced, name, taught);
        for (const { name } of lesson.practises) practised.set(name, taught);
        for (const { name } of lesson.checks) checked.set(name, taught);
        for (const { name } of lesson.words) keepFirst(words, name, taught);
    }
    const wordsByStart = new Map<string, string[]>();
    for (const word of words.keys()) {
        const start = word.split('-')[0]!;
        wordsByStart.set(start, [...(wordsByStart.get(start) ?? []), word]);
    }
    const classes = [...view.programme.classes.values()].filter(({ teaches }) => teaches?.name === course.name);
    let things: ReadonlyMap<string, readonly LessonSheet[]> | undefined;
    return {
        course, lessons, complete: lessons.every(({ lesson }) => lesson && !view.isBroken(lesson)), classes, introduced, checked, practised, words, wordsByStart,
        get things() { return things ??= thingsNeeded(lessons, view); },
        kitHolds: kitHolds(course, view)
    };
}

function thingsNeeded(lessons: readonly Taught[], view: ProgrammeView): Map<string, LessonSheet[]> {
    const things = new Map<string, LessonSheet[]>();
    for (const { lesson } of lessons) {
        if (!lesson) continue;
        const { needs, games } = view.factsOf(lesson);
        const named = new Set([...needs, ...games.flatMap(game => game.needs)].flatMap(need => need.options.map(({ thing }) => thing.name)));
        for (const name of named) {
            const users = things.get(name);
            if (users) users.push(lesson);
            else things.set(name, [lesson]);
        }
    }
    return things;
}

function keepFirst(map: Map<string, Taught>, name: string, taught: Taught): void {
    if (!map.has(name)) map.set(name, taught);
}

function kitHolds(course: CourseSheet, view: ProgrammeView): Set<string> | undefined {
    const kits = course.uses.map(({ kit }) => view.programme.kits.get(kit.name));
    if (kits.length === 0 || view.isBroken(course)) return undefined;
    const holds = new Set<string>();
    for (const kit of kits) {
        if (!kit || view.isBroken(kit)) return undefined;
        for (const { thing } of kit.holds) holds.add(thing.name);
    }
    return holds;
}
