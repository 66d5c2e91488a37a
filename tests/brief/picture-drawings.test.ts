/** Every legal value of every kind of picture (number lines and balances: a dense sample) is drawn, read back and counted. */
import type { Picture } from '@haversack/language/pictures/picture';
import { pictureInWords } from '@haversack/language/pictures/read-picture';
import { describe, expect, test } from 'vitest';
import { legal } from '../language/picture-lines.js';
import { byGroup, drawn, withClass, type Drawn } from './read-drawing.js';

const upTo = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, index) => from + index);
const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);
const numbersIn = (text: string): number[] => [...text.matchAll(/\d+/g)].map(([number]) => Number(number));
const unique = (numbers: readonly number[]): number[] => [...new Set(numbers)].sort((a, b) => a - b);
/** Where a path begins. */
const start = ({ d }: Drawn): [number, number] => {
    const [, x, y] = /^M(-?[\d.]+) (-?[\d.]+)/.exec(d)!;
    return [Number(x), Number(y)];
};

/** Things that are counted are drawn five of one look, then five of the other, in the order in which they stand. */
function inFives(counters: readonly Drawn[]): void {
    expect(counters.map(({ classes }) => classes.includes('first'))).toEqual(counters.map((_, index) => Math.floor(index / 5) % 2 === 0));
}

test('ten-frames: so many counters, five of one look before the other, one in a cell', () => {
    for (const count of upTo(0, 20)) {
        const picture: Picture = { kind: 'ten-frame', count };
        const elements = drawn(picture);
        const counters = withClass(elements, 'counter');
        const cells = withClass(elements, 'cell');
        expect(counters).toHaveLength(count);
        expect(cells).toHaveLength(count > 10 ? 20 : 10);
        inFives(counters);
        // Filled from the first cell on, row by row; a frame is full before the next begins.
        expect(counters.map(({ at }) => cells.findIndex(cell => Math.abs(cell.at['x']! + cell.at['width']! / 2 - at['cx']!) < 0.01 && Math.abs(cell.at['y']! + cell.at['height']! / 2 - at['cy']!) < 0.01))).toEqual(upTo(0, count - 1));
        const [told, ...parts] = numbersIn(pictureInWords(picture).replace('no cell', '0 cells').replace('2 tens', '10 and 10'));
        expect([told, parts.at(-1)]).toEqual([count, cells.length - count]);
        if (parts.length > 1) expect(sum(parts.slice(0, -1))).toBe(count);
    }
});

test('bead strings: so many beads at the left of their rows, the rest at the right, in fives', () => {
    for (const of of [10, 20, 100]) for (const count of upTo(0, of)) {
        const picture: Picture = { kind: 'bead-string', count, of };
        const elements = drawn(picture);
        const beads = withClass(elements, 'counter');
        const rest = withClass(elements, 'left-over');
        expect([beads.length, rest.length]).toEqual([count, of - count]);
        inFives(beads);
        for (const y of unique([...beads, ...rest].map(({ at }) => at['cy']!))) {
            const right = Math.max(0, ...beads.filter(({ at }) => at['cy'] === y).map(({ at }) => at['cx']! + at['r']!));
            const left = Math.min(...rest.filter(({ at }) => at['cy'] === y).map(({ at }) => at['cx']! - at['r']!));
            expect(left - right).toBeGreaterThan(12);
        }
        expect(unique([...beads, ...rest].map(({ at }) => at['cy']!))).toHaveLength(of / Math.min(of, 20));
        expect(numbersIn(pictureInWords(picture).replace('none', '0'))[0]).toBe(count);
    }
});

test('place-value cards: they add up to the number apart, and show its digits laid over one another', () => {
    // Each card is drawn by itself: all up to a thousand, and every digit of thousands beside others.
    for (const value of upTo(1, 9999).filter(number => number < 1000 || number % 97 === 0 || number > 9990)) {
        const digits = drawn({ kind: 'place-cards', value }).filter(({ name, within }) => name === 'text' && within.includes('card'));
        const read = (together: boolean): string[] => byGroup(digits.filter(({ within }) => within.includes('together') === together)).map(card => card.map(({ text }) => text).join(''));
        expect(sum(read(false).map(Number))).toBe(value);
        if (read(false).length > 1) expect(read(true).join('')).toBe(String(value));
        const worth = numbersIn(pictureInWords({ kind: 'place-cards', value }));
        expect(read(false).map(Number)).toEqual(worth.length > 1 ? worth.slice(0, -1) : worth);
    }
});

