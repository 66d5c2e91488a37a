import { URI, type LangiumDocument } from 'langium';
import type { CodeActionProvider } from 'langium/lsp';
import { CodeActionKind, type CodeAction, type CodeActionParams, type Diagnostic, type TextEdit, type WorkspaceEdit } from 'vscode-languageserver-protocol';
import { textEditsFor } from '@haversack/language/checks/apply-edits';
import type { Edit, Fix, Problem } from '@haversack/language/checks/check';
import { toDiagnostic } from '@haversack/language/checks/document-validator';
import type { Range } from '@haversack/language/sheets/sheet';
import { adaptingOf } from '../planning/cache.js';
import type { HaversackServerServices } from '../workspace/services.js';
import { skipActions } from './skip-actions.js';

/** A menu of the mends of more problems than these helps nobody, and a selection may hold thousands. */
const mostProblems = 50;

/** A selection over a whole course is no wish to leave out all of it. */
const mostSkips = 20;

/** Offers the mends that the checks worked out, for every problem that the cursor or selection touches, and what a class may leave out. */
export class HaversackCodeActions implements CodeActionProvider {
    constructor(private readonly services: HaversackServerServices) {}

    getCodeActions(document: LangiumDocument, { range, context }: CodeActionParams): CodeAction[] {
        const isWanted = (offered: CodeActionKind): boolean => !context.only || context.only.some(kind => kind === '' || kind === offered || offered.startsWith(`${kind}.`));
        return [
            ...(isWanted(CodeActionKind.QuickFix) ? this.mends(document, range, context.diagnostics) : []),
            ...(isWanted(CodeActionKind.RefactorRewrite) ? this.skips(document, range) : [])
        ];
    }

    private mends(document: LangiumDocument, range: Range, shown: readonly Diagnostic[]): CodeAction[] {
        return eachOnce(this.problemsAt(document, range).slice(0, mostProblems).flatMap(problem => (problem.fixes ?? []).map(fix => this.action(problem, fix, shown))));
    }

    private skips(document: LangiumDocument, range: Range): CodeAction[] {
        const { sheets, plans } = this.services;
        return skipActions(sheets.sheetOf(document), range, sheets.viewOf(document.uri).programme, adaptingOf(plans.of(document.uri).cache)).slice(0, mostSkips)
            .map(({ title, edit }) => ({ title, kind: CodeActionKind.RefactorRewrite, edit: this.changesFor([edit]) }));
    }

    private problemsAt(document: LangiumDocument, range: Range): Problem[] {
        const { validation: { DocumentValidator }, programmes, terms } = this.services;
        const programme = programmes.of(document.uri);
        const there = (): Problem[] => DocumentValidator.lastProblems(document).filter(problem => touches(problem.at, range));
        const problems = there();
        if (!DocumentValidator.isBehind(programme) || !problems.some(({ fixes }) => fixes === undefined)) return problems;
        // Somebody asks how to mend a problem of the plan before typing has rested.
        DocumentValidator.lookAtPlan(programme, terms.at(programme).all());
        return there();
    }

    private action(problem: Problem, fix: Fix, shown: readonly Diagnostic[]): CodeAction {
        const own = toDiagnostic(problem);
        return {
            title: fix.title,
            kind: CodeActionKind.QuickFix,
            diagnostics: [shown.find(diagnostic => diagnostic.code === own.code && same(diagnostic.range, own.range)) ?? own],
            isPreferred: fix.preferred ?? false,
            edit: this.changesFor(fix.edits)
        };
    }

    private changesFor(edits: readonly Edit[]): WorkspaceEdit {
        const changes: Record<string, TextEdit[]> = {};
        for (const uri of new Set(edits.map(edit => edit.uri))) changes[uri] = textEditsFor(this.textOf(uri), edits.filter(edit => edit.uri === uri));
        return { changes };
    }

    private textOf(uri: string): string {
        return this.services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri))?.textDocument.getText() ?? '';
    }
}

/** One mend of several problems is offered once, with all of them. */
function eachOnce(actions: readonly CodeAction[]): CodeAction[] {
    const known = new Map<string, CodeAction>();
    for (const action of actions) {
        const key = JSON.stringify([action.title, action.edit]);
        const same = known.get(key);
        known.set(key, same ? { ...same, diagnostics: [...same.diagnostics ?? [], ...action.diagnostics ?? []], isPreferred: Boolean(same.isPreferred || action.isPreferred) } : action);
    }
    return [...known.values()];
}

const before = (a: Range['start'], b: Range['start']): boolean => a.line < b.line || (a.line === b.line && a.character < b.character);

function touches(a: Range, b: Range): boolean {
    return !before(a.end, b.start) && !before(b.end, a.start);
}

function same(a: Range, b: Range): boolean {
    return !before(a.start, b.start) && !before(b.start, a.start) && !before(a.end, b.end) && !before(b.end, a.end);
}
