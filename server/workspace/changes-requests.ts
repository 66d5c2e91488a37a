import type { LangiumSharedServices } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { changesMarkdown } from '../brief/changes/markdown.js';
import { changesPage } from '../brief/changes/page.js';
import { changesSections } from '../brief/changes/sections.js';
import { changesTitle } from '../brief/changes/sentences.js';
import { figuresJson } from '../exports/json.js';
import type { ChangesFigures } from '../planning/ledger-figures.js';
import { changesRequest, type BriefRefusal, type ChangesAnswer, type ChangesParams } from '../protocol/pages.js';
import { classAt, classNamed, declarationAt, folderOf, plansFor, problemsIn, unknownClass, withoutKnown } from './asked-for.js';
import { printKinds, printOptions } from './print-params.js';
import { isNumber, isText, isTexts, readParams } from './read-params.js';
import type { HaversackServerServices } from './services.js';

const kinds = { uri: isText, line: isNumber, class: isText, otherwise: isText, known: isTexts, format: isText, ...printKinds };

/** Answers the preview and the commands: what its adaptations change for one class. */
export function addChangesRequests(connection: Connection, shared: LangiumSharedServices, services: HaversackServerServices): void {
    connection.onRequest(changesRequest, async (params: unknown): Promise<ChangesAnswer | BriefRefusal> => {
        await shared.workspace.WorkspaceManager.ready;
        return shared.workspace.WorkspaceLock.read(() => answerChanges(readParams<ChangesParams>(params, kinds), services));
    });
}

function answerChanges(params: ChangesParams, services: HaversackServerServices): ChangesAnswer | BriefRefusal {
    const plans = plansFor(params, services);
    const named = classNamed(params, plans, services);
    if (plans.current.programme.lessons.size === 0) return { refusal: 'There is no lesson in this folder yet, so there is nothing to change.' };
    const className = named ?? classAt(params, services) ?? classNamed({ ...params, class: params.otherwise }, plans, services);
    const unknown = unknownClass(className, plans);
    if (unknown) return unknown;
    const changes = plans.changes(className);
    const whole = wholeFile(params, changes, services);
    return {
        title: changesTitle(changes),
        sections: whole === undefined ? withoutKnown(changesSections(changes, { preview: true }), params.known) : [],
        text: whole,
        adapted: changes.ledger !== undefined,
        class: changes.class?.name,
        classes: plans.classes(),
        problems: problemsIn(params.uri, services),
        around: declarationAt(params, services)
    };
}

/** The changes as a file of their own; undefined where sections are asked for. */
function wholeFile(params: ChangesParams, changes: ChangesFigures, services: HaversackServerServices): string | undefined {
    switch (params.format) {
        case 'html': return changesPage(changes, { root: folderOf(params, services), ...printOptions(params) });
        case 'md': return changesMarkdown(changes);
        case 'json': return figuresJson('haversack-changes', { changes });
        default: return undefined;
    }
}
