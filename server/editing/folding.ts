import type { LangiumDocument } from 'langium';
import type { FoldingRangeProvider } from 'langium/lsp';
import { FoldingRangeKind, type FoldingRange } from 'vscode-languageserver-protocol';
import { isComment, linesOf, type Line } from '@haversack/language/lexer/scan';

/** Folds what stands deeper under its line, down to the last of it, for no bracket stands there; and comments of several lines. */
export class HaversackFolding implements FoldingRangeProvider {
    getFoldingRanges(document: LangiumDocument): FoldingRange[] {
        const text = document.textDocument.getText();
        const lines = linesOf(text).filter(({ content, end }) => content < end);
        return [...blocks(lines.filter(line => !isComment(text, line.content))), ...comments(lines, text)];
    }
}

function blocks(lines: readonly Line[]): FoldingRange[] {
    const ranges: FoldingRange[] = [];
    const open: Line[] = [];
    let last: Line | undefined;
    const closeDownTo = (column: number): void => {
        while (open.length > 0 && open[open.length - 1]!.wide >= column) {
            const head = open.pop()!;
            if (last!.number > head.number) ranges.push({ startLine: head.number, endLine: last!.number });
        }
    };
    for (const line of lines) {
        closeDownTo(line.wide);
        open.push(line);
        last = line;
    }
    closeDownTo(0);
    return ranges.sort((a, b) => a.startLine - b.startLine);
}

function comments(lines: readonly Line[], text: string): FoldingRange[] {
    const ranges: FoldingRange[] = [];
    for (let index = 0; index < lines.length; index++) {
        const first = lines[index]!;
        while (isComment(text, lines[index]!.content) && lines[index + 1]?.number === lines[index]!.number + 1 && isComment(text, lines[index + 1]!.content)) index++;
        if (index < lines.length && lines[index]!.number > first.number) ranges.push({ startLine: first.number, endLine: lines[index]!.number, kind: FoldingRangeKind.Comment });
    }
    return ranges;
}
