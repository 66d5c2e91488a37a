import * as vscode from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import { briefRequest, changesRequest, termRequest, type BriefAnswer, type BriefParams, type BriefRefusal, type ChangesAnswer, type ChangesParams, type TermAnswer, type TermParams } from '@haversack/server/protocol/pages';
import type { PracticeParams } from '@haversack/server/protocol/practice';
import { languageId } from '../client-options.js';
import { chosenPaper } from '../paper.js';
import { KeptSections } from './kept-sections.js';
import { readPageMessage, readState, type BriefState, type DownloadMessage, type PageMessage, type PreviewView, type ShowMessage, type SourceLine } from './messages.js';
import { Newest } from './newest.js';
import { pageHtml } from './page-html.js';
import { openSource } from './open-source.js';
import { saveCommands } from './save-commands.js';

export const viewType = 'haversack.brief';

/** Of a page of the term or the changes, the week is absent. */
export interface ShownBrief {
    uri?: string;
    class?: string;
    week?: number;
}

/** The one brief beside the text: it follows what is written and where the cursor is, and leads back to the source. */
export class BriefPanel implements vscode.WebviewPanelSerializer, vscode.Disposable {
    private panel: vscode.WebviewPanel | undefined;
    private state: BriefState = {};
    private answer: BriefAnswer | TermAnswer | ChangesAnswer | undefined;
    /** What the last answer was about: another question may be under way. */
    private answered: PreviewView = 'week';
    /** The week shown last, to come back to. */
    private week: number | undefined;
    private says: string | undefined;
    private reveal: ShowMessage['reveal'];
    private readonly kept = new KeptSections();
    private readonly shownEmitter = new vscode.EventEmitter<ShownBrief>();
    /** Whose brief is on the page, whenever a new answer has come. */
    readonly onDidShow = this.shownEmitter.event;
    private readonly newest = new Newest(() => this.update(), () => this.show(vscode.l10n.t('The brief could not be made anew just now; this is the last one.')));
    private readonly subscriptions: vscode.Disposable[];
    /** Whether the page's script listens. */
    private listens = false;
    private downloads: DownloadMessage[] = [];
    private versionAtCursor = 0;
    private leading = false;
    /** The class of the adaptation at the cursor is wanted, whichever was shown before. */
    private classAtCursor = false;

