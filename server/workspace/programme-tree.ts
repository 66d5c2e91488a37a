import { URI, UriUtils } from 'langium';
import type { Adapted } from '@haversack/language/adapting/adapted';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { ProgrammeKey } from '@haversack/language/linking/programmes';
import type { AdaptationSheet, ClassSheet, CourseSheet, Declared, LessonSheet, Mention, Place, Range, UnitSheet } from '@haversack/language/sheets/sheet';
import { titleFromName } from '@haversack/language/sheets/titles';
import type { ScheduleFigures } from '../planning/schedule-figures.js';
import { taughtAs } from '../planning/taught-as.js';
import type { AdaptationNode, ClassNode, CourseNode, LessonNode, ProblemCounts, ProgrammeNode, SourcePlace, Titled, UnitNode } from '../protocol/programme.js';
import type { HaversackServerServices } from './services.js';

/** Where a lesson's days come from: the plan of one class. */
interface Planned {
    schedule: ScheduleFigures;
    adapted?: Adapted;
    /** Of each lesson, by the name under which it is taught; in order. */
    meetings: ReadonlyMap<string, readonly TaughtAt[]>;
}

/** A meeting, and which of the term's it is. */
interface TaughtAt {
    order: number;
    week: number;
    label: string;
}

/** Lines (from 0) with an error or a warning, by file. */
type ProblemLines = (uri: string) => readonly { line: number; severity: 1 | 2 }[];

/** Everything that a programme declares for teaching, as a tree: with the days of a class (by name; else the first), and how many problems there are where. */
export function programmeTree(key: ProgrammeKey, className: string | undefined, services: HaversackServerServices): ProgrammeNode {
    const view = services.sheets.viewAt(key);
    const { programme } = view;
    const plans = services.plans.at(key);
    const classes = [...programme.classes.values()];
    const shown = (className === undefined ? undefined : programme.classes.get(className)) ?? classes[0];
    const lines = problemLines(services);
    const planOf = (group: ClassSheet | undefined, course: CourseSheet | undefined): Planned => {
        const schedule = plans.schedule(group?.name);
        return { schedule, adapted: course && view.adapted(course, group), meetings: meetingsByLesson(schedule) };
    };
    const shownCourse = shown?.teaches && programme.courses.get(shown.teaches.name);
    const ofOthers = { view, lines, planned: planOf(shown, shownCourse) };
    const others = [...programme.lessons.values()].filter(({ name }) => !view.taughtAt.has(name));
    return {
        key,
        title: programmeTitle(key),
        courses: [...programme.courses.values()].map((course, index) => {
            const group = [shown, ...classes].find(one => one?.teaches?.name === course.name);
            const isPlanned = group !== undefined || (classes.length === 0 && index === 0);
            return courseNode(course, group, { view, lines, planned: isPlanned ? planOf(group, course) : undefined });
        }),
        otherLessons: others.map(lesson => lessonNode({ name: lesson.name, at: lesson.at }, undefined, ofOthers)),
        classes: classes.map(group => classNode(group, view, lines)),
        adaptations: [...programme.adaptations.values()].map(adaptation => adaptationNode(adaptation, shown, view, lines))
    };
}

interface Known {
    view: ProgrammeView;
    lines: ProblemLines;
    planned?: Planned;
}

function courseNode(course: CourseSheet, group: ClassSheet | undefined, known: Known): CourseNode {
    const units = course.units.map(unit => unitNode(unit, course, known));
    return {
        ...titled(course), at: placeOf(course.uri, course.at), edition: course.edition, class: group && titled(group), units,
        problems: added([problemsAt(course.uri, course.whole, known.lines), ...units.flatMap(({ lessons }) => lessons.map(({ at, problems, line }) => (at && line ? lessonsOwn(problems, line, known.lines) : none)))])
    };
}

function unitNode(unit: UnitSheet, { uri }: CourseSheet, known: Known): UnitNode {
    const lessons = unit.lessons.map(mention => lessonNode(mention, uri, known));
    const own = problemsAt(uri, unit.whole, known.lines);
    return {
        ...titled(unit), at: placeOf(uri, unit.at), lessons,
        problems: added([own, ...lessons.map(({ at, problems, line }) => (at && line ? lessonsOwn(problems, line, known.lines) : none))])
    };
}

/** A lesson's problems without those of its line in the course, which the course counts. */
function lessonsOwn(problems: ProblemCounts, line: SourcePlace, lines: ProblemLines): ProblemCounts {
    const there = problemsAt(line.uri, { start: line, end: line }, lines);
    return { errors: problems.errors - there.errors, warnings: problems.warnings - there.warnings };
}

/** `course`: the file of the course that lists it; undefined for a lesson that stands in none. */
function lessonNode(mention: Mention, course: string | undefined, { view, lines, planned }: Known): LessonNode {
    const lesson = view.programme.lessons.get(mention.name);
    const line = course === undefined ? undefined : placeOf(course, mention.at);
    const onLine = line ? problemsAt(line.uri, { start: line, end: line }, lines) : none;
    if (!lesson) {
        return { name: mention.name, title: titleFromName(mention.name), line, draft: false, minutes: 0, problems: onLine, standing: 'unknown', meetings: [], changes: [] };
    }
    return {
        ...titled(lesson), at: placeOf(lesson.uri, lesson.at), line, draft: lesson.draft,
        minutes: lesson.parts.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0),
        problems: added([problemsAt(lesson.uri, lesson.whole, lines), onLine]),
        ...standingOf(lesson, planned)
    };
}

