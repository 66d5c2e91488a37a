/** Lot sizes against published tables and against an integer-programming solver that was not written here (HiGHS). */
import fc from 'fast-check';
import loadHighs from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { LotInput, LotPlan } from '../../server/planning/buying/lots.js';
import { planLots } from '../../server/planning/buying/lots.js';
import type { IntegerProgram } from './integer-program.js';
import { solveInOrder } from './integer-program.js';

const big = (values: readonly number[]): bigint[] => values.map(BigInt);
/** Single units that cost nothing in themselves, as in the published tables. */
const units = [{ size: 1, cost: 0 }];
const lots = (plan: LotPlan) => plan.orders.map(order => [order.week + 1, Number(order.bought)]);

describe('published dynamic lot sizes', () => {
    // Wagner and Whitin, "Dynamic version of the economic lot size model", Management Science 5 (1958) 89-96: inputs and 864 from memory.
    test('twelve months, set-up costs that vary, holding 1: 864 in all', () => {
        const plan = planLots({
            demand: big([69, 29, 36, 61, 61, 26, 34, 67, 45, 67, 79, 56]), packs: units,
            delivery: big([85, 102, 102, 101, 98, 114, 105, 86, 119, 110, 98, 114]), holding: 1n
        });
        expect([plan.cost, plan.leftOver, plan.exact]).toEqual([864n, 0n, true]);
    });
    // Snyder and Shen, Fundamentals of Supply Chain Theory (2nd edition), example 3.9; inputs and answers as two public packages give them.
    test('four periods, set-up 500, holding 2: 210 in the first, 150 in the third, 1380 in all', () => {
        const plan = planLots({ demand: big([90, 120, 80, 70]), packs: units, delivery: 500n, holding: 2n });
        expect([lots(plan), plan.cost]).toEqual([[[1, 210], [3, 150]], 1380n]);
    });
    // Hopp and Spearman, Factory Physics, section 2.3: demand as a public exercise gives it; set-up 100, holding 1, lots and 580 from memory.
    test('ten weeks, set-up 100, holding 1: 580 in all', () => {
        const plan = planLots({ demand: big([20, 50, 10, 50, 50, 10, 20, 40, 20, 30]), packs: units, delivery: 100n, holding: 1n });
        expect([lots(plan), plan.cost]).toEqual([[[1, 80], [4, 130], [8, 90]], 580n]);
    });
});

// Krajewski, Ritzman and Malhotra, Operations Management: the seat subassembly's record (on hand 37, 230 arrive in week 1).
// Gross 150 0 0 120 0 150 120 0; receipts recomputed by a script outside this project, in agreement with the book's table from memory.
describe('planned receipts of a published record', () => {
    const net = [0, 0, 0, 3, 0, 150, 120, 0];
    test.each([
        ['lots of 230', { demand: big(net), packs: [{ size: 230 }] }, [[4, 230], [7, 230]]],
        ['lots of 230, as a fixed lot without packs', { demand: big(net), packs: [], packEach: 230n }, [[4, 230], [7, 230]]],
        ['lots of 230, safety stock 80', { demand: big([0, 0, 0, 83, 0, 150, 120, 0]), packs: [{ size: 230 }] }, [[4, 230], [6, 230]]],
        ['lot for lot', { demand: big(net), packs: [] }, [[4, 3], [6, 150], [7, 120]]],
        ['every third week from the fourth', { demand: big(net), packs: [], mayOrder: [1, 2, 3, 4, 5, 6, 7, 8].map(week => week % 3 === 1) }, [[4, 153], [7, 120]]]
    ] as [string, LotInput, number[][]][])('%s', (_, input, receipts) => expect(lots(planLots(input))).toEqual(receipts));
});

