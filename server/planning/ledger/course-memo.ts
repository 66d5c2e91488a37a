import { AdaptingMemo } from '@haversack/language/adapting/memo';
import type { Programme } from '@haversack/language/sheets/programme';
import type { LessonSheet, Prose, Step } from '@haversack/language/sheets/sheet';

/** What was worked out of courses before, kept by the caller from one version of a programme to the next. */
export class CourseMemo {
    readonly adapting = new AdaptingMemo();
    /** Of courses that are only tried: between two changes, or with a mend. They must not push out what the class is taught. */
    readonly passing = new AdaptingMemo();
    private readonly named = new WeakMap<LessonSheet, ReadonlySet<string>>();
    private readonly ofProgramme = new WeakMap<Programme, Map<string, unknown>>();

    /** What a lesson names in braces, in the text of its steps, its parts and their cautions. */
    namedIn(lesson: LessonSheet): ReadonlySet<string> {
        let named = this.named.get(lesson);
        if (!named) this.named.set(lesson, named = readNames(lesson));
        return named;
    }

    /** What is made of this version of the programme and the key alone. */
    of<T>(programme: Programme, key: string, make: () => T): T {
        let known = this.ofProgramme.get(programme);
        if (!known) this.ofProgramme.set(programme, known = new Map());
        if (!known.has(key)) known.set(key, make());
        return known.get(key) as T;
    }
}

function readNames(lesson: LessonSheet): ReadonlySet<string> {
    const names = new Set<string>();
    const take = (prose: Prose | undefined): void => {
        for (const part of prose?.parts ?? []) if ('name' in part) names.add(part.name);
    };
    const takeSteps = (steps: readonly Step[]): void => {
        for (const { prose, under } of steps) {
            take(prose);
            takeSteps(under);
        }
    };
    for (const { steps, cautions } of [lesson, ...lesson.parts]) {
        takeSteps(steps);
        for (const { prose } of cautions) take(prose);
    }
    return names;
}
