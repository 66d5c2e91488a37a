import { DocumentState } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { briefMarkdown } from '../brief/markdown.js';
import { briefPage } from '../brief/page.js';
import { proseOf } from '../brief/prose-in-words.js';
import { briefSections } from '../brief/sections.js';
import { notesMarkdown } from '../brief/speaking/markdown.js';
import { briefJson } from '../exports/brief-json.js';
import type { WeekBrief } from '../planning/figures.js';
import { nothingTaught } from '../planning/nothing-taught.js';
import { speakingNotes } from '../planning/speaking.js';
import { briefRequest, changedNotification, type BriefAnswer, type BriefParams, type BriefRefusal } from '../protocol/pages.js';
import { lessonAt } from '../editing/candidates.js';
import { classAt, classNamed, declarationAt, folderOf, plansFor, problemsIn, sheetAt, unknownClass, withoutKnown } from './asked-for.js';
import { printKinds, printOptions } from './print-params.js';
import { isNumber, isText, isTexts, readParams } from './read-params.js';
import type { HaversackServerServices } from './services.js';

const kinds = { uri: isText, line: isNumber, class: isText, week: isNumber, otherwise: isNumber, known: isTexts, format: isText, rate: isNumber, ...printKinds };

/** Answers the preview: which week, which class, and only those sections that it does not show yet. */
export function addBriefRequests(connection: Connection, shared: LangiumSharedServices, services: HaversackServerServices): void {
    connection.onRequest(briefRequest, async (params: unknown): Promise<BriefAnswer | BriefRefusal> => {
        await shared.workspace.WorkspaceManager.ready;
        return shared.workspace.WorkspaceLock.read(() => answerBrief(readParams<BriefParams>(params, kinds), services));
    });
    const tell = (): void => { void connection.sendNotification(changedNotification); };
    shared.workspace.DocumentBuilder.onBuildPhase(DocumentState.Validated, tell);
    // Where a file goes and nothing is built anew, no phase is told of.
    shared.workspace.DocumentBuilder.onUpdate((_, deleted) => { if (deleted.length > 0) tell(); });
}

function answerBrief(params: BriefParams, services: HaversackServerServices): BriefAnswer | BriefRefusal {
    const plans = plansFor(params, services);
    const named = classNamed(params, plans, services);
    const { programme } = plans.current;
    if (programme.lessons.size === 0) {
        return { refusal: 'There is no lesson in this folder yet. Write one in a file that ends in .lesson, or start a new programme from the command palette.' };
    }
    const classes = plans.classes();
    const unknown = unknownClass(named, plans);
    if (unknown) return unknown;
    const className = named ?? classAt(params, services);
    const weeks = plans.schedule(className).weeks.length;
    const otherwise = params.otherwise !== undefined && params.otherwise <= weeks ? params.otherwise : 1;
    const week = params.week ?? weekAt(params, className, services) ?? otherwise;
    if (!Number.isInteger(week) || week < 1 || week > weeks) {
        return { refusal: weeks === 0 ? `${nothingTaught(programme, { class: className })}, so there is no week to show.` : `There is no week ${week}: the last one is week ${weeks}.` };
    }
    const brief = plans.brief(week, className);
    const whole = wholeFile(brief, params, services);
    return {
        title: `${brief.course.title}, week ${week}`,
        sections: whole === undefined
            ? withoutKnown(briefSections(brief, { preview: true }), params.known)
            : [],
        text: whole,
        week,
        weeks,
        class: brief.class?.name,
        classes,
        problems: problemsIn(params.uri, services),
        around: declarationAt(params, services)
    };
}

/** The brief as a file of its own; nothing where sections are asked for. */
function wholeFile(brief: WeekBrief, params: BriefParams, services: HaversackServerServices): string | undefined {
    switch (params.format) {
        case 'html': return briefPage(brief, { root: folderOf(params, services), ...printOptions(params) });
        case 'md': return briefMarkdown(brief);
        case 'json': return briefJson(brief);
        case 'notes': return notesMarkdown(speakingNotes(brief, { rate: params.rate, inWords: proseOf(brief) }));
        default: return undefined;
    }
}

/** The week of the lesson at the cursor, or of the first lesson of the file. */
function weekAt({ uri, line }: BriefParams, className: string | undefined, services: HaversackServerServices): number | undefined {
    const sheet = sheetAt(uri, services);
    if (!sheet) return undefined;
    const lesson = lessonAt(sheet.lessons, line ?? 0) ?? sheet.lessons[0];
    return lesson && services.plans.of(lesson.uri).weekTelling(lesson.name, className);
}
