import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LotInput, LotPlan } from '../../server/planning/buying/lots.js';
import { planLots, planWeekByWeek } from '../../server/planning/buying/lots.js';
import type { SmallLots } from './buying-exhaustive.js';
import { bestLotsByTrying } from './buying-exhaustive.js';

const big = (values: readonly number[]): bigint[] => values.map(BigInt);

function weight(plan: LotPlan, weeks: number): number[] {
    const bought = plan.orders.reduce((sum, o) => sum + Number(o.bought), 0);
    const early = plan.orders.reduce((sum, o) => sum + Number(o.bought) * (weeks - o.week), 0);
    const packs = plan.orders.reduce((sum, o) => sum + o.counts.reduce((all, n) => all + n, 0), 0);
    return [Number(plan.cost), bought, early, plan.orders.length, packs];
}

/** What the plan says of itself is true: sums, and every week served by fresh goods. */
function expectSound(input: LotInput, plan: LotPlan): void {
    const weeks = input.demand.length;
    const left = plan.orders.map(o => o.bought);
    plan.orders.forEach((order, i) => {
        expect(order.bought).toBe(order.counts.reduce((sum, n, k) => sum + BigInt(n) * BigInt(input.packs[k]!.size), 0n));
        expect(input.mayOrder?.[order.week] ?? true).toBe(true);
        expect(order.covers.every(w => w >= order.week && w < order.week + (input.keepsWeeks ?? weeks))).toBe(true);
        expect(i === 0 || plan.orders[i - 1]!.week < order.week).toBe(true);
    });
    const uncovered = new Map(plan.uncovered.map(u => [u.week, u.demand]));
    input.demand.forEach((demand, week) => {
        let need = demand - (uncovered.get(week) ?? 0n);
        plan.orders.forEach((order, i) => {
            if (!order.covers.includes(week)) return;
            const used = left[i]! < need ? left[i]! : need;
            left[i] = left[i]! - used;
            need -= used;
        });
        expect(need).toBe(0n);
    });
    expect(plan.orders.map(o => o.unused)).toEqual(left);
    expect(plan.leftOver).toBe(left.reduce((sum, rest) => sum + rest, 0n));
}

const smallLots = (most: number): fc.Arbitrary<SmallLots> => fc.integer({ min: 1, max: 4 }).chain(weeks => fc.record({
    demand: fc.array(fc.integer({ min: 0, max: most }), { minLength: weeks, maxLength: weeks }),
    packs: fc.array(fc.record({ size: fc.integer({ min: 1, max: 7 }), cost: fc.integer({ min: 0, max: 12 }) }), { minLength: 1, maxLength: 3 }),
    mayOrder: fc.oneof(fc.constant(new Array<boolean>(weeks).fill(true)), fc.array(fc.boolean(), { minLength: weeks, maxLength: weeks })),
    keeps: fc.integer({ min: 1, max: 5 }),
    delivery: fc.constantFrom(0, 0, 1, 5, 20)
}));

const inputOf = (small: SmallLots): LotInput => ({
    demand: big(small.demand), packs: small.packs, mayOrder: small.mayOrder, keepsWeeks: small.keeps, delivery: BigInt(small.delivery)
});

describe('the best of all plans', () => {
    test('as found by trying every purchase in every week', () => {
        let compared = 0;
        fc.assert(fc.property(smallLots(5), small => {
            const input = inputOf(small);
            const plan = planLots(input);
            expectSound(input, plan);
            expect(plan.exact).toBe(true);
            const best = bestLotsByTrying(small);
            expect(plan.uncovered.length > 0).toBe(best === undefined);
            if (!best) return;
            compared++;
            expect(weight(plan, small.demand.length)).toEqual(best);
        }), { numRuns: 500 });
        expect(compared).toBeGreaterThan(200);
    });
});

/** Cases too large to try everything, with packs of all kinds and all limits. */
const anyLots: fc.Arbitrary<LotInput> = fc.integer({ min: 0, max: 30 }).chain(weeks => fc.record({
    demand: fc.array(fc.oneof(fc.constant(0n), fc.bigInt({ min: 0n, max: 300n })), { minLength: weeks, maxLength: weeks }),
    packs: fc.array(fc.record({ size: fc.integer({ min: 1, max: 120 }), cost: fc.option(fc.integer({ min: 0, max: 500 }), { nil: undefined }) }), { minLength: 1, maxLength: 4 }),
    mayOrder: fc.option(fc.array(fc.boolean(), { minLength: weeks, maxLength: weeks }), { nil: undefined }),
    keepsWeeks: fc.option(fc.integer({ min: 1, max: 8 }), { nil: undefined }),
    delivery: fc.option(fc.bigInt({ min: 0n, max: 400n }), { nil: undefined })
}));

