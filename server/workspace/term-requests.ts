import type { LangiumSharedServices } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { isDate } from '@haversack/language/checks/dates';
import { termMarkdown } from '../brief/term/markdown.js';
import { termPage } from '../brief/term/page.js';
import { termSections } from '../brief/term/sections.js';
import { termTitle } from '../brief/term/sentences.js';
import { termRequest, type BriefRefusal, type TermAnswer, type TermParams } from '../protocol.js';
import { classAt, declarationAt, folderOf, problemsIn, unknownClass, withoutKnown } from './asked-for.js';
import type { HaversackServerServices } from './services.js';

/** Answers the preview and the commands: the whole term of one class. */
export function addTermRequests(connection: Connection, shared: LangiumSharedServices, services: HaversackServerServices): void {
    connection.onRequest(termRequest, async (params: TermParams): Promise<TermAnswer | BriefRefusal> => {
        await shared.workspace.WorkspaceManager.ready;
        return shared.workspace.WorkspaceLock.read(() => answerTerm(params ?? {}, services));
    });
}

function answerTerm(params: TermParams, services: HaversackServerServices): TermAnswer | BriefRefusal {
    const { plans } = services;
    if (plans.current.programme.lessons.size === 0) return { refusal: 'There is no lesson in this folder yet, so there is no term to show.' };
    const unknown = unknownClass(params.class, services);
    if (unknown) return unknown;
    const className = params.class ?? classAt(params, services);
    const today = params.today ?? services.today.date;
    if (!isDate(today)) return { refusal: `'${String(today)}' is no date: write it as year-month-day.` };
    const term = plans.term(className, today);
    const whole = params.format === 'html' ? termPage(term, { root: folderOf(params, services) }) : params.format === 'md' ? termMarkdown(term) : undefined;
    return {
        title: termTitle(term),
        sections: whole === undefined ? withoutKnown(termSections(term, { preview: true }), params.known) : [],
        text: whole,
        class: term.schedule.class,
        classes: plans.classes(),
        problems: problemsIn(params.uri, services),
        around: declarationAt(params, services)
    };
}
