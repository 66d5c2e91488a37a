import { adaptationsFor } from '@haversack/language/adapting/adaptations-for';
import type { Programme } from '@haversack/language/sheets/programme';
import type { ClassSheet, CourseSheet, LessonSheet } from '@haversack/language/sheets/sheet';
import type { Wanted } from '../audience.js';
import type { EditionFigures, EditionGroup, EditionOfCourse, EditionSection, EditionSectionId } from '../edition-figures.js';
import { counted, listing, quoted } from '@haversack/language/facts/wording';
import { classDifferences } from './class-differences.js';
import { allLessons, courseFacts, orderDifferences } from './course-differences.js';
import { lessonDifferences } from './lesson-differences.js';
import { wanderedParts } from './wandered.js';
import { Matched } from './matched.js';
import { objectiveDifferences } from './objective-differences.js';
import { ObjectiveShifts } from './objective-shifts.js';
import { placeIn } from './plain.js';
import { reapplied } from './reapply.js';
import { coursesCompared, lessonsMet, type CoursePair } from './scope.js';
import { termDifferences } from './term-differences.js';
import { thingDifferences } from './thing-differences.js';

/** Which course to compare, and whose term; names of either edition. Without a class, the first that is taught one of the courses. */
export interface Compared {
    course?: string;
    class?: string;
}

const titles: Readonly<Record<EditionSectionId, string>> = {
    order: 'Which lessons are taught, and in which order', lessons: 'What to do differently in a lesson', term: 'What it means for the term',
    things: 'Materials, prints, games and kits', objectives: 'What children learn', course: 'The course itself', class: 'The class'
};

/**
 * What changed for a teacher from one edition of a programme to the next, whatever changed in its text. Pure; never throws. Exact like all
 * figures; only who is who under a new name is a judgement, and says how sure it is.
 */
export function compareEditions(old: Programme, now: Programme, wanted: Compared = {}): EditionFigures {
    const matched = new Matched(old, now);
    const courses = coursesCompared(matched, wanted.course);
    const classes = classOf(matched, courses, wanted.class);
    const taught = { old: taughtOf(old, courses.map(pair => pair.old)), new: taughtOf(now, courses.map(pair => pair.new)) };
    const sheet = classes.new ?? classes.old;
    const wantedTerms = {
        old: { class: classes.old?.name ?? sheet?.name, course: courseFor(classes.old ?? sheet, courses, 'old') },
        new: { class: classes.new?.name ?? sheet?.name, course: courseFor(classes.new ?? sheet, courses, 'new') }
    };
    const term = sheet || courses.length > 0 ? termDifferences(matched, wantedTerms, classes) : { groups: [], frameworks: [] };
    const shifts = new ObjectiveShifts(matched, taught);
    const namesTold = new Set<string>();
    const found: Record<EditionSectionId, EditionGroup[]> = {
        order: courses.flatMap(pair => orderDifferences(matched, pair, namesTold)),
        lessons: changedLessons(matched, courses, shifts),
        term: term.groups,
        objectives: [...objectiveDifferences(matched, taught, shifts), ...term.frameworks],
        things: thingDifferences(matched),
        course: courses.flatMap(pair => courseFacts(matched, pair)),
        class: classDifferences(matched, classes.old, classes.new)
    };
    const sections = (Object.keys(titles) as EditionSectionId[]).flatMap((id): EditionSection[] => (found[id].length > 0 ? [{ id, title: titles[id], groups: found[id] }] : []));
    return {
        title: titleOf(courses), summary: summaryOf(sections),
        courses: courses.map(pair => ({ old: edition(pair.old), new: edition(pair.new) })),
        class: sheet && { name: sheet.name, title: sheet.title, adapted: adaptedBy(matched, wantedTerms) },
        sections,
        adaptations: reapplied(matched, courses),
        assumptions: [
            ...assumptionsOf(classes, sheet, courses),
            ...(found.class.length > 0 && found.term.length > 0 ? ['What is said of the class changed as well: its term differs for both reasons.'] : [])
        ]
    };
}

