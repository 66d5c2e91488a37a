/** WCAG 2.2: relative luminance and contrast ratio as defined there; 4.5:1 for text (1.4.3), 3:1 for drawn marks (1.4.11). */
import { dark, light, print, type Palette } from '@haversack/server/brief/look/palette';
import { describe, expect, it } from 'vitest';

function luminance(colour: string): number {
    const [red = 0, green = 0, blue = 0] = [1, 3, 5].map(at => {
        const channel = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
        return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(first: string, second: string): number {
    const [dim = 0, bright = 0] = [luminance(first), luminance(second)].sort((a, b) => a - b);
    return (bright + 0.05) / (dim + 0.05);
}

const pairs: [keyof Palette, keyof Palette, number][] = [
    ['ink', 'paper', 4.5], ['quiet', 'paper', 4.5], ['link', 'paper', 4.5],
    ['rule', 'paper', 3], ['rule', 'ground', 3], ['thread', 'ground', 3], ['thread', 'paper', 3], ['focus', 'paper', 3]
];

describe('contrast', () => {
    // The two ends of the scale, from the definition.
    it('computes as WCAG does', () => {
        expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
        expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
    });
    describe.each(Object.entries({ light, dark, print }))('%s', (_name, palette) => {
        it.each(pairs)('%s on %s', (mark, ground, least) => expect(contrast(palette[mark], palette[ground])).toBeGreaterThanOrEqual(least));
    });
});
