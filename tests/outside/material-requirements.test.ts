/**
 * The ledger's record against published material-requirements tables. Week 1 stands first. Where one page gave only the inputs, the rest
 * was worked out from them by hand or by a script written apart from this engine, and says so.
 */
import { describe, expect, test } from 'vitest';
import { materialRequirements, type RequirementsInput } from '../../server/planning/supplies/material-requirements.js';

const big = (numbers: readonly number[]): bigint[] => numbers.map(BigInt);
const plain = (numbers: readonly bigint[]): number[] => numbers.map(Number);

function record(gross: number[], onHand: number, more: Omit<Partial<RequirementsInput>, 'gross' | 'onHand' | 'scheduled'> & { scheduled?: number[] } = {}) {
    const { scheduled, ...rest } = more;
    const result = materialRequirements({ gross: big(gross), onHand: BigInt(onHand), scheduled: scheduled && big(scheduled), ...rest });
    const { onHand: after, net, receipts, releases, overdue } = result;
    return { onHand: plain(after), net: plain(net), receipts: plain(receipts), releases: plain(releases), overdue: Number(overdue) };
}

/**
 * "Item C, seat subassembly" of the material-requirements chapter in Krajewski, Ritzman and Malhotra, Operations Management: the input
 * rows as in a published set of the chapter's slides (its figure 1.5); the completed table from memory, and confirmed by a script.
 */
describe('item C, seat subassembly (Krajewski, Ritzman and Malhotra; results from memory)', () => {
    const gross = [150, 0, 0, 120, 0, 150, 120, 0];
    const given = { scheduled: [230, 0, 0, 0, 0, 0, 0, 0], leadWeeks: 2 };
    test('fixed order quantity of 230: a pack of 230', () => {
        expect(record(gross, 37, { ...given, lotSizing: () => ({ packs: [{ size: 230n }] }) })).toEqual({
            onHand: [117, 117, 117, 227, 227, 77, 187, 187], net: [0, 0, 0, 3, 0, 0, 43, 0],
            receipts: [0, 0, 0, 230, 0, 0, 230, 0], releases: [0, 230, 0, 0, 230, 0, 0, 0], overdue: 0
        });
    });
    test('lot for lot', () => {
        expect(record(gross, 37, given)).toEqual({
            onHand: [117, 117, 117, 0, 0, 0, 0, 0], net: [0, 0, 0, 3, 0, 150, 120, 0],
            receipts: [0, 0, 0, 3, 0, 150, 120, 0], releases: [0, 3, 0, 150, 120, 0, 0, 0], overdue: 0
        });
    });
    test('periodic order quantity, three weeks: single pieces, orders for the first week that lacks and every third after it', () => {
        const mayOrder = gross.map((_, week) => week === 3 || week === 6);
        expect(record(gross, 37, { ...given, lotSizing: () => ({ packs: [{ size: 1n }], mayOrder }) })).toMatchObject({
            onHand: [117, 117, 117, 150, 150, 0, 0, 0], receipts: [0, 0, 0, 153, 0, 0, 120, 0], releases: [0, 153, 0, 0, 120, 0, 0, 0]
        });
    });
    test('fixed order quantity of 230 with a safety stock of 80', () => {
        expect(record(gross, 37, { ...given, safety: 80n, lotSizing: () => ({ packs: [{ size: 230n }] }) })).toMatchObject({
            onHand: [117, 117, 117, 227, 227, 307, 187, 187], releases: [0, 230, 0, 230, 0, 0, 0, 0]
        });
    });
});

/**
 * "Aldershot Manufacturing", a solved exercise (document 521630993 of a site of lecture papers): lot for lot, lead time two weeks
 * throughout; a chair is one seat, one back and four legs. The page read shows weeks 1 to 4; weeks 5 to 8 by a script.
 */
describe('Aldershot Manufacturing, two levels', () => {
    const chair = record([150, 0, 70, 0, 175, 0, 90, 60], 260, { leadWeeks: 2 });
    test('the chair', () => {
        expect(chair.onHand).toEqual([110, 110, 40, 40, 0, 0, 0, 0]);
        expect(chair.releases).toEqual([0, 0, 135, 0, 90, 60, 0, 0]);
    });
    test('seat: gross from the releases of the chair', () => {
        const seat = record(chair.releases, 60, { scheduled: [50, 0, 0, 0, 0, 0, 0, 0], leadWeeks: 2 });
        expect(seat.onHand).toEqual([110, 110, 0, 0, 0, 0, 0, 0]);
        expect(seat.releases).toEqual([25, 0, 90, 60, 0, 0, 0, 0]);
    });
    test('back', () => {
        expect(record(chair.releases, 40, { scheduled: [10, 0, 0, 0, 0, 0, 0, 0], leadWeeks: 2 }).releases).toEqual([85, 0, 90, 60, 0, 0, 0, 0]);
    });
    test('legs: a release in the first week is an order of today', () => {
        const gross = chair.releases.map(amount => amount * 4);
        expect(gross).toEqual([0, 0, 540, 0, 360, 240, 0, 0]);
        expect(record(gross, 80, { leadWeeks: 2 }).releases).toEqual([460, 0, 360, 240, 0, 0, 0, 0]);
    });
});

