/** What must hold of any stock and any needs. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gatherProgramme as gather } from '@haversack/language/sheets/programme';
import type { ClassSheet, MaterialSheet } from '@haversack/language/sheets/sheet';
import { newPlanningCache } from '../../server/planning/cache.js';
import { materialRequirements, type RequirementsInput } from '../../server/planning/supplies/material-requirements.js';
import { planSupplies } from '../../server/planning/supplies/plan-supplies.js';
import { termPlanOf } from '../../server/planning/supplies/term-plan.js';
import { planWeek } from '../../server/planning/week.js';
import { consumable, course, days, held, klass, lesson, meets, mention, need, on, pack, percent, programme, range, reusable, section } from './sheets.js';

const amounts = (least: number, most: number, weeks: number) => fc.array(fc.bigInt({ min: BigInt(least), max: BigInt(most) }), { minLength: weeks, maxLength: weeks });
const packs = fc.array(fc.record({ size: fc.bigInt({ min: 1n, max: 40n }), cost: fc.bigInt({ min: 1n, max: 900n }) }), { maxLength: 3 });
const share = fc.option(fc.bigInt({ min: 1n, max: 60n }).map(n => ({ n, d: 100n })), { nil: undefined });

const input: fc.Arbitrary<RequirementsInput> = fc.integer({ min: 1, max: 9 }).chain(weeks => fc.record({
    gross: amounts(0, 90, weeks),
    scheduled: amounts(0, 40, weeks),
    onHand: fc.bigInt({ min: 0n, max: 120n }),
    safety: fc.bigInt({ min: 0n, max: 30n }),
    spare: share,
    loss: share,
    whole: fc.constantFrom(undefined, 1n, 5n),
    handedBack: fc.boolean(),
    ordered: fc.array(fc.boolean(), { minLength: weeks, maxLength: weeks }),
    lotSizing: fc.record({ packs, delivery: fc.constantFrom(undefined, 0n, 300n), keepsWeeks: fc.constantFrom(undefined, 1, 2, 4) }, { requiredKeys: ['packs'] }).map(sizing => () => sizing)
}));

describe('the record', () => {
    test('stock never appears from nothing, and is never below nothing', () => {
        fc.assert(fc.property(input, given => {
            const { gross, scheduled, onHand, receipts, unmet, spoiled } = materialRequirements(given);
            let there = given.onHand;
            gross.forEach((wanted, week) => {
                there += scheduled[week]! + receipts[week]! - spoiled[week]!;
                if (given.handedBack) expect(unmet[week]).toBe(there >= wanted ? 0n : wanted - there);
                else there += unmet[week]! - wanted;
                expect(onHand[week]).toBe(there);
                expect(there >= 0n).toBe(true);
            });
        }), { numRuns: 400 });
    });
    test('what is ordered is there, with the reserve', () => {
        fc.assert(fc.property(input, given => {
            const { gross, onHand, unmet } = materialRequirements(given);
            gross.forEach((wanted, week) => {
                if (!given.ordered![week]) return;
                expect(unmet[week]).toBe(0n);
                expect(onHand[week]! >= given.safety! + (given.handedBack ? wanted : 0n)).toBe(true);
            });
        }), { numRuns: 400 });
    });
    test('an order comes only for a week with a net requirement, and brings at least that', () => {
        fc.assert(fc.property(input, given => {
            const { net, receipts } = materialRequirements(given);
            receipts.forEach((amount, week) => expect(amount === 0n ? net[week] : net[week]! > 0n && amount >= net[week]!).toBe(amount === 0n ? 0n : true));
        }), { numRuns: 400 });
    });
    test('more stock never buys more: neither money nor amount', () => {
        const kept = input.map(given => ({ ...given, lotSizing: () => ({ ...given.lotSizing!(), keepsWeeks: undefined }) }));
        fc.assert(fc.property(kept, fc.bigInt({ min: 1n, max: 60n }), (given, more) => {
            const total = (stock: bigint): [cost: bigint, bought: bigint] => {
                const { lots } = materialRequirements({ ...given, onHand: stock });
                return [lots.reduce((sum, lot) => sum + (lot.cost ?? 0n), 0n), lots.reduce((sum, lot) => sum + lot.bought, 0n)];
            };
            const [cost, bought] = total(given.onHand);
            const [lessCost, lessBought] = total(given.onHand + more);
            expect(lessCost <= cost).toBe(true);
            expect(lessBought <= bought).toBe(true);
        }), { numRuns: 400 });
    });
});

const someMaterial: fc.Arbitrary<Partial<MaterialSheet>> = fc.record({
    packs: fc.array(fc.tuple(fc.integer({ min: 1, max: 60 }), fc.option(fc.integer({ min: 1, max: 20 }), { nil: undefined })).map(([size, cost]) => pack(String(size), cost === undefined ? undefined : `${cost}.50`)), { maxLength: 3 }),
    arrives: fc.option(fc.integer({ min: 0, max: 30 }).map(days), { nil: undefined }),
    keeps: fc.option(fc.integer({ min: 1, max: 40 }).map(days), { nil: undefined }),
    spare: fc.option(fc.constantFrom('5', '12.5').map(percent), { nil: undefined }),
    loss: fc.option(fc.constantFrom('10', '33').map(percent), { nil: undefined }),
    source: fc.constantFrom('shop' as const, 'home' as const, undefined)
});

interface Told {
    things: [Partial<MaterialSheet>, Partial<MaterialSheet>];
    needs: [number, number, string, boolean][];
    have: number;
    ordered: [number, string][];
}

const told: fc.Arbitrary<Told> = fc.record({
    things: fc.tuple(someMaterial, someMaterial),
    needs: fc.array(fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 30 }), fc.constantFrom('pair', 'learner', 'class', 'group'), fc.boolean()), { minLength: 1, maxLength: 8 }),
    have: fc.integer({ min: 0, max: 80 }),
    ordered: fc.array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.constantFrom('2026-09-07', '2026-09-16', '2026-10-01')), { maxLength: 2 })
});

function sheetsOf({ things: [bead, cube], needs, have, ordered }: Told, turned = false, own: Partial<ClassSheet> = {}) {
    const lessons = needs.map(([a, b, per, optional], i) => lesson(`l${i}`, [need('bead', String(a), per, { optional }), need('cube', String(b), per)]));
    const all = [
        consumable('bead', bead), reusable('cube', cube), ...lessons, course('c', lessons.map(l => l.name)),
        klass('k', 'c', 7, {
            starts: on('2026-09-07'), meets: meets('mon', 'thu'), groupsOf: 3, onHand: [held('bead', String(have)), held('cube', String(have))],
            onOrder: ordered.map(([amount, date]) => held('bead', String(amount), date)), ...own
        })
    ];
    return programme(...(turned ? all.reverse() : all));
}

/** Everything but where it stands in a file. */
const withoutPlaces = (value: unknown): unknown => JSON.parse(JSON.stringify(value, (key, inner: unknown) => (key === 'place' ? undefined : inner)));

