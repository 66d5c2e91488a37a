/** What is wrong with an answer of the server's: places outside of their text, tokens out of order. */
import type { SemanticTokens } from 'vscode-languageserver-protocol';

type Position = { line: number; character: number };

export type Texts = (uri: string) => string | undefined;

/** Places in an answer that lie outside of the file they are about; `uri` is the file that was asked about. */
export function strayPlaces(answer: unknown, uri: string, texts: Texts): string[] {
    const stray: string[] = [];
    const linesOf = new Map<string, string[] | undefined>();
    const lines = (of: string): string[] | undefined => {
        if (!linesOf.has(of)) linesOf.set(of, texts(of)?.split(/\r\n|\r|\n/));
        return linesOf.get(of);
    };
    const check = (at: Position, of: string, where: string): void => {
        const known = lines(of);
        if (!known) return;
        const line = known[at.line];
        if (line === undefined || at.character < 0 || at.character > line.length) stray.push(`${where}: ${at.line}:${at.character} in ${of} of ${known.length} lines${line === undefined ? '' : `, line of ${line.length}`}`);
    };
    const walk = (value: unknown, of: string, where: string): void => {
        if (Array.isArray(value)) return value.forEach((one, index) => walk(one, of, `${where}[${index}]`));
        if (typeof value !== 'object' || value === null) return;
        const record = value as Record<string, unknown>;
        if (typeof record['line'] === 'number' && typeof record['character'] === 'number') return check(record as Position, of, where);
        if (typeof record['startLine'] === 'number' && typeof record['endLine'] === 'number') {
            check({ line: record['startLine'], character: 0 }, of, where);
            check({ line: record['endLine'], character: 0 }, of, where);
        }
        const own = typeof record['uri'] === 'string' ? record['uri'] : of;
        for (const [name, inner] of Object.entries(record)) {
            if (name === 'changes' && typeof inner === 'object' && inner !== null) for (const [target, edits] of Object.entries(inner)) walk(edits, target, `${where}.changes`);
            else if (name.startsWith('target') && typeof record['targetUri'] === 'string') walk(inner, record['targetUri'], `${where}.${name}`);
            else if (name === 'edits' && typeof (record['textDocument'] as { uri?: string } | undefined)?.uri === 'string') walk(inner, (record['textDocument'] as { uri: string }).uri, `${where}.edits`);
            else if (name === 'fromRanges') walk(inner, (record['from'] as { uri: string } | undefined)?.uri ?? own, `${where}.${name}`);
            else if (name !== 'data' && name !== 'diagnostics') walk(inner, name === 'originSelectionRange' ? of : own, `${where}.${name}`);
        }
    };
    walk(answer, uri, '');
    return stray;
}

/** Semantic tokens that overlap, go backwards or leave the text. */
export function strayTokens({ data }: SemanticTokens, text: string): string[] {
    const lines = text.split(/\r\n|\r|\n/);
    const stray: string[] = [];
    let [line, character, end] = [0, 0, 0];
    for (let at = 0; at < data.length; at += 5) {
        const [down, right, length] = [data[at]!, data[at + 1]!, data[at + 2]!];
        character = down === 0 ? character + right : right;
        if (down === 0 && at > 0 && character < end) stray.push(`overlap at ${line}:${character}`);
        line += down;
        end = character + length;
        if (down < 0 || length <= 0 || end > (lines[line]?.length ?? -1)) stray.push(`${line}:${character}+${length} outside`);
    }
    return stray;
}
