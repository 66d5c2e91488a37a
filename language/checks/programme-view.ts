import type { Programme } from '../sheets/programme.js';
import type { CourseSheet, LessonSheet, Mention, Need, PartSheet, Prose, Step } from '../sheets/sheet.js';

/** A lesson at its place in a course. */
export interface Taught {
    course: CourseSheet;
    unit: string;
    /** From 0, over all units of the course. */
    index: number;
    lesson?: LessonSheet;
    mention: Mention;
}

/** A programme with what several checks ask of it, each worked out once when first asked. */
export class ProgrammeView {
    private orderMemo?: ReadonlyMap<string, readonly Taught[]>;
    private coursesMemo?: ReadonlyMap<string, readonly Taught[]>;
    private usedMemo?: ReadonlySet<string>;

    constructor(readonly programme: Programme) {}

    /** The lessons of each course in teaching order, by the course's name. */
    get courses(): ReadonlyMap<string, readonly Taught[]> {
        if (!this.coursesMemo) {
            const courses = new Map<string, Taught[]>();
            for (const course of this.programme.courses.values()) {
                const taught: Taught[] = [];
                for (const unit of course.units) {
                    for (const mention of unit.lessons) {
                        taught.push({ course, unit: unit.name, index: taught.length, lesson: this.programme.lessons.get(mention.name), mention });
                    }
                }
                courses.set(course.name, taught);
            }
            this.coursesMemo = courses;
        }
        return this.coursesMemo;
    }

    /** Every place at which a lesson is taught, by the lesson's name. */
    get taughtAt(): ReadonlyMap<string, readonly Taught[]> {
        if (!this.orderMemo) {
            const order = new Map<string, Taught[]>();
            for (const lessons of this.courses.values()) {
                for (const taught of lessons) {
                    const places = order.get(taught.mention.name);
                    if (places) places.push(taught);
                    else order.set(taught.mention.name, [taught]);
                }
            }
            this.orderMemo = order;
        }
        return this.orderMemo;
    }

    /** Names of things that some lesson, game or not-needed list names; unreadable lines count as naming everything in them. */
    get usedThings(): ReadonlySet<string> {
        if (!this.usedMemo) {
            const used = new Set<string>(this.programme.unreadable);
            const take = (needs: readonly Need[]): void => {
                for (const need of needs) for (const option of need.options) used.add(option.thing.name);
            };
            for (const file of this.programme.files.values()) {
                for (const lesson of file.lessons) {
                    for (const need of allNeeds(lesson)) take([need]);
                    for (const thing of lesson.notNeeded) used.add(thing.name);
                }
                for (const game of file.games) {
                    take(game.needs);
                    if (game.found) used.add(game.found.book.name);
                }
                for (const material of file.materials) for (const standIn of material.standIns) used.add(standIn.thing.name);
                for (const adaptation of file.adaptations) {
                    for (const change of adaptation.changes) if (change.does === 'swap') used.add(change.forThing.name);
                }
            }
            this.usedMemo = used;
        }
        return this.usedMemo;
    }
}

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
