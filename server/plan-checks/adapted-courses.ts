import { adaptationsFor } from '@haversack/language/adapting/adaptations-for';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { AdaptationSheet, ClassSheet, CourseSheet, Place } from '@haversack/language/sheets/sheet';
import { changesOf, type Broken, type ChangeMade, type CourseChanges } from '../planning/ledger/consequences.js';
import { consequenceOf } from '../planning/ledger/wording.js';
import { CourseMemo } from '../planning/ledger/course-memo.js';
import type { Consequence, ConsequenceKind } from '../planning/ledger-figures.js';
import { isPast } from './words.js';

/** A course as some class is taught it, or as all are where none is. */
export interface AdaptedCourse {
    readonly group?: ClassSheet;
    readonly course: CourseSheet;
    readonly adaptations: readonly AdaptationSheet[];
    readonly changes: CourseChanges;
}

/** Something that a change breaks, where nobody has dealt with it. */
export interface Loss {
    readonly of: AdaptedCourse;
    /** The change that breaks it; absent where there are too many to look at one by one. */
    readonly made?: ChangeMade;
    readonly broken: Broken;
    readonly consequence: Consequence;
}

/** So many lessons and changes are gone through to try mends; in a course of a hundred that is three hundred mends. */
const mostTried = 30_000;

/** What the changes of all adaptations bring about, worked out when first asked for. */
export class AdaptedCourses {
    private found: readonly AdaptedCourse[] | undefined;
    private tried = 0;

    constructor(private readonly view: ProgrammeView, private readonly today: string, readonly memo = new CourseMemo()) {}

    /** Each loss once, though several classes are taught the same. */
    *losses(kind: ConsequenceKind): Iterable<Loss> {
        const told = new Set<string>();
        for (const of of this.all()) {
            const { made: all, together = [], base } = of.changes;
            for (const { made, broken } of [...all.flatMap(made => made.broken.map(broken => ({ made, broken }))), ...together.map(broken => ({ made: undefined, broken }))]) {
                const place = made?.applied.place ?? placeOf(of);
                const key = `${place.uri} ${place.range.start.line} ${broken.about} ${broken.behind ?? ''}`;
                if (broken.kind !== kind || broken.gone || told.has(key) || !this.isCertain(broken, of)) continue;
                told.add(key);
                yield { of, made, broken, consequence: consequenceOf(broken, base) };
            }
        }
    }

    /** Whether one more mend of a course may be tried, so that nobody waits for those of a programme that has been turned upside down. */
    mayTry({ changes: { base, made } }: AdaptedCourse): boolean {
        this.tried += base.lessons.length + made.length;
        return this.tried <= mostTried;
    }

    all(): readonly AdaptedCourse[] {
        return this.found ??= [...this.adapted()];
    }

    /** Classes with the same changes are looked at once; those whose term is over are left alone. */
    private *adapted(): Iterable<AdaptedCourse> {
        const { programme } = this.view;
        if (programme.adaptations.size === 0) return;
        const seen = new Set<string>();
        for (const course of programme.courses.values()) {
            if (this.view.isBroken(course)) continue;
            const groups = [...programme.classes.values()].filter(({ teaches }) => teaches?.name === course.name);
            const open = groups.filter(({ ends }) => !isPast(ends?.date, this.today));
            for (const group of groups.length === 0 ? [undefined] : open) {
                const adaptations = adaptationsFor(programme, { class: group?.name, course: course.name });
                const key = [course.name, ...adaptations.map(({ name }) => name)].join(' ');
                if (adaptations.length === 0 || seen.has(key) || adaptations.some(adaptation => this.view.isBroken(adaptation))) continue;
                seen.add(key);
                yield { group, course, adaptations, changes: changesOf(programme, course, adaptations, this.memo) };
            }
        }
    }

    /** Not where a line that could not be read, or a name misspelt, may say otherwise: that has a message of its own. */
    private isCertain({ kind, about, behind, lessons, later }: Broken, { course }: AdaptedCourse): boolean {
        const { view } = this;
        if (view.programme.unreadable.has(about)) return false;
        switch (kind) {
            case 'word-not-taught': return true;
            case 'prerequisite-left-out': return !view.isDoubtful('lesson', about);
            case 'prerequisite-later': return !lessons.some(({ name }) => view.lessonCircles.get(name)?.includes(about));
            case 'builds-on-later': return (later !== undefined || this.isReadable(course)) && !view.isDoubtful('objective', about) && !view.objectiveCircles.get(behind ?? '')?.includes(about);
            case 'practised-too-early': return !view.isDoubtful('objective', about);
            default: return !view.isDoubtful('objective', about) && this.isReadable(course);
        }
    }

    private isReadable(course: CourseSheet): boolean {
        return this.view.courses.get(course.name)?.every(({ lesson }) => lesson && !this.view.isBroken(lesson)) ?? false;
    }
}

/** The name of the last adaptation. */
export function placeOf({ adaptations, course }: AdaptedCourse): Place {
    const { uri, at } = adaptations.at(-1) ?? course;
    return { uri, range: at };
}