describe('the figures', () => {
    test('the order of the declarations does not matter', () => {
        fc.assert(fc.property(told, given => {
            const figures = (turned: boolean) => planSupplies(sheetsOf(given, turned), { class: 'k' }, { today: '2026-09-01' });
            expect(withoutPlaces(figures(true))).toEqual(withoutPlaces(figures(false)));
        }), { numRuns: 60 });
    });
    test('a lesson edited in a kept plan gives what a new plan gives', () => {
        fc.assert(fc.property(told, fc.integer({ min: 0, max: 7 }), fc.integer({ min: 0, max: 40 }), fc.boolean(), (given, which, amount, without) => {
            const before = sheetsOf(given);
            const file = [...before.files.values()][0]!;
            const neighbour = { ...file.classes[0]!, name: 'm', learners: { count: 4, at: range() }, meets: meets('mon', 'tue'), sharesWith: given.have % 2 === 0 ? [mention('k')] : [] };
            // Lessons in a file of their own, so that the change is one of lessons alone.
            const lessonFile = (lessons: typeof file.lessons) => ({ ...file, uri: 'file:///demo/z.lesson', lessons, materials: [], prints: [], books: [], games: [], kits: [], courses: [], classes: [], adaptations: [] });
            const rest = { ...file, lessons: [], classes: [...file.classes, neighbour] };
            const programmeOf = (lessons: typeof file.lessons) => gather([rest, lessonFile(lessons)]);
            const cache = newPlanningCache();
            const first = programmeOf(file.lessons);
            for (const group of ['k', 'm']) planSupplies(first, { class: group }, { cache });
            const lessons = file.lessons.map((own, i) => (i === which % file.lessons.length
                ? { ...own, needs: without ? own.needs.slice(1) : own.needs.map((line, n) => (n === 0 ? { ...line, amount: { ...line.amount!, value: String(amount) } } : line)) } : own));
            const second = programmeOf(lessons);
            for (const group of ['k', 'm']) expect(planSupplies(second, { class: group }, { cache })).toEqual(planSupplies(second, { class: group }));
        }), { numRuns: 80 });
    });
    test("the brief's week agrees with the term: at hand, missing, what to buy", () => {
        fc.assert(fc.property(told, given => {
            const sheets = sheetsOf(given);
            const supplies = planSupplies(sheets, { class: 'k' });
            for (const { number } of supplies.weeks) {
                const brief = planWeek(sheets, { class: 'k', week: number });
                for (const order of supplies.orders.filter(o => o.week === number)) {
                    const line = brief.buy.find(b => b.name === order.name);
                    expect(line?.packsToBuy?.map(p => p.text) ?? []).toEqual(order.packs.map(p => p.text));
                    expect([line?.cost, line?.covers, line?.orderBy]).toEqual([order.cost, order.covers, order.orderBy]);
                }
                expect(brief.buy.map(b => b.name).sort()).toEqual(supplies.orders.filter(o => o.week === number).map(o => o.name).sort());
                for (const { name, atHand, amount, missing } of brief.fetch.flatMap(g => g.things)) {
                    const record = supplies.things.find(t => t.name === name)!;
                    const row = record.weeks[number - 1]!;
                    const before = number > 1 ? Number(record.weeks[number - 2]!.onHand.exact) : Number(record.opening?.exact ?? 0);
                    const there = before + Number(row.scheduled.exact) - Number(row.spoiled?.exact ?? 0);
                    expect(Number(atHand?.exact ?? 0)).toBe(there);
                    expect(Number(missing?.exact ?? 0)).toBe(missing ? Math.max(0, Number(amount.exact) - there) : 0);
                }
            }
        }), { numRuns: 60 });
    });
    test('sections, hours and all: the lean counting is the counting with reasons', () => {
        fc.assert(fc.property(told, fc.constantFrom(undefined, '9:00', '10:00'), fc.constantFrom(undefined, '9:00', '10:00'), (given, one, other) => {
            const sheets = sheetsOf(given, false, { sections: [section('a', 5, one), section('b', 4, other)] });
            const cache = newPlanningCache();
            const term = termPlanOf(cache, sheets).term({ class: 'k' });
            for (const { number } of term.plan.schedule.weeks) {
                const brief = planWeek(sheets, { class: 'k', week: number }, { cache });
                for (const { name, amount } of brief.fetch.flatMap(g => g.things)) {
                    const ledger = term.ledger(name)!;
                    const period = ledger.periods.findIndex(p => p.slot === number - 1);
                    expect(Number(ledger.record.gross[period]) / Number(ledger.scale)).toBe(Number(amount.exact));
                }
            }
        }), { numRuns: 60 });
    });
});
