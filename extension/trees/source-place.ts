import * as vscode from 'vscode';
import type { SourcePlace } from '@haversack/server/protocol/programme';
import { viewType } from '../preview/brief-panel.js';

/** Where a source is opened from a tree: in the group in use; while the brief is open in the first group without it, so that it is never covered. */
export function sourceColumn(): vscode.ViewColumn {
    const { all } = vscode.window.tabGroups;
    const hasBrief = ({ tabs }: vscode.TabGroup): boolean => tabs.some(({ input }) => input instanceof vscode.TabInputWebview && input.viewType.endsWith(viewType));
    if (!all.some(hasBrief)) return vscode.ViewColumn.Active;
    return all.find(group => !hasBrief(group))?.viewColumn ?? vscode.ViewColumn.Beside;
}

/** What a click does: as a click in the explorer it keeps the keyboard in the tree, and Enter takes it to the text. */
export function openCommand({ uri, line, character }: SourcePlace): vscode.Command {
    const at = new vscode.Position(line, character);
    return { command: 'vscode.open', title: vscode.l10n.t('Go to the source'), arguments: [vscode.Uri.parse(uri), { selection: new vscode.Range(at, at), viewColumn: sourceColumn() } satisfies vscode.TextDocumentShowOptions] };
}

/** Shows a line and leaves the keyboard where it is. */
export async function reveal(document: vscode.TextDocument, line: number): Promise<void> {
    const { lineNumber, firstNonWhitespaceCharacterIndex } = document.lineAt(Math.min(line, document.lineCount - 1));
    const at = new vscode.Position(lineNumber, firstNonWhitespaceCharacterIndex);
    await vscode.window.showTextDocument(document, { viewColumn: sourceColumn(), selection: new vscode.Range(at, at), preserveFocus: true, preview: false });
}
