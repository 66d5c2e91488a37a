import { describe, expect, test } from 'vitest';
import type { Problem } from '@haversack/language/checks/check';
import type { Range } from '@haversack/language/sheets/sheet';
import { nearestDay } from '../../server/plan-checks/meetings.js';
import { toldOnce } from '../../server/plan-checks/told-once.js';
import { amountOf, isPast, moreMeetings } from '../../server/plan-checks/words.js';

describe('amounts of a thing in a sentence', () => {
    test('one of what the inventory has in the plural', () => {
        expect(amountOf({ text: '1' }, { title: 'Gram cubes', name: 'gram-cube' })).toBe('1 gram cube');
        expect(amountOf({ text: '1' }, { title: 'Kitchen scissors', name: 'kitchen-scissors' })).toBe('1 kitchen scissors');
    });
    test.each([
        ['20', 'Gram cubes', '20 gram cubes'], ['20', 'Kitchen scale', '20 of “Kitchen scale”'], ['1', 'Kitchen scale', '1 kitchen scale'],
        ['150 g', 'Uncooked rice', '150 g of uncooked rice'], ['2 bags', 'Beans', '2 bags of beans'], ['1 1/2', 'Loaf', '1 1/2 loaf'], ['2.5', 'Loaf', '2.5 loaf']
    ])('%s, %s: %s', (text, title, words) => expect(amountOf({ text }, { title, name: 'thing' })).toBe(words));
    test.each([[0, ''], [1, ' The same at 1 more meeting.'], [2, ' The same at 2 more meetings.']])('%d more', (count, words) => expect(moreMeetings(count)).toBe(words));
});

test('a day is past when it is before today; no day is not', () => {
    expect([isPast('2026-09-06', '2026-09-07'), isPast('2026-09-07', '2026-09-07'), isPast('2026-09-08', '2026-09-07'), isPast(undefined, '2026-09-07')]).toEqual([true, false, false, false]);
});

test.each([
    ['2026-09-09', ['2026-09-07', '2026-09-14', '2026-09-21'], ['2026-09-07', '2026-09-14']], ['2026-09-13', ['2026-09-07', '2026-09-14'], ['2026-09-14', '2026-09-07']],
    ['2026-09-14', ['2026-09-07', '2026-09-14', '2026-09-28'], ['2026-09-07', '2026-09-28']], ['2026-09-01', ['2026-09-07', '2026-09-14'], ['2026-09-07']], ['2026-10-01', ['2026-09-07', '2026-09-14'], ['2026-09-14']], ['2026-09-14', [], []]
])('days around %s of %j', (day, days, nearest) => expect(nearestDay(day, days)).toEqual(nearest));

describe('one cause is told once', () => {
    const range = (fromLine: number, from: number, toLine: number, to: number): Range => ({ start: { line: fromLine, character: from }, end: { line: toLine, character: to } });
    const problem = (code: string, at: Range, uri = 'a'): Problem => ({ code, at, uri, severity: 'warning', message: code });
    const better: Problem = { ...problem('better', range(3, 0, 5, 10)), instead: [{ code: 'worse', at: range(3, 2, 5, 8) }] };
    const left = (own: Problem): boolean => toldOnce([own], [better]).includes(own);
    test.each([
        ['the same range', range(3, 2, 5, 8)], ['a line between, however far to the left', range(4, 0, 4, 1)], ['up to the end, from further left in a later line', range(5, 0, 5, 8)], ['from the beginning to further right in an earlier line', range(3, 2, 4, 60)]
    ])('%s is within', (_, at) => expect(left(problem('worse', at))).toBe(false));
    test.each([
        ['begins a character before', range(3, 1, 4, 0)], ['begins a line before', range(2, 9, 4, 0)], ['ends a character behind', range(4, 0, 5, 9)], ['ends a line behind', range(4, 0, 6, 0)]
    ])('%s is not', (_, at) => expect(left(problem('worse', at))).toBe(true));
    test('another code or another file is another matter, and what tells better is always told', () => {
        const own = [problem('other', range(4, 0, 4, 1)), problem('worse', range(4, 0, 4, 1), 'b')];
        expect(toldOnce(own, [better])).toEqual([...own, better]);
    });
});