describe('properties', () => {
    test('every plan serves every week from what is there and still good, and says of itself what is true', () => {
        fc.assert(fc.property(anyLots, input => {
            for (const plan of [planLots(input), planWeekByWeek(input)]) {
                expectSound(input, plan);
                const isPriced = input.packs.some(pack => pack.cost !== undefined);
                expect(plan.cost !== undefined).toBe(isPriced);
                if (!isPriced) return;
                const packs = plan.orders.reduce((sum, o) => sum + o.counts.reduce((all, n, k) => all + BigInt(n) * BigInt(input.packs[k]!.cost ?? 0), 0n), 0n);
                expect(plan.orders.every(o => o.delivery === (input.delivery ?? 0n))).toBe(true);
                expect(plan.cost).toBe(packs + plan.orders.reduce((sum, o) => sum + o.delivery, 0n));
                expect(plan.orders.reduce((sum, o) => sum + o.cost!, 0n)).toBe(plan.cost);
            }
        }), { numRuns: 200 });
    });
    test('never dearer than week by week, the same every time, and no dearer when it keeps longer', () => {
        fc.assert(fc.property(anyLots, input => {
            const plan = planLots(input);
            expect(planLots(input)).toEqual(plan);
            if (plan.cost === undefined) return;
            expect(plan.cost <= planWeekByWeek(input).cost!).toBe(true);
            const longer = planLots({ ...input, keepsWeeks: (input.keepsWeeks ?? 30) + 1 });
            if (longer.uncovered.length === plan.uncovered.length) expect(longer.cost! <= plan.cost).toBe(true);
        }), { numRuns: 100 });
    });
    test('more need is never cheaper', () => {
        fc.assert(fc.property(anyLots, fc.nat(), fc.bigInt({ min: 1n, max: 200n }), (input, at, more) => {
            if (input.demand.length === 0) return;
            const all = { ...input, mayOrder: undefined };
            const raised = input.demand.map((d, week) => (week === at % input.demand.length ? d + more : d));
            expect((planLots({ ...all, demand: raised }).cost ?? 0n) >= (planLots(all).cost ?? 0n)).toBe(true);
        }), { numRuns: 100 });
    });
});

describe('what a teacher would expect', () => {
    const week = (plan: LotPlan) => plan.orders.map(({ week, counts, covers, unused }) => ({ week, counts, covers, unused }));
    test('packs are bought when they run out, and what is left over serves later weeks', () => {
        expect(week(planLots({ demand: [10n, 10n, 0n, 10n], packs: [{ size: 24, cost: 320 }] }))).toEqual([
            { week: 0, counts: [1], covers: [0, 1, 3], unused: 0n }, { week: 3, counts: [1], covers: [3], unused: 18n }
        ]);
    });
    test('weeks are joined where a large pack is cheaper and keeps, and not where it spoils', () => {
        const packs = [{ size: 500, cost: 210 }, { size: 2000, cost: 690 }];
        const demand = [500n, 500n, 500n, 500n];
        expect(week(planLots({ demand, packs }))).toEqual([{ week: 0, counts: [0, 1], covers: [0, 1, 2, 3], unused: 0n }]);
        expect(planLots({ demand, packs, keepsWeeks: 3 }).orders.map(o => o.counts)).toEqual([[1, 0], [1, 0], [1, 0], [1, 0]]);
        expect(planWeekByWeek({ demand, packs }).cost).toBe(840n);
    });
    test('weeks are not joined where that only costs the same', () => {
        expect(planLots({ demand: [10n, 10n], packs: [{ size: 10, cost: 5 }, { size: 20, cost: 10 }] }).orders.map(o => o.week)).toEqual([0, 1]);
    });
    test('a charge for each order joins weeks as far as the thing keeps', () => {
        const input = { demand: [4n, 4n, 4n, 4n], packs: [{ size: 4, cost: 100 }], delivery: 450n };
        expect(planLots(input)).toMatchObject({ cost: 850n, orders: [{ week: 0, counts: [4], cost: 850n, delivery: 450n, covers: [0, 1, 2, 3] }] });
        expect(planLots({ ...input, keepsWeeks: 2 }).orders.map(o => o.covers)).toEqual([[0, 1], [2, 3]]);
    });
    test('weeks in which nothing can come are served from before, as far as it keeps', () => {
        const input = { demand: [1n, 2n, 4n, 8n], packs: [{ size: 1, cost: 1 }], mayOrder: [false, true, false, false], keepsWeeks: 2 };
        expect(planLots(input)).toMatchObject({ orders: [{ week: 1, bought: 6n, covers: [1, 2] }], uncovered: [{ week: 0, demand: 1n }, { week: 3, demand: 8n }] });
    });
    test('what keeps some days is good for uses within them', () => {
        const input = { demand: [3n, 3n, 3n], packs: [{ size: 10, cost: 5 }], days: [0, 6, 14] };
        expect(planLots({ ...input, keepsDays: 7 }).orders.map(o => o.covers)).toEqual([[0, 1], [2]]);
        expect(planLots({ ...input, keepsDays: 6 }).orders.map(o => o.covers)).toEqual([[0], [1], [2]]);
        expect(planLots({ ...input, keepsDays: 15 }).orders.map(o => o.covers)).toEqual([[0, 1, 2]]);
    });
    test('without packs exactly what is needed, without a price', () => {
        expect(planLots({ demand: [3n, 0n, 5n], packs: [] })).toEqual({
            orders: [{ week: 0, counts: [], bought: 3n, delivery: 0n, covers: [0], unused: 0n }, { week: 2, counts: [], bought: 5n, delivery: 0n, covers: [2], unused: 0n }],
            leftOver: 0n, uncovered: [], exact: true
        });
    });
});

