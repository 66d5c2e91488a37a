import { inject, type Module } from 'langium';
import {
    createDefaultModule, createDefaultSharedModule, type DefaultSharedModuleContext, type LangiumServices, type LangiumSharedServices, type PartialLangiumServices, type PartialLangiumSharedServices
} from 'langium/lsp';
import { HaversackGeneratedModule, HaversackGeneratedSharedModule } from '@haversack/language/generated/module';
import type { AttachmentReader } from '@haversack/language/attachments/attachment-reader';
import { attachmentsOf, HaversackModule, HaversackSharedModule, type HaversackAddedServices } from '@haversack/language/module';
import { HaversackCallHierarchy } from '../editing/call-hierarchy.js';
import { HaversackCodeActions } from '../editing/code-actions.js';
import { HaversackCodeLenses } from '../editing/code-lenses.js';
import { HaversackCompletion } from '../editing/completion.js';
import { HaversackDocumentLinks } from '../editing/document-links.js';
import { HaversackFileOperations } from '../editing/file-operations.js';
import { HaversackFolding } from '../editing/folding.js';
import { HaversackFormatter } from '../editing/formatting.js';
import { HaversackHover } from '../editing/hover.js';
import { HaversackInlayHints } from '../editing/inlay-hints.js';
import { HaversackRename } from '../editing/rename.js';
import { HaversackSemanticTokens } from '../editing/semantic-tokens.js';
import { HaversackSignatureHelp } from '../editing/signature-help.js';
import { HaversackSymbols } from '../editing/symbols.js';
import { HaversackWorkspaceSymbols } from '../editing/workspace-symbols.js';
import { HaversackBuilder } from './builder.js';
import { ClientWishes } from './client-wishes.js';
import { FormerEditionStore, type FormerEditionReader } from './former-editions.js';
import { HaversackLanguageServer } from './language-server.js';
import { OneLanguage } from './one-language.js';
import { PlannedValidator } from './planned-validator.js';
import { PerProgramme } from './per-programme.js';
import { Plans } from './plans.js';
import { ProgrammeFolders, ReadableFiles } from './programme-files.js';
import { Terms } from './terms.js';
import { Today } from './today.js';
import { HaversackUpdates } from './updates.js';

/** Services that the server adds to the language's. */
export interface HaversackPlanServices {
    plans: PerProgramme<Plans>;
    terms: PerProgramme<Terms>;
    today: Today;
    client: ClientWishes;
    formerEditions: FormerEditionStore;
    validation: { DocumentValidator: PlannedValidator };
    lsp: { Formatter: HaversackFormatter };
}

export type HaversackServerServices = LangiumServices & HaversackAddedServices & HaversackPlanServices;

const editingModule: Module<HaversackServerServices, PartialLangiumServices & HaversackPlanServices> = {
    plans: services => new PerProgramme(services.programmes, programme => new Plans(services, programme)),
    terms: services => new PerProgramme(services.programmes, programme => new Terms(services, programme)),
    today: () => new Today(),
    client: services => new ClientWishes(services.shared, services.today),
    formerEditions: services => new FormerEditionStore(services),
    validation: { DocumentValidator: services => new PlannedValidator(services) },
    lsp: {
        CompletionProvider: services => new HaversackCompletion(services),
        HoverProvider: services => new HaversackHover(services),
        CodeActionProvider: services => new HaversackCodeActions(services),
        InlayHintProvider: services => new HaversackInlayHints(services),
        CodeLensProvider: services => new HaversackCodeLenses(services),
        DocumentSymbolProvider: services => new HaversackSymbols(services),
        FoldingRangeProvider: () => new HaversackFolding(),
        Formatter: services => new HaversackFormatter(services),
        SemanticTokenProvider: () => new HaversackSemanticTokens(),
        RenameProvider: services => new HaversackRename(services),
        SignatureHelp: services => new HaversackSignatureHelp(services),
        DocumentLinkProvider: services => new HaversackDocumentLinks(services),
        CallHierarchyProvider: services => new HaversackCallHierarchy(services)
    }
};

const sharedModule: Module<LangiumSharedServices, PartialLangiumSharedServices> = {
    ServiceRegistry: services => new OneLanguage(services),
    lsp: {
        DocumentUpdateHandler: services => new HaversackUpdates(services),
        FileOperationHandler: services => new HaversackFileOperations(services, () => services.ServiceRegistry.all[0] as HaversackServerServices),
        LanguageServer: services => new HaversackLanguageServer(services),
        WorkspaceSymbolProvider: services => new HaversackWorkspaceSymbols(services)
    },
    workspace: {
        DocumentBuilder: services => new HaversackBuilder(services),
        LangiumDocumentFactory: services => new ReadableFiles(services),
        WorkspaceManager: services => new ProgrammeFolders(services)
    }
};

/** All services of the language server. Without a reader, files that a programme names beside its own are told to be out of reach; without a history, former editions are not known. */
export function createServerServices(context: DefaultSharedModuleContext, reader?: AttachmentReader, history?: FormerEditionReader): { shared: LangiumSharedServices; haversack: HaversackServerServices } {
    const shared = inject(createDefaultSharedModule(context), HaversackGeneratedSharedModule, HaversackSharedModule, sharedModule);
    const haversack = inject(createDefaultModule({ shared }), HaversackGeneratedModule, HaversackModule, editingModule, { attachments: () => attachmentsOf(shared, reader), formerEditions: services => new FormerEditionStore(services, history) });
    shared.ServiceRegistry.register(haversack);
    return { shared, haversack };
}
