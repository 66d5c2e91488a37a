import { Cancellation, DocumentState, URI } from 'langium';
import { expect, test } from 'vitest';
import { createServerServices } from '../../server/workspace/services.js';
import { FedFiles } from '../../server/workspace/fed-files.js';

test('a build that is cut short when a file has just been looked at still tells of the file, and the next build of all', async () => {
    const fed = new FedFiles();
    const uri = 'file:///a/inventory.kit';
    fed.take({ uri, bytes: Buffer.from('material cup\n  reusable\n').toString('base64') });
    const { shared, haversack } = createServerServices({ fileSystemProvider: () => fed }, fed);
    const { WorkspaceManager, DocumentBuilder } = shared.workspace;
    WorkspaceManager.initialBuildOptions = { validation: true };
    WorkspaceManager.initialize({ processId: null, rootUri: null, capabilities: {}, workspaceFolders: [{ name: 'a', uri: 'file:///a' }] });
    await WorkspaceManager.initialized({});
    const told: string[] = [];
    DocumentBuilder.onDocumentPhase(DocumentState.Validated, document => { told.push(`file ${document.uri.path}`); });
    DocumentBuilder.onBuildPhase(DocumentState.Validated, documents => { told.push(`all ${documents.length}`); });
    const validator = haversack.validation.DocumentValidator;
    const validate = validator.validateDocument.bind(validator);
    const cut = new Cancellation.CancellationTokenSource();
    validator.validateDocument = document => {
        cut.cancel();
        return validate(document);
    };
    await DocumentBuilder.update([URI.parse(uri)], [], cut.token).catch(() => undefined);
    expect(told).toEqual(['file /a/inventory.kit']);
    await DocumentBuilder.update([], []);
    expect(told).toEqual(['file /a/inventory.kit', 'all 1']);
    await DocumentBuilder.update([], []);
    expect(told).toHaveLength(2);
});
