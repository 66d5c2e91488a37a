import { listing } from '../facts/wording.js';
import type { PictureKind } from './picture-kind.js';
import type { Picture } from './picture.js';
import { inOneLine, isFault, type PictureFault, type SettingsReader } from './settings-reader.js';

type NumberLine = Extract<Picture, { kind: 'number-line' }>;

/** What can still be read on a line as wide as a narrow screen. */
const limits = { end: 10_000, steps: 40, comfortable: 20, marks: 10, characters: 40 };

/** Numbers are read in hundredths, where sums and divisions are exact. */
const hundred = 100;
const text = (hundredths: number): string => String(hundredths / hundred);

export const numberLine: PictureKind<NumberLine> = {
    kind: 'number-line', title: 'Number line', examples: ['number-line 0 to 20', 'number-line 0 to 100 by 10', 'number-line 0 to 20 by 5 mark 7, 12', 'number-line 0 to 1 by 0.1 mark 0.35'],
    says: 'Numbers in their order on a line, at equal distances, with marks wherever they are wanted.',
    settings: `Two numbers with \`to\` between them, up to ${limits.end} and with at most two decimal places; \`by\` a step that goes into the line a whole number of times, at most ${limits.steps}; \`mark\` up to ${limits.marks} numbers on the line.`,
    read(settings) {
        const ends = readEnds(settings);
        if ('mends' in ends) return ends;
        let by: number | undefined;
        let marks: number[] | undefined;
        for (;;) {
            if (by === undefined && settings.skip('by')) {
                const step = readStep(settings, ends);
                if (isFault(step)) return step;
                by = step;
            } else if (!marks && settings.skip('mark')) {
                const read = readMarks(settings, ends);
                if ('mends' in read) return read;
                marks = read;
            } else {
                break;
            }
        }
        const over = settings.tooMuch('A number line has two ends, one step and its marks');
        if (over) return over;
        by ??= usualStep(ends);
        if (by === undefined) {
            const to = longer(ends);
            return settings.wrong(`${text(ends.from)} to ${text(ends.to)} cannot be divided into equal steps that can still be read. Let the line end at a rounder number.`, to === undefined ? undefined : withMarks(`${text(ends.from)} to ${text(to)}`, marks ?? []));
        }
        return { kind: 'number-line', from: ends.from / hundred, to: ends.to / hundred, by: by / hundred, marks: (marks ?? []).map(mark => mark / hundred) };
    },
    next(settings) {
        if (!settings.includes('to')) return settings.length === 1 ? ['to'] : [];
        if (/[a-z,]$/.test(settings.at(-1) ?? '')) return [];
        return settings.includes('mark') ? [] : settings.includes('by') ? ['mark'] : ['by', 'mark'];
    },
    inWords: ({ from, to, by, marks }) => `Number line from ${from} to ${to} in steps of ${by}${marks.length > 0 ? `; marked: ${listing([...marks].sort((a, b) => a - b))}` : ''}.`
};

interface Ends { from: number; to: number }

/** A number on the line in hundredths. `what` says what is missing where none stands. */
function readNumber(settings: SettingsReader, what: string): number | PictureFault {
    const written = settings.peek();
    if (written === undefined || !/^\d/.test(written)) return settings.wrongNext(what);
    settings.take();
    if (written.includes('/')) {
        const [part = 0, of = 0] = written.split('/').map(Number);
        const decimal = (part / of) * hundred;
        return Number.isInteger(decimal) ? settings.wrong(`A number line counts in whole numbers and decimals: write ${text(decimal)} for ${written}.`, settings.lastAs(text(decimal)))
            : settings.wrong(`A number line counts in whole numbers and decimals; ${written} is best shown with a fraction-bar.`);
    }
    const [, whole = '', asWritten = ''] = /^(\d+)(?:\.(\d+))?$/.exec(written) ?? [];
    const decimals = withoutZeros(asWritten);
    if (whole === '') return settings.wrong(`'${written}' is no number for a number line.`);
    if (decimals.length > 2) return settings.wrong(`${written} has more than two decimal places, too fine for a line that children read.`);
    const hundredths = Number(whole) * hundred + Number(decimals.padEnd(2, '0'));
    return hundredths <= limits.end * hundred ? hundredths : settings.wrong(`A number line goes up to ${limits.end} here; ${written} lies beyond.`);
}

