import * as vscode from 'vscode';
import { programmeFile } from './programme-file.js';
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

/** Sees when a programme is there, a lesson was changed, a problem was mended; what was seen once is not looked for again. */
export function followFirstSteps(): vscode.Disposable {
    void vscode.workspace.findFiles('**/*.{lesson,kit,course}', undefined, 1).then(({ length }) => { if (length > 0) done('started'); });
    const opened = vscode.workspace.onDidOpenTextDocument(({ languageId: id }) => {
        if (id !== languageId) return;
        done('started');
        opened.dispose();
    });
    const changed = vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (contentChanges.length === 0 || !document.uri.path.endsWith('.lesson')) return;
        done('written');
        changed.dispose();
    });
    return vscode.Disposable.from(opened, changed, followProblems());
}

/** Of the files that are told of alone: while somebody types, the others cost nothing. */
function followProblems(): vscode.Disposable {
    const inFiles = new Map<string, number>();
    let now = 0;
    let standing = 0;
    let rest: ReturnType<typeof setTimeout> | undefined;
    const told = vscode.languages.onDidChangeDiagnostics(({ uris }) => {
        const ours = uris.filter(({ path }) => programmeFile.test(path));
        if (ours.length === 0) return;
        for (const uri of ours) {
            const here = problemsIn(uri);
            now += here - (inFiles.get(uri.toString()) ?? 0);
            inFiles.set(uri.toString(), here);
        }
        clearTimeout(rest);
        if (now < standing) {
            done('mended');
            return told.dispose();
        }
        rest = setTimeout(() => { standing = now; }, restMilliseconds);
    });
    return vscode.Disposable.from(told, new vscode.Disposable(() => clearTimeout(rest)));
}

function problemsIn(file: vscode.Uri): number {
    const { Error, Warning } = vscode.DiagnosticSeverity;
    return vscode.languages.getDiagnostics(file).filter(({ severity }) => severity === Error || severity === Warning).length;
}
