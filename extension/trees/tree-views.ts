import * as vscode from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import { languageId } from '../client-options.js';
import { programmeFile } from '../programme-file.js';
import type { BriefPanel } from '../preview/brief-panel.js';
import { WeekStatus } from '../status-bar.js';
import { describeClass } from './describe-class.js';
import { ProgrammeTree } from './programme-tree.js';
import { Shown } from './shown.js';
import { sourceColumn } from './source-place.js';
import { Ticks } from './ticks.js';
import { WeekTree } from './week-tree.js';

/** The server is started again when it ends unasked: only what lasts longer, in milliseconds, is a stop. */
const restMilliseconds = 2000;

/** The trees beside the text and the week in the status bar, with their commands. `changed` fires when the programme has changed. */
export function showTrees(context: vscode.ExtensionContext, client: BaseLanguageClient, brief: BriefPanel, changed: vscode.Event<void>): vscode.Disposable {
    const shown = new Shown(brief);
    const programme = new ProgrammeTree(client, shown);
    const week = new WeekTree(client, shown, new Ticks(context.workspaceState));
    const status = new WeekStatus(client, shown);
    const all = [programme, week, status];
    const look = (): void => all.forEach(one => one.look());
    const commands: Record<string, (...given: unknown[]) => unknown> = {
        'haversack.lesson.moveUp': about => programme.step('up', about),
        'haversack.lesson.moveDown': about => programme.step('down', about),
        'haversack.lesson.openBrief': about => openBriefOf(programme, brief, client, about),
        'haversack.lesson.showInCourse': about => showInCourse(programme, about),
        'haversack.class.describe': () => describeClass(client, shown),
        'haversack.class.show': about => showClass(programme, shown, week, about),
        'haversack.week.previous': () => week.step(-1),
        'haversack.week.next': () => week.step(1),
        'haversack.week.now': () => week.showNow(),
        'haversack.week.chooseClass': () => week.chooseClass(),
        'haversack.week.tick': about => week.toggle(about),
        'haversack.week.untickAll': () => week.untickAll()
    };
    return vscode.Disposable.from(
        shown, ...all, followServer(client, look, () => all.forEach(one => one.clear())), changed(look),
        vscode.languages.onDidChangeDiagnostics(({ uris }) => { if (uris.some(({ path }) => programmeFile.test(path))) programme.look(); }),
        vscode.window.onDidChangeActiveTextEditor(editor => { if (editor?.document.languageId === languageId) week.look(); }),
        ...Object.entries(commands).map(([name, run]) => vscode.commands.registerCommand(name, run))
    );
}

/** Looks when the server runs, and tells the welcome views when it has stopped for good. */
function followServer(client: BaseLanguageClient, look: () => void, clear: () => void): vscode.Disposable {
    let rest: ReturnType<typeof setTimeout> | undefined;
    const tell = (stopped: boolean): void => void vscode.commands.executeCommand('setContext', 'haversack.stopped', stopped);
    const following = client.onDidChangeState(({ newState }) => {
        clearTimeout(rest);
        if (newState === State.Stopped) {
            rest = setTimeout(() => {
                tell(true);
                clear();
            }, restMilliseconds);
        } else if (newState === State.Running) {
            tell(false);
            look();
        }
    });
    return vscode.Disposable.from(following, new vscode.Disposable(() => clearTimeout(rest)));
}

async function openBriefOf(programme: ProgrammeTree, brief: BriefPanel, client: BaseLanguageClient, about: unknown): Promise<void> {
    const lesson = programme.lesson(about);
    if (!lesson?.at) return void brief.openWeek();
    const uri = vscode.Uri.parse(lesson.at.uri);
    const at = new vscode.Position(lesson.at.line, lesson.at.character);
    await vscode.window.showTextDocument(uri, { selection: new vscode.Range(at, at), preview: false, viewColumn: sourceColumn() });
    brief.openAtLesson({ uri: client.code2ProtocolConverter.asUri(uri), line: lesson.at.line });
}

async function showInCourse(programme: ProgrammeTree, about: unknown): Promise<void> {
    const line = programme.lesson(about)?.line;
    if (!line) return;
    const at = new vscode.Position(line.line, line.character);
    await vscode.window.showTextDocument(vscode.Uri.parse(line.uri), { selection: new vscode.Range(at, at), viewColumn: sourceColumn() });
}

/** The days and things of the class that a menu is about; without one, of a class to be chosen. */
async function showClass(programme: ProgrammeTree, shown: Shown, week: WeekTree, about: unknown): Promise<void> {
    const row = programme.rowOf(about);
    if (row?.is.kind === 'class') shown.chooseClass(row.is.programme, row.is.group.name);
    else await week.chooseClass();
}
