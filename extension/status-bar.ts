import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { weekRequest, type WeekAnswer, type WeekParams, type WeekRefusal } from '@haversack/server/protocol/programme';
import { languageId } from './client-options.js';
import type { Shown } from './trees/shown.js';
import { WhenQuiet } from './trees/when-quiet.js';

/** Week and minutes of the lesson in the text, else of the brief, in the status bar; a click opens the brief. What is open has no programme: no item. */
export class WeekStatus implements vscode.Disposable {
    private readonly item = vscode.window.createStatusBarItem('haversack.week', vscode.StatusBarAlignment.Left, 10);
    private readonly quiet = new WhenQuiet(() => this.update());
    private readonly subscriptions: vscode.Disposable[];

    constructor(private readonly client: BaseLanguageClient, private readonly shown: Shown) {
        this.item.name = vscode.l10n.t('Haversack: week and minutes');
        this.item.command = 'haversack.brief.open';
        this.subscriptions = [
            this.item, this.quiet, shown.onDidChange(() => this.look()),
            vscode.window.onDidChangeActiveTextEditor(() => this.look()),
            vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => { if (textEditor.document.languageId === languageId) this.look(); })
        ];
    }

    look(): void {
        this.quiet.ask();
    }

    clear(): void {
        this.item.hide();
    }

    dispose(): void {
        vscode.Disposable.from(...this.subscriptions).dispose();
    }

    private async update(): Promise<void> {
        if (!this.client.isRunning()) return;
        const answer = await this.client.sendRequest<WeekAnswer | WeekRefusal>(weekRequest, { ...this.place(), class: this.shown.class, otherwise: this.shown.week, brief: true } satisfies WeekParams);
        // What is there decides which welcome an empty tree gives.
        const holds = 'refusal' in answer ? answer.empty ? 'nothing' : 'lessons' : answer.class ? 'class' : 'lessons without a class';
        void vscode.commands.executeCommand('setContext', 'haversack.holds', holds);
        if ('refusal' in answer) return this.item.hide();
        this.show(answer);
    }

    private show({ week, weeks, minutes, class: group, course, dates }: WeekAnswer): void {
        this.item.text = `$(checklist) ${vscode.l10n.t('Week {0} · {1} min', week, minutes)}`;
        const whose = group?.title ?? vscode.l10n.t('no class described yet');
        const told = [whose, course, vscode.l10n.t('Week {0} of {1}', week, weeks), ...(dates === undefined ? [] : [dates])];
        this.item.tooltip = [...told, vscode.l10n.t('Open the brief for this week')].join('\n');
        this.item.accessibilityInformation = { label: vscode.l10n.t('Week {0}, {1} minutes of lessons, {2}. Open the brief.', week, minutes, whose), role: 'button' };
        this.item.show();
    }

    /** The cursor, or the programme that is shown. */
    private place(): Pick<WeekParams, 'uri' | 'line' | 'programme'> {
        const editor = vscode.window.activeTextEditor;
        if (editor?.document.languageId !== languageId) return { uri: this.shown.uri, programme: this.shown.programme };
        return { uri: this.client.code2ProtocolConverter.asUri(editor.document.uri), line: editor.selection.active.line };
    }
}
