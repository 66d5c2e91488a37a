import * as vscode from 'vscode';
import { done } from '../first-steps.js';

/** A page is kept so long, so that its window in the browser can be loaded anew. */
const keptMilliseconds = 24 * 60 * 60 * 1000;

/** A command, and what it is given. */
type SaveCommand = readonly [name: string, ...given: unknown[]];

/** Hands pages to the person's browser, which prints them: one that opens them, or the one that the editor itself runs in, which downloads them. */
export class PrintedPages {
    private readonly folder: vscode.Uri;

    /** @param download by the browser that the editor runs in: the name of a file, and its page */
    constructor(context: vscode.ExtensionContext, private readonly download: (name: string, html: string) => void) {
        this.folder = vscode.Uri.joinPath(context.globalStorageUri, 'print');
    }

    /** Whether the browser can be given a page: not where a window of the desktop has its files on another machine. */
    get possible(): boolean {
        return this.inBrowser || (vscode.env.remoteName === undefined && this.folder.scheme === 'file');
    }

    private get inBrowser(): boolean {
        return vscode.env.uiKind === vscode.UIKind.Web;
    }

    /**
     * @param name of the file, without its ending
     * @param save the command that saves the page, with what it is given, for where the browser does not take it
     */
    async open(name: string, html: string, save: SaveCommand): Promise<void> {
        if (this.inBrowser) {
            this.download(`${fileName(name)}.html`, html);
            done('printed');
            return offerToSave(vscode.l10n.t('Your browser downloads the page. Open the download, and it prints. If none comes, save the page as a file, and open that in a browser.'), save);
        }
        const page = vscode.Uri.joinPath(this.folder, `${fileName(name)}.html`);
        try {
            await this.removeOld();
            await vscode.workspace.fs.createDirectory(this.folder);
            await vscode.workspace.fs.writeFile(page, new TextEncoder().encode(html));
        } catch (error) {
            return void vscode.window.showErrorMessage(vscode.l10n.t('{0} could not be written: {1}', page.fsPath, error instanceof Error ? error.message : String(error)));
        }
        if (await vscode.env.openExternal(page)) {
            done('printed');
            vscode.window.setStatusBarMessage(vscode.l10n.t('The page opens in your browser, which prints it. If it does not come, save the page as a file and open that.'), 8000);
        } else void vscode.window.showErrorMessage(vscode.l10n.t('No browser opened the page. Save it as a file, open that in a browser, and print it there.'));
    }

    /** Says why a page cannot be printed here, and has it saved where that is wished. */
    saveInstead(save: SaveCommand): Promise<void> {
        return offerToSave(vscode.l10n.t('From here no page can be handed to your browser’s print window. Save it as a file, open that in a browser, and print it there.'), save);
    }

    /** Pages of other days go. What cannot be deleted, as while another window does the same, stays and hinders nobody. */
    async removeOld(): Promise<void> {
        try {
            for (const [name] of await vscode.workspace.fs.readDirectory(this.folder)) await removeIfOld(vscode.Uri.joinPath(this.folder, name));
        } catch {
            // Nothing was ever printed.
        }
    }
}

async function offerToSave(why: string, save: SaveCommand): Promise<void> {
    const button = vscode.l10n.t('Save as a file');
    if (await vscode.window.showInformationMessage(why, button) === button) await vscode.commands.executeCommand(...save);
}

async function removeIfOld(page: vscode.Uri): Promise<void> {
    try {
        const { mtime } = await vscode.workspace.fs.stat(page);
        if (mtime < Date.now() - keptMilliseconds) await vscode.workspace.fs.delete(page);
    } catch {
        // It is gone already, or in use.
    }
}

/** Names of classes and lessons are letters, digits and hyphens; anything else has no place in a file's name. */
function fileName(name: string): string {
    return name.replaceAll(/[^\p{L}\p{N}-]+/gu, '-').slice(0, 100);
}
