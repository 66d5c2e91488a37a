import * as vscode from 'vscode';
import { importLimit } from '@haversack/server/protocol/imports';
import { base64 } from '../base64.js';

/** Lets somebody choose a spreadsheet. @returns what it holds, in base64; nothing where none was chosen, or where it cannot be read, which is told */
export async function chooseSpreadsheet(): Promise<string | undefined> {
    const from = await chooseWhere();
    if (!from) return undefined;
    const [file] = await vscode.window.showOpenDialog({
        title: vscode.l10n.t('Spreadsheet with the inventory'), openLabel: vscode.l10n.t('Show what it would change'), canSelectMany: false, defaultUri: from.uri,
        filters: { [vscode.l10n.t('Spreadsheets')]: ['xlsx', 'csv', 'tsv', 'txt'] }
    }) ?? [];
    if (!file) return undefined;
    try {
        const { size } = await vscode.workspace.fs.stat(file);
        if (size > importLimit) {
            void vscode.window.showErrorMessage(vscode.l10n.t('The spreadsheet has {0} MB, and {1} MB is the most that is read. Copy the inventory alone into a new spreadsheet, without pictures, and import that.', Math.ceil(size / 1024 / 1024), importLimit / 1024 / 1024));
            return undefined;
        }
        return base64(await vscode.workspace.fs.readFile(file));
    } catch (error) {
        void vscode.window.showErrorMessage(vscode.l10n.t('The spreadsheet could not be read: {0}', error instanceof Error ? error.message : String(error)));
        return undefined;
    }
}

/**
 * A dialog shows files of one kind of place alone. Of a folder that lies on no disk that is this folder, and a spreadsheet mostly lies on the
 * person's device: so they are asked. @returns where the dialog begins, nothing of it where the editor knows best; nothing at all where nothing was chosen
 */
async function chooseWhere(): Promise<{ uri?: vscode.Uri } | undefined> {
    const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
    if (!folder || folder.scheme === 'file' || vscode.env.uiKind !== vscode.UIKind.Web) return {};
    // Not every browser lets a page read the files that somebody chooses; the editor knows of none there.
    const readsDevice = vscode.workspace.fs.isWritableFileSystem('file') !== undefined;
    return vscode.window.showQuickPick([
        ...(readsDevice ? [{ label: vscode.l10n.t('On this device'), detail: vscode.l10n.t('Your browser asks which file.'), uri: vscode.Uri.file('/') }] : []),
        {
            label: vscode.l10n.t('In the folder that is open'), uri: folder,
            detail: readsDevice ? vscode.l10n.t('What you drag into the explorer is there, too.') : vscode.l10n.t('This browser reads no other files. Drag the spreadsheet into the explorer first.')
        }
    ], { title: vscode.l10n.t('Where is the spreadsheet?'), ignoreFocusOut: true });
}
