import type { LangiumDocument } from 'langium';
import type { Formatter } from 'langium/lsp';
import type { DocumentFormattingParams, DocumentOnTypeFormattingOptions, DocumentOnTypeFormattingParams, DocumentRangeFormattingParams, DocumentRangesFormattingParams, FormattingOptions, Range, TextEdit } from 'vscode-languageserver-protocol';
import { editsAfterEnter } from '../formatting/after-enter.js';
import type { BlankEdit } from '../formatting/blank-edits.js';
import { formatEdits, type FormatOptions, type LineRange } from '../formatting/format-text.js';
import type { HaversackServerServices } from '../workspace/services.js';

/** Lays a file out as usual: indentation, columns, blank lines. Words, comments and prose stay as they are, and so does every block with a line that could not be read. */
export class HaversackFormatter implements Formatter {
    constructor(private readonly services: HaversackServerServices) {}

    /** Only Enter: while a line is written its columns would move under the cursor. */
    get formatOnTypeOptions(): DocumentOnTypeFormattingOptions {
        return { firstTriggerCharacter: '\n' };
    }

    formatDocument({ textDocument }: LangiumDocument, { options }: DocumentFormattingParams): TextEdit[] {
        return this.asTextEdits(textDocument, formatEdits(textDocument.getText(), this.automaton, optionsOf(options)));
    }

    formatDocumentRange(document: LangiumDocument, { range, options }: DocumentRangeFormattingParams): TextEdit[] {
        return this.formatRanges(document, [range], options);
    }

    formatDocumentRanges(document: LangiumDocument, { ranges, options }: DocumentRangesFormattingParams): TextEdit[] {
        return this.formatRanges(document, ranges, options);
    }

    formatDocumentOnType({ textDocument }: LangiumDocument, { ch, position, options }: DocumentOnTypeFormattingParams): TextEdit[] {
        if (ch !== '\n') return [];
        return this.asTextEdits(textDocument, editsAfterEnter(textDocument.getText(), position.line, this.automaton, optionsOf(options)));
    }

    private formatRanges({ textDocument }: LangiumDocument, ranges: readonly Range[], options: FormattingOptions): TextEdit[] {
        return this.asTextEdits(textDocument, formatEdits(textDocument.getText(), this.automaton, optionsOf(options), ranges.map(linesIn)));
    }

    private asTextEdits(textDocument: LangiumDocument['textDocument'], edits: readonly BlankEdit[]): TextEdit[] {
        return edits.map(({ start, end, text }) => ({ range: { start: textDocument.positionAt(start), end: textDocument.positionAt(end) }, newText: text }));
    }

    private get automaton(): HaversackServerServices['parser']['Lexer']['automaton'] {
        return this.services.parser.Lexer.automaton;
    }
}

const mostColumns = 16;

/** What a client leaves open is as usual. */
function optionsOf(options: FormattingOptions): FormatOptions {
    const { tabSize, insertSpaces, trimTrailingWhitespace, insertFinalNewline, trimFinalNewlines } = options;
    return {
        size: Number.isInteger(tabSize) ? Math.min(Math.max(tabSize, 1), mostColumns) : 2,
        tabs: insertSpaces === false,
        trimLineEnds: trimTrailingWhitespace !== false,
        endLastLine: insertFinalNewline !== false,
        trimFileEnd: trimFinalNewlines !== false
    };
}

/** A range that ends at the beginning of a line has nothing of that line. */
function linesIn({ start, end }: Range): LineRange {
    return { from: start.line, to: end.character === 0 && end.line > start.line ? end.line - 1 : end.line };
}