function readEnds(settings: SettingsReader): Ends | PictureFault {
    const missing = 'Where does the line begin and end? Write two numbers, as in: show number-line 0 to 20';
    const from = readNumber(settings, missing);
    if (isFault(from)) return from;
    const next = settings.peek();
    if (!settings.skip('to')) {
        const isPair = settings.texts.length === 2 && next !== undefined && Number(next) > from / hundred;
        const alone = settings.texts.length === 1 && from > 0 && usualStep({ from: 0, to: from }) !== undefined;
        return settings.wrongNext(missing, isPair ? `${text(from)} to ${next}` : alone ? `0 to ${text(from)}` : undefined);
    }
    const to = readNumber(settings, missing);
    if (isFault(to)) return to;
    if (from === to) return settings.wrong(`A line from ${text(from)} to ${text(to)} has no length: let it end further on.`);
    if (from > to) return settings.wrong(`These ends are turned round: a number line begins with the smaller number.`, inOneLine([text(to), 'to', text(from), ...settings.texts.slice(3)]));
    return { from, to };
}

function readStep(settings: SettingsReader, ends: Ends): number | PictureFault {
    const by = readNumber(settings, "How far apart are the numbers? Write a step after 'by', as in: show number-line 0 to 20 by 5");
    if (isFault(by)) return by;
    const length = ends.to - ends.from;
    const whole = by > 0 && length % by === 0;
    if (whole && length / by <= limits.steps) return by;
    const fitting = nearestStep(ends, by);
    const end = longer(ends);
    const mend = fitting !== undefined ? settings.lastAs(text(fitting)) : end !== undefined ? `${text(ends.from)} to ${text(end)}` : undefined;
    if (by === 0) return settings.wrong('A step of 0 leads nowhere.', mend);
    if (whole) return settings.wrong(`Steps of ${text(by)} from ${text(ends.from)} to ${text(ends.to)} are ${length / by} steps, more than can be read; ${limits.steps} is the most.`, mend);
    return settings.wrong(`Steps of ${text(by)} from ${text(ends.from)} do not end at ${text(ends.to)}.`, mend);
}

function readMarks(settings: SettingsReader, ends: Ends): number[] | PictureFault {
    const marks: number[] = [];
    do {
        const mark = readNumber(settings, "What is marked? Write numbers on the line after 'mark', as in: show number-line 0 to 20 mark 7, 12");
        if (isFault(mark)) return mark;
        const others = withMarks(inOneLine(settings.texts.slice(0, settings.texts.indexOf('mark'))), marks);
        if (mark < ends.from || mark > ends.to) return settings.wrong(`${text(mark)} does not lie on a line from ${text(ends.from)} to ${text(ends.to)}.`, others);
        if (marks.includes(mark)) return settings.wrong(`${text(mark)} is marked twice.`, others);
        marks.push(mark);
        if (marks.length > limits.marks || marks.reduce((sum, one) => sum + text(one).length + 2, 0) > limits.characters) {
            return settings.wrong('These marks do not stand side by side on one line. Take out some, or show two lines.', others);
        }
    } while (settings.skip(',', 'and'));
    return marks;
}

function withMarks(line: string, marks: readonly number[]): string {
    return marks.length > 0 ? `${line} mark ${marks.map(text).join(', ')}` : line;
}

/** Steps that people count in, in hundredths: 0.01, 0.02, 0.05, 0.1 and so on, with 0.25, 25, 250 and 2500. */
const usualSteps = [1, 10, 100, 1000, 10_000, 100_000].flatMap(unit => [unit, 2 * unit, ...(unit === 1 || unit === 100 ? [] : [2.5 * unit]), 5 * unit]);

function fittingSteps({ from, to }: Ends, most: number): number[] {
    return usualSteps.filter(step => (to - from) % step === 0 && (to - from) / step <= most);
}

/** The step of a line that names none: the smallest that leaves room between the numbers. Lines between whole numbers are divided only where they are one long. */
function usualStep(ends: Ends, most = limits.steps): number | undefined {
    const length = ends.to - ends.from;
    const isWhole = ends.from % hundred === 0 && ends.to % hundred === 0;
    const fits = (limit: number): number | undefined => fittingSteps(ends, limit).find(step => !isWhole || length === hundred || step >= hundred);
    return fits(length > hundred ? limits.comfortable : limits.comfortable / 2) ?? fits(most);
}

function nearestStep(ends: Ends, wished: number): number | undefined {
    const far = (step: number): number => Math.abs(Math.log(step / Math.max(wished, 1)));
    return fittingSteps(ends, limits.steps).sort((a, b) => far(a) - far(b))[0];
}

/** The next end at which the line can be divided. */
function longer({ from, to }: Ends): number | undefined {
    return usualSteps.map(step => from + Math.ceil((to - from) / step) * step).sort((a, b) => a - b)
        .find(end => end <= limits.end * hundred && usualStep({ from, to: end }, limits.comfortable) !== undefined);
}

/** Without the zeros at the end, but for one that stands alone. */
function withoutZeros(decimals: string): string {
    let end = decimals.length;
    while (end > 1 && decimals[end - 1] === '0') end--;
    return decimals.slice(0, end);
}
