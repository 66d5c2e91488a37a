import type { LangiumSharedServices, FileOperationHandler } from 'langium/lsp';
import {
    FileChangeType, FileOperationPatternKind,
    type CreateFilesParams, type DeleteFilesParams, type FileOperationOptions, type FileOperationRegistrationOptions, type RenameFilesParams, type TextEdit, type WorkspaceEdit
} from 'vscode-languageserver-protocol';
import { attachmentEndings } from '@haversack/language/attachments/endings';
import { mendedPaths } from '@haversack/language/attachments/mended-paths';
import { addressOf } from '@haversack/language/linking/programmes';
import type { HaversackServerServices } from '../workspace/services.js';
import type { HaversackUpdates } from '../workspace/updates.js';

const ours: FileOperationRegistrationOptions = {
    filters: [
        { pattern: { glob: '**/*.{lesson,kit,course}', matches: FileOperationPatternKind.file } },
        { pattern: { glob: `**/*.{${Object.values(attachmentEndings).flat().join(',')}}`, matches: FileOperationPatternKind.file, options: { ignoreCase: true } } },
        { pattern: { glob: '**', matches: FileOperationPatternKind.folder } }
    ]
};

/**
 * Files and folders that are made, moved and deleted in the editor. Before they are moved, the paths between quotes that lead to them or stand in them are mended;
 * everything else is named by its name, wherever it lies. Afterwards the programme is as it is on the disk, without waiting for the client to notice that.
 */
export class HaversackFileOperations implements FileOperationHandler {
    readonly fileOperationOptions: FileOperationOptions = { willRename: ours, didRename: ours, didCreate: ours, didDelete: ours };

    constructor(private readonly shared: LangiumSharedServices, private readonly services: () => HaversackServerServices) {}

    async willRenameFiles({ files }: RenameFilesParams): Promise<WorkspaceEdit | null> {
        const { WorkspaceManager, WorkspaceLock } = this.shared.workspace;
        await WorkspaceManager.ready;
        return WorkspaceLock.read(() => {
            const { programmes, sheets } = this.services();
            const folders = (WorkspaceManager.workspaceFolders ?? []).map(({ uri }) => uri);
            const moves = files.map(({ oldUri, newUri }) => ({ from: addressOf(oldUri), to: addressOf(newUri) }));
            const changes: Record<string, TextEdit[]> = {};
            for (const programme of programmes.all) {
                for (const { uri, at, text } of mendedPaths(sheets.viewAt(programme).programme, moves, folders)) (changes[uri] ??= []).push({ range: at, newText: text });
            }
            return Object.keys(changes).length > 0 ? { changes } : null;
        });
    }

    didCreateFiles({ files }: CreateFilesParams): void {
        this.updates.didChangeWatchedFiles({ changes: files.map(({ uri }) => ({ uri, type: FileChangeType.Created })) });
    }

    didDeleteFiles({ files }: DeleteFilesParams): void {
        this.updates.didChangeWatchedFiles({ changes: files.map(({ uri }) => ({ uri, type: FileChangeType.Deleted })) });
    }

    didRenameFiles({ files }: RenameFilesParams): void {
        this.updates.didRenameFiles(files);
    }

    private get updates(): HaversackUpdates {
        return this.shared.lsp.DocumentUpdateHandler as HaversackUpdates;
    }
}
