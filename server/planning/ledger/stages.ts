import { adaptCourse } from '@haversack/language/adapting/adapt-course';
import type { Adapted, AppliedChange } from '@haversack/language/adapting/adapted';
import type { Programme } from '@haversack/language/sheets/programme';
import type { AdaptationSheet, CourseSheet, LessonSheet } from '@haversack/language/sheets/sheet';
import type { CourseMemo } from './course-memo.js';

/** A course between two of the changes that are made to it. */
export interface Stage extends Pick<Adapted, 'programme' | 'course' | 'madeOf' | 'leftOut'> {
    changes: readonly AppliedChange[];
}

/** A course before its changes, after each of them, and after all; each worked out when first asked for. */
export class Stages {
    /** How many changes there are. */
    readonly count: number;
    private whole: Stage | undefined;
    private readonly minutes = new Map<number, number>();

    constructor(
        private readonly programme: Programme, private readonly course: CourseSheet, private readonly adaptations: readonly AdaptationSheet[], private readonly memo: CourseMemo
    ) {
        this.count = adaptations.reduce((sum, { changes }) => sum + changes.length, 0);
    }

    get last(): Stage {
        return (this.whole ??= this.count === 0 ? unchanged(this.programme, this.course) : adaptCourse(this.programme, this.course, this.adaptations, this.memo.adapting));
    }

    /** After so many changes; 0 for the course as it is written. It is not kept: each holds all changes before it. */
    after(changes: number): Stage {
        if (changes >= this.count) return this.last;
        const stage = changes <= 0 ? unchanged(this.programme, this.course) : adaptCourse(this.programme, this.course, this.first(changes), this.memo.passing);
        this.minutes.set(changes, minutesOf(stage));
        return stage;
    }

    /** Of all lessons together, after so many changes. */
    minutesAfter(changes: number): number {
        return this.minutes.get(changes) ?? minutesOf(this.after(changes));
    }

    private first(changes: number): AdaptationSheet[] {
        const begun: AdaptationSheet[] = [];
        let left = changes;
        for (const adaptation of this.adaptations) {
            if (left <= 0) break;
            begun.push(left >= adaptation.changes.length ? adaptation : { ...adaptation, changes: adaptation.changes.slice(0, left) });
            left -= adaptation.changes.length;
        }
        return begun;
    }
}

/** Of all lessons of a course together. */
export function minutesOf({ programme, course }: Pick<Stage, 'programme' | 'course'>): number {
    return course.units.reduce((sum, { lessons }) => lessons.reduce((own, { name }) => own + lengthOf(programme.lessons.get(name)), sum), 0);
}

export function lengthOf(lesson: LessonSheet | undefined): number {
    return lesson?.parts.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0) ?? 0;
}

function unchanged(programme: Programme, course: CourseSheet): Stage {
    const names = course.units.flatMap(({ lessons }) => lessons.map(({ name }) => name));
    return { programme, course, madeOf: new Map(names.map(name => [name, [name]])), leftOut: new Map(), changes: [] };
}
