import type * as vscode from 'vscode';
import { Newest } from '../preview/newest.js';

/** So long after the last call, in milliseconds: whoever types has the brief first. */
const quietMilliseconds = 200;

/** Asks the server once for all that happened in a moment, and again when something happens meanwhile. What fails is asked again with the next change. */
export class WhenQuiet implements vscode.Disposable {
    private timer: ReturnType<typeof setTimeout> | undefined;
    private readonly newest: Newest;

    constructor(task: () => Promise<void>) {
        this.newest = new Newest(task, () => undefined);
    }

    ask(): void {
        clearTimeout(this.timer);
        this.timer = setTimeout(() => this.newest.ask(), quietMilliseconds);
    }

    askNow(): void {
        clearTimeout(this.timer);
        this.newest.ask();
    }

    dispose(): void {
        clearTimeout(this.timer);
    }
}
