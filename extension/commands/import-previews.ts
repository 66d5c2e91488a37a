import * as vscode from 'vscode';

const scheme = 'haversack-import';

/** Shows what an import would write: each file as it would be, beside the file as it is, and the report. Nothing of it is on disk. */
export class ImportPreviews implements vscode.TextDocumentContentProvider, vscode.Disposable {
    private readonly texts = new Map<string, string>();
    private readonly registration = vscode.workspace.registerTextDocumentContentProvider(scheme, this);
    /** Each preview has addresses of its own: the editor keeps a closed text for a while. */
    private shown = 0;

    provideTextDocumentContent(uri: vscode.Uri): string {
        return this.texts.get(uri.toString()) ?? '';
    }

    /** Opens the report, and over it a comparison for every file. */
    async show(report: string, files: readonly { uri: string; isNew: boolean; after: string }[]): Promise<void> {
        await this.close();
        this.shown++;
        const shown = this.put('report', vscode.l10n.t('Import report'), report);
        await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(shown), { preview: false, preserveFocus: true, viewColumn: vscode.ViewColumn.Beside });
        // The first comes last, so that it is the one on top.
        for (const { uri, isNew, after } of [...files].reverse()) {
            const file = vscode.Uri.parse(uri);
            const name = file.path.slice(file.path.lastIndexOf('/') + 1);
            const before = isNew ? this.put('before', name, '') : file;
            await vscode.commands.executeCommand(
                'vscode.diff', before, this.put('after', file.path, after), vscode.l10n.t('{0} after the import', name), { preview: false, preserveFocus: true, viewColumn: vscode.ViewColumn.One }
            );
        }
    }

    /** Closes what was shown. */
    async close(): Promise<void> {
        const ours = vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs).filter(({ input }) =>
            (input instanceof vscode.TabInputText && input.uri.scheme === scheme) || (input instanceof vscode.TabInputTextDiff && input.modified.scheme === scheme));
        await vscode.window.tabGroups.close(ours);
        this.texts.clear();
    }

    dispose(): void {
        this.registration.dispose();
    }

    private put(kind: string, name: string, text: string): vscode.Uri {
        const uri = vscode.Uri.from({ scheme, path: name.startsWith('/') ? name : `/${name}`, query: `${kind} ${this.shown}` });
        this.texts.set(uri.toString(), text);
        return uri;
    }
}
