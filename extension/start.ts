import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { changedNotification, trustedNotification } from '@haversack/server/protocol/pages';
import { followSchemes, Restart } from './restart.js';
import { showStatus } from './status.js';
import { chooseClass } from './commands/choose-class.js';
import { importInventory } from './commands/import-inventory.js';
import { ImportPreviews } from './commands/import-previews.js';
import { openFirstLesson, startNewProgramme } from './commands/new-programme.js';
import { followFirstSteps, showFirstSteps } from './first-steps.js';
import { printPage } from './commands/print-page.js';
import { printPractice } from './commands/print-practice.js';
import { PrintedPages } from './commands/printed-pages.js';
import { saveBrief, saveChanges, saveNotes, saveTerm } from './commands/save-brief.js';
import { chosenPractice, savePractice } from './commands/save-practice.js';
import { BriefPanel, viewType } from './preview/brief-panel.js';
import type { SourceLine } from './preview/messages.js';
import { showTrees } from './trees/tree-views.js';

/** Everything of the extension but how its server runs: as a process, or in a worker of the browser. */
export function startExtension(context: vscode.ExtensionContext, running: BaseLanguageClient): void {
    // The client passes a notification to one listener alone.
    const changed = new vscode.EventEmitter<void>();
    const brief = new BriefPanel(context, running, changed.event);
    const previews = new ImportPreviews();
    const pages = new PrintedPages(context, (name, html) => brief.download(name, html));
    const restart = new Restart(running);
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
        'haversack.brief.print': (uri?: vscode.Uri) => printPage(brief, pages, uri),
        'haversack.brief.focus': () => brief.goBetween(),
        'haversack.practice.print': (uri?: vscode.Uri) => printPractice(running, pages, uri),
        'haversack.firstSteps': () => showFirstSteps(context),
        'haversack.importInventory': () => importInventory(running, previews),
        'haversack.newProgramme': (folder?: vscode.Uri) => startNewProgramme(context, folder),
        'haversack.restart': () => restart.now()
    };
    context.subscriptions.push(
        brief,
        previews,
        followFirstSteps(),
        showStatus(running),
        changed,
        running.onNotification(changedNotification, () => changed.fire()),
        showTrees(context, running, brief, changed.event),
        followSchemes(running, restart),
        vscode.workspace.onDidGrantWorkspaceTrust(() => running.sendNotification(trustedNotification)),
        vscode.window.registerWebviewPanelSerializer(viewType, brief),
        ...Object.entries(commands).map(([name, run]) => vscode.commands.registerCommand(name, run))
    );
    // Activation waits for nothing: requests wait for the server by themselves, and of a server that does not start the client and the status tell.
    running.start().catch(() => undefined);
    void openFirstLesson(context);
    void pages.removeOld();
}
