import type { LessonSheet, Mention, Need, PartSheet, Prose, Step } from '../sheets/sheet.js';

/** A lesson's own needs and those of its parts, without those that a game brings. */
export function allNeeds(lesson: LessonSheet): Need[] {
    return [...lesson.needs, ...lesson.parts.flatMap(part => part.needs)];
}

/** Steps with those under them. */
export function allSteps(steps: readonly Step[]): Step[] {
    return steps.flatMap(step => [step, ...allSteps(step.under)]);
}

/** Names in braces in a prose. */
export function namesIn(prose: Prose): Mention[] {
    return prose.parts.flatMap(part => ('name' in part ? [{ name: part.name, at: part.at }] : []));
}

/** All prose of a lesson, its parts included. */
export function allProse(lesson: LessonSheet): Prose[] {
    const cautions = [...lesson.cautions, ...lesson.parts.flatMap(part => part.cautions)];
    return [
        ...allSteps([...lesson.steps, ...lesson.parts.flatMap((part: PartSheet) => part.steps)]).map(step => step.prose),
        ...cautions.flatMap(caution => (caution.prose ? [caution.prose] : []))
    ];
}