function standingOf(lesson: LessonSheet, planned: Planned | undefined): Pick<LessonNode, 'standing' | 'meetings' | 'why' | 'changes'> {
    if (!planned) return { standing: 'not-planned', meetings: [], changes: [] };
    const { schedule, adapted, meetings: byLesson } = planned;
    const { names, leftOut } = taughtAs(lesson.name, adapted);
    if (leftOut) return { standing: 'left-out', meetings: [], why: plain(leftOut.change.because), changes: [leftOut.says] };
    const found = new Set(names.flatMap(name => byLesson.get(name) ?? []));
    const meetings = [...found].sort((a, b) => a.order - b.order).map(({ week, label }) => ({ week, label }));
    const changes = (adapted?.changes ?? []).filter(({ idle, touched }) => idle === undefined && touched.some(name => names.includes(name))).map(({ says }) => says);
    if (meetings.length > 0) return { standing: 'taught', meetings, changes };
    const unplaced = schedule.unplaced.find(one => names.includes(one.lesson));
    return { standing: unplaced ? 'no-day' : 'not-planned', meetings, why: unplaced?.why, changes };
}

/** So that a lesson does not look through the whole term. */
function meetingsByLesson({ weeks }: ScheduleFigures): Map<string, TaughtAt[]> {
    const found = new Map<string, TaughtAt[]>();
    let order = 0;
    for (const { number, meetings } of weeks) {
        for (const { label, lessons } of meetings) {
            const at: TaughtAt = { order: order++, week: number, label };
            for (const name of lessons) (found.get(name) ?? found.set(name, []).get(name)!).push(at);
        }
    }
    return found;
}

function classNode(group: ClassSheet, { programme }: ProgrammeView, lines: ProblemLines): ClassNode {
    return {
        ...titled(group), at: placeOf(group.uri, group.at), problems: problemsAt(group.uri, group.whole, lines), learners: group.learners?.count,
        course: group.teaches && (programme.courses.get(group.teaches.name)?.title ?? group.teaches.name)
    };
}

function adaptationNode(adaptation: AdaptationSheet, shown: ClassSheet | undefined, view: ProgrammeView, lines: ProblemLines): AdaptationNode {
    const { programme } = view;
    const course = adaptation.of && programme.courses.get(adaptation.of.name);
    const own = adaptation.forClass && programme.classes.get(adaptation.forClass.name);
    const group = own ?? [shown, ...programme.classes.values()].find(one => one?.teaches?.name === course?.name);
    const made = course && view.adapted(course, group)?.changes.filter(change => change.adaptation === adaptation);
    return {
        ...titled(adaptation), at: placeOf(adaptation.uri, adaptation.at), problems: problemsAt(adaptation.uri, adaptation.whole, lines),
        course: course?.title ?? adaptation.of?.name, forClass: own?.title ?? adaptation.forClass?.name,
        changes: (made ?? []).map(({ says, place, idle }) => ({ says, at: ofPlace(place), idle }))
    };
}

/** Reads each file's problems once. */
function problemLines({ shared }: HaversackServerServices): ProblemLines {
    const known = new Map<string, readonly { line: number; severity: 1 | 2 }[]>();
    return uri => {
        let lines = known.get(uri);
        if (!lines) {
            const found = shared.workspace.LangiumDocuments.getDocument(URI.parse(uri))?.diagnostics ?? [];
            lines = found.flatMap(({ severity, range }) => (severity === 1 || severity === 2 ? [{ line: range.start.line, severity }] : []));
            known.set(uri, lines);
        }
        return lines;
    };
}

const none: ProblemCounts = { errors: 0, warnings: 0 };

function problemsAt(uri: string, { start, end }: { start: { line: number }; end: { line: number } }, lines: ProblemLines): ProblemCounts {
    const here = lines(uri).filter(({ line }) => start.line <= line && line <= end.line);
    const errors = here.filter(({ severity }) => severity === 1).length;
    return { errors, warnings: here.length - errors };
}

function added(counts: readonly ProblemCounts[]): ProblemCounts {
    return counts.reduce((sum, { errors, warnings }) => ({ errors: sum.errors + errors, warnings: sum.warnings + warnings }), none);
}

function titled({ name, title }: Pick<Declared, 'name' | 'title'>): Titled {
    return { name, title };
}

function ofPlace({ uri, range }: Place): SourcePlace {
    return placeOf(uri, range);
}

export function placeOf(uri: string, { start }: Range): SourcePlace {
    return { uri, line: start.line, character: start.character };
}

/** The name of the folder; empty for the files of no folder. */
export function programmeTitle(key: ProgrammeKey): string {
    return UriUtils.basename(URI.parse(key));
}

/** Prose as one line: names in braces stand as they are written. */
function plain(prose: AdaptationSheet['notes'][number] | undefined): string | undefined {
    return prose?.parts.map(part => ('name' in part ? titleFromName(part.name) : part.text)).join('').replace(/\s+/g, ' ').trim();
}
