import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { atOnce, evenly, groupsOf, pairsOf, peopleOf, playersInWords, tablesFor } from '../../server/planning/people.js';
import { klass, range, section } from './sheets.js';

const table = (learners: number, players: [number, number?] | undefined, own?: number) =>
    tablesFor({ learners, adults: 1, groupsOf: own }, players && { from: players[0], to: players[1], at: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } });

describe('pairs and groups', () => {
    test('seven in threes are 3, 2, 2', () => expect(groupsOf(7, 3)).toEqual([3, 2, 2]));
    test('seven make four pairs', () => expect(pairsOf(7)).toBe(4));
    test('without a size all are one group, and nobody is none', () => {
        expect(groupsOf(7)).toEqual([7]);
        expect(groupsOf(0, 3)).toEqual([]);
    });

    test('groups conserve learners, hold no more than asked, and differ by at most one', () => {
        fc.assert(fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 1, max: 40 }), (n, k) => {
            const sizes = groupsOf(n, k);
            expect(sizes.reduce((a, b) => a + b, 0)).toBe(n);
            expect(Math.max(...sizes)).toBeLessThanOrEqual(k);
            expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
            expect((sizes.length - 1) * k).toBeLessThan(n);
        }));
    });
    test('pairs leave at most one place empty', () => {
        fc.assert(fc.property(fc.integer({ min: 0, max: 500 }), n => {
            expect(pairsOf(n) * 2 - n).toBeGreaterThanOrEqual(0);
            expect(pairsOf(n) * 2 - n).toBeLessThanOrEqual(1);
            expect(evenly(n, pairsOf(n)).reduce((a, b) => a + b, 0)).toBe(n);
        }));
    });
});

describe('tables of a game', () => {
    test("the class's own groups play where they fit", () => {
        expect(table(7, [2, 4], 3)).toEqual({ sizes: [3, 2, 2], why: "the class's own groups fit 2 to 4 players" });
    });
    test('else the fewest, most even tables', () => expect(table(7, [2, 4]).sizes).toEqual([4, 3]));
    test('a table that stays short is said', () => {
        expect(table(1, [2, 4])).toEqual({ sizes: [1], why: 'the game wants 2 to 4 players: an adult plays along' });
        expect(table(6, [4, 4]).why).toBe('the game wants 4 players: adults play along at each of the 2 tables; that takes 2 adults, and 1 is counted');
    });
    test('one number is exactly that many: an adult plays along where one child is left', () => {
        expect(table(6, [2])).toEqual({ sizes: [2, 2, 2], why: 'the fewest even tables of 2 players' });
        expect(table(5, [2])).toEqual({ sizes: [2, 2, 1], why: 'the game wants 2 players: an adult plays along at one table' });
        expect(playersInWords({ from: 2, at: range() })).toBe('2 players');
    });
    test('no table is larger than the game allows, and none smaller where that can be', () => {
        const size = fc.integer({ min: 1, max: 12 });
        fc.assert(fc.property(fc.integer({ min: 1, max: 60 }), size, size, (n, a, b) => {
            const [from, to] = [Math.min(a, b), Math.max(a, b)];
            const { sizes } = table(n, [from, to]);
            expect(sizes.reduce((x, y) => x + y, 0)).toBe(n);
            expect(Math.max(...sizes)).toBeLessThanOrEqual(to);
            const fits = Array.from({ length: n }, (_, i) => i + 1).some(tables => tables * from <= n && n <= tables * to);
            expect(Math.min(...sizes) >= from).toBe(fits);
        }));
    });
    test('without players, the own groups', () => expect(table(7, undefined, 3).sizes).toEqual([3, 2, 2]));
});

