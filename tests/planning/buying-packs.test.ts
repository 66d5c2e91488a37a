import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LargeNeeds } from '../../server/planning/buying/large-needs.js';
import { readOffers } from '../../server/planning/buying/offers.js';
import { PackTable } from '../../server/planning/buying/pack-table.js';
import { PackSolver } from '../../server/planning/buying/pack-solver.js';
import type { PackOffer, Purchase } from '../../server/planning/buying/packs.js';
import { cheapestPacks } from '../../server/planning/buying/packs.js';
import { RemainderPaths } from '../../server/planning/buying/remainder-paths.js';
import { bestPacks } from './buying-exhaustive.js';

const packs = (sizes: number, costs: number, most = 4) =>
    fc.array(fc.record({ size: fc.integer({ min: 1, max: sizes }), cost: fc.integer({ min: 0, max: costs }) }), { minLength: 1, maxLength: most });
const some = packs(50, 40);
const need = fc.bigInt({ min: 0n, max: 3000n });
const sizeOf = (found: Purchase, offered: readonly PackOffer[]) => found.counts.reduce((sum, n, i) => sum + BigInt(n) * BigInt(offered[i]!.size), 0n);

describe('whatever is offered', () => {
    test('the need is covered, and the purchase is what it says', () => {
        fc.assert(fc.property(need, some, (n, offered) => {
            const found = cheapestPacks(n, offered)!;
            expect(found.bought >= n).toBe(true);
            expect(found.bought).toBe(sizeOf(found, offered));
            expect(found.cost).toBe(found.counts.reduce((sum, count, i) => sum + BigInt(count) * BigInt(offered[i]!.cost), 0n));
        }));
    });
    test('no pack of it can be left out, unless it costs nothing', () => {
        fc.assert(fc.property(need, packs(50, 40).map(all => all.map(pack => ({ ...pack, cost: pack.cost + 1 }))), (n, offered) => {
            const found = cheapestPacks(n, offered)!;
            found.counts.forEach((count, i) => { if (count > 0) expect(found.bought - BigInt(offered[i]!.size) < n).toBe(true); });
        }));
    });
    test('more need is never cheaper, another pack never makes it dearer, and the order of packs does not matter', () => {
        fc.assert(fc.property(need, need, some, some, (n, more, offered, others) => {
            const found = cheapestPacks(n, offered)!;
            expect(cheapestPacks(n + more, offered)!.cost! >= found.cost!).toBe(true);
            expect(cheapestPacks(n, [...offered, ...others])!.cost! <= found.cost!).toBe(true);
            const turned = cheapestPacks(n, [...offered].reverse())!;
            expect([turned.cost, turned.bought]).toEqual([found.cost, found.bought]);
            expect(cheapestPacks(n, offered)).toEqual(found);
        }));
    });
    test('in units a thousand times as small it is the same purchase', () => {
        fc.assert(fc.property(need, some, (n, offered) => {
            const small = cheapestPacks(n * 1000n, offered.map(pack => ({ size: pack.size * 1000, cost: pack.cost * 7 })))!;
            expect(small.counts).toEqual(cheapestPacks(n, offered)!.counts);
        }));
    });
});

describe('ties', () => {
    test.each([
        ['least over before fewest packs', 30n, [{ size: 10, cost: 5 }, { size: 40, cost: 15 }], [3, 0]],
        ['fewest packs', 40n, [{ size: 10, cost: 5 }, { size: 20, cost: 10 }], [0, 2]],
        ['cost before what is left over', 30n, [{ size: 10, cost: 5 }, { size: 40, cost: 14 }], [0, 1]],
        ['of the same packs the first', 30n, [{ size: 10, cost: 5 }, { size: 10, cost: 5 }], [3, 0]],
        ['of the same size the cheaper', 30n, [{ size: 10, cost: 5 }, { size: 10, cost: 4 }], [0, 3]],
        ['packs without a price stay out', 30n, [{ size: 30 }, { size: 20, cost: 500 }], [0, 2]],
        ['without any price, least over', 44n, [{ size: 24 }, { size: 10 }], [1, 2]],
        ['without any price, fewest packs', 48n, [{ size: 12 }, { size: 24 }], [0, 2]],
        ['a free pack', 30n, [{ size: 7, cost: 0 }, { size: 10, cost: 5 }], [5, 0]],
        ['nothing needed', 0n, [{ size: 7, cost: 3 }, { size: 10, cost: 5 }], [0, 0]]
    ])('%s', (_, n, offered: PackOffer[], counts) => expect(cheapestPacks(n, offered)?.counts).toEqual(counts));
    test('no price, no cost', () => expect(cheapestPacks(10n, [{ size: 4 }])).toEqual({ counts: [3], bought: 12n, exact: true }));
});

