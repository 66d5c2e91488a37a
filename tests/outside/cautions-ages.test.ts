/**
 * The ages at which the published labels begin and end, in whole years as a class declares them: 16 CFR 1500.19 (small parts, small
 * balls, marbles, balloons) and 16 CFR 1501.2 (under three). These are duties of makers and sellers; here they only decide when the brief reminds.
 */
import { describe, expect, test } from 'vitest';
import type { CautionFigures } from '@haversack/server/planning/figures';
import { planWeek } from '@haversack/server/planning/week';
import { consumable, course, klass, lesson, material, need, programme, range } from '../planning/sheets.js';

const sized = (...sides: string[]) => ({ size: { sides, unit: 'in', at: range() } });
const declaring = (kind: string) => ({ cautions: [{ kind, at: range() }] });

/** What the brief says of one thing in a class of these ages. */
function cautions(thing: ReturnType<typeof material>, from?: number, present: string[] = []): CautionFigures[] {
    const sheets = programme(thing, lesson('a', [need(thing.name, '1', 'pair')]), course('c', ['a']),
        klass('k', 'c', 4, { ages: from === undefined ? undefined : { from, at: range() }, present: present.map(who => ({ who, at: range() })) }));
    return planWeek(sheets, { week: 1 }).cautions;
}

/** "serious", "reminder", or nothing. */
const told = ([caution]: CautionFigures[]): string | undefined => caution && (caution.serious ? 'serious' : 'reminder');

describe('a small part by its size alone', () => {
    // 2y11m counts as 2, 3y0m as 3, 5y11m as 5, 6y0m as 6.
    test.each([[0, 'serious'], [2, 'serious'], [3, 'reminder'], [5, 'reminder'], [6, undefined], [8, undefined]])('the youngest are %i: %s', (from, expected) => {
        const found = cautions(material('cube', sized('0.8', '0.8', '0.8')), from);
        expect(told(found)).toBe(expected);
        if (expected) expect(found).toMatchObject([{ kind: 'small-parts', computed: expect.stringContaining('0.8 x 0.8 x 0.8 in') }]);
    });
    test('too large for the cylinder: not at any age', () => expect(cautions(material('cube', sized('1', '1', '1')), 2)).toEqual([]));
});

describe('a small ball by its size alone', () => {
    // 1.75 in passes the template of 16 CFR 1500.18(a)(17); banned under three, labelled from three to under eight.
    test.each([[2, 'serious'], [3, 'reminder'], [7, 'reminder'], [8, undefined]])('the youngest are %i: %s', (from, expected) => {
        const found = cautions(material('ball', sized('1.75')), from);
        expect(told(found)).toBe(expected);
        if (expected) expect(found).toMatchObject([{ kind: 'small-ball' }]);
    });
    test('larger than the hole: not at any age', () => expect(cautions(material('ball', sized('1.76')), 2)).toEqual([]));
    test('a die is no ball: it is a small part', () => expect(cautions(material('die', sized('0.6', '0.6', '0.6')), 7)).toEqual([]));
});

describe('balloons, as declared', () => {
    // 16 CFR 1500.19(b)(4): the label is for any age; children under eight can choke.
    test.each([[7, 'serious'], [8, 'reminder'], [14, 'reminder']])('the youngest are %i: %s', (from, expected) => expect(told(cautions(consumable('balloon', declaring('balloon')), from))).toBe(expected));
});

describe('magnets, as declared', () => {
    // 16 CFR 1262.2: hazardous is what fits the cylinder of 1501.4 and has a flux index of 50 kG2mm2 or more. The index is nothing that a lesson declares, and
    // magnets for schools are outside that rule, so each small magnet counts as strong; "500 but too big for the cylinder" stays what it was.
    test.each([2, 7, 14])('small enough to swallow: said at %i years too', from => {
        const [small] = cautions(material('disc', { ...declaring('magnet'), ...sized('0.5', '0.5', '0.1') }), from);
        expect(small).toMatchObject({ kind: 'magnet', text: expect.stringMatching(/^Small enough to swallow\. .*medical help at once/), computed: '0.5 x 0.5 x 0.1 in' });
    });
    test('too big for the cylinder, or of no known size: the usual caution', () => {
        for (const size of [sized('3', '0.6', '0.4'), {}]) {
            const [large] = cautions(material('bar', { ...declaring('magnet'), ...size }), 7);
            expect(large?.text).not.toContain('swallow.');
            expect(large?.computed).toBeUndefined();
        }
    });
});

test('button cells, as declared: serious for the under-threes, said at any age', () => {
    // 16 CFR 1263 is for things made for children of six and younger; whoever swallows one is harmed at any age.
    expect([2, 6, 12].map(from => told(cautions(material('scale', declaring('button-cell')), from)))).toEqual(['serious', 'reminder', 'reminder']);
});

test('younger children in the room count, whatever the ages of the class', () => {
    expect(told(cautions(material('cube', sized('0.8', '0.8', '0.8')), 8, ['under-threes']))).toBe('serious');
    expect(cautions(material('cube', sized('0.8', '0.8', '0.8')), 8, ['grandparents'])).toEqual([]);
});
