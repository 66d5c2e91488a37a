import { inject, type Module } from 'langium';
import {
    createDefaultModule, createDefaultSharedModule, type DefaultSharedModuleContext, type LangiumServices, type LangiumSharedServices, type PartialLangiumServices, type PartialLangiumSharedServices
} from 'langium/lsp';
import { HaversackGeneratedModule, HaversackGeneratedSharedModule } from '@haversack/language/generated/module';
import { HaversackModule, HaversackSharedModule, type HaversackAddedServices } from '@haversack/language/module';
import { HaversackCodeActions } from '../editing/code-actions.js';
import { HaversackCompletion } from '../editing/completion.js';
import { HaversackFolding } from '../editing/folding.js';
import { HaversackHover } from '../editing/hover.js';
import { HaversackRename } from '../editing/rename.js';
import { HaversackSymbols } from '../editing/symbols.js';
import { HaversackBuilder } from './builder.js';
import { HaversackLanguageServer } from './language-server.js';
import { Plans } from './plans.js';
import { ProgrammeFolders, ReadableFiles } from './programme-files.js';
import { HaversackUpdates } from './updates.js';

/** Services that the server adds to the language's. */
export interface HaversackPlanServices {
    plans: Plans;
}

export type HaversackServerServices = LangiumServices & HaversackAddedServices & HaversackPlanServices;

const editingModule: Module<HaversackServerServices, PartialLangiumServices & HaversackPlanServices> = {
    plans: services => new Plans(services),
    lsp: {
        CompletionProvider: services => new HaversackCompletion(services),
        HoverProvider: services => new HaversackHover(services),
        CodeActionProvider: services => new HaversackCodeActions(services),
        DocumentSymbolProvider: services => new HaversackSymbols(services),
        FoldingRangeProvider: () => new HaversackFolding(),
        RenameProvider: services => new HaversackRename(services)
    }
};

const sharedModule: Module<LangiumSharedServices, PartialLangiumSharedServices> = {
    lsp: {
        DocumentUpdateHandler: services => new HaversackUpdates(services),
        LanguageServer: services => new HaversackLanguageServer(services)
    },
    workspace: {
        DocumentBuilder: services => new HaversackBuilder(services),
        LangiumDocumentFactory: services => new ReadableFiles(services),
        WorkspaceManager: services => new ProgrammeFolders(services)
    }
};

/** All services of the language server. */
export function createServerServices(context: DefaultSharedModuleContext): { shared: LangiumSharedServices; haversack: HaversackServerServices } {
    const shared = inject(createDefaultSharedModule(context), HaversackGeneratedSharedModule, HaversackSharedModule, sharedModule);
    const haversack = inject(createDefaultModule({ shared }), HaversackGeneratedModule, HaversackModule, editingModule);
    shared.ServiceRegistry.register(haversack);
    return { shared, haversack };
}
