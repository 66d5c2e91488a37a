import { EmptyFileSystem } from 'langium';
import { describe, expect, test } from 'vitest';
import { statements, statementsIn } from '@haversack/language/facts/statements';
import type { GrammarState } from '@haversack/language/lexer/automaton';
import type { DraftToken } from '@haversack/language/lexer/fit-line';
import type { LineLexer } from '@haversack/language/lexer/line-lexer';
import { headOf } from '@haversack/language/lexer/messages';
import { createHaversackServices } from '@haversack/language/module';
import { problemsIn } from './fixture.js';
import { readingCodes } from '@haversack/language/checks/reading';

/** How a line of the grammar begins: its keywords up to the first other token; empty when it begins with a name. */
type Beginning = string;

/** Every way in which a line may begin in each block, read from the automaton that the lexer reads. */
function beginningsByBlock(): Map<string, Set<Beginning>> {
    const { automaton } = createHaversackServices(EmptyFileSystem).haversack.parser.Lexer as LineLexer;
    const found = new Map<string, Set<Beginning>>();
    const seen = new Map<string, Set<GrammarState>>();
    const isKeyword = (symbol: string): boolean => /^[a-z]/.test(symbol);
    const token = (text: string): DraftToken => ({ symbol: text, start: 0, text });

    const readBlock = (block: string, state: GrammarState): void => {
        const states = seen.get(block) ?? new Set();
        if (states.has(state)) return;
        seen.set(block, states.add(state));
        const beginnings = found.get(block) ?? new Set<Beginning>();
        found.set(block, beginnings);
        const inLine = new Set<string>();
        const readLine = (at: GrammarState, words: string[], open: boolean): void => {
            const key = `${words.join(' ')}|${open}`;
            const visited = lineStates.get(at) ?? new Set();
            if (visited.has(key)) return;
            lineStates.set(at, visited.add(key));
            for (const symbol of new Set(at.edges.map(edge => edge.symbol))) {
                const next = at.move(symbol)!;
                if (symbol === 'INDENT' || symbol === 'DEDENT') continue;
                if (symbol === 'EOL') {
                    inLine.add(words.join(' '));
                    const under = next.move('INDENT');
                    if (under) readBlock(headOf(block, words.length > 0 ? words.map(token) : [token('NAME')]), under);
                    readBlock(block, next);
                    continue;
                }
                const goesOn = open && isKeyword(symbol);
                readLine(next, goesOn ? [...words, symbol] : words, goesOn);
            }
        };
        const lineStates = new Map<GrammarState, Set<string>>();
        readLine(state, [], true);
        for (const beginning of inLine) beginnings.add(beginning);
    };
    readBlock('file', automaton.start);
    return found;
}

const begins = (beginning: string, head: string): boolean => (head === '' ? beginning === '' : beginning === head || beginning.startsWith(`${head} `));

describe('the table of statements and the grammar', () => {
    const grammar = beginningsByBlock();

    test('every line that the grammar takes is in the table', () => {
        const missing = [...grammar].flatMap(([block, beginnings]) => [...beginnings]
            .filter(beginning => !statementsIn(block).some(({ head }) => begins(beginning, head))).map(beginning => `${block}: ${beginning}`));
        expect(missing).toEqual([]);
    });

    test('every statement of the table is in the grammar', () => {
        const missing = statements.flatMap(({ head, within }) => within
            .filter(block => ![...grammar.get(block) ?? []].some(beginning => begins(beginning, head))).map(block => `${block}: ${head}`));
        expect(missing).toEqual([]);
    });

    const places = statements.flatMap(statement => statement.within.map(block => ({ block, example: statement.example })));
    test.each(places)('in $block: $example', async ({ block, example }) => {
        const lines = [...headersOf(block), example];
        const text = lines.map((line, depth) => '  '.repeat(depth) + line).join('\n');
        const reading = new Set([...readingCodes.map(({ code }) => code), 'unread-text']);
        expect((await problemsIn({ 'a.course': text })).filter(({ code }) => reading.has(code))).toEqual([]);
    });
});

/** The header lines, outermost first, of a block that statements stand in. */
function headersOf(block: string): string[] {
    if (block === 'file') return [];
    if (block === 'game in a lesson') return [...headersOf('lesson'), 'game grocer 10 min'];
    const header = statements.find(({ head, within }) => head === block && (block !== 'game' || within[0] === 'file'));
    if (!header) throw new Error(`No statement opens a block '${block}'.`);
    return [...headersOf(header.within[0]!), header.example];
}
