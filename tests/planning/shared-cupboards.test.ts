/** Classes that keep their things in one cupboard: one count, one order, for the first day on which any of them needs it. */
import { describe, expect, test } from 'vitest';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import { sharingWith } from '../../server/planning/sharing.js';
import { planSupplies } from '../../server/planning/supplies/plan-supplies.js';
import { consumable, course, held, klass, lesson, measured, meets, mention, need, on, pack, programme, reusable } from './sheets.js';

const group = (name: string, day: Parameters<typeof meets>[0], more: Partial<ClassSheet> = {}): ClassSheet => klass(name, 'c', 7, { starts: on('2026-09-07'), meets: meets(day), ...more });
const shares = (...names: string[]): Partial<ClassSheet> => ({ sharesWith: names.map(mention) });
const bean = consumable('bean', { ...measured('g'), source: 'shop', packs: [pack('500 g', '2.10')] });
const cube = reusable('cube', { source: 'shop', packs: [pack('20', '4.50')] });

describe('who shares', () => {
    const named = (classes: ClassSheet[], of: string): string[] => {
        const sheets = programme(...classes);
        return sharingWith(sheets, sheets.classes.get(of)).map(({ name }) => name);
    };
    const chain = [group('a', 'mon', shares('b')), group('b', 'mon'), group('c', 'mon', shares('b')), group('d', 'mon', shares('gone')), group('e', 'mon', shares('f')), group('f', 'mon')];
    test.each([['a', ['b', 'c']], ['b', ['a', 'c']], ['c', ['a', 'b']], ['d', []], ['e', ['f']], ['f', ['e']]])('%s with %j: either way round, and those of those', (of, others) => {
        expect(named(chain, of)).toEqual(others);
    });
    test('nobody where nobody says so, or for no class', () => {
        expect(named([group('a', 'mon'), group('b', 'mon')], 'a')).toEqual([]);
        expect(sharingWith(programme(...chain), undefined)).toEqual([]);
    });
    test('a long chain, told from its end', () => {
        const names = Array.from({ length: 30 }, (_, i) => `g${i}`);
        expect(named(names.map((name, i) => group(name, 'mon', i === 0 ? {} : shares(names[i - 1]!))), 'g29')).toEqual(names.slice(0, 29));
    });
});

describe.each([['the earlier class first in the file', ['mon', 'thu']], ['the later one first', ['thu', 'mon']]] as const)('%s', (_, [first, second]) => {
    const sheets = (things: Parameters<typeof programme>, ...amounts: string[]): ReturnType<typeof programme> => {
        const lessons = amounts.map((text, i) => lesson(`l${i + 1}`, [need(things[0]!.name, text, 'class')]));
        return programme(...things, ...lessons, course('c', lessons.map(({ name }) => name)), group('k', first, { onHand: [held('bean', '100 g'), held('cube', '10')] }), group('m', second, shares('k')), group('apart', 'mon'));
    };
    test('what is used up adds up: 2 x 300 g less 100 g in week 1, and it is there on Monday', () => {
        for (const name of ['k', 'm']) {
            const found = planSupplies(sheets([bean], '300 g', '50 g'), { class: name }, {});
            expect(found.orders.map(o => [o.week, o.neededBy, o.net.exact, o.bought.exact, o.packs.map(p => p.count)])).toEqual([
                [1, '2026-09-07', '500', '500', [1]], [2, '2026-09-14', '100', '500', [1]]
            ]);
            expect(found.things[0]!.weeks.map(w => [w.gross.exact, w.receipts.exact, w.onHand.exact])).toEqual([['600', '500', '0'], ['100', '500', '400']]);
        }
    });
    test('what is handed back serves one class after the other: 25 cubes and not 50, 10 of them there', () => {
        const found = planSupplies(sheets([cube], '25'), { class: 'm' }, {});
        expect(found.orders.map(o => [o.week, o.net.exact, o.packs.map(p => p.count)])).toEqual([[1, '15', [1]]]);
    });
    test('a class of its own buys for itself alone', () => {
        expect(planSupplies(sheets([bean], '300 g'), { class: 'apart' }, {}).orders.map(o => [o.net.exact, o.neededBy])).toEqual([['300', '2026-09-07']]);
    });
});

test('on one day two classes need what is handed back at once: 50 cubes, 10 of them there, so two packs of 20', () => {
    const sheets = programme(cube, lesson('l1', [need('cube', '25', 'class')]), course('c', ['l1']), group('k', 'mon', { onHand: [held('cube', '10')] }), group('m', 'mon', shares('k')));
    expect(planSupplies(sheets, { class: 'k' }, {}).orders.map(o => [o.net.exact, o.packs.map(p => p.count)])).toEqual([['40', [2]]]);
});
