import type { HeldLines } from '@haversack/server/protocol/programme';

/** As much of a text as is asked here. */
interface Lines {
    lineCount: number;
    lineAt(line: number): { text: string };
}

/** Whether a text still reads as it did, where it is to be changed. */
export function holdsLines(document: Lines, { from, lines }: HeldLines): boolean {
    return from + lines.length <= document.lineCount && lines.every((line, index) => document.lineAt(from + index).text === line);
}
