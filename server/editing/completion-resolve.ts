import { CstUtils, type LangiumDocument } from 'langium';
import { MarkupKind, type CompletionItem, type Position } from 'vscode-languageserver-protocol';
import type { HaversackServerServices } from '../workspace/services.js';
import { describe } from './describe.js';

/** What an offered name carries so that it can be told more about: where it is declared, and the lesson that it is offered in. */
export interface OfferedName {
    uri: string;
    at: Position;
    lesson?: string;
}

/** Tells what hover would tell of a name, when an editor shows it: to work that out for a whole list would hold the list up. */
export function resolveCompletion(item: CompletionItem, document: LangiumDocument, services: HaversackServerServices): CompletionItem {
    const { at, lesson } = item.data as Partial<OfferedName>;
    const root = document.parseResult.value.$cstNode;
    if (!root || !at || typeof at.line !== 'number' || typeof at.character !== 'number') return item;
    const leaf = CstUtils.findDeclarationNodeAtOffset(root, document.textDocument.offsetAt(at), services.parser.GrammarConfig.nameRegexp);
    const declared = leaf && services.references.References.findDeclarations(leaf)[0];
    // The file may have changed since.
    if (!declared || services.references.NameProvider.getName(declared) !== item.filterText && services.references.NameProvider.getName(declared) !== item.label) return item;
    const value = describe(declared, services, typeof lesson === 'string' ? lesson : undefined);
    return value === undefined ? item : { ...item, documentation: { kind: MarkupKind.Markdown, value } };
}