function titleOf(courses: readonly CoursePair[]): string {
    const name = ({ old, new: now }: CoursePair): string => {
        const title = (now ?? old)?.title ?? '';
        return old && now && old.edition !== now.edition ? `${title}, ${now.edition === undefined ? 'without an edition' : `edition ${now.edition}`} beside ${old.edition === undefined ? 'one without' : `edition ${old.edition}`}` : title;
    };
    return courses.length > 0 && courses.length < 4 ? listing(courses.map(name)) : 'Two editions of a programme';
}

function summaryOf(sections: readonly EditionSection[]): string {
    const count = sections.flatMap(({ groups }) => groups.flatMap(({ differences }) => differences)).length;
    return count === 0 ? 'Nothing changed for a teacher.' : `${counted(count, 'change')} for a teacher.`;
}

function edition(course: CourseSheet | undefined): EditionOfCourse | undefined {
    return course && { name: course.name, title: course.title, edition: course.edition, place: placeIn(course.uri, course.at) };
}

/** The class asked for, in both editions where both have it. */
function classOf({ old, now }: Matched, courses: readonly CoursePair[], wanted: string | undefined): { old?: ClassSheet; new?: ClassSheet } {
    const isTaught = ({ teaches }: ClassSheet): boolean => courses.length === 0 || courses.some(pair => teaches && (pair.old?.name === teaches.name || pair.new?.name === teaches.name));
    const name = wanted ?? [...now.classes.values(), ...old.classes.values()].find(isTaught)?.name;
    return name === undefined ? {} : { old: old.classes.get(name), new: now.classes.get(name) };
}

/** The course that the class is taught, where it is one of those compared; else the first of them. */
function courseFor(sheet: ClassSheet | undefined, courses: readonly CoursePair[], side: 'old' | 'new'): string | undefined {
    const taught = courses.find(pair => sheet?.teaches !== undefined && (pair.old?.name === sheet.teaches.name || pair.new?.name === sheet.teaches.name));
    return (taught ?? courses[0])?.[side]?.name;
}

/** The adaptations that either term is planned with. */
function adaptedBy({ old, now }: Matched, wanted: Record<'old' | 'new', Wanted>): string | undefined {
    const own = adaptationsFor(now, wanted.new);
    const former = adaptationsFor(old, wanted.old).filter(({ name }) => !own.some(one => one.name === name));
    const all = [...own, ...former].filter(({ changes }) => changes.length > 0).map(({ title }) => title);
    return all.length === 0 ? undefined : `its ${all.length === 1 ? 'adaptation' : 'adaptations'} ${listing(all.map(quoted))} counted in`;
}

function taughtOf(programme: Programme, courses: readonly (CourseSheet | undefined)[]): LessonSheet[] {
    return programme.courses.size === 0 ? [...programme.lessons.values()] : allLessons(programme, courses);
}

/** In the order in which the new edition teaches them. */
function changedLessons(matched: Matched, courses: readonly CoursePair[], shifts: ObjectiveShifts): EditionGroup[] {
    const before = lessonsMet(matched.old, courses.flatMap(pair => pair.old ?? []));
    const after = lessonsMet(matched.now, courses.flatMap(pair => pair.new ?? []));
    const order = [...new Set([...taughtOf(matched.now, courses.map(pair => pair.new)).map(({ name }) => name), ...after])];
    const place = new Map(order.map((name, index) => [name, index]));
    const pairs = matched.lessons.pairs.filter(pair => before.has(pair.old.name) && after.has(pair.new.name))
        .sort((a, b) => place.get(a.new.name)! - place.get(b.new.name)!);
    const wandered = wanderedParts(matched, pairs);
    return pairs.flatMap(pair => lessonDifferences(matched, pair, wandered, shifts));
}

function assumptionsOf(classes: { old?: ClassSheet; new?: ClassSheet }, sheet: ClassSheet | undefined, courses: readonly CoursePair[]): string[] {
    const assumptions: string[] = [];
    if (sheet && !classes.old) assumptions.push(`The old edition does not have the class “${sheet.title}”: its term is planned with that of the new edition.`);
    if (sheet && !classes.new) assumptions.push(`The new edition does not have the class “${sheet.title}”: its term is planned with that of the old edition.`);
    if (!sheet) assumptions.push('No class is declared: the term is that of one learner.');
    if (courses.length === 0) assumptions.push('No course is declared: all lessons are compared, in the order of the files.');
    return assumptions;
}

