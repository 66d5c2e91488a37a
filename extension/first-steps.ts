import * as vscode from 'vscode';
import { languageId } from './client-options.js';

/** What stands shorter than this comes and goes while somebody types, in milliseconds. */
const restMilliseconds = 1500;

/** Opens the walkthrough. */
export function showFirstSteps(context: vscode.ExtensionContext): Thenable<unknown> {
    return vscode.commands.executeCommand('workbench.action.openWalkthrough', `${context.extension.id}#firstSteps`, false);
}

/** Tells the walkthrough that a step is done. */
export function done(step: 'started' | 'written' | 'mended' | 'gathered' | 'printed'): void {
    void vscode.commands.executeCommand('setContext', `haversack.firstSteps.${step}`, true);
}

/** Sees when a programme is there, a lesson was changed, a problem was mended. */
export function followFirstSteps(): vscode.Disposable {
    void vscode.workspace.findFiles('**/*.{lesson,kit,course}', undefined, 1).then(({ length }) => { if (length > 0) done('started'); });
    let standing = 0;
    let rest: ReturnType<typeof setTimeout> | undefined;
    return vscode.Disposable.from(
        vscode.workspace.onDidOpenTextDocument(({ languageId: id }) => { if (id === languageId) done('started'); }),
        vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
            if (contentChanges.length > 0 && document.uri.path.endsWith('.lesson')) done('written');
        }),
        vscode.languages.onDidChangeDiagnostics(() => {
            const now = problems();
            clearTimeout(rest);
            if (now < standing) done('mended');
            rest = setTimeout(() => { standing = now; }, restMilliseconds);
        }),
        new vscode.Disposable(() => clearTimeout(rest))
    );
}

function problems(): number {
    const serious = vscode.languages.getDiagnostics().filter(([{ path }]) => /\.(?:lesson|kit|course)$/.test(path)).flatMap(([, found]) => found);
    return serious.filter(({ severity }) => severity === vscode.DiagnosticSeverity.Error || severity === vscode.DiagnosticSeverity.Warning).length;
}