test('base-ten blocks: as few as can be, worth the number, a hundred of ten tens and a ten of ten ones', () => {
    const worth = { thousand: 1000, hundred: 100, ten: 10, one: 1 };
    const lines = ({ d }: Drawn): number => (d.match(/M/g) ?? []).length;
    for (const value of upTo(1, 1999)) {
        const elements = drawn({ kind: 'base-ten', value });
        const groups = elements.filter(({ name }) => name === 'g');
        const counts = Object.fromEntries(Object.keys(worth).map(kind => [kind, withClass(groups, kind).length])) as Record<keyof typeof worth, number>;
        expect(sum(Object.entries(counts).map(([kind, count]) => count * worth[kind as keyof typeof worth]))).toBe(value);
        expect(Math.max(counts.hundred, counts.ten, counts.one)).toBeLessThan(10);
        for (const kind of ['hundred', 'ten', 'one']) {
            expect(withClass(groups, kind).map(({ classes }) => classes.includes('first-block'))).toEqual(upTo(1, counts[kind as keyof typeof worth]).map(index => index <= 5));
            const between = (cut: string): number[] => unique(withClass(elements, cut).filter(({ within }) => within.includes(kind)).map(lines));
            if (counts[kind as keyof typeof worth] > 0) expect([between('between-ones'), between('between-tens')]).toEqual(kind === 'hundred' ? [[9], [9]] : kind === 'ten' ? [[9], []] : [[], []]);
        }
        expect(numbersIn(pictureInWords({ kind: 'base-ten', value }))).toEqual([value, ...Object.values(counts).filter(count => count > 0)]);
    }
});

test('tallies: so many strokes, every fifth across the four before it', () => {
    for (const count of upTo(0, 50)) {
        const strokes = withClass(drawn({ kind: 'tally', count }), 'mark-stroke');
        expect(strokes).toHaveLength(count);
        const across = strokes.filter(({ d }) => d.includes('L'));
        expect(across).toHaveLength(Math.floor(count / 5));
        for (const stroke of across) {
            const [x1] = start(stroke);
            const x2 = Number(/L(-?[\d.]+)/.exec(stroke.d)![1]);
            const crossed = strokes.filter(other => other.group === stroke.group && other !== stroke).map(other => start(other)[0]);
            expect(crossed.filter(x => x > x1 && x < x2)).toHaveLength(4);
        }
        const told = numbersIn(pictureInWords({ kind: 'tally', count }));
        expect(told[0]).toBe(count);
        if (told.length > 1) expect(told[1]! * 5 + (told[2] ?? 0)).toBe(count);
    }
});

function pans(picture: Picture): { left: number; right: number; weights: { left: string[]; right: string[] } } {
    const elements = drawn(picture);
    const plate = (side: string): number => start(withClass(elements, 'plate').find(({ within }) => within.includes(`${side}-pan`))!)[1];
    const weights = (side: string): string[] => elements.filter(({ name, within }) => name === 'text' && within.includes(`${side}-pan`)).map(({ text }) => text);
    return { left: plate('left'), right: plate('right'), weights: { left: weights('left'), right: weights('right') } };
}

test('balances: the heavier pan hangs lower, and equal ones hang level', () => {
    for (const left of upTo(1, 100)) for (const right of upTo(1, 100)) {
        const found = pans({ kind: 'balance', left: [left], right: [right] });
        // y grows downwards. A difference of one can be seen.
        expect([left, right, Math.sign(found.left - found.right)]).toEqual([left, right, Math.sign(left - right)]);
        if (left !== right) expect(Math.abs(found.left - found.right)).toBeGreaterThan(10);
    }
});

