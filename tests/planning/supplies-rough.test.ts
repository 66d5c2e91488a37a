/** Whatever stands in the inventory, the class and the log, stock and buying answer: they never throw and never hang. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { MaterialSheet } from '@haversack/language/sheets/sheet';
import { planSupplies } from '../../server/planning/supplies/plan-supplies.js';
import { planWeek } from '../../server/planning/week.js';
import { amount, book, consumable, course, held, klass, lesson, meets, mention, need, on, part, print, programme, range, reusable } from './sheets.js';

const name = fc.constantFrom('cube', 'bean', 'page', 'tales', 'gone', '', '__proto__', 'toString');
const text = fc.constantFrom('1', '20', '1/3', '150 g', '2 cup', '1 lb', '1 set', '0', 'x', '1/0', '9'.repeat(39), '0.000000000000000000001 g', '-4', '5 furlong');
const money = fc.constantFrom('2.10', '0', '-3', 'x', '1/3', '9'.repeat(30), '0.001').chain(value => fc.constantFrom('USD', 'EUR', 'JPY', '', 'XXXX').map(currency => ({ value, currency, at: range() })));
const span = fc.constantFrom(0, 1, 14, -3, 2.5, Number.NaN, Number.POSITIVE_INFINITY, 1e9).chain(days => fc.constantFrom(undefined, true).map(working => ({ days, working, at: range() })));
const share = fc.constantFrom('5', '0', '100', '99.99', '250', 'x', '1/3').map(percent => ({ percent, at: range() }));
const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined });
const facts: fc.Arbitrary<Partial<MaterialSheet>> = fc.record({
    measured: maybe(fc.constantFrom('g', 'oz', 'sheet', 'furlong').map(unit => ({ unit, at: range() }))),
    packs: fc.array(fc.tuple(text, maybe(money)).map(([size, cost]) => ({ amount: amount(size), cost, at: range() })), { maxLength: 4 }),
    arrives: maybe(span), keeps: maybe(span), spare: maybe(share), loss: maybe(share), delivery: maybe(money), safetyStock: maybe(text.map(amount)),
    source: fc.constantFrom(undefined, 'kit', 'shop', 'home', 'library'),
    standIns: fc.array(fc.tuple(name, fc.constantFrom('1', '0', 'x', '2')).map(([thing, give]) => ({ thing: mention(thing), give, replaces: give === '2' ? '0' : '1', at: range() })), { maxLength: 2 })
});
const date = fc.constantFrom('2026-09-07', '2026-02-30', '', '9999-12-31', '2026-09-10', '0001-01-01');
const stock = fc.array(fc.tuple(name, text, date), { maxLength: 4 });
const needs = fc.array(fc.tuple(name, text, fc.constantFrom('learner', 'pair', 'class', 'group of 0', undefined), fc.boolean()).map(([thing, size, per, optional]) => need(thing, size, per, { optional })), { maxLength: 4 });

test('any sheets', () => {
    fc.assert(fc.property(facts, facts, needs, needs, stock, stock, date, date, (bean, cube, own, other, have, shared, starts, today) => {
        const sheets = programme(
            consumable('bean', bean), reusable('cube', cube), print('page', 2), book('tales', { cost: { value: '12', currency: 'EUR', at: range() } }),
            lesson('a', own, [part('activity', 'x', { needs: other, minutes: 30 }), part('activity', 'y', { needs: own, minutes: 30 })]), lesson('b', other), course('c', ['a', 'b', 'gone']),
            klass('k', 'c', 7, {
                starts: on(starts), meets: meets('mon', 'thu'), session: { minutes: 40, at: range() }, sharesWith: [mention('m'), mention('gone'), mention('k')],
                onHand: have.map(([thing, size]) => held(thing, size)), onOrder: have.map(line => held(...line)), log: [{ lesson: mention('a'), on: on('2026-09-07'), at: range() }]
            }),
            klass('m', 'c', 5, { starts: on('2026-09-07'), meets: meets('mon'), onHand: shared.map(([thing, size]) => held(thing, size)), onOrder: shared.map(line => held(...line)) })
        );
        for (const group of ['k', 'm']) {
            const figures = planSupplies(sheets, { class: group }, { today });
            expect(() => JSON.stringify(figures)).not.toThrow();
            for (const { weeks } of figures.things) for (const { onHand } of weeks) expect(onHand.exact.startsWith('-')).toBe(false);
            const ids = figures.orders.map(({ id }) => id);
            expect(new Set(ids).size).toBe(ids.length);
            planWeek(sheets, { class: group, week: 1 }, { today });
        }
    }), { numRuns: 150 });
});
