import { describe, expect, test } from 'vitest';
import type { Problem } from '@haversack/language/checks/check';
import { carryProblems } from '../../server/workspace/carry-problems.js';

const problem = (line: number): Problem => ({
    code: 'x', severity: 'warning', uri: 'file:///a', message: 'm', at: { start: { line, character: 2 }, end: { line, character: 5 } }, fixes: [{ title: 'f', edits: [] }]
});
const before = 'a\nb\nc\nd\ne';
const lines = (now: string, ...of: number[]): number[] => carryProblems(of.map(problem), before, now).map(({ at }) => at.start.line);

describe('problems of an older text', () => {
    test('stay above a change, move below it, go where it is', () => {
        expect(lines('a\nb\nX\nY\nd\ne', 0, 1, 2, 3, 4)).toEqual([0, 1, 4, 5]);
    });

    test('move up with lines that are taken away', () => {
        expect(lines('a\nd\ne', 0, 1, 2, 3, 4)).toEqual([0, 1, 2]);
    });

    test('stay where nothing changed, without mends', () => {
        const [only] = carryProblems([problem(2)], before, before);
        expect(only).toMatchObject({ at: problem(2).at, fixes: undefined });
    });

    test('go with the whole text', () => {
        expect(lines('', 0, 4)).toEqual([]);
    });
});