/**
 * Heizer, Render and Munson, Operations Management, 12th edition, chapter 14, problem 14.3: the results as in a published solutions manual
 * (p. 226); the structure of the bracket from memory, and the one reading that gives all sixteen numbers.
 */
describe('bracket (Heizer, Render and Munson, problem 14.3; structure from memory)', () => {
    const netOf = (gross: number, onHand = 0): number => record([gross], onHand).net[0]!;
    const explode = (net: (gross: number, onHand?: number) => number, stock: { base: number; clamp: number }) => {
        const base = net(50, stock.base);
        const spring = net(50 * 2);
        const clamp = net(50 * 4 + base, stock.clamp);
        const housing = net(base * 2);
        return { base, spring, clamp, handle: net(clamp), casting: net(clamp), housing, bearing: net(housing * 2), shaft: net(housing) };
    };
    test('gross', () => {
        expect(explode(netOf, { base: 0, clamp: 0 })).toEqual({ base: 50, spring: 100, clamp: 250, handle: 250, casting: 250, housing: 100, bearing: 200, shaft: 100 });
    });
    test('net: each level is netted before the next is counted', () => {
        expect(explode(netOf, { base: 25, clamp: 100 })).toEqual({ base: 25, spring: 100, clamp: 125, handle: 125, casting: 125, housing: 50, bearing: 100, shaft: 50 });
    });
});

describe('single records', () => {
    test('D: a solved exercise (tutorsglobe 51623292 gives the inputs; the rest by a script)', () => {
        const { onHand, net, releases } = record([41, 44, 84, 42, 84, 86, 7, 18, 49, 30], 120, { leadWeeks: 2 });
        expect(onHand).toEqual([79, 35, 0, 0, 0, 0, 0, 0, 0, 0]);
        expect(net).toEqual([0, 0, 49, 42, 84, 86, 7, 18, 49, 30]);
        expect(releases).toEqual([49, 42, 84, 86, 7, 18, 49, 30, 0, 0]);
    });
    test('E: a solved exercise (goquestion 29764431 gives the inputs; the rest by a script)', () => {
        expect(record([0, 100, 80, 15], 100, { scheduled: [75, 0, 0, 0], leadWeeks: 1 })).toEqual({
            onHand: [175, 75, 0, 0], net: [0, 0, 5, 15], receipts: [0, 0, 5, 15], releases: [0, 5, 15, 0], overdue: 0
        });
    });
    const tenth = { n: 1n, d: 10n };
    const fifth = { n: 1n, d: 5n };
    test('F: a loss of 10 % starts with 112 for 100 (Oracle Cloud SCM 24C, "How Shrinkage Is Calculated", 111.11; whole things are ours); a spare of 10 % marks up to 110', () => {
        expect(record([100], 0, { loss: tenth, whole: 1n }).receipts).toEqual([112]);
        expect(record([100], 0, { spare: tenth, whole: 1n }).receipts).toEqual([110]);
        // 1.1 x 50 is 55.00000000000001 in floating point.
        expect(record([50], 0, { spare: tenth, whole: 1n }).receipts).toEqual([55]);
    });
    test('G: 20 % lost, 60 on order: 65 more (nagagechou.blogspot, 2012)', () => {
        expect(record([100], 0, { scheduled: [60], loss: fifth, whole: 1n }).receipts).toEqual([65]);
    });
    test('H: 20 % lost, 40 on order: 85 more (applearn.blogspot, whose "divided by 0.2" is a slip for 0.8)', () => {
        expect(record([100], 0, { scheduled: [40], loss: fifth, whole: 1n }).receipts).toEqual([85]);
    });
    test('what has to be ordered before the first week is told apart', () => {
        expect(record([30, 10, 5], 0, { leadWeeks: 2 })).toMatchObject({ overdue: 40, releases: [5, 0, 0] });
    });
});