describe('odd input', () => {
    test.each([[[]], [[{ size: 0 }]], [[{ size: -5, cost: 3 }]], [[{ size: NaN }]], [[{ size: 1.5, cost: 2 }]], [[{ size: Infinity }]]])('%j are no packs', offered => {
        expect(cheapestPacks(5n, offered)).toBeUndefined();
    });
    test('bad packs do not count, bad prices are none', () => {
        expect(cheapestPacks(5n, [{ size: 0, cost: 0 }, { size: 3, cost: 10 }, { size: 5, cost: -1 }, { size: 5, cost: NaN }])).toEqual({ counts: [0, 2, 0, 0], bought: 6n, cost: 20n, exact: true });
    });
    test('less than nothing is nothing', () => expect(cheapestPacks(-5n, [{ size: 3, cost: 1 }])).toEqual({ counts: [0], bought: 0n, cost: 0n, exact: true }));
    test('a need of any size is covered in any case', () => {
        const sizes = fc.integer({ min: 1, max: 10 ** 6 });
        const offers = fc.array(fc.record({ size: sizes, cost: fc.option(fc.integer({ min: 0, max: 10 ** 7 }), { nil: undefined }) }), { minLength: 1, maxLength: 200 });
        fc.assert(fc.property(fc.bigInt({ min: 0n, max: 10n ** 15n }), offers, (n, offered) => {
            const found = cheapestPacks(n, offered)!;
            expect(found.bought >= n).toBe(true);
            expect(found.bought).toBe(sizeOf(found, offered));
        }), { numRuns: 6, seed: 5 });
    });
    test('sizes and prices beyond every table', () => {
        const offered = [{ size: 10n ** 15n + 7n, cost: 10n ** 18n }, { size: 10n ** 15n + 37n, cost: 10n ** 18n + 1n }, { size: 3n, cost: 10n ** 4n }];
        const found = cheapestPacks(10n ** 30n, offered)!;
        expect(found.bought >= 10n ** 30n).toBe(true);
    });
    test('10^12 in packs of 24 and 100: the large ones and what mends the end', () => {
        const found = cheapestPacks(10n ** 12n + 1n, [{ size: 24, cost: 320 }, { size: 100, cost: 900 }])!;
        expect(found).toEqual({ counts: [1, 10 ** 10], bought: 10n ** 12n + 24n, cost: 9n * 10n ** 12n + 320n, exact: true });
    });
});

/** The ways for large needs, on small ones where trying everything is possible. */
describe('large needs', () => {
    const weighed = (counts: readonly (number | bigint)[], offered: readonly PackOffer[]) => {
        const sum = (by: (pack: PackOffer) => number) => counts.reduce<number>((total, n, i) => total + Number(n) * by(offered[i]!), 0);
        return [sum(pack => Number(pack.cost ?? 0)), sum(pack => Number(pack.size)), sum(() => 1)];
    };
    test('the table repeats itself: every amount as in a table without that', () => {
        fc.assert(fc.property(packs(12, 20), offered => {
            const offers = readOffers(offered)!;
            const short = PackTable.of(offers, 10n ** 9n)!;
            const cost = [0];
            for (let x = 1; x <= 600; x++) cost.push(Math.min(Infinity, ...offers.kinds.map(kind => (cost[x - Number(kind.size)] ?? Infinity) + Number(kind.cost))));
            expect(cost.map((_, x) => short.cost(x))).toEqual(cost);
        }));
    });
    /** Prices near one another for their size, so that the best mixture is not plain. */
    const fair = packs(15, 3, 3).map(all => all.map(pack => ({ size: pack.size, cost: 4 * pack.size + pack.cost })));
    test('paths over remainders where they fit into the need, else packs that are not too dear', () => {
        const tried = { exact: 0, other: 0 };
        fc.assert(fc.property(fc.oneof(fair, packs(15, 20, 3)), fc.integer({ min: 1, max: 60 }), (offered, n) => {
            const offers = readOffers(offered)!;
            const need = BigInt(Math.ceil(n / Number(offers.unit)));
            const path = RemainderPaths.of(offers)!.cover(need);
            const best = bestPacks(n, offered);
            if (path?.exact) expect(weighed(path.counts, offered)).toEqual(best);
            tried[path?.exact ? 'exact' : 'other']++;
            const found = new LargeNeeds(offers).cover(need);
            expect([found.exact, ...weighed(found.counts, offered)]).toEqual([true, ...best]);
        }), { numRuns: 1500 });
        expect([tried.exact > 500, tried.other > 50]).toEqual([true, true]);
    });
    test('depth first, where prices are too high for everything else', () => {
        let tried = 0;
        fc.assert(fc.property(fair, fc.integer({ min: 1, max: 60 }), (offered, n) => {
            // One more on each pack keeps the prices from sharing a factor, and settles ties of the rest by the number of packs.
            const dear = readOffers(offered.map(pack => ({ size: pack.size, cost: BigInt(pack.cost) * 10n ** 17n + 1n })))!;
            if (PackTable.of(dear, 60n) || RemainderPaths.of(dear)) return;
            tried++;
            const near = offered.map(pack => ({ size: pack.size, cost: pack.cost * 1000 + 1 }));
            const found = new PackSolver(dear).cover(BigInt(n));
            expect([found.exact, ...weighed(found.counts, near)]).toEqual([true, ...bestPacks(n, near)]);
        }), { numRuns: 400 });
        expect(tried).toBeGreaterThan(80);
    });
    test('what is not proven says so', () => {
        const offered = [1_073_741_827, 1_300_000_033, 1_700_000_009, 1_900_000_043].map((size, i) => ({ size, cost: 1_000_000_007 + i * 333_333_333 }));
        const found = cheapestPacks(10n ** 20n, offered)!;
        expect([found.exact, found.bought >= 10n ** 20n]).toEqual([false, true]);
    });
});
