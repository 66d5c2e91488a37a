import { DocumentState, URI, UriUtils } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { briefJson } from '../brief/json.js';
import { briefMarkdown } from '../brief/markdown.js';
import { briefPage } from '../brief/page.js';
import { briefSections } from '../brief/sections.js';
import { briefRequest, changedNotification, type BriefAnswer, type BriefParams, type BriefRefusal } from '../protocol.js';
import { lessonAt } from '../editing/candidates.js';
import { declarationsOf } from '@haversack/language/checks/programme-view';
import type { Declared, FileSheet } from '@haversack/language/sheets/sheet';
import type { HaversackServerServices } from './services.js';

/** Answers the preview: which week, which class, and only those sections that it does not show yet. */
export function addBriefRequests(connection: Connection, shared: LangiumSharedServices, services: HaversackServerServices): void {
    connection.onRequest(briefRequest, async (params: BriefParams): Promise<BriefAnswer | BriefRefusal> => {
        await shared.workspace.WorkspaceManager.ready;
        return shared.workspace.WorkspaceLock.read(() => answerBrief(params ?? {}, services));
    });
    shared.workspace.DocumentBuilder.onBuildPhase(DocumentState.Validated, () => {
        void connection.sendNotification(changedNotification);
    });
}

function answerBrief(params: BriefParams, services: HaversackServerServices): BriefAnswer | BriefRefusal {
    const { plans } = services;
    const { programme } = plans.current;
    if (programme.lessons.size === 0) {
        return { refusal: 'There is no lesson in this folder yet. Write one in a file that ends in .lesson, or start a new programme from the command palette.' };
    }
    const classes = plans.classes();
    if (params.class !== undefined && !programme.classes.has(params.class)) {
        return { refusal: `There is no class '${params.class}' in this programme.${classes.length > 0 ? ` Its classes are ${classes.map(({ name }) => name).join(', ')}.` : ''}` };
    }
    const className = params.class ?? classAt(params, services);
    const weeks = plans.schedule(className).weeks.length;
    const otherwise = params.otherwise !== undefined && params.otherwise <= weeks ? params.otherwise : 1;
    const week = params.week ?? weekAt(params, className, services) ?? otherwise;
    if (!Number.isInteger(week) || week < 1 || week > weeks) {
        return { refusal: weeks === 0 ? 'No lesson of this programme stands in a course yet, so there is no week to show.' : `There is no week ${week}: the last one is week ${weeks}.` };
    }
    const brief = plans.brief(week, className);
    const whole = params.format === 'html' ? briefPage(brief, { root: folderOf(params, services) }) : params.format === 'md' ? briefMarkdown(brief) : params.format === 'json' ? briefJson(brief) : undefined;
    const known = params.known ?? {};
    return {
        title: `${brief.course.title}, week ${week}`,
        sections: whole === undefined
            ? briefSections(brief, { preview: true }).map(({ id, html, hash }) => (known[id] === hash ? { id, hash } : { id, hash, html }))
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

/** The folder that a whole page names its files from: the one around the file, or the first. */
function folderOf({ uri }: BriefParams, { shared }: HaversackServerServices): string | undefined {
    const folders = shared.workspace.WorkspaceManager.workspaceFolders ?? [];
    const around = uri === undefined ? undefined : folders.find(folder => UriUtils.contains(folder.uri, URI.parse(uri)));
    const folder = around ?? folders[0];
    return folder && URI.parse(folder.uri).toString();
}

function declarationAt({ uri, line }: BriefParams, services: HaversackServerServices): { from: number; to: number } | undefined {
    const sheet = sheetAt(uri, services);
    const found = sheet && line !== undefined ? declarationsOf(sheet).find(declared => covers(declared, line)) : undefined;
    return found && { from: found.whole.start.line, to: found.whole.end.line };
}

/** Errors in the file that is being written; the preview says that it shows the text as far as it can be read. */
function problemsIn(uri: string | undefined, services: HaversackServerServices): number {
    const document = uri === undefined ? undefined : services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
    return document?.diagnostics?.filter(({ severity }) => severity === 1).length ?? 0;
}

/** The week of the lesson at the cursor, or of the first lesson of the file. */
function weekAt({ uri, line }: BriefParams, className: string | undefined, services: HaversackServerServices): number | undefined {
    const sheet = sheetAt(uri, services);
    if (!sheet) return undefined;
    const lesson = lessonAt(sheet.lessons, line ?? 0) ?? sheet.lessons[0];
    return lesson && services.plans.weekOf(lesson.name, className);
}

/** The class at the cursor in a file that declares classes. */
function classAt({ uri, line }: BriefParams, services: HaversackServerServices): string | undefined {
    return line === undefined ? undefined : sheetAt(uri, services)?.classes.find(group => covers(group, line))?.name;
}

function sheetAt(uri: string | undefined, services: HaversackServerServices): FileSheet | undefined {
    return uri === undefined ? undefined : services.plans.current.programme.files.get(URI.parse(uri).toString());
}

function covers({ whole }: Declared, line: number): boolean {
    return whole.start.line <= line && line <= whole.end.line;
}
