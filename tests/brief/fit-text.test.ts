import { fitLines, textWidth } from '@haversack/server/brief/drawing/fit-text';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

describe('text in lines', () => {
    it('keeps every word where there is room, in order', () => {
        expect(fitLines('How long is a stride?', 1000, 11, 1)).toEqual(['How long is a stride?']);
        expect(fitLines('How long is a stride?', 60, 11, 9).join(' ')).toBe('How long is a stride?');
        expect(fitLines('', 60, 11, 3)).toEqual([]);
    });

    it('says with an ellipsis that something is left out', () => {
        const lines = fitLines('Long, longer, longest: measuring with tapes and strings', 90, 11, 2);
        expect(lines).toHaveLength(2);
        expect(lines[1]).toMatch(/…$/);
    });

    it('breaks a word that is longer than a line, between letters and never inside one', () => {
        const pieces = fitLines('Donaudampfschifffahrt', 60, 11, 9);
        expect(pieces.join('').replaceAll('-', '')).toBe('Donaudampfschifffahrt');
        for (const piece of pieces.slice(0, -1)) expect(piece).toMatch(/^.{3,}-$/);
        expect(pieces.at(-1)!.length).toBeGreaterThanOrEqual(3);
        expect(fitLines('Catch-up', 40, 11, 3)).toEqual(['Catch-', 'up']);
        expect(fitLines('one-by-one', 50, 11, 3)).toEqual(['one-', 'by-one']);
        const families = '👩‍👧‍👦'.repeat(9);
        for (const line of fitLines(families, 40, 11, 20)) expect(line.replaceAll('👩‍👧‍👦', '').replace(/-$/, '')).toBe('');
    });

    it('never gives a line that is too wide, nor too many, whatever the text', () => {
        fc.assert(fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), fc.integer({ min: 30, max: 400 }), fc.integer({ min: 1, max: 5 }), (text, width, most) => {
            const lines = fitLines(text, width, 11, most);
            expect(lines.length).toBeLessThanOrEqual(most);
            for (const line of lines) expect(textWidth(line, 11)).toBeLessThanOrEqual(width + 1e-6);
            if (lines.every(line => !line.endsWith('…'))) expect(lines.join('').replace(/[\s-]/gu, '')).toBe(text.replace(/[\s-]/gu, ''));
        }));
    });
});
