/** Numbers as blocks, against constructions published in studies of base-ten understanding. */
import { pictureInWords } from '@haversack/language/pictures/read-picture';
import { expect, test } from 'vitest';
import { drawn, withClass } from '../brief/read-drawing.js';

const blocks = (value: number): { tens: number; ones: number } => {
    const groups = drawn({ kind: 'base-ten', value }).filter(({ name }) => name === 'g');
    return { tens: withClass(groups, 'ten').length, ones: withClass(groups, 'one').length };
};

// Miura, Kim, Chang and Okamoto (1988), Child Development 59, 1445-1450: the canonical base-10 construction of 42 is four ten-blocks and two unit-blocks.
test('42 is four tens and two ones', () => {
    expect(blocks(42)).toEqual({ tens: 4, ones: 2 });
    expect(pictureInWords({ kind: 'base-ten', value: 42 })).toContain('4 tens and 2 ones');
});

// Zhang and Okamoto (2017), Journal of Numerical Cognition 2(3), 190-201, doi 10.5964/jnc.v2i3.69: 37 as three 10-blocks and seven 1-blocks.
test('37 is three tens and seven ones', () => {
    expect(blocks(37)).toEqual({ tens: 3, ones: 7 });
    expect(pictureInWords({ kind: 'base-ten', value: 37 })).toContain('3 tens and 7 ones');
});

// Quantities as fives and tens: common practice, no source.
test.each([[6, '5 and 1'], [7, '5 and 2'], [8, '5 and 3'], [9, '5 and 4'], [13, '10 and 3'], [16, '10, 5 and 1'], [18, '10, 5 and 3']])('%i on a ten-frame is %s', (count, parts) => {
    expect(pictureInWords({ kind: 'ten-frame', count })).toContain(`: ${count}, as ${parts};`);
});
