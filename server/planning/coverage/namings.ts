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
    /** By name, of the newest version. */
    private readonly lessons = new Map<string, { lesson: LessonSheet; namings: readonly Naming[] }>();

    /** Each objective once, in the order of its first line. */
    of(lesson: LessonSheet): readonly Naming[] {
        let known = this.lessons.get(lesson.name);
        if (known?.lesson !== lesson) this.lessons.set(lesson.name, known = { lesson, namings: read(lesson) });
        return known.namings;
    }
}

function read(lesson: LessonSheet): Naming[] {
    const found = new Map<string, { objective: string; does: Does[]; places: Place[] }>();
    for (const does of naming) {
        for (const { name, at, uri } of lesson[does]) {
            let own = found.get(name);
            if (!own) found.set(name, own = { objective: name, does: [], places: [] });
            if (own.does.includes(does)) continue;
            own.does.push(does);
            own.places.push({ uri: uri ?? lesson.uri, range: at });
        }
    }
    return [...found.values()];
}
