import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { trustedNotification } from '@haversack/server/protocol/pages';
import { showStatus } from './status.js';
import { chooseClass } from './commands/choose-class.js';
import { importInventory } from './commands/import-inventory.js';
import { ImportPreviews } from './commands/import-previews.js';
import { openFirstLesson, startNewProgramme } from './commands/new-programme.js';
import { saveBrief, saveChanges, saveNotes, saveTerm } from './commands/save-brief.js';
import { chosenPractice, savePractice } from './commands/save-practice.js';
import { BriefPanel, viewType } from './preview/brief-panel.js';
import type { SourceLine } from './preview/messages.js';

/** Everything of the extension but how its server runs: as a process, or in a worker of the browser. */
export async function startExtension(context: vscode.ExtensionContext, running: BaseLanguageClient): Promise<void> {
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
        'haversack.restart': async () => {
            await running.stop();
            await running.start();
        }
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