test('balances: every number lies on its side, whatever the sums', () => {
    for (const parts of upTo(1, 20)) for (const other of [1, 3, 7, 20]) {
        const left = upTo(1, parts).map(index => 1 + (index % 4));
        const right = upTo(1, other).map(() => 5);
        const picture: Picture = { kind: 'balance', left, right };
        const found = pans(picture);
        expect(found.weights).toEqual({ left: left.map(String), right: right.map(String) });
        expect(Math.sign(found.left - found.right)).toBe(Math.sign(sum(left) - sum(right)));
        const words = pictureInWords(picture);
        expect(/level/.test(words) ? 0 : /left side is heavier/.test(words) ? 1 : -1).toBe(Math.sign(sum(left) - sum(right)));
    }
});

describe('fraction bars', () => {
    interface Whole { from: number; to: number; shadedTo: number; widths: number[]; shaded: number }
    const bars = (picture: Picture): Whole[] => byGroup(withClass(drawn(picture), 'part')).map(parts => ({
        from: parts[0]!.at['x']!, to: parts.at(-1)!.at['x']! + parts.at(-1)!.at['width']!, widths: parts.map(({ at }) => at['width']!),
        shaded: withClass(parts, 'shaded').length, shadedTo: Math.max(parts[0]!.at['x']!, ...withClass(parts, 'shaded').map(({ at }) => at['x']! + at['width']!))
    }));

    test('so many equal parts, so many of them shaded from the left', () => {
        for (const of of upTo(1, 24)) for (const part of upTo(0, of)) {
            const [bar] = bars({ kind: 'fraction-bar', fractions: [{ part, of }] });
            expect([bar!.widths.length, bar!.shaded]).toEqual([of, part]);
            for (const width of bar!.widths) expect(width).toBeCloseTo((bar!.to - bar!.from) / of, 2);
            expect((bar!.shadedTo - bar!.from) / (bar!.to - bar!.from)).toBeCloseTo(part / of, 4);
            expect(numbersIn(pictureInWords({ kind: 'fraction-bar', fractions: [{ part, of }] }))).toEqual([part, of, part, of]);
        }
    });

    test('bars below one another are of one length, and equal fractions reach equally far', () => {
        for (const of of upTo(1, 12)) for (const part of upTo(0, of)) {
            const [one, two] = bars({ kind: 'fraction-bar', fractions: [{ part, of }, { part: part * 2, of: of * 2 }] });
            expect(two!.from).toBe(one!.from);
            expect(two!.to).toBeCloseTo(one!.to, 2);
            expect(two!.shadedTo).toBeCloseTo(one!.shadedTo, 2);
        }
    });
});

test('clocks: each hand at its angle for every minute of the day', () => {
    // Common practice, no source: 360 degrees in twelve hours are half a degree a minute, and in one hour six degrees a minute.
    for (const hour of upTo(0, 23)) for (const minute of upTo(0, 59)) {
        const elements = drawn({ kind: 'clock', hour, minute });
        const angle = (hand: string): number => {
            const { x1, y1, x2, y2 } = withClass(elements, hand)[0]!.at as { x1: number; y1: number; x2: number; y2: number };
            return (Math.atan2(x2 - x1, y1 - y2) * 180 / Math.PI + 360) % 360;
        };
        const near = (found: number, wanted: number): void => expect(Math.abs(((found - wanted + 540) % 360) - 180)).toBeLessThan(0.01);
        near(angle('hour-hand'), ((hour * 60 + minute) / 720 * 360) % 360);
        near(angle('minute-hand'), minute / 60 * 360);
    }
});

test('clocks: the numbers stand where they belong, and there is a stroke for every minute', () => {
    const elements = drawn({ kind: 'clock', hour: 1, minute: 23 });
    const numbers = elements.filter(({ name }) => name === 'text');
    expect(numbers.map(({ text }) => Number(text))).toEqual(upTo(1, 12));
    const [x, y] = ['x', 'y'].map(key => sum(numbers.map(({ at }) => at[key]!)) / 12) as [number, number];
    for (const { text, at } of numbers) expect(((Math.atan2(at['x']! - x, y - at['y']!) * 180 / Math.PI) + 360) % 360).toBeCloseTo((Number(text) * 30) % 360, 1);
    expect(elements.filter(({ name, classes }) => name === 'path' && classes.includes('drawn'))).toHaveLength(60);
});

