import { listing } from '../facts/wording.js';
import type { PictureKind } from './picture-kind.js';
import type { Picture } from './picture.js';
import type { PictureFault, SettingsReader } from './settings-reader.js';

type FractionBar = Extract<Picture, { kind: 'fraction-bar' }>;
type Fraction = FractionBar['fractions'][number];

const limits = { bars: 3, of: 24 };
const missing = 'Which fraction does the bar show? Write it with a stroke, as in: show fraction-bar 3/4';

export const fractionBar: PictureKind<FractionBar> = {
    kind: 'fraction-bar', title: 'Fraction bar', examples: ['fraction-bar 3/4', 'fraction-bar 3/4 and 6/8', 'fraction-bar 1/2, 1/3 and 1/4'],
    says: 'One whole as a bar in equal parts, some of them shaded; up to three bars of one length, one below the other.',
    settings: `One to ${limits.bars} fractions from none to a whole, with \`and\` or commas between them, in halves to ${limits.of}ths.`,
    read(settings) {
        const fractions: Fraction[] = [];
        do {
            const fraction = readFraction(settings);
            if ('mends' in fraction) return fraction;
            fractions.push(fraction);
            if (fractions.length > limits.bars) return settings.wrong(`There is room for ${limits.bars} bars, one below the other.`, writtenOut(fractions.slice(0, limits.bars)));
        } while (settings.skip('and', ','));
        const next = settings.peek();
        if (next !== undefined && /^\d+\/\d+$/.test(next)) return settings.wrongNext("Write 'and' between two fractions.", settings.texts.join(' and '));
        return settings.tooMuch('A fraction bar shows fractions') ?? { kind: 'fraction-bar', fractions };
    },
    next: settings => (settings.length > 0 && settings.length < limits.bars * 2 - 1 && settings.at(-1)?.includes('/') ? ['and'] : []),
    inWords({ fractions }) {
        const bars = fractions.map(({ part, of }) => `${part}/${of}, ${part} of ${of === 1 ? '1 part' : `${of} equal parts`} shaded`);
        return `${bars.length === 1 ? 'Fraction bar' : 'Fraction bars of one length'}: ${bars.join('; ')}.`;
    }
};

function writtenOut(fractions: readonly Fraction[]): string {
    return listing(fractions.map(({ part, of }) => `${part}/${of}`));
}

function readFraction(settings: SettingsReader): Fraction | PictureFault {
    const written = settings.peek();
    if (written === undefined || !/^\d/.test(written)) return settings.wrongNext(missing);
    settings.take();
    if (!written.includes('/')) return settings.wrong(missing, meant(written, settings.texts));
    const [part = 0, of = 0] = written.split('/').map(Number);
    if (of === 0) return settings.wrong('A whole cannot be divided into no parts: write how many equal parts it has below the stroke.');
    if (of > limits.of) {
        const less = lowest({ part, of });
        return settings.wrong(`Bars are divided into at most ${limits.of} parts; ${of < 1000 ? of : 'so many'} are too narrow to count.`, less.of <= limits.of && less.part <= less.of ? settings.lastAs(`${less.part}/${less.of}`) : undefined);
    }
    if (part > of) {
        const bars = wholes(part, of);
        return settings.wrong(`${written} is more than a whole, and a bar is one whole.${bars ? ` Show it as ${listing(bars)}.` : ''}`, bars && settings.texts.length === 1 ? listing(bars) : undefined);
    }
    return { part, of };
}

/** Whole bars and what is left: 5/4 as 4/4 and 1/4; absent where there is no room for them. */
function wholes(part: number, of: number): string[] | undefined {
    const count = Math.ceil(part / of);
    return count > limits.bars ? undefined : Array.from({ length: count }, (_, index) => `${Math.min(of, part - index * of)}/${of}`);
}

function lowest({ part, of }: Fraction): Fraction {
    const divisor = (a: number, b: number): number => (b > 0 ? divisor(b, a % b) : a);
    const by = divisor(part, of);
    return { part: part / by, of: of / by };
}

/** `3 4` is 3/4, and 0.75 too. */
function meant(written: string, texts: readonly string[]): string | undefined {
    const value = Number(written);
    if (texts.length === 2 && texts.every(text => /^\d+$/.test(text)) && Number(texts[1]) <= limits.of && Number(texts[1]) > 0 && value <= Number(texts[1])) return texts.join('/');
    const found = texts.length === 1 && value <= 1 ? lowest({ part: Math.round(value * 1000), of: 1000 }) : undefined;
    return found && found.of <= limits.of && found.part / found.of === value ? `${found.part}/${found.of}` : undefined;
}
