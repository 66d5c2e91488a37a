import * as vscode from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import { createClient, showStatus } from './client.js';
import { chooseClass } from './commands/choose-class.js';
import { openFirstLesson, startNewProgramme } from './commands/new-programme.js';
import { saveBrief } from './commands/save-brief.js';
import { BriefPanel, viewType } from './preview/brief-panel.js';

let client: LanguageClient | undefined;

export async function activate(context: vscode.ExtensionContext): Promise<void> {
    const running = createClient(context);
    client = running;
    const brief = new BriefPanel(context, running);
    const commands: Record<string, (...given: never[]) => unknown> = {
        'haversack.brief.open': (uri?: vscode.Uri) => brief.open(uri),
        'haversack.brief.openLesson': () => brief.openAtLesson(),
        'haversack.brief.chooseClass': () => chooseClass(brief),
        'haversack.brief.previousWeek': () => brief.step(-1),
        'haversack.brief.nextWeek': () => brief.step(1),
        'haversack.brief.stay': () => brief.toggleStay(),
        'haversack.brief.save': (uri?: vscode.Uri) => saveBrief(brief, uri),
        'haversack.newProgramme': (folder?: vscode.Uri) => startNewProgramme(context, folder),
        'haversack.restart': () => running.restart()
    };
    context.subscriptions.push(
        brief,
        showStatus(running),
        vscode.window.registerWebviewPanelSerializer(viewType, brief),
        ...Object.entries(commands).map(([name, run]) => vscode.commands.registerCommand(name, run))
    );
    await running.start();
    await openFirstLesson(context);
}

export async function deactivate(): Promise<void> {
    await client?.dispose();
}
