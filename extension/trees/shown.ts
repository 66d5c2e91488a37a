import * as vscode from 'vscode';
import type { BriefPanel } from '../preview/brief-panel.js';

/** Whose week the trees and the status bar are about: those of the brief, until somebody chooses others in a tree. */
export class Shown implements vscode.Disposable {
    /** Name of the class; absent while nobody has chosen one. */
    class: string | undefined;
    /** Absent for the week it is. */
    week: number | undefined;
    /** A file of the programme that is meant, or the key of the programme. */
    uri: string | undefined;
    programme: string | undefined;
    private readonly changed = new vscode.EventEmitter<void>();
    readonly onDidChange = this.changed.event;
    private readonly following: vscode.Disposable;

    constructor(private readonly brief: BriefPanel) {
        this.following = brief.onDidShow(({ uri, class: className, week }) => {
            if (this.class === className && this.uri === uri && (week === undefined || this.week === week)) return;
            this.class = className;
            this.uri = uri;
            this.programme = undefined;
            if (week !== undefined) this.week = week;
            this.changed.fire();
        });
    }

    /** Chooses a class of a programme; the brief follows when it is open. */
    chooseClass(programme: string, name: string): void {
        this.class = name;
        this.programme = programme;
        this.week = undefined;
        this.brief.useClass(name);
        this.changed.fire();
    }

    showWeek(week: number | undefined): void {
        this.week = week;
        this.changed.fire();
    }

    dispose(): void {
        vscode.Disposable.from(this.following, this.changed).dispose();
    }
}
