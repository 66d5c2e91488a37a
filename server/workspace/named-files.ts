import { UriUtils } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import { FileChangeType } from 'vscode-languageserver';
import type { HaversackServerServices } from './services.js';

/**
 * Takes up a change of a calendar or framework that the programme names, as if the files that name it had changed: their problems, the plan
 * and the preview follow. A change of any other such file, or one that changes nothing in it, wakes nothing.
 */
export function followNamedFiles(shared: LangiumSharedServices, services: HaversackServerServices): void {
    const updates = shared.lsp.DocumentUpdateHandler;
    updates.onWatchedFilesChange(({ changes }) => {
        const affected = services.attachments.refresh(changes.map(({ uri }) => UriUtils.normalize(uri)));
        if (affected.length > 0) updates.didChangeWatchedFiles?.({ changes: affected.map(uri => ({ uri, type: FileChangeType.Changed })) });
    });
}
