import type { FileSheet, Prose, Step } from '@haversack/language/sheets/sheet';
import { allSteps, stepsIn } from '@haversack/language/checks/walk-lessons';

/** Every text that a file holds, in the order of its kinds. */
export function prosesOf(sheet: FileSheet): Prose[] {
    const { materials, prints, books, games, kits, lessons, objectives, courses, classes, adaptations } = sheet;
    const added = adaptations.flatMap(({ changes }) => changes.flatMap(change => ('added' in change ? [change.added] : [])));
    const cautioned = [...materials, ...prints, ...games, ...[...lessons, ...added].flatMap(one => [one, ...one.parts])];
    return [
        ...allSteps(stepsIn(sheet)).map(({ prose }: Step) => prose),
        ...cautioned.flatMap(({ cautions }) => cautions.flatMap(({ prose }) => prose ?? [])),
        ...[...materials, ...prints, ...books, ...kits, ...classes, ...adaptations].flatMap(({ notes }) => notes),
        ...[...materials, ...prints, ...books, ...games].flatMap(({ kept }) => kept ?? []),
        ...[...objectives, ...courses, ...courses.flatMap(({ units }) => units)].flatMap(({ about }) => about ?? []),
        ...adaptations.flatMap(({ changes }) => changes.flatMap(({ because }) => because ?? []))
    ];
}
