/** Which pictures can be drawn, what is told about the others, and the words that stand for a picture. */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pictureInWords, pictureKinds, readPicture } from '@haversack/language/pictures/read-picture';
import { statements } from '@haversack/language/facts/statements';
import { legal, pictureLine, read } from './picture-lines.js';

const upTo = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, index) => from + index);
const isLegal = (text: string): boolean => !('mends' in read(text));

describe('the table', () => {
    test.each(pictureKinds.flatMap(({ examples }) => examples))('its example is legal: %s', example => {
        expect(pictureKinds.find(({ kind }) => example.startsWith(`${kind} `))?.kind).toBe(legal(example).kind);
    });

    test('the statement names every kind', () => {
        const { says } = statements.find(({ head }) => head === 'show')!;
        for (const { kind } of pictureKinds) expect(says).toContain(kind);
    });
});

describe('where each kind ends', () => {
    test.each([
        ['ten-frame', 0, 20], ['bead-string', 0, 100], ['place-cards', 1, 9999], ['base-ten', 1, 1999], ['tally', 0, 50]
    ])('%s holds %i to %i and nothing else', (kind, from, to) => {
        for (const value of upTo(from, to)) expect(legal(`${kind} ${value}`)).toMatchObject({ kind });
        expect([from - 1, to + 1, 100_000, 1e21].filter(value => value >= 0 && isLegal(`${kind} ${value}`))).toEqual([]);
        expect([`${kind}`, `${kind} ${from}.5`, `${kind} 1/2`, `${kind} 9:30`, `${kind} to`, `${kind} ${to} and 1`].filter(isLegal)).toEqual([]);
    });

    test('a bead string holds no more than it has beads', () => {
        const lengths = upTo(0, 120);
        for (const count of upTo(0, 100)) expect(lengths.filter(of => isLegal(`bead-string ${count} of ${of}`))).toEqual([10, 20, 100].filter(of => of >= count));
        expect([5, 10, 11, 20, 21].map(count => legal(`bead-string ${count}`))).toMatchObject([{ of: 10 }, { of: 10 }, { of: 20 }, { of: 20 }, { of: 100 }]);
    });

    test('an array has up to 12 rows of up to 20', () => {
        for (const rows of upTo(0, 15)) for (const columns of upTo(0, 25)) {
            expect([rows, columns, isLegal(`array ${rows} by ${columns}`)]).toEqual([rows, columns, rows >= 1 && rows <= 12 && columns >= 1 && columns <= 20]);
        }
    });

    test('a clock shows every minute of a day', () => {
        for (const hour of upTo(0, 25)) for (const minute of upTo(0, 99)) {
            const text = `clock ${hour}:${String(minute).padStart(2, '0')}`;
            expect([text, isLegal(text)]).toEqual([text, hour < 24 && minute < 60]);
        }
    });

    test('a fraction bar shows none to all of up to 24 parts', () => {
        for (const of of upTo(0, 30)) for (const part of upTo(0, 32)) {
            expect([part, of, isLegal(`fraction-bar ${part}/${of}`)]).toEqual([part, of, of >= 1 && of <= 24 && part <= of]);
        }
        expect(['1/2 and 1/3 and 1/4', '1/2, 1/3, 1/4', '1/2, 1/3, 1/4, 1/5', '1/2 1/3', '1/2 and'].map(bars => isLegal(`fraction-bar ${bars}`))).toEqual([true, true, false, false, false]);
    });

    test('a side of a balance holds up to 20 numbers that make up to 100', () => {
        const ones = (count: number): string => Array.from({ length: count }, () => '1').join(' plus ');
        expect([`balance ${ones(20)} and 20`, `balance 20 and ${ones(20)}`, 'balance 100 and 99 plus 1'].map(isLegal)).toEqual([true, true, true]);
        expect([`balance ${ones(21)} and 21`, 'balance 101 and 1', 'balance 50 plus 51 and 1', 'balance 0 and 1', 'balance 3', 'balance 3 and', 'balance 1.5 and 2', 'balance 1 and 2 and 3'].filter(isLegal)).toEqual([]);
    });
});

