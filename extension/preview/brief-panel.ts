import * as vscode from 'vscode';
import { State, type LanguageClient } from 'vscode-languageclient/node';
import { briefRequest, changedNotification, type BriefAnswer, type BriefParams, type BriefRefusal } from '@haversack/server/protocol';
import { languageId } from '../client.js';
import { KeptSections } from './kept-sections.js';
import { readPageMessage, readState, type BriefState, type PageMessage, type ShowMessage, type SourceLine } from './messages.js';
import { Newest } from './newest.js';
import { pageHtml } from './page-html.js';
import { openSource } from './open-source.js';

export const viewType = 'haversack.brief';

/** The one brief beside the text: it follows what is written and where the cursor is, and leads back to the source. */
export class BriefPanel implements vscode.WebviewPanelSerializer, vscode.Disposable {
    private panel: vscode.WebviewPanel | undefined;
    private state: BriefState = {};
    private answer: BriefAnswer | undefined;
    private says: string | undefined;
    private reveal: ShowMessage['reveal'];
    private readonly kept = new KeptSections();
    private readonly newest = new Newest(() => this.update(), () => this.show(vscode.l10n.t('The brief could not be made anew just now; this is the last one.')));
    private readonly subscriptions: vscode.Disposable[];
    private versionAtCursor = 0;
    private leading = false;

    constructor(private readonly context: vscode.ExtensionContext, private readonly client: LanguageClient) {
        this.subscriptions = [
            vscode.workspace.onDidChangeTextDocument(({ document }) => {
                if (document.languageId === languageId) this.newest.ask();
            }),
            vscode.window.onDidChangeActiveTextEditor(editor => this.moveTo(editor)),
            vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.moveWithin(textEditor)),
            vscode.workspace.onDidChangeConfiguration(change => {
                if (change.affectsConfiguration('haversack.preview')) this.newest.ask();
            }),
            client.onNotification(changedNotification, () => this.newest.ask()),
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
    open(file?: vscode.Uri): void {
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

    openAtLesson(): void {
        this.state.week = undefined;
        this.reveal = 'lesson';
        this.open();
    }

    deserializeWebviewPanel(panel: vscode.WebviewPanel, state: unknown): Promise<void> {
        this.state = readState(state);
        this.adopt(panel);
        this.newest.ask();
        return Promise.resolve();
    }

    /** Goes to another week and stays there. */
    step(by: 1 | -1): void {
        if (!this.answer) return;
        this.state.week = Math.min(Math.max(this.answer.week + by, 1), this.answer.weeks);
        this.newest.ask();
    }

    toggleStay(on = this.state.week === undefined): void {
        this.state.week = on ? this.answer?.week : undefined;
        if (!on) this.reveal = 'item';
        this.newest.ask();
    }

    showClass(name: string | undefined): void {
        this.state.class = name;
        this.open();
    }

    /** Asks the server for the brief as it is chosen here: for the classes there are, or for a whole page. */
    async request(format: BriefParams['format'], file?: vscode.Uri): Promise<BriefAnswer | BriefRefusal> {
        const editor = vscode.window.activeTextEditor;
        if (!this.panel && editor) this.placeCursor(editor);
        const here = file && file.toString() !== editor?.document.uri.toString() ? { uri: this.client.code2ProtocolConverter.asUri(file) } : { ...this.state.cursor, week: this.panel ? this.answer?.week : undefined };
        return this.client.sendRequest<BriefAnswer | BriefRefusal>(briefRequest, { ...here, class: this.state.class, format } satisfies BriefParams);
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
        });
        panel.onDidDispose(() => {
            this.panel = undefined;
            this.answer = undefined;
            this.says = undefined;
            this.kept.forget();
            this.state = { class: this.state.class };
            void vscode.commands.executeCommand('setContext', 'haversack.briefOpen', false);
        });
        panel.webview.html = pageHtml(panel.webview, this.context.extensionUri);
    }

    private receive(message: PageMessage): void {
        switch (message.type) {
            case 'ready':
                this.kept.pageIsEmpty();
                return this.show(this.says);
            case 'open':
                if (settings().leadBack) void this.leadTo(message);
                return;
            case 'step': return this.step(message.by);
            case 'class':
                this.state.class = message.name;
                return this.newest.ask();
            case 'stay': return this.toggleStay(message.on);
            case 'save': return void vscode.commands.executeCommand('haversack.brief.save');
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
        const params: BriefParams = { ...this.state.cursor, week: this.state.week, otherwise: this.answer?.week, class: this.state.class, known: this.kept.known() };
        const answer = await this.client.sendRequest<BriefAnswer | BriefRefusal>(briefRequest, params);
        if ('refusal' in answer) return this.show(answer.refusal);
        if (!this.kept.take(answer.sections)) {
            this.kept.forget();
            return this.newest.ask();
        }
        this.answer = answer;
        this.show(problemsInWords(answer.problems));
    }

    private show(says: string | undefined): void {
        this.says = says;
        if (!this.panel) return;
        if (this.answer) this.panel.title = vscode.l10n.t('Brief: week {0}', this.answer.week);
        const message: ShowMessage = { type: 'show', state: this.state, says, reveal: this.reveal, ...settings() };
        if (this.answer) {
            const { week, weeks, class: className, classes, around } = this.answer;
            message.brief = { week, weeks, class: className, classes, around, sections: this.kept.forPage() };
            this.reveal = undefined;
        }
        void this.panel.webview.postMessage(message);
    }
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
