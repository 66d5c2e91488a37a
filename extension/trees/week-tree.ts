import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { weekRequest, type WeekAnswer, type WeekParams, type WeekRefusal } from '@haversack/server/protocol/programme';
import { done } from '../first-steps.js';
import { localDay } from '../local-day.js';
import type { Shown } from './shown.js';
import type { Ticks } from './ticks.js';
import { itemOf } from './week-items.js';
import { gatheringWeek, thingsOf, tickedByWeek, updateRows, weekRows, type WeekRow } from './week-rows.js';
import { WhenQuiet } from './when-quiet.js';

const viewId = 'haversack.week';

/** What a week needs, to be ticked off as it is gathered. */
export class WeekTree implements vscode.TreeDataProvider<WeekRow>, vscode.Disposable {
    private readonly changed = new vscode.EventEmitter<WeekRow[] | undefined>();
    readonly onDidChangeTreeData = this.changed.event;
    private readonly view: vscode.TreeView<WeekRow>;
    private readonly quiet = new WhenQuiet(() => this.update());
    private readonly subscriptions: vscode.Disposable[];
    private answer: WeekAnswer | undefined;
    private rows: WeekRow[] = [];

    constructor(private readonly client: BaseLanguageClient, private readonly shown: Shown, private readonly ticks: Ticks) {
        this.view = vscode.window.createTreeView(viewId, { treeDataProvider: this });
        this.subscriptions = [
            this.view, this.quiet, this.changed,
            this.view.onDidChangeVisibility(({ visible }) => { if (visible) this.quiet.askNow(); }),
            this.view.onDidChangeCheckboxState(({ items }) => {
                void this.tick(items.map(([row, state]) => ({ row, gathered: state === vscode.TreeItemCheckboxState.Checked })));
            }),
            shown.onDidChange(() => this.quiet.askNow())
        ];
    }

    look(): void {
        this.quiet.ask();
    }

    clear(): void {
        this.answer = undefined;
        this.show();
    }

    getTreeItem(row: WeekRow): vscode.TreeItem {
        return itemOf(row);
    }

    getChildren(row?: WeekRow): WeekRow[] {
        if (!row) return this.rows;
        return 'children' in row ? row.children : [];
    }

    getParent(row: WeekRow): WeekRow | undefined {
        return this.rows.find(one => 'children' in one && one.children.some(({ id }) => id === row.id));
    }

    step(by: 1 | -1): void {
        if (!this.answer) return;
        const { week, weeks } = this.answer;
        this.shown.showWeek(Math.min(Math.max(week + by, 1), weeks));
    }

    /** The week it is. */
    showNow(): void {
        this.shown.showWeek(undefined);
    }

    async chooseClass(): Promise<void> {
        const answer = this.answer ?? await this.ask();
        if ('refusal' in answer) return void vscode.window.showInformationMessage(answer.refusal);
        if (answer.classes.length === 0) return void vscode.commands.executeCommand('haversack.class.describe');
        const several = new Set(answer.classes.map(({ programme }) => programme)).size > 1;
        const chosen = await vscode.window.showQuickPick(
            answer.classes.map(one => ({ label: one.title, description: several ? `${one.programmeTitle} · ${one.name}` : one.name, one })),
            { title: vscode.l10n.t('Class for the week and the programme'), placeHolder: vscode.l10n.t('Amounts, dates and purchases are counted for this class') }
        );
        if (chosen) this.shown.chooseClass(chosen.one.programme, chosen.one.name);
    }

    /** Ticks the thing that a key is about, or the one that is chosen; what is ticked is unticked. */
    async toggle(about?: unknown): Promise<void> {
        const id = typeof about === 'object' && about !== null && 'id' in about ? about.id : this.view.selection[0]?.id;
        const row = this.rows.flatMap(one => ('children' in one ? one.children : [])).find(one => one.id === id);
        if (row?.kind === 'thing') await this.tick([{ row, gathered: !row.standing.gathered }]);
        else vscode.window.setStatusBarMessage(vscode.l10n.t('Choose a thing in the week’s list first.'), 5000);
    }

    async untickAll(): Promise<void> {
        if (!this.answer) return;
        await this.ticks.untickAll(gatheringWeek(this.answer), today());
        this.show();
    }

    dispose(): void {
        vscode.Disposable.from(...this.subscriptions).dispose();
    }

    private async tick(rows: readonly { row: WeekRow; gathered: boolean }[]): Promise<void> {
        const weeks = tickedByWeek(rows);
        for (const [week, things] of weeks) await this.ticks.set(week, things, today());
        if ([...weeks.values()].flat().some(({ gathered }) => gathered)) done('gathered');
        this.show();
    }

    private async update(): Promise<void> {
        if (!this.view.visible || !this.client.isRunning()) return;
        const answer = await this.ask();
        this.answer = 'refusal' in answer || !answer.class ? undefined : answer;
        this.show();
        if ('refusal' in answer && !answer.empty) this.view.message = answer.refusal;
    }

    private ask(): Promise<WeekAnswer | WeekRefusal> {
        const { class: className, week } = this.shown;
        return this.client.sendRequest<WeekAnswer | WeekRefusal>(weekRequest, { ...this.shown.place(this.client), class: className, week } satisfies WeekParams);
    }

    private show(): void {
        const { answer, ticks, view } = this;
        this.take(answer ? weekRows(answer, ticks) : []);
        if (answer) {
            const things = thingsOf(answer);
            view.title = vscode.l10n.t('Week {0} of {1}', answer.week, answer.weeks);
            view.description = things.length === 0 ? vscode.l10n.t('nothing to fetch') : vscode.l10n.t('{0} of {1} gathered', ticks.gathered(gatheringWeek(answer), things), things.length);
            view.message = [answer.class?.title, answer.dates].filter(Boolean).join(' · ');
        } else {
            view.title = vscode.l10n.t('This week');
            view.description = undefined;
            view.message = undefined;
        }
    }

    /** Draws anew only what differs: while a row is drawn, the editor does not know which one a key is about. */
    private take(rows: WeekRow[]): void {
        const differing = updateRows(this.rows, rows);
        if (!differing) this.rows = rows;
        if (differing?.length !== 0) this.changed.fire(differing);
    }
}

const today = (): string => localDay(new Date());
