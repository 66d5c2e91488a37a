import { createDefaultCoreModule, createDefaultSharedCoreModule, inject, type LangiumCoreServices, type LangiumSharedCoreServices, type Module, type PartialLangiumCoreServices, type DefaultSharedCoreModuleContext } from 'langium';
import { HaversackGeneratedModule, HaversackGeneratedSharedModule } from './generated/module.js';
import { LineLexer } from './lexer/line-lexer.js';

/** The language's services; the server adds its own on top. */
export const HaversackModule: Module<LangiumCoreServices, PartialLangiumCoreServices> = {
    parser: { Lexer: services => new LineLexer(services) }
};

/** Core services alone, as the command line and the tests use them. */
export function createHaversackServices(context: DefaultSharedCoreModuleContext): { shared: LangiumSharedCoreServices; haversack: LangiumCoreServices } {
    const shared = inject(createDefaultSharedCoreModule(context), HaversackGeneratedSharedModule);
    const haversack = inject(createDefaultCoreModule({ shared }), HaversackGeneratedModule, HaversackModule);
    shared.ServiceRegistry.register(haversack);
    return { shared, haversack };
}
