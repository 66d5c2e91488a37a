import { URI } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import type { CourseSheet } from '@haversack/language/sheets/sheet';
import { quoted } from '@haversack/language/facts/wording';
import { textHash } from '../brief/hash.js';
import { heldLines, moveLessons, type Destination, type MovedLesson } from '../editing/move-lesson.js';
import {
    moveLessonsRequest, programmesRequest, weekRequest, type BriefRefusal, type LessonLine, type MoveLessonsAnswer, type MoveLessonsParams, type MoveTarget, type ProgrammesAnswer,
    type ProgrammesParams, type ProgrammesUnchanged, type SourcePlace, type WeekAnswer, type WeekParams, type WeekRefusal
} from '../protocol/programme.js';
import { sheetAt } from './asked-for.js';
import { programmeTree } from './programme-tree.js';
import { isFlag, isListOf, isNumber, isRecord, isText, readParams } from './read-params.js';
import type { HaversackServerServices } from './services.js';
import { weekThings } from './week-things.js';

const weekKinds = { programme: isText, uri: isText, line: isNumber, class: isText, week: isNumber, otherwise: isNumber, brief: isFlag };

/** Answers the trees: what the programmes hold, what a week needs, and what a course's text is with its lessons in another order. */
export function addProgrammeRequests(connection: Connection, shared: LangiumSharedServices, services: HaversackServerServices): void {
    const answer = <T>(request: string, make: (params: unknown) => T): void => {
        connection.onRequest(request, async (params: unknown): Promise<T> => {
            await shared.workspace.WorkspaceManager.ready;
            return shared.workspace.WorkspaceLock.read(() => make(params));
        });
    };
    answer(programmesRequest, (params): ProgrammesAnswer | ProgrammesUnchanged => {
        const { class: className, known } = readParams<ProgrammesParams>(params, { class: isText, known: isText });
        const trees = services.programmes.all.map(key => programmeTree(key, className, services));
        const programmes = trees.filter(({ courses, otherLessons, classes, adaptations }) => [courses, otherLessons, classes, adaptations].some(({ length }) => length > 0));
        const hash = textHash(JSON.stringify(programmes));
        return hash === known ? { unchanged: true } : { hash, programmes };
    });
    answer(weekRequest, (params): WeekAnswer | WeekRefusal => weekThings(readParams<WeekParams>(params, weekKinds), services));
    answer(moveLessonsRequest, (params): MoveLessonsAnswer | BriefRefusal => moved(params, services));
}

const changedMeanwhile: BriefRefusal = { refusal: 'The course has changed meanwhile, so nothing was moved. Try again.' };

function moved(params: unknown, services: HaversackServerServices): MoveLessonsAnswer | BriefRefusal {
    const { lessons = [], to } = readParams<MoveLessonsParams>(params, { lessons: isListOf({ name: isText }), to: isRecord });
    const destination = to && destinationOf(to);
    const at = destination?.at ?? lessons.find(({ line }) => isPlace(line))?.line;
    if (!destination || !at || lessons.length === 0) return { refusal: 'Choose a lesson of a course first: a lesson that stands in no course can be put into a unit.' };
    const sheet = sheetAt(at.uri, services);
    const course = sheet?.courses.find(({ whole }) => whole.start.line <= at.line && at.line <= whole.end.line);
    const document = services.shared.workspace.LangiumDocuments.getDocument(URI.parse(at.uri));
    if (!course || !document) return changedMeanwhile;
    const foreign = lessons.find(({ line }) => isPlace(line) && !isWithin(line, course));
    if (foreign) return { refusal: `${quoted(titleOf(foreign, services))} stands in another course than ${quoted(course.title)}. Write its name into a unit of ${quoted(course.title)} if it is to be taught there too.` };
    const own = lessons.map(({ name, line }): MovedLesson => ({ name, line: isPlace(line) ? line.line : undefined }));
    const stale = own.some(({ name, line }) => line !== undefined && !course.units.some(unit => unit.lessons.some(mention => mention.name === name && mention.at.start.line === line)));
    const text = document.textDocument.getText();
    const result = stale || !destination.stands(course) ? undefined : moveLessons(text, course, own, destination.to);
    return result ? { uri: document.uri.toString(), version: document.textDocument.version, ...result, held: heldLines(text, result.edits) } : changedMeanwhile;
}

interface AskedDestination {
    to: Destination;
    at?: SourcePlace;
    /** Whether what it names is still there. */
    stands(course: CourseSheet): boolean;
}

function destinationOf(to: MoveTarget): AskedDestination | undefined {
    if ('by' in to) return to.by === 'up' || to.by === 'down' ? { to: { by: to.by }, stands: () => true } : undefined;
    if ('lesson' in to && isLine(to.lesson)) {
        const { name, line } = to.lesson;
        return { to: { lesson: line.line }, at: line, stands: ({ units }) => units.some(({ lessons }) => lessons.some(lesson => lesson.name === name && lesson.at.start.line === line.line)) };
    }
    if ('unit' in to && isLine(to.unit)) {
        const { name, line } = to.unit;
        return { to: { unit: line.line }, at: line, stands: ({ units }) => units.some(unit => unit.name === name && unit.at.start.line === line.line) };
    }
    return undefined;
}

function isLine(value: unknown): value is { name: string; line: SourcePlace } {
    return isRecord(value) && isText(value.name) && isPlace(value.line);
}

function isPlace(value: unknown): value is SourcePlace {
    return isRecord(value) && isText(value.uri) && isNumber(value.line);
}

function isWithin({ uri, line }: SourcePlace, course: CourseSheet): boolean {
    return URI.parse(uri).toString() === course.uri && course.whole.start.line <= line && line <= course.whole.end.line;
}

function titleOf({ name, line }: LessonLine, { sheets }: HaversackServerServices): string {
    return (line && sheets.viewOf(line.uri).programme.lessons.get(name)?.title) ?? name;
}
