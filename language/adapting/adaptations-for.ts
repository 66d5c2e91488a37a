import type { AdaptationSheet } from '../sheets/adaptation-sheet.js';
import type { Programme } from '../sheets/programme.js';

/** Names of a class and of a course; without a course the one that the class is taught. */
export interface AdaptedWanted {
    class?: string;
    course?: string;
}

/**
 * The adaptations that a class is taught a course with: first those for every class, then its own, each in the order of the files.
 * Without a class only those for every class; empty where nothing is known of the course.
 */
export function adaptationsFor(programme: Programme, wanted: AdaptedWanted): AdaptationSheet[] {
    if (programme.adaptations.size === 0) return [];
    const course = wantedCourse(programme, wanted);
    const all = [...programme.adaptations.values()].filter(({ of }) => of !== undefined && of.name === course);
    return [...all.filter(({ forClass }) => forClass === undefined), ...all.filter(({ forClass }) => forClass !== undefined && forClass.name === wanted.class)];
}

export function wantedCourse(programme: Programme, wanted: AdaptedWanted): string | undefined {
    return wanted.course ?? (wanted.class === undefined ? undefined : programme.classes.get(wanted.class)?.teaches?.name);
}
