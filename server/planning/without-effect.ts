import type { Programme } from '@haversack/language/sheets/programme';
import type { ClassSheet, CourseSheet } from '@haversack/language/sheets/sheet';
import { listing, quoted } from './wording.js';

/** What is declared for this class and course and does not change the plan, in sentences, so that nobody relies on it. */
export function withoutEffect(programme: Programme, sheet: ClassSheet | undefined, course: CourseSheet | undefined): string[] {
    const sentences: string[] = [];
    const adaptations = [...programme.adaptations.values()].filter(({ changes, forClass, of }) => changes.length > 0
        && (forClass ? forClass.name === sheet?.name && (!of || of.name === course?.name) : of !== undefined && of.name === course?.name));
    if (adaptations.length > 0) {
        sentences.push(`The changes of ${listing(adaptations.map(a => quoted(a.title)))} are not made in these weeks yet.`);
    }
    return sentences;
}
