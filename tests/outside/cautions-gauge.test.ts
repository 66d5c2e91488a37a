import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gaugeAnswer, isSmallBall, type GaugeAnswer } from '@haversack/language/facts/small-parts';
import { numbers, roomFound } from './gauge-by-trial.js';

const inInches = (...sides: number[]): GaugeAnswer | undefined => gaugeAnswer(sides.map(String), 'in');
const gauge = 'check with a real gauge';

// 16 CFR 1501.4, figure 1: inner diameter 1.25 in, depth from 1 to 2.25 in, English dimensions govern; the slant of 45 degrees: Canada Toys
// Regulations SOR/2011-17, Schedule 1. The vectors are worked out by hand in that ideal cylinder.
describe('the small-parts cylinder of 16 CFR 1501.4', () => {
    test.each([
        // A ball fits to 1.25 in: on the slant its top is still 0.116 in below the rim.
        ['ball', [1.2], 'fits'], ['ball, the limit itself', [1.25], 'fits'], ['ball', [1.3], 'does not fit'],
        // A cube does not where the diagonal of its face is over 1.25 in: 1.0 gives 1.414, 0.8 gives 1.131 over a depth of 1.225 at least.
        ['cube', [0.8, 0.8, 0.8], 'fits'], ['cube', [1, 1, 1], 'does not fit'],
        // A rod: the longest chord is sqrt(1.25^2 + 2.25^2) = 2.574 in; 1.8 x 0.25 stands by the deep wall, where the depth is 2.0.
        ['rod', [0.25, 3], 'does not fit'], ['rod', [0.25, 1.8], 'fits'], ['hair-thin rod on the longest chord', [0.0001, 2.57], 'fits'], ['hair-thin rod beyond it', [0.0001, 2.58], 'does not fit'],
        ['box of the rod', [1.8, 0.25, 0.25], 'fits']
    ] as const)('%s %j: %s', (_, sides, answer) => expect(inInches(...sides)).toBe(answer));

    test('between what is seen inside and what cannot be, a real gauge decides', () => {
        expect(inInches(1.2, 1.95, 0.1)).toBe(gauge);
        expect(inInches(0.8, 0.8, 1.4)).toBe(gauge);
    });

    // The exact conversions of the inch figures: 31.75 and 57.15 mm, not the rounded 31.7 and 57.1 mm of the regulation's text.
    test('the limit itself in millimetres and centimetres', () => {
        expect(gaugeAnswer(['31.75'], 'mm')).toBe('fits');
        expect(gaugeAnswer(['3.175'], 'cm')).toBe('fits');
        expect(gaugeAnswer(['31.76'], 'mm')).toBe('does not fit');
    });
});

// 16 CFR 1500.18(a)(17): a ball that passes a hole of 1.75 in (44.4 mm) under its own weight; dice are no balls.
test.each([[['1.75'], 'in', true], [['1.76'], 'in', false], [['44.4'], 'mm', true], [['44.45'], 'mm', true], [['44.5'], 'mm', false], [['16', '16', '16'], 'mm', false], [['16', '16'], 'mm', false]] as const)(
    'a small ball, %j %s: %s', (sides, unit, small) => expect(isSmallBall(sides, unit)).toBe(small));

/** Sides in thousandths of an inch, so that every number is short as text. */
const side = fc.integer({ min: 20, max: 2700 }).map(n => n / 1000);
const box = fc.tuple(side, side, side);
const order: Record<GaugeAnswer, number> = { fits: 0, [gauge]: 1, 'does not fit': 2 };

describe('any box', () => {
    test('however its sides are written down: the same answer', () => {
        fc.assert(fc.property(box, ([a, b, c]) => {
            expect(new Set([[a, b, c], [a, c, b], [b, a, c], [b, c, a], [c, a, b], [c, b, a]].map(sides => inInches(...sides))).size).toBe(1);
        }));
    });

    test('a rod is the box with that square', () => {
        fc.assert(fc.property(side, side, (square, length) => {
            expect(inInches(square, length)).toBe(inInches(square, square, length));
        }));
    });

    test('grown, never goes from what does not fit to less', () => {
        fc.assert(fc.property(box, fc.tuple(fc.nat(300), fc.nat(300), fc.nat(300)), (sides, more) => {
            const grown = sides.map((length, i) => (Math.round(length * 1000) + more[i]!) / 1000);
            expect(order[inInches(...grown)!]).toBeGreaterThanOrEqual(order[inInches(...sides)!]);
        }), { numRuns: 500 });
    });

    // 1 in = 25.4 mm = 2.54 cm = 1/12 ft exactly (NIST SP 811, appendix B).
    test('in another unit of length: the same answer', () => {
        fc.assert(fc.property(box, sides => {
            const thousandths = sides.map(length => Math.round(length * 1000));
            const answer = inInches(...sides);
            expect(gaugeAnswer(thousandths.map(n => `${n * 254}/10000`), 'mm')).toBe(answer);
            expect(gaugeAnswer(thousandths.map(n => `${n * 254}/100000`), 'cm')).toBe(answer);
            expect(gaugeAnswer(thousandths.map(n => `${n}/12000`), 'ft')).toBe(answer);
        }));
    });
});

// Against trial: 60 boxes turned about in space. Each that "fits" is found a place (made a thousandth smaller, since a search only comes near a touch), none that "does not fit" ever is.
test('boxes by trial agree', () => {
    const random = numbers(1501);
    const seen: Record<GaugeAnswer, number> = { fits: 0, [gauge]: 0, 'does not fit': 0 };
    for (let i = 0; i < 60; i++) {
        const sides = [0.05 + random() * 1.1, 0.05 + random() * 1.1, 0.2 + random() * 2.6].map(length => Math.round(length * 1000) / 1000) as [number, number, number];
        const answer = inInches(...sides)!;
        seen[answer]++;
        if (answer === gauge) continue;
        const [a, b, c] = sides;
        if (answer === 'fits') expect(roomFound([a * 0.999, b * 0.999, c * 0.999], i), `${sides.join(' x ')} in`).toBeGreaterThanOrEqual(0);
        else expect(roomFound(sides, i, 6), `${sides.join(' x ')} in`).toBeLessThan(0);
    }
    expect(seen.fits).toBeGreaterThan(25);
    expect(seen['does not fit']).toBeGreaterThan(12);
    // A gauge that is asked for too often is asked for by nobody.
    expect(seen[gauge]).toBeLessThan(15);
}, 60_000);
