import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { WeekParams } from '@haversack/server/protocol/programme';
import { languageId } from '../client-options.js';
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
    /** The file that the brief was last about. */
    private briefOf: string | undefined;
    private readonly changed = new vscode.EventEmitter<void>();
    readonly onDidChange = this.changed.event;
    private readonly following: vscode.Disposable;

    constructor(private readonly brief: BriefPanel) {
        this.following = brief.onDidShow(({ uri, class: className, week }) => {
            // The brief stays with the programme of the text; a class of another one that was chosen in a tree counts until the brief goes elsewhere.
            if (this.programme !== undefined && this.class !== className && this.briefOf === uri) return;
            this.briefOf = uri;
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

    /** Which programme is meant: that of the brief or of what was chosen, else that of the text. */
    place({ code2ProtocolConverter }: Pick<BaseLanguageClient, 'code2ProtocolConverter'>): Pick<WeekParams, 'programme' | 'uri'> {
        const document = vscode.window.activeTextEditor?.document;
        const here = document?.languageId === languageId ? code2ProtocolConverter.asUri(document.uri) : undefined;
        return { programme: this.programme, uri: this.uri ?? here };
    }

    dispose(): void {
        vscode.Disposable.from(this.following, this.changed).dispose();
    }
}
