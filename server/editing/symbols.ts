import type { LangiumDocument } from 'langium';
import type { DocumentSymbolProvider } from 'langium/lsp';
import { SymbolKind, type DocumentSymbol } from 'vscode-languageserver-protocol';
import type { Declared, FileSheet, Range } from '@haversack/language/sheets/sheet';
import type { HaversackServerServices } from '../workspace/services.js';

/** The outline: declarations of a file in its order, with what stands in them. */
export class HaversackSymbols implements DocumentSymbolProvider {
    constructor(private readonly services: HaversackServerServices) {}

    getSymbols(document: LangiumDocument): DocumentSymbol[] {
        return outline(this.services.sheets.sheetOf(document));
    }
}

function outline(sheet: FileSheet): DocumentSymbol[] {
    const plain = (kind: SymbolKind) => (thing: Declared & { kind: string }): DocumentSymbol => declaration(thing, kind);
    const symbols = [
        ...sheet.materials.map(plain(SymbolKind.Object)),
        ...sheet.prints.map(plain(SymbolKind.File)),
        ...sheet.books.map(plain(SymbolKind.Module)),
        ...sheet.games.map(plain(SymbolKind.Event)),
        ...sheet.kits.map(plain(SymbolKind.Package)),
        ...sheet.lessons.map(lesson => declaration(lesson, SymbolKind.Class, lesson.parts.map(part => ({
            name: nameOr(part.title, part.kind),
            detail: [part.kind, part.minutes === undefined ? '' : `${part.minutes} min`].filter(Boolean).join(', '),
            kind: SymbolKind.Method,
            range: part.whole,
            selectionRange: within(part.at, part.whole)
        })))),
        ...sheet.objectives.map(plain(SymbolKind.Key)),
        ...sheet.frameworks.map(plain(SymbolKind.Interface)),
        ...sheet.courses.map(course => declaration(course, SymbolKind.Namespace, course.units.map(unit => ({
            name: nameOr(unit.title, 'unit'), detail: `unit, ${unit.lessons.length} lessons`, kind: SymbolKind.Array, range: unit.whole, selectionRange: within(unit.at, unit.whole)
        })))),
        ...sheet.classes.map(plain(SymbolKind.Struct)),
        ...sheet.adaptations.map(plain(SymbolKind.Operator))
    ];
    return symbols.sort((a, b) => a.range.start.line - b.range.start.line);
}

function declaration(thing: Declared & { kind: string }, kind: SymbolKind, children: DocumentSymbol[] = []): DocumentSymbol {
    return { name: nameOr(thing.title, thing.name), detail: `${thing.kind} ${thing.name}`, kind, range: thing.whole, selectionRange: within(thing.at, thing.whole), children };
}

/** Editors drop a whole outline for one empty name, such as that of an activity that is just being written. */
function nameOr(title: string, otherwise: string): string {
    return title.trim() || otherwise;
}

/** The protocol asks that the selection lies inside the range. */
function within(inner: Range, outer: Range): Range {
    const before = (a: Range['start'], b: Range['start']): boolean => a.line < b.line || (a.line === b.line && a.character < b.character);
    return before(inner.start, outer.start) || before(outer.end, inner.end) ? outer : inner;
}
