import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import type { Adapted } from '@haversack/language/adapting/adapted';
import type { AdaptingMemo } from '@haversack/language/adapting/memo';
import type { Programme } from '@haversack/language/sheets/programme';
import type { ClassSheet, CourseSheet, KitSheet, LessonSheet, Place } from '@haversack/language/sheets/sheet';
import { counted, listing, quoted } from '@haversack/language/facts/wording';
import { peopleOf, type People } from './people.js';
import { sharingWith } from './sharing.js';

/** Which class or course to plan for; names of declarations. */
export interface Wanted {
    class?: string;
    course?: string;
}

/** A kit that the class has, so many of it. */
export interface KitInPlay {
    sheet: KitSheet;
    count: number;
    place: Place;
}

/** For whom a plan is made: the class, what it is taught, who is there and which kits it has. */
export interface Audience {
    class?: ClassSheet;
    /** Absent where the programme has no course: then all lessons are taught in the order of the files. */
    course?: CourseSheet;
    /** With all that adaptations change for this class: its course, lessons and games. */
    programme: Programme;
    /** Absent where no adaptation applies. */
    adapted?: Adapted;
    lessons: LessonSheet[];
    people: People;
    kits: KitInPlay[];
    /** Files that the programme names beside its own. */
    attachments: Programme['attachments'];
    assumptions: string[];
}

/**
 * The class and course to plan for. A name may be a class's or a course's. Where none is given: the first class in the order of
 * the files; without classes the first course; without courses all lessons. An unknown name is said and passed over. The course is that of the
 * class's adaptations; `adapting` is kept by the caller from one version of the programme to the next.
 */
export function chooseClass(programme: Programme, wanted?: string | Wanted, adapting?: AdaptingMemo): Audience {
    const assumptions: string[] = [];
    const names = typeof wanted === 'string'
        ? programme.classes.has(wanted) || !programme.courses.has(wanted) ? { class: wanted } : { course: wanted }
        : wanted ?? {};
    const namedCourse = names.course === undefined ? undefined : programme.courses.get(names.course);
    const namedClass = names.class === undefined ? undefined : programme.classes.get(names.class);
    const sheet = namedClass
        ?? (namedCourse ? first(programme.classes.values(), c => c.teaches?.name === namedCourse.name) : first(programme.classes.values()));
    const taught = sheet?.teaches && programme.courses.get(sheet.teaches.name);
    const written = namedCourse ?? taught ?? first(programme.courses.values());
    const adapted = written && adaptedFor(programme, { class: sheet?.name, course: written.name }, adapting);
    const course = adapted?.course ?? written;
    if (names.class !== undefined && !namedClass) {
        assumptions.push(`No class is called ${quoted(names.class)}: ${sheet ? `${quoted(sheet.title)} is planned` : 'no class is counted'}.`);
    }
    if (names.course !== undefined && !namedCourse) {
        assumptions.push(`No course is called ${quoted(names.course)}: ${course ? `${quoted(course.title)} is planned` : 'all lessons are planned'}.`);
    }
    if (sheet && !taught && !namedCourse) {
        assumptions.push(`The class ${quoted(sheet.title)} ${sheet.teaches
            ? `teaches “${sheet.teaches.name}”, which no file declares` : 'does not say what it is taught'}: ${
            course ? `${quoted(course.title)} is planned` : 'all lessons are planned in the order of the files'}.`);
    } else if (!course) {
        assumptions.push('No course is declared: all lessons are planned in the order of the files.');
    }
    const people = peopleOf(sheet);
    const taughtAs = adapted?.programme ?? programme;
    const lessons = lessonsOf(taughtAs, course, assumptions);
    const kits = kitsInPlay(programme, sheet, course, people.figures.learners, assumptions);
    return { class: sheet, course, programme: taughtAs, adapted, lessons, people, kits, attachments: programme.attachments, assumptions };
}

function first<T>(values: Iterable<T>, fits: (value: T) => boolean = () => true): T | undefined {
    for (const value of values) if (fits(value)) return value;
    return undefined;
}

function lessonsOf(programme: Programme, course: CourseSheet | undefined, assumptions: string[]): LessonSheet[] {
    if (!course) return [...programme.lessons.values()];
    const lessons: LessonSheet[] = [];
    const unknown: string[] = [];
    for (const unit of course.units) {
        for (const { name } of unit.lessons) {
            const lesson = programme.lessons.get(name);
            if (lesson) lessons.push(lesson);
            else unknown.push(quoted(name));
        }
    }
    if (unknown.length > 0) {
        const named = unknown.length > 3 ? `${unknown.slice(0, 3).join(', ')} and ${unknown.length - 3} more` : listing(unknown);
        assumptions.push(`The course ${quoted(course.title)} names lessons that no file declares; they are left out: ${named}.`);
    }
    return lessons;
}

/**
 * A class that lists its kits has those and no others, and so has one that shares the cupboard of a class that lists them. Otherwise the course's `uses` are counted: per learners as often as
 * needed, in all as written, per family for one family; without a course, one of every kit.
 */
function kitsInPlay(
    programme: Programme, sheet: ClassSheet | undefined, course: CourseSheet | undefined, learners: number, assumptions: string[]
): KitInPlay[] {
    const kits: KitInPlay[] = [];
    if (sheet && sheet.kits.length > 0) {
        for (const line of sheet.kits) add(line.kit.name, line.count, { uri: sheet.uri, range: line.at });
        return kits;
    }
    if (sharingWith(programme, sheet).some(other => other.kits.length > 0)) return kits;
    if (!course) {
        for (const kit of programme.kits.values()) add(kit.name, 1, { uri: kit.uri, range: kit.at });
        return kits;
    }
    for (const use of course.uses) {
        const times = use.per.who === 'learners' ? Math.ceil(learners / Math.max(1, use.per.of)) : 1;
        const kit = programme.kits.get(use.kit.name);
        if (sheet && kit && use.per.who === 'family') {
            assumptions.push(`${quoted(kit.title)} comes per family, and the class does not list its kits: ${counted(use.count, 'kit')} counted.`);
        }
        add(use.kit.name, times * use.count, { uri: course.uri, range: use.at });
    }
    return kits;

    function add(name: string, count: number, place: Place): void {
        const kit = programme.kits.get(name);
        if (kit && Number.isFinite(count) && count > 0) kits.push({ sheet: kit, count: Math.floor(count), place });
    }
}
