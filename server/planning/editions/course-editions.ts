import type { LessonSheet, PartSheet } from '@haversack/language/sheets/sheet';
import type { Pair } from './alike.js';
import type { Matched } from './matched.js';
import { movedItems } from './order.js';
import { taughtIn, type CoursePair } from './scope.js';
import { wanderedParts, type Wandered } from './wandered.js';

/** What re-applying many changes asks of one course in both editions, worked out once. */
export class CourseEditions {
    /** The lessons in teaching order. */
    readonly before: readonly LessonSheet[];
    readonly after: readonly LessonSheet[];
    private lessonsMoved?: ReadonlySet<string>;
    private partsWandered?: readonly Wandered[];

    constructor(readonly matched: Matched, course: CoursePair) {
        this.before = taughtIn(course.old, matched.old);
        this.after = taughtIn(course.new, matched.now);
    }

    /** Names of the lessons of the new edition that stand elsewhere in the row than in the old one. */
    get movedLessons(): ReadonlySet<string> {
        return (this.lessonsMoved ??= this.findMoved());
    }

    get wandered(): readonly Wandered[] {
        return (this.partsWandered ??= wanderedParts(this.matched, this.matched.lessons.pairs));
    }

    /** Parts of a lesson that stand elsewhere in it. */
    movedParts(pair: Pair<LessonSheet>): ReadonlySet<PartSheet> {
        const { pairs } = this.matched.partsOf(pair);
        const moved = movedItems(pairs.map(({ new: now }) => pair.new.parts.indexOf(now)));
        return new Set(pairs.flatMap((one, index) => (moved.has(index) ? [one.new] : [])));
    }

    private findMoved(): Set<string> {
        const place = new Map(this.after.map(({ name }, index) => [name, index]));
        const both = this.before.flatMap(({ name }) => {
            const now = this.matched.lessonPair(name)?.new.name;
            return now !== undefined && place.has(now) ? [now] : [];
        });
        const moved = movedItems(both.map(name => place.get(name)!));
        return new Set(both.filter((_, index) => moved.has(index)));
    }
}
