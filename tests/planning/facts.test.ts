import { describe, expect, test } from 'vitest';
import { cautionKind, cautionKinds } from '@haversack/language/facts/cautions';
import { unitNamed, units } from '@haversack/language/facts/units';
import { readExact } from '../../server/planning/exact.js';

describe('units', () => {
    test('those of the language, each once', () => {
        expect(units.map(u => u.symbol)).toEqual(
            ['g', 'kg', 'oz', 'lb', 'ml', 'l', 'fl oz', 'cup', 'pint', 'quart', 'gallon', 'mm', 'cm', 'm', 'in', 'ft', 'yd', 'sheet']);
    });
    test('no spelling stands for two units, and each is found however it is written', () => {
        const spellings = units.flatMap(u => [...new Set([u.symbol, u.plural, ...u.spellings])]);
        expect(new Set(spellings).size).toBe(spellings.length);
        for (const u of units) for (const word of [u.symbol, u.plural, ...u.spellings]) expect(unitNamed(` ${word.toUpperCase().replace(' ', '  ')} `)).toBe(u);
        expect(unitNamed('furlong')).toBeUndefined();
    });
    test('factors are exact numbers above nothing', () => {
        for (const u of units) expect(readExact(u.factor)?.gt(0)).toBe(true);
    });
});

describe('cautions', () => {
    test('the kinds a writer may name', () => {
        expect(cautionKinds.map(c => c.kind)).toEqual(
            ['small-parts', 'small-ball', 'magnet', 'button-cell', 'balloon', 'sharp', 'hot', 'glass', 'allergen', 'chemical']);
        expect(cautionKind('magnet')?.title).toBe('Magnets');
        expect(cautionKind('dragon')).toBeUndefined();
    });
    test('each is a whole sentence and defers to local rules, labels and qualified advice', () => {
        for (const kind of cautionKinds) {
            expect(kind.text).toMatch(/^[A-Z].*\.$/);
            for (const first of ['Local rules', 'product labels', 'qualified advice']) expect(kind.deferral).toContain(first);
        }
    });
    // 16 CFR 1501.2 and 1500.19: the age bands of the small-parts and balloon rules.
    test('the ages of the published rules', () => {
        expect(cautionKind('small-parts')?.text).toContain('under three');
        expect(cautionKind('small-ball')?.text).toContain('under three');
        expect(cautionKind('balloon')?.text).toContain('under eight');
    });
});
