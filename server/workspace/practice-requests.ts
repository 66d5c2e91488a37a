import type { LangiumSharedServices } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import { mostItems } from '@haversack/language/practice/sequence';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import { practiceSheetMarkdown } from '../brief/practice-sheet/markdown.js';
import { practiceSheetPage } from '../brief/practice-sheet/page.js';
import { practiceSheetText } from '../brief/practice-sheet/text.js';
import { figuresJson } from '../exports/json.js';
import { adaptingOf } from '../planning/cache.js';
import type { PracticeSheetFigures } from '../planning/figures.js';
import { lessonAsTaught, planPracticeSheet, practicesOf } from '../planning/practice.js';
import { practiceRequest, type PracticeAnswer, type PracticeParams, type PracticeRefusal } from '../protocol/practice.js';
import { classNamed, folderOf, plansFor, sheetAt, unknownClass } from './asked-for.js';
import { printKinds, printOptions } from './print-params.js';
import { isFlag, isNumber, isText, readParams } from './read-params.js';
import type { HaversackServerServices } from './services.js';

const kinds = { uri: isText, line: isNumber, lesson: isText, practice: isText, class: isText, more: isNumber, key: isFlag, format: isText, ...printKinds };

/** Answers the commands: the practice of a lesson as a sheet, or its answer key. */
export function addPracticeRequests(connection: Connection, shared: LangiumSharedServices, services: HaversackServerServices): void {
    connection.onRequest(practiceRequest, async (params: unknown): Promise<PracticeAnswer | PracticeRefusal> => {
        await shared.workspace.WorkspaceManager.ready;
        return shared.workspace.WorkspaceLock.read(() => answerPractice(readParams<PracticeParams>(params, kinds), services));
    });
}

function answerPractice(asked: PracticeParams, services: HaversackServerServices): PracticeAnswer | PracticeRefusal {
    const plans = plansFor(asked, services);
    const params = { ...asked, class: classNamed(asked, plans, services) };
    const unknown = unknownClass(params.class, plans);
    if (unknown) return unknown;
    const { more } = params;
    if (more !== undefined && !(Number.isInteger(more) && more >= 1 && more <= mostItems)) return { refusal: `Further items are a whole number from 1 to ${mostItems}.` };
    const base = plans.current.programme;
    const adapted = params.class === undefined ? undefined : adaptedFor(base, { class: params.class }, adaptingOf(plans.cache));
    const programme = adapted?.programme ?? base;
    const meant = params.lesson === undefined ? lessonAtCursor(params, services) : undefined;
    const lesson = lessonAsTaught(meant?.name ?? params.lesson ?? '', base, adapted) ?? meant;
    if (!lesson) {
        const lessons = [...programme.lessons.values()].filter(one => practicesOf(one).length > 0).map(({ name, title }) => ({ name, title }));
        return lessons.length === 0 ? { refusal: 'No lesson here has practice items yet. Write a practice in a lesson, with a line such as: name numbers 11 to 99' }
            : { refusal: params.lesson === undefined ? 'Which lesson? Put the cursor into one.' : `There is no lesson '${params.lesson}'.`, lessons };
    }
    const practices = practicesOf(lesson).map(({ name, title }) => ({ name, title }));
    if (practices.length === 0) return { refusal: `No practice items can be made for “${lesson.title}”. Write a practice in it, with a line such as: name numbers 11 to 99` };
    if (params.practice !== undefined && !practices.some(({ name }) => name === params.practice)) return { refusal: `“${lesson.title}” has no practice '${params.practice}' with items.` };
    const sheet = planPracticeSheet(lesson, { practice: params.practice, more });
    return { lesson: lesson.name, title: lesson.title, practices, text: textOf(sheet, params, services) };
}

/** The lesson at the cursor; without one, the only lesson of the file. */
function lessonAtCursor({ uri, line }: PracticeParams, services: HaversackServerServices): LessonSheet | undefined {
    const lessons = sheetAt(uri, services)?.lessons ?? [];
    const there = line === undefined ? undefined : lessons.find(({ whole }) => whole.start.line <= line && line <= whole.end.line);
    return there ?? (lessons.length === 1 ? lessons[0] : undefined);
}

function textOf(sheet: PracticeSheetFigures, params: PracticeParams, services: HaversackServerServices): string {
    switch (params.format) {
        case 'md': return practiceSheetMarkdown(sheet, params.key);
        case 'text': return practiceSheetText(sheet, params.key);
        case 'json': return figuresJson('haversack-practice', { practice: sheet });
        default: return practiceSheetPage(sheet, { key: params.key, root: folderOf({ uri: sheet.lesson.place.uri }, services), ...printOptions(params) });
    }
}