describe('the least cost, and with it the least left over', () => {
    let highs: Awaited<ReturnType<typeof loadHighs>>;
    beforeAll(async () => { highs = await loadHighs(); });

    /** Milliseconds on a busy machine. */
    const patience = 120_000;
    interface Case { demand: number[]; packs: { size: number; cost: number }[]; keeps: number; delivery: number[]; holding: number; mayOrder: boolean[] }

    /** Packs bought by week (x), orders (y), and units from the purchase of week i for week j (z). */
    function program({ demand, packs, keeps, delivery, holding, mayOrder }: Case): IntegerProgram {
        const weeks = demand.map((_, i) => i);
        const most = demand.reduce((sum, d) => sum + d, 0) + Math.max(...packs.map(pack => pack.size));
        const from = weeks.filter(i => mayOrder[i]);
        const cost = new Map<string, number>();
        const bought = new Map<string, number>();
        const rows: IntegerProgram['rows'][number][] = [];
        for (const i of from) {
            packs.forEach((pack, k) => {
                cost.set(`x${i}_${k}`, pack.cost + holding * pack.size * (demand.length - i));
                bought.set(`x${i}_${k}`, pack.size);
            });
            cost.set(`y${i}`, delivery[i]!);
            const amount = packs.map((pack, k) => [`x${i}_${k}`, pack.size] as const);
            rows.push({ terms: new Map([...amount, [`y${i}`, -most * 2]]), relation: '<=', bound: 0 });
            const uses = weeks.filter(j => j >= i && j < i + keeps).map(j => [`z${i}_${j}`, -1] as const);
            rows.push({ terms: new Map([...amount, ...uses]), relation: '>=', bound: 0 });
        }
        weeks.forEach(j => {
            const sources = from.filter(i => i <= j && j < i + keeps).map(i => [`z${i}_${j}`, 1] as const);
            if (sources.length > 0) rows.push({ terms: new Map(sources), relation: '=', bound: demand[j]! });
        });
        return { aims: [cost, bought], rows, whole: [...bought.keys()], yesNo: from.map(i => `y${i}`) };
    }

    function compare(cases: fc.Arbitrary<Case>, numRuns: number): void {
        let covered = 0;
        fc.assert(fc.property(cases, one => {
            const varies = one.delivery.some(charge => charge !== one.delivery[0]);
            const plan = planLots({
                demand: big(one.demand), packs: one.packs, keepsWeeks: one.keeps, mayOrder: one.mayOrder,
                delivery: varies ? big(one.delivery) : BigInt(one.delivery[0]!), holding: BigInt(one.holding)
            });
            if (plan.uncovered.length > 0) return;
            covered++;
            const [cost, bought] = solveInOrder(highs, program(one));
            // What is held is all that was bought, from its week on, less all that was used, from its week on: the second is the same for every plan.
            const used = one.holding * one.demand.reduce((sum, d, j) => sum + d * (one.demand.length - j), 0);
            expect([plan.exact, Number(plan.cost), plan.orders.reduce((sum, order) => sum + Number(order.bought), 0)]).toEqual([true, cost! - used, bought]);
        }), { numRuns, seed: 20_260_914 });
        expect(covered).toBeGreaterThan(numRuns / 3);
    }

    const cases = (weeks: number, more: { keeps: fc.Arbitrary<number>; charge: fc.Arbitrary<number[]>; holding: fc.Arbitrary<number>; all: boolean }): fc.Arbitrary<Case> => fc.record({
        demand: fc.array(fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 20 })), { minLength: weeks, maxLength: weeks }),
        packs: fc.array(fc.record({ size: fc.integer({ min: 3, max: 30 }), cost: fc.integer({ min: 10, max: 60 }) }), { minLength: 1, maxLength: 3 }),
        keeps: more.keeps, delivery: more.charge, holding: more.holding,
        mayOrder: more.all ? fc.constant(new Array<boolean>(weeks).fill(true)) : fc.array(fc.boolean(), { minLength: weeks, maxLength: weeks }).map(([, ...rest]) => [true, ...rest])
    });
    const charge = (weeks: number, ...charges: number[]) => fc.constantFrom(...charges).map(one => new Array<number>(weeks).fill(one));

    test('what keeps for ever, and what keeps some weeks', () => {
        compare(cases(5, { keeps: fc.integer({ min: 1, max: 5 }), charge: charge(5, 0), holding: fc.constant(0), all: true }), 30);
    }, patience);
    test('with a charge for each order', () => {
        compare(cases(6, { keeps: fc.integer({ min: 1, max: 6 }), charge: charge(6, 5, 30, 80), holding: fc.constant(0), all: true }), 30);
    }, patience);
    test('with weeks in which nothing can come', () => {
        compare(cases(6, { keeps: fc.integer({ min: 2, max: 6 }), charge: charge(6, 0, 25), holding: fc.constant(0), all: false }), 40);
    }, patience);
    test('with charges that vary and holding costs', () => {
        compare(cases(5, { keeps: fc.constant(5), charge: fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 5, maxLength: 5 }), holding: fc.integer({ min: 0, max: 2 }), all: true }), 30);
    }, patience);
});
