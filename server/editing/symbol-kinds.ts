import { SymbolKind } from 'vscode-languageserver-protocol';

/** How editors mark each kind of thing in outlines, lists and hierarchies. */
export const symbolKinds = {
    'material': SymbolKind.Object, 'print': SymbolKind.File, 'book': SymbolKind.Module, 'game': SymbolKind.Event, 'kit': SymbolKind.Package,
    'lesson': SymbolKind.Class, 'part': SymbolKind.Method, 'objective': SymbolKind.Key, 'framework': SymbolKind.Interface,
    'course': SymbolKind.Namespace, 'unit': SymbolKind.Array, 'class': SymbolKind.Struct, 'adaptation': SymbolKind.Operator, 'word': SymbolKind.String
} as const satisfies Record<string, SymbolKind>;