describe('people of a class', () => {
    test('no class: one learner, said', () => {
        const { figures } = peopleOf(undefined);
        expect(figures).toMatchObject({ learners: 1, adults: 1, pairs: 1, groups: [1], text: '1 learner' });
        expect(figures.assumptions).toEqual(['No class is declared: one learner, one kit and four lessons a week.']);
    });
    test('in words', () => {
        expect(peopleOf(klass('harbour', 'c', 7, { groupsOf: 3, adults: 2 })).figures.text).toBe('7 learners: 4 pairs; groups of 3, 2 and 2');
        expect(peopleOf(klass('harbour', 'c', 27, { groupsOf: 4 })).figures.text).toBe('27 learners: 14 pairs; groups: 6 of 4 and 1 of 3');
        expect(peopleOf(klass('harbour', 'c', 7)).figures.text).toBe('7 learners: 4 pairs; one group, no group size given');
    });
    test('sections in words, each under its title', () => {
        const text = (count: number) => peopleOf(klass('harbour', 'c', 7, { sections: [section('red', 4), section('blue', 3)].slice(0, count) })).figures.text;
        expect(text(2)).toBe('7 learners in 2 sections: Red, 4 learners: 2 pairs; one group, no group size given; Blue, 3 learners: 2 pairs; one group, no group size given');
        expect(text(1)).toMatch(/^Red, 4 learners/);
    });
    test('a class without learners counts one, said', () => {
        const { figures } = peopleOf(klass('harbour', 'c', undefined));
        expect(figures.learners).toBe(1);
        expect(figures.assumptions.join()).toContain('“Harbour” does not say how many learners');
    });
    test('sections add up to the class, and pairs form inside a section', () => {
        const { figures } = peopleOf(klass('harbour', 'c', undefined, { sections: [section('early', 7, '9:00'), section('late', 5, '10:00')] }));
        expect(figures).toMatchObject({ learners: 12, pairs: 7, groups: [7, 5], assumptions: [] });
    });
    test('sections that say nothing share what the class has left', () => {
        const { crowds, figures } = peopleOf(klass('harbour', 'c', 12, { sections: [section('a', 5), section('b'), section('d')] }));
        expect(crowds.map(c => c.learners)).toEqual([5, 4, 3]);
        expect(figures.assumptions).toHaveLength(1);
    });
    test('sections that disagree with the class win, said', () => {
        const { figures } = peopleOf(klass('harbour', 'c', 12, { sections: [section('a', 5), section('b', 5)] }));
        expect(figures.learners).toBe(10);
        expect(figures.assumptions.join()).toContain('says 12 learners, its sections add up to 10');
    });
    test('adults of the class are not in two rooms at once, but may teach one section after another', () => {
        const same = peopleOf(klass('h', 'c', undefined, { adults: 3, sections: [section('a', 5, '9:00'), section('b', 5, '09:00')] }));
        expect(same.crowds.map(c => c.adults)).toEqual([2, 1]);
        const after = peopleOf(klass('h', 'c', undefined, { adults: 3, sections: [section('a', 5, '9:00'), section('b', 5, '10:00')] }));
        expect(after.crowds.map(c => c.adults)).toEqual([3, 3]);
    });
    test('absurd numbers neither hang nor throw', () => {
        expect(peopleOf(klass('h', 'c', 1e15, { groupsOf: 1 })).figures.learners).toBe(10_000);
        expect(peopleOf(klass('h', 'c', Number.NaN)).figures.learners).toBe(1);
    });
    test('a class of nobody is planned for one learner, said', () => {
        const said = ['The class “Harbour” has no learners: one is counted.'];
        expect(peopleOf(klass('harbour', 'c', 0)).figures).toMatchObject({ learners: 1, pairs: 1, groups: [1], assumptions: said });
        const empty = klass('harbour', 'c', undefined, { sections: [section('a', 0), section('b', 0)] });
        expect(peopleOf(empty).figures).toMatchObject({ learners: 1, assumptions: said });
        expect(peopleOf({ ...empty, sections: [section('a', 0), section('b', 5)] }).figures).toMatchObject({ learners: 5, assumptions: [] });
    });
});

describe('at once', () => {
    const crowds = (...clocks: (string | undefined)[]) => clocks.map(clock => ({ learners: 1, adults: 1, clock }));
    const f = (...numbers: number[]) => numbers.map(n => new Fraction(n));
    test('the same hour and no hour add; of different hours the largest counts', () => {
        expect(atOnce(f(8, 6), crowds(undefined, undefined)).valueOf()).toBe(14);
        expect(atOnce(f(8, 6), crowds('09:00', '09:00')).valueOf()).toBe(14);
        expect(atOnce(f(8, 6), crowds('09:00', '10:00')).valueOf()).toBe(8);
        expect(atOnce(f(8, 6, 1), crowds('09:00', '10:00', undefined)).valueOf()).toBe(9);
    });
});
