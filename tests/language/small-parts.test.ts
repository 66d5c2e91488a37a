import { describe, expect, test } from 'vitest';
import { gaugeAnswer, isSmallBall } from '@haversack/language/facts/small-parts';
import { sidesInInches } from '@haversack/language/facts/size-in-inches';

// The geometry itself is checked in tests/outside/cautions-gauge.test.ts.
describe('sizes as people write them', () => {
    test('fractions and mixed numbers', () => {
        expect(sidesInInches(['1 1/2', '3/4'], 'in')).toEqual([0.75, 1.5]);
        expect(gaugeAnswer(['1 1/4'], 'in')).toBe('fits');
        expect(gaugeAnswer(['1 1/3'], 'in')).toBe('does not fit');
        expect(sidesInInches(['19.05', '25.4', '10'], 'mm')).toEqual([10 / 25.4, 0.75, 1]);
    });

    test.each([
        [['1', '1', '1'], 'g'], [['1', '1', '1'], 'span'], [[], 'mm'], [['0', '1', '1'], 'mm'], [['1/0'], 'mm'], [['-1'], 'mm'], [['wide'], 'mm'],
        [['1.5 1/2'], 'mm'], [['9'.repeat(500)], 'mm'], [['1', '1', '1', '1'], 'mm']
    ])('%j %s: nothing is known', (sides, unit) => {
        expect(gaugeAnswer(sides, unit)).toBeUndefined();
        expect(isSmallBall(sides, unit)).toBe(false);
    });
});