describe('number lines', () => {
    test('their steps go into the line a whole number of times, at most forty', () => {
        for (const to of upTo(1, 120)) for (const by of upTo(1, to)) expect([to, by, isLegal(`number-line 0 to ${to} by ${by}`)]).toEqual([to, by, to % by === 0 && to / by <= 40]);
    });

    test('decimals are exact', () => {
        expect(legal('number-line 0 to 0.3 by 0.1 mark 0.2')).toEqual({ kind: 'number-line', from: 0, to: 0.3, by: 0.1, marks: [0.2] });
        expect(legal('number-line 1.10 to 2.30 by 0.4')).toMatchObject({ from: 1.1, to: 2.3, by: 0.4 });
        for (const tenths of upTo(1, 40)) expect(legal(`number-line 0 to ${tenths / 10} by 0.1`)).toMatchObject({ to: tenths / 10, by: 0.1 });
    });

    test('a line without a step gets one that people count in', () => {
        const steps = Object.fromEntries(['0 to 1', '0 to 2', '0 to 10', '0 to 20', '0 to 24', '0 to 50', '0 to 100', '0 to 1000', '0 to 10000', '0 to 0.5', '2.5 to 5', '17 to 31']
            .map(ends => [ends, (legal(`number-line ${ends}`) as { by: number }).by]));
        expect(steps).toEqual({
            '0 to 1': 0.1, '0 to 2': 1, '0 to 10': 1, '0 to 20': 1, '0 to 24': 2, '0 to 50': 5, '0 to 100': 5, '0 to 1000': 50, '0 to 10000': 500, '0 to 0.5': 0.05, '2.5 to 5': 0.25, '17 to 31': 1
        });
    });

    test('marks lie on the line, once each, as many as can stand side by side', () => {
        const marks = (list: string): boolean => isLegal(`number-line 0 to 20 mark ${list}`);
        expect(['0', '20', '7, 12', '7 and 12', '7, 8 and 9', '0.25, 19.75', '1, 2, 3, 4, 5, 6, 7, 8, 9, 10'].filter(list => !marks(list))).toEqual([]);
        expect(['21', '7, 7', '7,', '', '1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11', '1.25, 2.25, 3.25, 4.25, 5.25, 6.25, 7.25, 8.25'].filter(marks)).toEqual([]);
    });
});

/** Settings as a line could have them: numbers, fractions, times and words in any order. */
const anySettings = fc.array(fc.oneof(
    fc.integer({ min: 0, max: 12_000 }).map(String), fc.integer({ min: 0, max: 30 }).map(String),
    fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 })).map(([part, of]) => `${part}/${of}`),
    fc.tuple(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 0, max: 99 })).map(([hour, minute]) => `${hour}:${String(minute).padStart(2, '0')}`),
    fc.integer({ min: 0, max: 9999 }).map(value => (value / 100).toFixed(2)),
    fc.constantFrom('to', 'by', 'mark', 'of', 'and', 'plus', ',', '99999999999999999999999', '007', ...['9'.repeat(30), '9'.repeat(400)].flatMap(digits => [digits, `1/${digits}`, `${digits}/2`, `${digits}/${digits}`]))
), { maxLength: 9 });

