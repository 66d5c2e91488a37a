import * as vscode from 'vscode';
import { programmeFile } from '../programme-file.js';
import { startingSoon } from './starting-soon.js';

const files = ['inventory.kit', 'programme.course', 'lessons/stones-1.lesson'];
const firstLesson = 'lessons/stones-1.lesson';
const openNext = 'haversack.openNext';

/** Writes a small working programme into a folder that has none yet, and opens its lesson. */
export async function startNewProgramme(context: vscode.ExtensionContext, given?: vscode.Uri): Promise<void> {
    const folder = given ?? await chooseFolder();
    if (!folder) return;
    const there = await programmeFilesIn(folder);
    if (there.length > 0) {
        return void vscode.window.showWarningMessage(vscode.l10n.t('{0} is there already, so nothing was written. Choose an empty folder for a new programme.', there.join(', ')));
    }
    for (const name of files) {
        const template = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(context.extensionUri, 'new-programme', name));
        const text = startingSoon(new TextDecoder().decode(template), new Date());
        await vscode.workspace.fs.writeFile(vscode.Uri.joinPath(folder, name), new TextEncoder().encode(text));
    }
    const lesson = vscode.Uri.joinPath(folder, firstLesson);
    if (vscode.workspace.getWorkspaceFolder(folder)) return void await vscode.window.showTextDocument(lesson);
    // The window starts anew with the folder; the lesson is opened then.
    await context.globalState.update(openNext, lesson.toString());
    await vscode.commands.executeCommand('vscode.openFolder', folder);
}

/** Opens the lesson of a programme that was started before the window had its folder. */
export async function openFirstLesson(context: vscode.ExtensionContext): Promise<void> {
    const address = context.globalState.get<string>(openNext);
    const lesson = address === undefined ? undefined : vscode.Uri.parse(address);
    if (!lesson || !vscode.workspace.getWorkspaceFolder(lesson)) return;
    await context.globalState.update(openNext, undefined);
    await vscode.window.showTextDocument(lesson);
}

async function chooseFolder(): Promise<vscode.Uri | undefined> {
    const folders = vscode.workspace.workspaceFolders ?? [];
    if (folders.length === 1 && (await programmeFilesIn(folders[0]!.uri)).length === 0) return folders[0]!.uri;
    const chosen = await vscode.window.showOpenDialog({
        title: vscode.l10n.t('Folder for the new programme'), openLabel: vscode.l10n.t('Start here'),
        canSelectFiles: false, canSelectFolders: true, canSelectMany: false, defaultUri: folders[0]?.uri
    });
    return chosen?.[0];
}

/** What a new programme would clash with: our files at the top of the folder and in its lessons folder. */
async function programmeFilesIn(folder: vscode.Uri): Promise<string[]> {
    const found = await Promise.all(['', 'lessons'].map(async name => {
        try {
            return await vscode.workspace.fs.readDirectory(vscode.Uri.joinPath(folder, name));
        } catch {
            return [];
        }
    }));
    return found.flat().map(([name]) => name).filter(name => programmeFile.test(name));
}
