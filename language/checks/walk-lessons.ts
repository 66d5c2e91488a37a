import type { FileSheet, LessonSheet, Mention, Need, Prose, Step } from '../sheets/sheet.js';

/** A lesson's own needs and those of its parts, without those that a game brings. */
export function allNeeds(lesson: Pick<LessonSheet, 'needs' | 'parts'>): Need[] {
    return [...lesson.needs, ...lesson.parts.flatMap(({ needs }) => needs)];
}

/** Every step of a file that stands under no other: of lessons, their parts, games, and what adaptations add. */
export function stepsIn({ lessons, games, adaptations }: FileSheet): Step[] {
    const added = adaptations.flatMap(({ changes }) => changes.flatMap(change => ('added' in change ? [change.added] : [])));
    return [
        ...[...lessons, ...added].flatMap(({ steps, parts }) => [...steps, ...parts.flatMap(part => part.steps)]),
        ...games.flatMap(({ steps }) => steps)
    ];
}

/** Steps with those under them. */
export function allSteps(steps: readonly Step[]): Step[] {
    const all: Step[] = [];
    addSteps(steps, all);
    return all;
}

export function addSteps(steps: readonly Step[], all: Step[]): void {
    for (const step of steps) {
        all.push(step);
        addSteps(step.under, all);
    }
}

/** Calls back for each name in braces in a prose. */
export function eachName(prose: Prose, found: (mention: Mention) => void): void {
    for (const part of prose.parts) if ('name' in part) found(part);
}