test('arrays: so many rows of so many, five of one look before the other both ways', () => {
    for (const rows of upTo(1, 12)) for (const columns of upTo(1, 20)) {
        const counters = withClass(drawn({ kind: 'array', rows, columns }), 'counter');
        expect(counters).toHaveLength(rows * columns);
        expect(unique(counters.map(({ at }) => at['cy']!))).toHaveLength(rows);
        expect(unique(counters.map(({ at }) => at['cx']!))).toHaveLength(columns);
        inFives(counters.slice(0, columns));
        inFives(counters.filter((_, index) => index % columns === 0));
        expect(numbersIn(pictureInWords({ kind: 'array', rows, columns }))).toEqual([rows, columns, rows * columns]);
    }
});

describe('number lines', () => {
    const lines = [
        ...upTo(1, 60).flatMap(to => upTo(0, to - 1).filter(from => (to - from) <= 40).map(from => `${from} to ${to} by 1`)),
        ...upTo(1, 40).map(steps => `0 to ${steps * 250} by 250`), ...upTo(1, 40).map(steps => `0 to ${steps / 10} by 0.1`), ...upTo(1, 40).map(steps => `0.05 to ${(steps + 1) / 20} by 0.05`),
        ...upTo(1, 40).map(steps => `${10_000 - steps} to 10000 by 1`), '0 to 10000', '9.95 to 10.35 by 0.01', '0 to 100 by 2.5', '1234 to 5678 by 4444'
    ];

    test('a stroke for every step, at equal distances, with the right number below those that have one, the ends among them', () => {
        for (const line of lines) {
            const picture = legal(`number-line ${line}`) as Extract<Picture, { kind: 'number-line' }>;
            const elements = drawn(picture);
            const ticks = withClass(elements, 'tick').map(tick => start(tick)[0]);
            const steps = Math.round((picture.to - picture.from) / picture.by);
            expect([line, ticks.length]).toEqual([line, steps + 1]);
            const step = (ticks.at(-1)! - ticks[0]!) / steps;
            ticks.forEach((x, index) => expect(x).toBeCloseTo(ticks[0]! + index * step, 2));
            const labels = elements.filter(({ name }) => name === 'text');
            for (const { text, at } of labels) expect([line, text, Math.abs(ticks[0]! + (Number(text) - picture.from) / picture.by * step - at['x']!) < 0.01]).toEqual([line, text, true]);
            expect([labels[0]!.text, labels.at(-1)!.text]).toEqual([String(picture.from), String(picture.to)]);
            // As many long strokes as numbers.
            expect(withClass(elements, 'tick').filter(({ classes }) => !classes.includes('slight'))).toHaveLength(labels.length);
        }
    });

    test('marks lie where their numbers do, each led to by its own line, none on another', () => {
        const marked = ['0 to 20 mark 7, 12', '0 to 20 mark 0, 1, 2, 18, 19, 20', '0 to 100 by 10 mark 64', '0 to 1 by 0.1 mark 0.35, 0.36, 0.99', '0 to 10000 mark 0, 9998, 9999, 10000', '0 to 20 mark 12, 5, 6, 11, 7, 10, 8, 9, 13, 14', '9990 to 10000 mark 9990, 9991, 9999, 10000'];
        for (const line of marked) {
            const picture = legal(`number-line ${line}`) as Extract<Picture, { kind: 'number-line' }>;
            const elements = drawn(picture);
            const ticks = withClass(elements, 'tick').map(tick => start(tick)[0]);
            const at = (value: number): number => ticks[0]! + (value - picture.from) / (picture.to - picture.from) * (ticks.at(-1)! - ticks[0]!);
            const points = withClass(elements, 'pip');
            const sorted = [...picture.marks].sort((a, b) => a - b);
            expect(points.map(point => Math.round(point.at['cx']! * 10))).toEqual(sorted.map(value => Math.round(at(value) * 10)));
            const labels = elements.filter(({ name, classes }) => name === 'text' && classes.includes('bold'));
            expect(labels.map(({ text }) => Number(text))).toEqual(sorted);
            for (const [index, label] of labels.entries()) expect(label.at['x']!).toBeGreaterThan(labels[index - 1]?.at['x'] ?? 0);
        }
    });
});
