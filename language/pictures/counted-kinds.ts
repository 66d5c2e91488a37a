/** Pictures of one quantity. */
import { counted, listing } from '../facts/wording.js';
import { asFivesAndTens, onlyNumber, wholeNumber } from './numbers.js';
import { noWords, type PictureKind } from './picture-kind.js';
import type { Picture } from './picture.js';
import { isFault } from './settings-reader.js';

type Of<Kind extends Picture['kind']> = Extract<Picture, { kind: Kind }>;

export const tenFrame: PictureKind<Of<'ten-frame'>> = {
    kind: 'ten-frame', title: 'Ten-frame', examples: ['ten-frame 8', 'ten-frame 13'],
    says: 'A quantity in a frame of two rows of five, in two frames above ten: what is there, and what is missing to ten.',
    settings: 'A whole number from 0 to 20.',
    read(settings) {
        const count = onlyNumber(settings, 'How many does the ten-frame show? Write a whole number from 0 to 20, as in: show ten-frame 8', 'A ten-frame shows one number', {
            from: 0, to: 20, outside: text => `A ten-frame holds 0 to 20; ${text} does not fit.`
        });
        return isFault(count) ? insteadOf(count, settings.texts, baseTen, placeCards) : { kind: 'ten-frame', count };
    },
    next: noWords,
    inWords({ count }) {
        const empty = (count > 10 ? 20 : 10) - count;
        return `${count > 10 ? 'Two ten-frames' : 'Ten-frame'}: ${count}${asFivesAndTens(count)}; ${empty === 0 ? 'no cell is' : empty === 1 ? '1 cell is' : `${empty} cells are`} empty.`;
    }
};

const strings = [10, 20, 100];

export const beadString: PictureKind<Of<'bead-string'>> = {
    kind: 'bead-string', title: 'Bead string', examples: ['bead-string 13 of 20', 'bead-string 7', 'bead-string 64 of 100'],
    says: 'Beads pushed to the left on a string of 10, 20 or 100, in fives and tens.',
    settings: 'A whole number from 0 to 100, and `of` 10, 20 or 100; without it the shortest string that holds them.',
    read(settings) {
        const count = wholeNumber(settings, 'How many beads are pushed aside? Write a whole number from 0 to 100, as in: show bead-string 13 of 20', {
            from: 0, to: 100, outside: text => `A bead string holds 0 to 100 beads; ${text} do not fit.`
        });
        if (isFault(count)) return insteadOf(count, settings.texts, baseTen, placeCards);
        const shortest = strings.find(length => length >= count)!;
        const written = settings.peek();
        if (written === undefined) return { kind: 'bead-string', count, of: shortest };
        if (!settings.skip('of')) {
            const meant = strings.includes(Number(written)) && Number(written) >= count;
            return settings.wrongNext("How long is the string? Write 'of 10', 'of 20' or 'of 100', or nothing.", meant ? `${count} of ${written}` : undefined, String(count));
        }
        const text = settings.take();
        const of = Number(text);
        if (!strings.includes(of)) return settings.wrong(`A bead string has 10, 20 or 100 beads${text === undefined ? '' : `, not ${text}`}.`, `${count} of ${strings.find(length => length >= Math.max(count, of || 0)) ?? 100}`);
        if (of < count) return settings.wrong(`${count} beads do not fit on a string of ${of}.`, `${count} of ${shortest}`);
        return settings.tooMuch('A bead string shows one number') ?? { kind: 'bead-string', count, of };
    },
    next: settings => (settings.length === 1 ? ['of'] : []),
    inWords: ({ count, of }) => (count === 0 ? `Bead string: none of ${of} beads is pushed to the left.`
        : `Bead string: ${count} of ${of} beads ${count === 1 ? 'is' : 'are'} pushed to the left${asFivesAndTens(count)}; ${count === of ? 'none is' : of - count === 1 ? '1 is' : `${of - count} are`} left over.`)
};

