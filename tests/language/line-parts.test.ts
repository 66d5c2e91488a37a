import { EmptyFileSystem } from 'langium';
import { describe, expect, test } from 'vitest';
import type { LinePart } from '@haversack/language/facts/line-parts';
import { statements } from '@haversack/language/facts/statements';
import type { Edge, GrammarState } from '@haversack/language/lexer/automaton';
import { contextOfLine } from '@haversack/language/lexer/read-lines';
import { createHaversackServices } from '@haversack/language/module';
import { belongs } from '../../server/editing/line-words.js';

const { automaton } = createHaversackServices(EmptyFileSystem).haversack.parser.Lexer;

/** An example line that opens each block, the outermost first. */
function headersOf(block: string): string[] {
    if (block === 'file') return [];
    const opener = statements.find(({ head, within }) => (block === 'game in a lesson' ? head === 'game' && within.includes('lesson') : head === block && !(block === 'game' && !within.includes('file'))))!;
    return [...headersOf(opener.within[0]!), opener.example];
}

/** Every way to go on in a line behind the words that begin it. */
function waysOn(block: string, head: string): Edge[] {
    const lines = [...headersOf(block), ''];
    const text = lines.map((line, depth) => '  '.repeat(depth) + line).join('\n');
    let state: GrammarState = contextOfLine(text, lines.length - 1, automaton)!.spots[0]!.state;
    for (const word of head === '' ? [] : head.split(' ')) state = state.move(word)!;
    const longer = new Set(statements.filter(one => one.within.includes(block) && one.head.startsWith(`${head} `)).map(one => one.head.slice(head.length + 1).split(' ')[0]!));
    const seen = new Set<GrammarState>();
    const edges = new Set<Edge>();
    const walk = (at: GrammarState, first: boolean): void => {
        if (seen.has(at)) return;
        seen.add(at);
        for (const edge of at.edges) {
            if (edge.symbol === 'EOL' || edge.symbol === 'INDENT' || edge.symbol === 'DEDENT') continue;
            // `swap lesson` is no `swap` with a thing called lesson, and a line without a head shares its first place with others of its block, which begin with words.
            if (first && (head === '' ? /^[a-z]/.test(edge.symbol) : longer.has(edge.symbol))) continue;
            edges.add(edge);
            walk(at.move(edge.symbol)!, false);
        }
    };
    walk(state, true);
    return [...edges];
}

describe('the parts of lines and the grammar', () => {
    const rows = statements.flatMap(({ head, within, parts }) => (parts ? within.map(block => ({ block, head, parts })) : []));

    test.each(rows)('$block: $head', ({ block, head, parts }: { block: string; head: string; parts: readonly LinePart[] }) => {
        const edges = waysOn(block, head);
        // Each word that the grammar takes belongs to a part; a colon divides and says nothing.
        expect(edges.filter(edge => edge.symbol !== ':' && !parts.some(part => belongs(edge, part))).map(({ symbol, assignment, rule }) => `${rule.name}.${assignment?.feature ?? ''} ${symbol}`)).toEqual([]);
        // Each part, and all that it claims to take, is in the grammar.
        for (const part of parts) {
            expect(part.takes.filter(taken => !edges.some(edge => belongs(edge, { ...part, takes: [taken] }))), part.shows).toEqual([]);
        }
    });
});
