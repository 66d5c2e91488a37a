import {
    createDefaultCoreModule, createDefaultSharedCoreModule, inject,
    type DeepPartial, type DefaultSharedCoreModuleContext, type LangiumCoreServices, type LangiumSharedCoreServices, type Module, type PartialLangiumCoreServices
} from 'langium';
import type { AttachmentReader } from './attachments/attachment-reader.js';
import { AttachmentStore } from './attachments/attachment-store.js';
import { HaversackDocumentValidator } from './checks/document-validator.js';
import { HaversackGeneratedModule, HaversackGeneratedSharedModule } from './generated/module.js';
import { createLineParser } from './lexer/line-parser.js';
import { LineLexer } from './lexer/line-lexer.js';
import { CurrentReferences } from './linking/current-references.js';
import { FastLinker } from './linking/fast-linker.js';
import { NameIndex } from './linking/name-index.js';
import type { Programmes } from './linking/programmes.js';
import { HaversackScopeComputation, HaversackScopeProvider } from './linking/scopes.js';
import { HaversackValueConverter } from './linking/values.js';
import { SheetStore } from './sheet-store.js';

/** Services that the language adds to Langium's, and those of which it has more to offer than Langium asks. */
export interface HaversackAddedServices {
    programmes: Programmes;
    sheets: SheetStore;
    attachments: AttachmentStore;
    parser: { Lexer: LineLexer };
    validation: { DocumentValidator: HaversackDocumentValidator };
}

export type HaversackServices = LangiumCoreServices & HaversackAddedServices;

/** The language's services; the server adds its own on top. */
export const HaversackModule: Module<HaversackServices, PartialLangiumCoreServices & HaversackAddedServices> = {
    programmes: ({ shared }) => (shared.workspace.IndexManager as NameIndex).programmes,
    sheets: services => new SheetStore(services.shared, services.programmes, services.attachments),
    attachments: services => attachmentsOf(services.shared),
    parser: {
        Lexer: services => new LineLexer(services),
        LangiumParser: services => createLineParser(services),
        ValueConverter: () => new HaversackValueConverter()
    },
    references: {
        ScopeComputation: services => new HaversackScopeComputation(services),
        ScopeProvider: services => new HaversackScopeProvider(services),
        References: services => new CurrentReferences(services),
        Linker: services => new FastLinker(services)
    },
    validation: {
        DocumentValidator: services => new HaversackDocumentValidator(services)
    }
};

/** Services that all languages of a workspace would share. */
export const HaversackSharedModule: Module<LangiumSharedCoreServices, DeepPartial<LangiumSharedCoreServices>> = {
    workspace: { IndexManager: services => new NameIndex(services) }
};

/** The files that programmes name, seen from the folders that are open. */
export function attachmentsOf(shared: LangiumSharedCoreServices, reader?: AttachmentReader): AttachmentStore {
    return new AttachmentStore(reader, () => (shared.workspace.WorkspaceManager.workspaceFolders ?? []).map(({ uri }) => uri));
}

/** Core services alone, as the command line and the tests use them. */
export function createHaversackServices(context: DefaultSharedCoreModuleContext, attachments?: AttachmentStore): { shared: LangiumSharedCoreServices; haversack: HaversackServices } {
    const shared = inject(createDefaultSharedCoreModule(context), HaversackGeneratedSharedModule, HaversackSharedModule);
    const haversack = inject(createDefaultCoreModule({ shared }), HaversackGeneratedModule, HaversackModule, attachments && { attachments: () => attachments });
    shared.ServiceRegistry.register(haversack);
    return { shared, haversack };
}