describe('odd input', () => {
    test.each<[string, LotInput]>([
        ['no weeks', { demand: [], packs: [{ size: 3, cost: 1 }] }], ['no need', { demand: [0n, 0n], packs: [{ size: 3, cost: 1 }] }], ['less than no need', { demand: [-5n], packs: [{ size: 3, cost: 1 }] }]
    ])('%s: nothing to buy', (_, input) => expect(planLots(input)).toEqual({ orders: [], cost: 0n, leftOver: 0n, uncovered: [], exact: true }));
    test('no week may order', () => {
        expect(planLots({ demand: [5n], packs: [{ size: 3, cost: 1 }], mayOrder: [false] })).toEqual({ orders: [], cost: 0n, leftOver: 0n, uncovered: [{ week: 0, demand: 5n }], exact: true });
    });
    test.each([0, -1, NaN, 0.5])('keeps %d weeks: good for its own week at least', keepsWeeks => {
        expect(planLots({ demand: [5n, 5n], packs: [{ size: 10, cost: 1 }], keepsWeeks }).uncovered).toEqual([]);
    });
    test('days that are none, that run backwards, that are missing', () => {
        for (const days of [[NaN, NaN], [9, 0], [0], []]) expect(planLots({ demand: [5n, 5n], packs: [{ size: 10, cost: 1 }], days, keepsDays: 3 }).uncovered).toEqual([]);
    });
    test('negative charges are none', () => {
        expect(planLots({ demand: [5n], packs: [{ size: 5, cost: 1 }], delivery: -9n, holding: -9n }).cost).toBe(1n);
    });
    const many = Array.from({ length: 200 }, (_, i) => ({ size: 1 + ((i * 7919) % 99_991), cost: 100 + ((i * 104_729) % 70_001) }));
    test.each<[string, LotInput]>([
        ['1,000 weeks', { demand: Array.from({ length: 1000 }, (_, i) => BigInt((i * 37) % 101)), packs: [{ size: 24, cost: 320 }, { size: 100, cost: 900 }], keepsWeeks: 4, delivery: 300n }],
        ['200 packs', { demand: Array.from({ length: 60 }, (_, i) => BigInt((i * 377) % 1013)), packs: many, keepsWeeks: 5, delivery: 300n }],
        ['10^9 a week', { demand: new Array<bigint>(40).fill(10n ** 9n), packs: [{ size: 24, cost: 320 }, { size: 100, cost: 900 }], keepsWeeks: 6, delivery: 300n }],
        ['10^9 a week in many packs', { demand: new Array<bigint>(40).fill(10n ** 9n + 1n), packs: many.slice(0, 12), keepsWeeks: 6, delivery: 300n }],
        ['10^16 a week', { demand: new Array<bigint>(10).fill(10n ** 16n), packs: [{ size: 7, cost: 3 }, { size: 50, cost: 19 }] }],
        ['prices of 10^17', { demand: new Array<bigint>(10).fill(1000n), packs: [{ size: 7, cost: 10n ** 17n }, { size: 50, cost: 7n * 10n ** 17n + 1n }], delivery: 5n, keepsWeeks: 3 }],
        ['charges that vary for what spoils', { demand: new Array<bigint>(10).fill(7n), packs: [{ size: 7, cost: 5 }, { size: 50, cost: 30 }], delivery: Array.from({ length: 10 }, (_, i) => BigInt(i % 3)), keepsWeeks: 3 }]
    ])('%s: covered in any case', (_, input) => {
        const plan = planLots(input);
        expectSound({ ...input, packs: input.packs }, plan);
        expect(plan.uncovered).toEqual([]);
        expect(plan.cost! <= planWeekByWeek(input).cost!).toBe(true);
    });
    test('a plan that is not proven says so, and still joins weeks where that is cheaper', () => {
        const input = { demand: new Array<bigint>(40).fill(10n ** 9n), packs: [{ size: 24, cost: 320 }, { size: 100, cost: 900 }], keepsWeeks: 6, delivery: 300n };
        const plan = planLots(input);
        expect(plan.exact).toBe(false);
        expect(plan.cost! < planWeekByWeek(input).cost!).toBe(true);
    });
});
