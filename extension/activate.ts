import * as vscode from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import { trustedNotification } from '@haversack/server/protocol';
import { createClient, showStatus } from './client.js';
import { chooseClass } from './commands/choose-class.js';
import { importInventory } from './commands/import-inventory.js';
import { ImportPreviews } from './commands/import-previews.js';
import { openFirstLesson, startNewProgramme } from './commands/new-programme.js';
import { saveBrief, saveChanges, saveNotes, saveTerm } from './commands/save-brief.js';
import { chosenPractice, savePractice } from './commands/save-practice.js';
import { BriefPanel, viewType } from './preview/brief-panel.js';
import type { SourceLine } from './preview/messages.js';

let client: LanguageClient | undefined;

export async function activate(context: vscode.ExtensionContext): Promise<void> {
    const running = createClient(context);
    client = running;
    const brief = new BriefPanel(context, running);
    const previews = new ImportPreviews();
    const commands: Record<string, (...given: never[]) => unknown> = {
        'haversack.brief.open': (uri?: vscode.Uri) => brief.openWeek(uri),
        'haversack.brief.openLesson': (at?: SourceLine) => brief.openAtLesson(at),
        'haversack.brief.chooseClass': () => chooseClass(brief),
        'haversack.brief.previousWeek': () => brief.step(-1),
        'haversack.brief.nextWeek': () => brief.step(1),
        'haversack.brief.stay': () => brief.toggleStay(),
        'haversack.brief.save': (uri?: vscode.Uri) => saveBrief(brief, uri),
        'haversack.notes.save': (uri?: vscode.Uri) => saveNotes(brief, uri),
        'haversack.term.open': (of?: { class?: string }) => brief.openTerm(typeof of?.class === 'string' ? of.class : undefined),
        'haversack.showChanges': (of?: { class?: string }) => brief.openChanges(typeof of?.class === 'string' ? of.class : undefined),
        'haversack.changes.save': (uri?: vscode.Uri) => saveChanges(brief, uri),
        'haversack.term.save': (uri?: vscode.Uri) => saveTerm(brief, uri),
        'haversack.practice.save': (uri?: vscode.Uri, of?: unknown) => savePractice(running, uri, chosenPractice(of)),
        'haversack.importInventory': () => importInventory(running, previews),
        'haversack.newProgramme': (folder?: vscode.Uri) => startNewProgramme(context, folder),
        'haversack.restart': () => running.restart()
    };
    context.subscriptions.push(
        brief,
        previews,
        showStatus(running),
        vscode.workspace.onDidGrantWorkspaceTrust(() => running.sendNotification(trustedNotification)),
        vscode.window.registerWebviewPanelSerializer(viewType, brief),
        ...Object.entries(commands).map(([name, run]) => vscode.commands.registerCommand(name, run))
    );
    await running.start();
    await openFirstLesson(context);
}

export async function deactivate(): Promise<void> {
    await client?.dispose();
}
