import { describe, expect, test } from 'vitest';
import { mayBeSmallPart } from '@haversack/language/facts/small-parts';

// 16 CFR 1501.4: a cylinder 1.25 in wide, 1 to 2.25 in deep on a slanted bottom. The vectors are geometry in that ideal cylinder:
// a ball of up to 1.25 in fits; a cube does not when the diagonal of its face is over 1.25 in; a rod does not when it is longer
// than the longest chord, sqrt(1.25^2 + 2.25^2) = 2.574 in.
describe('the small-parts cylinder of 16 CFR 1501.4', () => {
    test.each([
        [[1.2], true], [[1.25], true], [[1.3], false],
        [[0.8, 0.8, 0.8], true], [[1, 1, 1], false],
        [[1.8, 0.25, 0.25], true], [[3, 0.25, 0.25], false], [[0.25, 1.8], true], [[0.25, 3], false]
    ])('%j inches: %s', (sides, fits) => expect(mayBeSmallPart(sides, 'in')).toBe(fits));

    test('the same in other units, and never where the size is not known', () => {
        expect(mayBeSmallPart([31.75], 'mm')).toBe(true);
        expect(mayBeSmallPart([3.3], 'cm')).toBe(false);
        expect(mayBeSmallPart([1, 1, 1], 'g')).toBe(false);
        expect(mayBeSmallPart([1, 1, 1], 'span')).toBe(false);
        expect(mayBeSmallPart([], 'mm')).toBe(false);
        expect(mayBeSmallPart([0, 1, 1], 'mm')).toBe(false);
    });
});
