import { DefaultDocumentUpdateHandler } from 'langium/lsp';
import type { FileSystemWatcher } from 'vscode-languageserver';

/** Listens for changes outside the editor to our own files only: nothing that the tool writes wakes it. */
export class HaversackUpdates extends DefaultDocumentUpdateHandler {
    protected override getWatchers(): FileSystemWatcher[] {
        return [{ globPattern: '**/*.{lesson,kit,course}' }];
    }
}
