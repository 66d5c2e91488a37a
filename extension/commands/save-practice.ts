import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { practiceRequest, type PracticeAnswer, type PracticeParams, type PracticeRefusal } from '@haversack/server/protocol/practice';
import { chosenPaper } from '../paper.js';

/** How many further items are offered. */
export const furtherItems = 20;

/** The lesson, the class that is taught it, and a file of its programme, for which the preview has the practice saved. A menu may hand on anything in this place. */
export function chosenPractice(of: unknown): PracticeParams | undefined {
    const { lesson, class: className, uri } = (typeof of === 'object' && of !== null ? of : {}) as Record<string, unknown>;
    const textOf = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);
    return typeof lesson === 'string' ? { lesson, class: textOf(className), uri: textOf(uri) } : undefined;
}

/** Writes the practice of a lesson that is chosen, of the lesson at the cursor, or of a file as a sheet to print, and its key as a file beside it. */
export async function savePractice(client: BaseLanguageClient, file?: vscode.Uri, chosen?: PracticeParams): Promise<void> {
    const ask = (params: PracticeParams): Promise<PracticeAnswer | PracticeRefusal> => client.sendRequest(practiceRequest, params);
    const which = await lessonToPractise(client, file, chosen);
    if (!which) return;
    const items = await vscode.window.showQuickPick([
        { label: vscode.l10n.t('The items of the brief'), more: undefined },
        { label: vscode.l10n.t('{0} further items', furtherItems), more: furtherItems }
    ], { title: vscode.l10n.t('Practice sheet') });
    if (!items) return;
    const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
    const target = await vscode.window.showSaveDialog({
        title: vscode.l10n.t('Save the practice sheet; its key is saved beside it'), defaultUri: folder && vscode.Uri.joinPath(folder, `${which.lesson}-practice.html`),
        filters: { [vscode.l10n.t('Web page')]: ['html'], [vscode.l10n.t('Markdown')]: ['md'] }
    });
    if (!target) return;
    const format = target.path.toLowerCase().endsWith('.md') ? 'md' : 'html';
    const keyFile = besides(target);
    if (await isThere(keyFile) && !await mayReplace(keyFile)) return;
    const texts: string[] = [];
    for (const key of [false, true]) {
        const answer = await ask({ ...which, more: items.more, format, key, paper: chosenPaper() });
        if ('refusal' in answer) return void vscode.window.showInformationMessage(answer.refusal);
        texts.push(answer.text);
    }
    const [sheet, key] = texts as [string, string];
    if (await write(target, sheet) && await writeKey(keyFile, key)) vscode.window.setStatusBarMessage(vscode.l10n.t('The practice sheet and its key are saved.'), 5000);
}

/** A browser lets that file of a device be written that somebody chose, and none beside it: there the key is given a place of its own. */
async function writeKey(file: vscode.Uri, text: string): Promise<boolean> {
    if (vscode.env.uiKind !== vscode.UIKind.Web || file.scheme !== 'file') return write(file, text);
    try {
        await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(text));
        return true;
    } catch {
        const button = vscode.l10n.t('Save its key');
        const wanted = await vscode.window.showInformationMessage(vscode.l10n.t('The practice sheet is saved. Your browser lets nothing be written beside it, so choose a place for its key.'), button);
        const target = wanted === button ? await vscode.window.showSaveDialog({ title: button, defaultUri: file }) : undefined;
        return target !== undefined && write(target, text);
    }
}

/** The lesson that is chosen, that at the cursor or of a file, or one that is asked for; with a file that says which programme is meant. */
export async function lessonToPractise(client: BaseLanguageClient, file?: vscode.Uri, chosen?: PracticeParams): Promise<Pick<PracticeParams, 'uri' | 'class'> & { lesson: string } | undefined> {
    const where = chosen ?? whereOf(client, file);
    const found = await client.sendRequest<PracticeAnswer | PracticeRefusal>(practiceRequest, where);
    const lesson = 'refusal' in found ? await chooseLesson(found) : found.lesson;
    return lesson === undefined ? undefined : { uri: where.uri, class: where.class, lesson };
}

function whereOf(client: BaseLanguageClient, file: vscode.Uri | undefined): PracticeParams {
    const editor = vscode.window.activeTextEditor;
    const here = editor && (file === undefined || file.toString() === editor.document.uri.toString()) ? editor : undefined;
    const uri = here?.document.uri ?? file;
    return { uri: uri && client.code2ProtocolConverter.asUri(uri), line: here?.selection.active.line };
}

/** Where no lesson stands at the cursor, the lessons that have practice are offered. */
async function chooseLesson({ refusal, lessons }: PracticeRefusal): Promise<string | undefined> {
    if (!lessons) return void vscode.window.showInformationMessage(refusal);
    const chosen = await vscode.window.showQuickPick(lessons.map(({ name, title }) => ({ label: title, description: name, name })), { title: vscode.l10n.t('Practice of which lesson?') });
    return chosen?.name;
}

/** "weigh-1-practice.html" has its key in "weigh-1-practice-key.html". */
function besides(sheet: vscode.Uri): vscode.Uri {
    const dot = sheet.path.lastIndexOf('.');
    const hasEnding = dot > sheet.path.lastIndexOf('/');
    return sheet.with({ path: hasEnding ? `${sheet.path.slice(0, dot)}-key${sheet.path.slice(dot)}` : `${sheet.path}-key` });
}

async function isThere(file: vscode.Uri): Promise<boolean> {
    try {
        await vscode.workspace.fs.stat(file);
        return true;
    } catch {
        return false;
    }
}

async function mayReplace(file: vscode.Uri): Promise<boolean> {
    const replace = vscode.l10n.t('Replace');
    return await vscode.window.showWarningMessage(vscode.l10n.t('{0} exists already. The key of the practice sheet would replace it.', file.fsPath), { modal: true }, replace) === replace;
}

async function write(file: vscode.Uri, text: string): Promise<boolean> {
    try {
        await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(text));
        return true;
    } catch (error) {
        void vscode.window.showErrorMessage(vscode.l10n.t('{0} could not be written: {1}', file.fsPath, error instanceof Error ? error.message : String(error)));
        return false;
    }
}
