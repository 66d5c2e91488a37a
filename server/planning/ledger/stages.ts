import { adaptCourse } from '@haversack/language/adapting/adapt-course';
import type { Adapted, AppliedChange } from '@haversack/language/adapting/adapted';
import type { Programme } from '@haversack/language/sheets/programme';
import type { AdaptationSheet, CourseSheet } from '@haversack/language/sheets/sheet';
import type { CourseMemo } from './course-memo.js';

/** A course between two of the changes that are made to it. */
export interface Stage extends Pick<Adapted, 'programme' | 'course' | 'madeOf' | 'leftOut'> {
    changes: readonly AppliedChange[];
}

/** A course before its changes, after each of them, and after all; each worked out when first asked for. */
export class Stages {
    /** How many changes there are. */
    readonly count: number;
    private readonly known = new Map<number, Stage>();

    constructor(
        private readonly programme: Programme, private readonly course: CourseSheet, private readonly adaptations: readonly AdaptationSheet[], private readonly memo: CourseMemo
    ) {
        this.count = adaptations.reduce((sum, { changes }) => sum + changes.length, 0);
    }

    get last(): Stage {
        return this.after(this.count);
    }

    /** After so many changes; 0 for the course as it is written. */
    after(changes: number): Stage {
        let stage = this.known.get(changes);
        if (!stage) this.known.set(changes, stage = changes === 0 ? unchanged(this.programme, this.course) : this.make(changes));
        return stage;
    }

    private make(changes: number): Stage {
        const begun: AdaptationSheet[] = [];
        let left = changes;
        for (const adaptation of this.adaptations) {
            if (left <= 0) break;
            begun.push(left >= adaptation.changes.length ? adaptation : { ...adaptation, changes: adaptation.changes.slice(0, left) });
            left -= adaptation.changes.length;
        }
        return adaptCourse(this.programme, this.course, begun, this.memo.adapting);
    }
}

function unchanged(programme: Programme, course: CourseSheet): Stage {
    const names = course.units.flatMap(({ lessons }) => lessons.map(({ name }) => name));
    return { programme, course, madeOf: new Map(names.map(name => [name, [name]])), leftOut: new Map(), changes: [] };
}
