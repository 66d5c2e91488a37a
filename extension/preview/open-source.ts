import * as vscode from 'vscode';
import { languageId } from '../client-options.js';
import { programmeFile } from '../programme-file.js';
import type { SourceLine } from './messages.js';

/** Shows a line of a programme's file beside the brief. Anything else that a page might name is not opened. */
export async function openSource({ uri: address, line }: SourceLine, briefColumn: vscode.ViewColumn | undefined): Promise<void> {
    const uri = vscode.Uri.parse(address);
    const opened = vscode.workspace.textDocuments.find(document => document.uri.toString() === uri.toString() && document.languageId === languageId);
    const ours = programmeFile.test(uri.path) && vscode.workspace.getWorkspaceFolder(uri) !== undefined;
    if (!opened && !ours) return;
    try {
        const document = opened ?? await vscode.workspace.openTextDocument(uri);
        const at = document.lineAt(Math.min(line, document.lineCount - 1));
        const start = new vscode.Position(at.lineNumber, at.firstNonWhitespaceCharacterIndex);
        await vscode.window.showTextDocument(document, { viewColumn: columnFor(document, briefColumn), selection: new vscode.Range(start, start) });
    } catch {
        vscode.window.setStatusBarMessage(vscode.l10n.t('{0} is not there any more.', vscode.workspace.asRelativePath(uri)), 5000);
    }
}

/** Where the file is shown already, else where another of ours is, else beside the brief. */
function columnFor(document: vscode.TextDocument, briefColumn: vscode.ViewColumn | undefined): vscode.ViewColumn {
    const shown = vscode.window.visibleTextEditors.filter(editor => editor.viewColumn !== undefined);
    const editor = shown.find(one => one.document === document) ?? shown.find(one => one.document.languageId === languageId);
    return editor?.viewColumn ?? (briefColumn === vscode.ViewColumn.One ? vscode.ViewColumn.Beside : vscode.ViewColumn.One);
}
