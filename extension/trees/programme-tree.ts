import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { programmesRequest, type LessonNode, type MoveTarget, type ProgrammeNode, type ProgrammesAnswer, type ProgrammesParams, type ProgrammesUnchanged } from '@haversack/server/protocol/programme';
import { moveLessons } from './move-lessons.js';
import { itemOf } from './programme-items.js';
import { rowsById, rowsOf, type ProgrammeRow } from './programme-nodes.js';
import type { Shown } from './shown.js';
import { sourceColumn } from './source-place.js';
import { WhenQuiet } from './when-quiet.js';

const viewId = 'haversack.programme';
const mime = `application/vnd.code.tree.${viewId}`;

/** Within this time after a step the tree may still be drawn anew. */
const drawnMilliseconds = 2000;

/** The programme as a tree: its courses with their lessons in order, classes and adaptations. Lessons are dragged into another order. */
export class ProgrammeTree implements vscode.TreeDataProvider<ProgrammeRow>, vscode.TreeDragAndDropController<ProgrammeRow>, vscode.Disposable {
    readonly dropMimeTypes = [mime];
    readonly dragMimeTypes = [mime];
    private readonly changed = new vscode.EventEmitter<void>();
    readonly onDidChangeTreeData = this.changed.event;
    private readonly view: vscode.TreeView<ProgrammeRow>;
    private readonly quiet = new WhenQuiet(() => this.update());
    private readonly subscriptions: vscode.Disposable[];
    private rows: readonly ProgrammeRow[] = [];
    /** Of the answer that they were made of. */
    private hash: string | undefined;
    private column = sourceColumn();
    /** One move after another: a lesson's line is known again when the one before it is made. */
    private moving: Promise<void> = Promise.resolve();
    private stepped: { ids: readonly string[]; at: number } = { ids: [], at: 0 };
    private byId = new Map<string, ProgrammeRow>();

    constructor(private readonly client: BaseLanguageClient, private readonly shown: Shown) {
        this.view = vscode.window.createTreeView(viewId, { treeDataProvider: this, dragAndDropController: this, canSelectMany: true, showCollapseAll: true });
        this.subscriptions = [
            this.view, this.quiet, this.changed,
            this.view.onDidChangeVisibility(({ visible }) => { if (visible) this.quiet.askNow(); }),
            shown.onDidChange(() => this.quiet.ask()),
            // Where a click opens something hangs on where the brief is.
            vscode.window.tabGroups.onDidChangeTabGroups(() => this.followColumn()),
            vscode.window.tabGroups.onDidChangeTabs(() => this.followColumn())
        ];
    }

    /** Something may have changed. */
    look(): void {
        this.quiet.ask();
    }

    /** There is nobody to ask. */
    clear(): void {
        this.show([], undefined);
    }

    getTreeItem(row: ProgrammeRow): vscode.TreeItem {
        return itemOf(row);
    }

    getChildren(row?: ProgrammeRow): ProgrammeRow[] {
        return [...(row?.children ?? this.rows)];
    }

    getParent(row: ProgrammeRow): ProgrammeRow | undefined {
        return this.byId.get(row.id)?.parent;
    }

    handleDrag(rows: readonly ProgrammeRow[], data: vscode.DataTransfer): void {
        const ids = rows.filter(({ is }) => is.kind === 'lesson').map(({ id }) => id);
        if (ids.length > 0) data.set(mime, new vscode.DataTransferItem(ids));
    }

    async handleDrop(target: ProgrammeRow | undefined, data: vscode.DataTransfer): Promise<void> {
        const ids: unknown = data.get(mime)?.value;
        await this.inTurn(async () => {
            const lessons = Array.isArray(ids) ? ids.flatMap(id => this.lessonOf(this.byId.get(id as string)) ?? []) : [];
            if (lessons.length === 0) return;
            const to = destinationOf(target && (this.byId.get(target.id) ?? target));
            if (to) await moveLessons(this.client, lessons, to);
            else void vscode.window.showInformationMessage(vscode.l10n.t('Lessons can be put on a lesson, whose place they take, or on a unit, at its end.'));
        });
    }

    /** Moves the lesson that a key or a menu is about, with the others that are chosen along with it. */
    async step(by: 'up' | 'down', about?: unknown): Promise<void> {
        const ids = this.stepping(about);
        this.stepped = { ids, at: Date.now() };
        await this.inTurn(async () => {
            const lessons = ids.flatMap(id => this.lessonOf(this.byId.get(id)) ?? []).filter(({ line }) => line !== undefined);
            if (lessons.length > 0) await moveLessons(this.client, lessons, { by });
            else vscode.window.setStatusBarMessage(vscode.l10n.t('Choose a lesson of a course in the programme tree first.'), 5000);
        });
    }

    /** The lesson that a menu is about, or the one that is chosen. */
    lesson(about?: unknown): LessonNode | undefined {
        return this.lessonOf(this.rowOf(about) ?? this.view.selection[0]);
    }

    /** The row that a menu or a key hands over; what else comes from there is none. */
    rowOf(about: unknown): ProgrammeRow | undefined {
        const id = typeof about === 'object' && about !== null && 'id' in about ? about.id : undefined;
        return typeof id === 'string' ? this.byId.get(id) : undefined;
    }

    dispose(): void {
        vscode.Disposable.from(...this.subscriptions).dispose();
    }

    private lessonOf(row: ProgrammeRow | undefined): LessonNode | undefined {
        return row?.is.kind === 'lesson' ? row.is.lesson : undefined;
    }

    private stepping(about: unknown): readonly string[] {
        const chosen = this.view.selection.map(({ id }) => id);
        const own = this.rowOf(about)?.id;
        if (own !== undefined) return chosen.includes(own) ? chosen : [own];
        // While the tree is drawn anew after a step, the editor cannot say which row has the keyboard: it is the one that was moved.
        return Date.now() - this.stepped.at < drawnMilliseconds ? this.stepped.ids : chosen;
    }

    private inTurn(move: () => Promise<void>): Promise<void> {
        const own = this.moving.then(async () => {
            await move();
            await this.update();
        });
        this.moving = own.catch(() => undefined);
        return own;
    }

    private followColumn(): void {
        const column = sourceColumn();
        if (column === this.column) return;
        this.column = column;
        this.changed.fire();
    }

    private async update(): Promise<void> {
        if (!this.view.visible || !this.client.isRunning()) return;
        const known = this.hash;
        const answer = await this.client.sendRequest<ProgrammesAnswer | ProgrammesUnchanged>(programmesRequest, { class: this.shown.class, known } satisfies ProgrammesParams);
        if ('unchanged' in answer) {
            // Another answer may have come meanwhile, and this one is about the one before.
            if (this.hash !== known) await this.update();
            return;
        }
        // Nothing flickers where nothing has changed.
        if (answer.hash !== this.hash) this.show(answer.programmes, answer.hash);
    }

    private show(programmes: readonly ProgrammeNode[], hash: string | undefined): void {
        this.hash = hash;
        this.rows = rowsOf(programmes);
        this.byId = rowsById(this.rows);
        this.changed.fire();
    }
}

function destinationOf(target: ProgrammeRow | undefined): MoveTarget | undefined {
    if (target?.is.kind === 'lesson') {
        const { name, line } = target.is.lesson;
        return line && { lesson: { name, line } };
    }
    const unit = target?.is.kind === 'unit' ? target.is.unit : target?.is.kind === 'course' ? target.is.course.units[target.is.course.units.length - 1] : undefined;
    return unit && { unit: { name: unit.name, line: unit.at } };
}