    /** `changed` fires when the programme has changed. */
    constructor(private readonly context: vscode.ExtensionContext, private readonly client: BaseLanguageClient, changed: vscode.Event<void>) {
        this.subscriptions = [
            vscode.workspace.onDidChangeTextDocument(({ document }) => {
                if (document.languageId === languageId) this.newest.ask();
            }),
            vscode.window.onDidChangeActiveTextEditor(editor => this.moveTo(editor)),
            vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.moveWithin(textEditor)),
            vscode.workspace.onDidChangeConfiguration(change => {
                if (change.affectsConfiguration('haversack.preview')) this.newest.ask();
            }),
            changed(() => this.newest.ask()),
            this.shownEmitter,
            client.onDidChangeState(({ newState }) => {
                if (newState === State.Running) this.newest.ask();
            })
        ];
    }

    dispose(): void {
        this.panel?.dispose();
        vscode.Disposable.from(...this.subscriptions).dispose();
    }

    /** Opens the brief beside the text, for the week of the lesson at the cursor or of a file. */
    openWeek(file?: vscode.Uri): void {
        this.look('week');
        this.open(file);
    }

    private open(file?: vscode.Uri): void {
        const editor = vscode.window.activeTextEditor;
        if (file && file.toString() !== editor?.document.uri.toString()) this.state.cursor = { uri: this.client.code2ProtocolConverter.asUri(file), line: 0 };
        else if (editor) this.placeCursor(editor);
        if (this.panel) this.panel.reveal(undefined, true);
        else {
            const column = editor ? vscode.ViewColumn.Beside : vscode.ViewColumn.Active;
            this.adopt(vscode.window.createWebviewPanel(viewType, vscode.l10n.t('Brief'), { viewColumn: column, preserveFocus: true }, { enableFindWidget: true }));
        }
        this.newest.ask();
    }

    /** Opens it for the lesson at the cursor, or at a line of the active editor that then has the cursor. */
    openAtLesson(at?: SourceLine): void {
        this.look('week');
        const editor = vscode.window.activeTextEditor;
        if (at && editor && this.client.code2ProtocolConverter.asUri(editor.document.uri) === at.uri) editor.selection = new vscode.Selection(at.line, 0, at.line, 0);
        this.state.week = undefined;
        this.reveal = 'lesson';
        this.open();
    }

    deserializeWebviewPanel(panel: vscode.WebviewPanel, state: unknown): Promise<void> {
        this.state = readState(state);
        this.look(this.view);
        this.adopt(panel);
        this.newest.ask();
        return Promise.resolve();
    }

    /** Opens the whole term beside the text, of a class or of the one that was shown. */
    openTerm(className?: string): void {
        this.look('term');
        if (className !== undefined) this.state.class = className;
        this.open();
    }

    /** Opens what adaptations change for a class: the one given, else that of the adaptation or class at the cursor, else the one that was shown. */
    openChanges(className?: string): void {
        this.look('changes');
        if (className !== undefined) this.state.class = className;
        this.classAtCursor = className === undefined;
        this.open();
    }

    /** What is shown; the week while nothing is open. */
    get view(): PreviewView {
        return this.state.view ?? 'week';
    }

    /** Takes the keyboard to the brief, or from it back to the text. */
    async goBetween(): Promise<void> {
        if (!this.panel) return this.openWeek();
        if (!this.panel.active) return this.panel.reveal(undefined, false);
        const editor = vscode.window.visibleTextEditors.find(({ document }) => document.languageId === languageId);
        if (editor) await vscode.window.showTextDocument(editor.document, { viewColumn: editor.viewColumn });
        else if (this.state.cursor) await openSource(this.state.cursor, this.panel.viewColumn);
    }

    /** Has the browser that the editor runs in download a page. Only a page within it can, so the brief is opened where it is not in view. */
    download(name: string, html: string): void {
        this.downloads.push({ type: 'download', name, html });
        if (this.panel?.visible && this.listens) this.sendDownloads();
        else this.open();
    }

    private sendDownloads(): void {
        for (const message of this.downloads) void this.panel?.webview.postMessage(message);
        this.downloads = [];
    }

    /** Goes to another week and stays there. */
    step(by: 1 | -1): void {
        if (!this.answer || !('week' in this.answer)) return;
        this.state.week = Math.min(Math.max(this.answer.week + by, 1), this.answer.weeks);
        this.newest.ask();
    }

    toggleStay(on = this.state.week === undefined): void {
        this.state.week = on ? this.week : undefined;
        if (!on) this.reveal = 'item';
        this.newest.ask();
    }

    /** Is for another class from now on; what is not open stays closed. */
    useClass(name: string): void {
        this.state.class = name;
        this.newest.ask();
    }

    showClass(name: string | undefined): void {
        this.state.class = name;
        this.open();
    }

    /** Asks the server for the brief as it is chosen here: for the classes there are, or for a whole page. */
    async request(format: BriefParams['format'], file?: vscode.Uri, printing = false): Promise<BriefAnswer | BriefRefusal> {
        const here = this.place(file);
        const week = here.other ? undefined : this.panel ? this.week : undefined;
        return this.client.sendRequest<BriefAnswer | BriefRefusal>(briefRequest, { ...here.at, week, class: this.state.class, format, paper: chosenPaper(), printing } satisfies BriefParams);
    }

    async requestTerm(format: TermParams['format'], file?: vscode.Uri, { before, printing }: Pick<TermParams, 'before' | 'printing'> = {}): Promise<TermAnswer | BriefRefusal> {
        return this.client.sendRequest<TermAnswer | BriefRefusal>(termRequest, { ...this.place(file).at, class: this.state.class, format, before, paper: chosenPaper(), printing } satisfies TermParams);
    }

    async requestChanges(format: ChangesParams['format'], file?: vscode.Uri, printing = false): Promise<ChangesAnswer | BriefRefusal> {
        return this.client.sendRequest<ChangesAnswer | BriefRefusal>(changesRequest, { ...this.place(file).at, class: this.state.class, format, paper: chosenPaper(), printing } satisfies ChangesParams);
    }

    /** A file, or the cursor. */
    private place(file: vscode.Uri | undefined): { at: Partial<SourceLine>; other: boolean } {
        const editor = vscode.window.activeTextEditor;
        if (!this.panel && editor) this.placeCursor(editor);
        const other = file !== undefined && file.toString() !== editor?.document.uri.toString();
        return { at: other ? { uri: this.client.code2ProtocolConverter.asUri(file) } : { ...this.state.cursor }, other };
    }

    private look(view: PreviewView): void {
        this.state.view = view === 'week' ? undefined : view;
        void vscode.commands.executeCommand('setContext', 'haversack.shown', view);
    }

    private adopt(panel: vscode.WebviewPanel): void {
        this.panel = panel;
        panel.iconPath = {
            light: vscode.Uri.joinPath(this.context.extensionUri, 'media/file-light.svg'),
            dark: vscode.Uri.joinPath(this.context.extensionUri, 'media/file-dark.svg')
        };
        void vscode.commands.executeCommand('setContext', 'haversack.briefOpen', true);
        panel.webview.options = { enableScripts: true, localResourceRoots: [vscode.Uri.joinPath(this.context.extensionUri, 'dist')] };
        panel.webview.onDidReceiveMessage((message: unknown) => {
            const read = readPageMessage(message);
            if (read) this.receive(read);
        });
        panel.onDidChangeViewState(() => {
            if (panel.visible) this.newest.ask();
            else this.listens = false;
        });
        panel.onDidDispose(() => {
            this.panel = undefined;
            this.listens = false;
            this.downloads = [];
            this.answer = undefined;
            this.says = undefined;
            this.kept.forget();
            this.state = { class: this.state.class };
            this.look('week');
            void vscode.commands.executeCommand('setContext', 'haversack.briefOpen', false);
        });
        panel.webview.html = pageHtml(panel.webview, this.context.extensionUri);
    }

    private receive(message: PageMessage): void {
        switch (message.type) {
            case 'ready':
                this.listens = true;
                this.kept.pageIsEmpty();
                this.show(this.says);
                return this.sendDownloads();
            case 'open':
                if (settings().leadBack) void this.leadTo(message);
                return;
            case 'step': return this.step(message.by);
            case 'class':
                this.state.class = message.name;
                return this.newest.ask();
            case 'stay': return this.toggleStay(message.on);
            case 'view':
                this.look(message.view);
                return this.newest.ask();
            case 'practice': return void vscode.commands.executeCommand('haversack.practice.save', undefined, { lesson: message.lesson, class: this.answer?.class, uri: this.state.cursor?.uri } satisfies PracticeParams);
            case 'print': return void vscode.commands.executeCommand('haversack.brief.print');
            case 'save': return void vscode.commands.executeCommand(saveCommands[this.view]);
        }
    }

    /** On the way the cursor of the file passes other places, which do not count. */
    private async leadTo({ uri, line }: SourceLine): Promise<void> {
        this.leading = true;
        try {
            await openSource({ uri, line }, this.panel?.viewColumn);
        } finally {
            this.leading = false;
        }
        const editor = vscode.window.activeTextEditor;
        if (editor && settings().followCursor) this.placeCursor(editor);
        this.newest.ask();
    }

    private moveTo(editor: vscode.TextEditor | undefined): void {
        if (!this.panel || this.leading || editor?.document.languageId !== languageId) return;
        this.placeCursor(editor);
        this.reveal ??= 'item';
        this.newest.ask();
    }

    private moveWithin(editor: vscode.TextEditor): void {
        if (!this.panel || this.leading || editor.document.languageId !== languageId || !settings().followCursor) return;
        const before = this.state.cursor;
        const typed = editor.document.version !== this.versionAtCursor;
        this.placeCursor(editor);
        if (before?.uri === this.state.cursor?.uri && before?.line === this.state.cursor?.line) return;
        // While somebody types, the brief must not jump.
        if (!typed) this.reveal ??= 'item';
        this.newest.ask();
    }

    private placeCursor({ document, selection }: vscode.TextEditor): void {
        if (document.languageId !== languageId) return;
        this.state.cursor = { uri: this.client.code2ProtocolConverter.asUri(document.uri), line: selection.active.line } satisfies SourceLine;
        this.versionAtCursor = document.version;
    }

    private async update(): Promise<void> {
        if (!this.panel?.visible) return;
        const view = this.view;
        const atCursor = this.classAtCursor;
        const answer = await this.ask(view);
        if ('refusal' in answer) return this.show(answer.refusal);
        if (!this.kept.take(answer.sections)) {
            this.kept.forget();
            return this.newest.ask();
        }
        this.answer = answer;
        this.answered = view;
        if (atCursor && view === 'changes') {
            this.classAtCursor = false;
            this.state.class = answer.class;
        }
        if ('week' in answer) this.week = answer.week;
        this.shownEmitter.fire({ uri: this.state.cursor?.uri, class: answer.class, week: 'week' in answer ? answer.week : undefined });
        this.show(problemsInWords(answer.problems));
    }

    private ask(view: PreviewView): Promise<BriefAnswer | TermAnswer | ChangesAnswer | BriefRefusal> {
        const { cursor, week, class: className } = this.state;
        const shared = { ...cursor, class: className, known: this.kept.known() };
        switch (view) {
            case 'week': return this.client.sendRequest<BriefAnswer | BriefRefusal>(briefRequest, { ...shared, week, otherwise: this.week } satisfies BriefParams);
            case 'term': return this.client.sendRequest<TermAnswer | BriefRefusal>(termRequest, shared satisfies TermParams);
            case 'changes': {
                const whose = this.classAtCursor ? { class: undefined, otherwise: className } : {};
                return this.client.sendRequest<ChangesAnswer | BriefRefusal>(changesRequest, { ...shared, ...whose } satisfies ChangesParams);
            }
        }
    }

    private show(says: string | undefined): void {
        this.says = says;
        if (!this.panel) return;
        if (this.answer) this.panel.title = titleOf(this.answered, this.answer);
        const message: ShowMessage = { type: 'show', state: this.state, says, reveal: this.reveal, ...settings() };
        if (this.answer) {
            const { class: className, classes, around } = this.answer;
            const week = 'week' in this.answer ? { week: this.answer.week, weeks: this.answer.weeks } : {};
            message.brief = { view: this.answered, ...week, class: className, classes, around, sections: this.kept.forPage() };
            this.reveal = undefined;
        }
        void this.panel.webview.postMessage(message);
    }
}

function titleOf(view: PreviewView, answer: BriefAnswer | TermAnswer): string {
    if ('week' in answer) return vscode.l10n.t('Brief: week {0}', answer.week);
    return view === 'term' ? vscode.l10n.t('Brief: term') : vscode.l10n.t('Brief: changes');
}

function settings(): { followCursor: boolean; leadBack: boolean } {
    const all = vscode.workspace.getConfiguration('haversack.preview');
    return { followCursor: all.get('followCursor', true), leadBack: all.get('leadBack', true) };
}

function problemsInWords(problems: number): string | undefined {
    if (problems === 0) return undefined;
    return problems === 1
        ? vscode.l10n.t('There is an error in this file; the brief shows what can be read.')
        : vscode.l10n.t('There are {0} errors in this file; the brief shows what can be read.', problems);
}