describe('whatever stands there', () => {
    test('it is read or told in one message at a place in the line, and every mend is legal', () => {
        fc.assert(fc.property(fc.constantFrom(...pictureKinds.map(({ kind }) => kind), 'rainbow'), anySettings, (kind, settings) => {
            const text = [kind, ...settings].join(' ');
            const found = readPicture(pictureLine(text));
            if ('picture' in found) {
                expect(pictureInWords(found.picture)).toMatch(/^[A-Z].*\.$/);
                return;
            }
            expect(found.message).toMatch(/^[A-Z'\d]/);
            expect(found.message).not.toMatch(/NaN|undefined|Infinity/);
            expect(text.slice(found.at.start.character, found.at.end.character)).not.toBe('');
            for (const mend of found.mends) expect([text, mend, isLegal(mend)]).toEqual([text, mend, true]);
        }), { numRuns: 3000 });
    });

    test.each([
        ['ten-frame 23', 'base-ten 23'], ['ten-frame 5000', 'place-cards 5000'], ['place-cards 0', 'ten-frame 0'], ['number-line 20 to 0', 'number-line 0 to 20'],
        ['number-line 20 to 0 by 5 mark 7, 12', 'number-line 0 to 20 by 5 mark 7, 12'], ['number-line 0 20', 'number-line 0 to 20'], ['number-line 20', 'number-line 0 to 20'],
        ['number-line 0 to 100 by 1', 'number-line 0 to 100 by 5'], ['number-line 0 to 47', 'number-line 0 to 50'], ['number-line 3 to 5 by 1/2', 'number-line 3 to 5 by 0.5'],
        ['number-line 0 to 20 mark 7, 25', 'number-line 0 to 20 mark 7'], ['bead-string 13 20', 'bead-string 13 of 20'], ['bead-string 13 of 10', 'bead-string 13 of 20'],
        ['balance 12 7', 'balance 12 and 7'], ['fraction-bar 0.75', 'fraction-bar 3/4'], ['fraction-bar 3 4', 'fraction-bar 3/4'], ['fraction-bar 5/4', 'fraction-bar 4/4 and 1/4'],
        ['fraction-bar 4/32', 'fraction-bar 1/8'], ['clock 9', 'clock 9:00'], ['clock 9.45', 'clock 9:45'], ['clock 24:00', 'clock 0:00'], ['array 15 by 8', 'array 8 by 15'], ['array 3 4', 'array 3 by 4']
    ])('%s is likely meant as %s', (written, meant) => {
        expect(read(written)).toMatchObject({ mends: expect.arrayContaining([meant]) as string[] });
        expect((read(written) as { mends: string[] }).mends[0]).toBe(meant);
    });
});

describe('in words', () => {
    test.each([
        ['ten-frame 8', 'Ten-frame: 8, as 5 and 3; 2 cells are empty.'],
        ['ten-frame 10', 'Ten-frame: 10; no cell is empty.'],
        ['ten-frame 16', 'Two ten-frames: 16, as 10, 5 and 1; 4 cells are empty.'],
        ['ten-frame 19', 'Two ten-frames: 19, as 10, 5 and 4; 1 cell is empty.'],
        ['number-line 0 to 20 by 5 mark 12, 7', 'Number line from 0 to 20 in steps of 5; marked: 7 and 12.'],
        ['bead-string 13 of 20', 'Bead string: 13 of 20 beads are pushed to the left, as 10 and 3; 7 are left over.'],
        ['bead-string 0', 'Bead string: none of 10 beads is pushed to the left.'],
        ['place-cards 2050', 'Place-value cards: 2000 and 50, laid over one another as 2050.'],
        ['place-cards 40', 'Place-value card: 40.'],
        ['base-ten 1001', 'Base-ten blocks: 1001 as 1 thousand and 1 one.'],
        ['tally 13', 'Tally: 13, as 2 fives and 3.'],
        ['balance 12 and 7 plus 5', 'Balance: 12 on the left, 7 + 5 = 12 on the right. It hangs level.'],
        ['balance 8 and 5 plus 2', 'Balance: 8 on the left, 5 + 2 = 7 on the right. The left side is heavier and hangs lower.'],
        ['fraction-bar 3/4 and 6/8', 'Fraction bars of one length: 3/4, 3 of 4 equal parts shaded; 6/8, 6 of 8 equal parts shaded.'],
        ['clock 9:30', 'Clock: 9:30, half past nine. The short hour hand stands between 9 and 10, the long minute hand on 6.'],
        ['clock 12:00', "Clock: 12:00, twelve o'clock. The short hour hand stands on 12, the long minute hand on 12."],
        ['clock 0:00', 'Clock: 0:00, midnight. The short hour hand stands on 12, the long minute hand on 12.'],
        ['clock 12:35', 'Clock: 12:35, twenty-five to one. The short hour hand stands between 12 and 1, the long minute hand on 7.'],
        ['clock 23:59', 'Clock: 23:59, 1 minute to twelve in the evening. The short hour hand stands between 11 and 12, the long minute hand at 59 minutes.'],
        ['array 3 by 4', 'Array: 3 rows of 4, 12 in all.']
    ])('%s', (line, words) => expect(pictureInWords(legal(line))).toBe(words));
});
