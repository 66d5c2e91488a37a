import type { LessonSheet, Place } from '@haversack/language/sheets/sheet';
import type { Does } from '../coverage-figures.js';

/** What a lesson does with an objective. */
export interface Naming {
    objective: string;
    does: readonly Does[];
    /** The first line that names it so, for each of `does`. */
    places: readonly Place[];
}

const naming = ['introduces', 'practises', 'checks'] as const satisfies readonly Does[];

/** The objectives that each lesson names, read once for each version of a lesson, whichever classes are taught it. */
export class Namings {
    private readonly lessons = new WeakMap<LessonSheet, readonly Naming[]>();

    /** Each objective once, in the order of its first line. */
    of(lesson: LessonSheet): readonly Naming[] {
        let namings = this.lessons.get(lesson);
        if (!namings) this.lessons.set(lesson, namings = read(lesson));
        return namings;
    }
}

function read(lesson: LessonSheet): Naming[] {
    const found = new Map<string, { objective: string; does: Does[]; places: Place[] }>();
    for (const does of naming) {
        for (const { name, at } of lesson[does]) {
            let own = found.get(name);
            if (!own) found.set(name, own = { objective: name, does: [], places: [] });
            if (own.does.includes(does)) continue;
            own.does.push(does);
            own.places.push({ uri: lesson.uri, range: at });
        }
    }
    return [...found.values()];
}
