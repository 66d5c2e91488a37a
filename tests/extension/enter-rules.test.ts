import { readFileSync } from 'node:fs';
import { EmptyFileSystem } from 'langium';
import { expect, it } from 'vitest';
import { statements } from '@haversack/language/facts/statements';
import { createHaversackServices } from '@haversack/language/module';
import { editsAfterEnter } from '@haversack/server/formatting/after-enter';
import { usualFormat } from '@haversack/server/formatting/format-text';

const { onEnterRules } = JSON.parse(readFileSync('extension/language-configuration.json', 'utf8')) as { onEnterRules: { beforeText: string; action: { indent: string } }[] };
const { automaton } = createHaversackServices(EmptyFileSystem).haversack.parser.Lexer;

/** A line that opens the block which a statement stands in, and lines above it, a step deeper each. */
function linesAbove(block: string): string[] {
    if (block === 'file') return [];
    const head = block === 'game in a lesson' ? 'game' : block;
    const own = block === 'game in a lesson' ? { example: 'game grocer 10 min', within: ['lesson'] } : statements.find(statement => statement.head === head && statement.within.some(within => within !== block))!;
    return [...linesAbove(own.within[0]!), own.example];
}

it('Enter after each statement goes in as far by the editor’s own rules as by formatting while typing, so that neither undoes the other', () => {
    const tried: string[] = [];
    const differ: string[] = [];
    for (const { head, within, example } of statements) {
        for (const block of within) {
            const lines = [...linesAbove(block), example].map((line, depth) => '  '.repeat(depth) + line);
            const last = lines[lines.length - 1]!;
            const own = /^ */.exec(last)![0];
            const rule = onEnterRules.find(({ beforeText }) => new RegExp(beforeText).test(last));
            const editors = own + (rule?.action.indent === 'indent' ? '  ' : '');
            const text = `${lines.join('\n')}\n${own}`;
            const [edit] = editsAfterEnter(text, lines.length, automaton, usualFormat).filter(({ firstLine }) => firstLine === lines.length);
            const ours = (edit?.text ?? '') + own;
            tried.push(head);
            if (ours !== editors) differ.push(`${block} > ${head}: the editor ${editors.length}, formatting ${ours.length}`);
            // What the editor has done is left alone.
            expect(editsAfterEnter(`${lines.join('\n')}\n${editors}`, lines.length, automaton, usualFormat).filter(({ indents }) => indents)).toEqual([]);
        }
    }
    expect(tried.length).toBeGreaterThan(100);
    expect(differ).toEqual([]);
});
