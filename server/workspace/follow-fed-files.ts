import { DocumentState, type Cancellation, type LangiumDocument } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import { FileChangeType, type Connection } from 'vscode-languageserver';
import { filesNotification, wantedFileRequest, type FedFile, type FilesParams } from '../protocol/files.js';
import type { FedFiles } from './fed-files.js';
import { isFlag, isListOf, isText, readParams } from './read-params.js';
import type { HaversackServerServices } from './services.js';

/** How long a build waits for calendars and frameworks that are on their way. Those that come later are taken up then. */
const patienceMilliseconds = 5000;

const kinds = { files: isListOf({ uri: isText }), gone: (value: unknown): boolean => Array.isArray(value) && value.every(isText), whole: isFlag };

/** Takes up the files that the client sends, as if a disk had them: at the start before anything is built, later as changes of a watched file. */
export function followFedFiles(connection: Connection, shared: LangiumSharedServices, services: HaversackServerServices, fed: FedFiles): void {
    const tell = (uris: readonly string[], type: FileChangeType): void => {
        if (uris.length > 0) shared.lsp.DocumentUpdateHandler.didChangeWatchedFiles?.({ changes: uris.map(uri => ({ uri, type })) });
    };
    let started = false;
    shared.lsp.LanguageServer.onInitialize(({ initializationOptions }) => {
        if ((initializationOptions as { sendsFiles?: unknown } | null | undefined)?.sendsFiles !== true) return;
        fed.expect(async uri => readFile(await connection.sendRequest(wantedFileRequest, { uri })), uri => tell([uri], FileChangeType.Changed));
    });
    connection.onNotification(filesNotification, (given: unknown) => {
        const { files = [], gone = [], whole = false } = readParams<FilesParams>(given, kinds);
        const lost = gone.flatMap(uri => fed.forget(uri));
        const changed = files.flatMap(file => fed.take(readFile(file)!) ?? []);
        if (started) {
            tell(lost, FileChangeType.Deleted);
            tell(changed, FileChangeType.Changed);
        }
        if (!whole) return;
        started = true;
        fed.complete();
    });
    // What files name is here before anybody looks at it, so that no problem is told of that goes away by itself.
    shared.workspace.DocumentBuilder.onBuildPhase(DocumentState.Parsed, (documents, token) => {
        const named = documents.flatMap(document => services.attachments.namedIn(services.sheets.sheetOf(document as LangiumDocument)));
        return unlessTooLong(fed.fetch([...new Set(named)]), token);
    });
}

function readFile(given: unknown): FedFile | undefined {
    const { uri, bytes, wrong } = readParams<FedFile>(given, { uri: isText, bytes: isText, wrong: value => value === 'too-large' || value === 'unreadable' });
    return uri === undefined ? undefined : { uri, bytes, wrong };
}

function unlessTooLong(work: Promise<void>, token: Cancellation.CancellationToken): Promise<void> {
    return new Promise(resolve => {
        const timer = setTimeout(resolve, patienceMilliseconds);
        const cancelled = token.onCancellationRequested(() => resolve());
        void work.then(resolve).finally(() => {
            clearTimeout(timer);
            cancelled.dispose();
        });
    });
}
