import type { LangiumDocument } from 'langium';
import type { DocumentSymbolProvider } from 'langium/lsp';
import type { DocumentSymbol } from 'vscode-languageserver-protocol';
import type { Declared, FileSheet, Range } from '@haversack/language/sheets/sheet';
import { counted } from '@haversack/language/facts/wording';
import type { HaversackServerServices } from '../workspace/services.js';
import { symbolKinds } from './symbol-kinds.js';

/** The outline: declarations of a file in its order, with what stands in them. */
export class HaversackSymbols implements DocumentSymbolProvider {
    constructor(private readonly services: HaversackServerServices) {}

    getSymbols(document: LangiumDocument): DocumentSymbol[] {
        return outline(this.services.sheets.sheetOf(document));
    }
}

function outline(sheet: FileSheet): DocumentSymbol[] {
    const plain = (thing: Declared & { kind: keyof typeof symbolKinds }): DocumentSymbol => declaration(thing);
    const symbols = [
        ...[...sheet.materials, ...sheet.prints, ...sheet.books, ...sheet.games, ...sheet.kits, ...sheet.objectives, ...sheet.frameworks, ...sheet.classes, ...sheet.adaptations].map(plain),
        ...sheet.lessons.map(lesson => declaration(lesson, lesson.parts.map(part => ({
            name: nameOr(part.title, part.kind),
            detail: [part.kind, part.minutes === undefined ? '' : `${part.minutes} min`].filter(Boolean).join(', '),
            kind: symbolKinds.part,
            range: part.whole,
            selectionRange: within(part.at, part.whole)
        })))),
        ...sheet.courses.map(course => declaration(course, course.units.map(unit => ({
            name: nameOr(unit.title, 'unit'), detail: `unit, ${counted(unit.lessons.length, 'lesson')}`, kind: symbolKinds.unit, range: unit.whole, selectionRange: within(unit.at, unit.whole)
        }))))
    ];
    return symbols.sort((a, b) => a.range.start.line - b.range.start.line);
}

function declaration(thing: Declared & { kind: keyof typeof symbolKinds }, children: DocumentSymbol[] = []): DocumentSymbol {
    return { name: nameOr(thing.title, thing.name), detail: `${thing.kind} ${thing.name}`, kind: symbolKinds[thing.kind], range: thing.whole, selectionRange: within(thing.at, thing.whole), children };
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
