import type { FileSheet, PartSheet } from '../sheets/sheet.js';

/** The practices of a file's lessons, and those that its adaptations add. */
export function practiceParts({ lessons, adaptations }: FileSheet): PartSheet[] {
    const added = adaptations.flatMap(({ changes }) => changes.flatMap(change => (change.does === 'add to lesson' ? change.added.parts : [])));
    return [...lessons.flatMap(({ parts }) => parts), ...added].filter(({ kind }) => kind === 'practice');
}