export const placeCards: PictureKind<Of<'place-cards'>> = {
    kind: 'place-cards', title: 'Place-value cards', examples: ['place-cards 143', 'place-cards 2050'],
    says: 'A number as cards of its thousands, hundreds, tens and ones, apart and laid over one another.',
    settings: 'A whole number from 1 to 9999.',
    read(settings) {
        const value = onlyNumber(settings, 'Which number do the cards make? Write a whole number from 1 to 9999, as in: show place-cards 143', 'Place-value cards show one number', {
            from: 1, to: 9999, outside: text => (Number(text) < 1 ? 'No place-value card stands for 0: an empty place has no card.' : `Place-value cards go up to 9999; ${text} does not fit.`)
        });
        return isFault(value) ? insteadOf(value, settings.texts, tenFrame) : { kind: 'place-cards', value };
    },
    next: noWords,
    inWords({ value }) {
        const cards = placesOf(value).map(({ digit, worth }) => digit * worth);
        return cards.length === 1 ? `Place-value card: ${value}.` : `Place-value cards: ${listing(cards)}, laid over one another as ${value}.`;
    }
};

export const baseTen: PictureKind<Of<'base-ten'>> = {
    kind: 'base-ten', title: 'Base-ten blocks', examples: ['base-ten 143', 'base-ten 42'],
    says: 'A number as blocks: ones, tens of ten ones, hundreds of ten tens, one thousand of ten hundreds; as few blocks as can be.',
    settings: 'A whole number from 1 to 1999.',
    read(settings) {
        const value = onlyNumber(settings, 'Which number do the blocks make? Write a whole number from 1 to 1999, as in: show base-ten 143', 'Base-ten blocks show one number', {
            from: 1, to: 1999, outside: text => (Number(text) < 1 ? 'No block stands for 0.' : `Base-ten blocks go up to 1999 here; ${text} does not fit.`)
        });
        return isFault(value) ? insteadOf(value, settings.texts, tenFrame, placeCards) : { kind: 'base-ten', value };
    },
    next: noWords,
    inWords: ({ value }) => `Base-ten blocks: ${value} as ${listing(placesOf(value).map(({ digit, worth }) => counted(digit, blockNames[worth]!)))}.`
};

const blockNames: Record<number, string> = { 1000: 'thousand', 100: 'hundred', 10: 'ten', 1: 'one' };

export const tally: PictureKind<Of<'tally'>> = {
    kind: 'tally', title: 'Tally', examples: ['tally 13', 'tally 5'],
    says: 'A count as strokes, every fifth across the four before it.',
    settings: 'A whole number from 0 to 50.',
    read(settings) {
        const count = onlyNumber(settings, 'How many strokes? Write a whole number from 0 to 50, as in: show tally 13', 'A tally shows one number', {
            from: 0, to: 50, outside: text => `A tally has 0 to 50 strokes; ${text} are more than can be read.`
        });
        return isFault(count) ? insteadOf(count, settings.texts, baseTen, placeCards) : { kind: 'tally', count };
    },
    next: noWords,
    inWords({ count }) {
        const fives = Math.floor(count / 5);
        const rest = count % 5;
        const groups = [...(fives > 0 ? [counted(fives, 'five')] : []), ...(rest > 0 && fives > 0 ? [rest] : [])];
        return count === 0 ? 'Tally: 0, no stroke yet.' : `Tally: ${count}${groups.length > 0 ? `, as ${listing(groups)}` : ''}.`;
    }
};

/** The digits of a number that stand for something, from the greatest place down. */
export function placesOf(value: number): { digit: number; worth: number }[] {
    return [1000, 100, 10, 1].map(worth => ({ digit: Math.floor(value / worth) % 10, worth })).filter(({ digit }) => digit > 0);
}

/** Pictures of another kind that show the same number, where it is too great or too small for this one. */
const holds: Partial<Record<Picture['kind'], [from: number, to: number]>> = { 'ten-frame': [0, 20], 'base-ten': [1, 1999], 'place-cards': [1, 9999] };

function insteadOf<F extends { message: string; mends: string[] }>(fault: F, texts: readonly string[], ...kinds: PictureKind[]): F {
    const value = Number(texts[0]);
    if (fault.mends.length > 0 || texts.length !== 1 || !Number.isInteger(value)) return fault;
    const kind = kinds.find(({ kind: name }) => value >= holds[name]![0] && value <= holds[name]![1]);
    const mend = kind && `${kind.kind} ${value}`;
    return mend ? { ...fault, message: `${fault.message} Write: show ${mend}`, mends: [mend] } : fault;
}
