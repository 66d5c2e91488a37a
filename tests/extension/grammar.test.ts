import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { statements } from '@haversack/language/facts/statements';

interface Rule {
    match?: string;
    begin?: string;
}
const { repository } = JSON.parse(readFileSync('extension/syntaxes/haversack.tmLanguage.json', 'utf8')) as { repository: Record<string, Rule> };

/** The words of a rule's alternations, in the order of their groups. */
function alternations(rule: string): string[][] {
    const pattern = repository[rule]?.begin ?? repository[rule]?.match ?? '';
    return [...pattern.matchAll(/\(((?:[a-z-]|\\s\+)+(?:\|(?:[a-z-]|\\s\+)+)+)\)/g)].map(([, words]) => words!.replaceAll('\\s+', ' ').split('|'));
}

const heads = statements.filter(({ head }) => head !== '');
const isProse = ({ head, example }: (typeof statements)[number]): boolean => example.startsWith(`${head}:`) && head !== 'if unsure';
const sorted = (words: Iterable<string>): string[] => [...new Set(words)].sort();

it('colours every word that begins prose, and no other', () => {
    const prose = sorted(heads.filter(isProse).map(({ head }) => head));
    expect(prose.length).toBeGreaterThan(10);
    expect(sorted(alternations('prose')[0]!)).toEqual(prose);
    expect(sorted(alternations('prose-under')[0]!)).toEqual(prose);
});

it('colours every declaration, and no other', () => {
    expect(sorted(alternations('declaration')[0]!)).toEqual(sorted(heads.filter(({ within }) => within.includes('file')).map(({ head }) => head)));
});

it('colours every other statement as a statement or as a part with a name', () => {
    const others = heads.filter(statement => !isProse(statement) && !statement.within.includes('file'));
    expect(sorted([...alternations('statement')[0]!, ...alternations('declaration')[1]!])).toEqual(sorted(others.map(({ head }) => head)));
});
