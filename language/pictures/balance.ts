import type { PictureKind } from './picture-kind.js';
import type { Picture } from './picture.js';
import { wholeNumber } from './numbers.js';
import { isFault, type PictureFault, type SettingsReader } from './settings-reader.js';

type Balance = Extract<Picture, { kind: 'balance' }>;

const limits = { parts: 20, sum: 100 };

export const balance: PictureKind<Balance> = {
    kind: 'balance', title: 'Balance', examples: ['balance 12 and 7 plus 5', 'balance 8 and 5 plus 2'],
    says: 'Two sides that are compared: the heavier one hangs lower, and equal ones hang level.',
    settings: `Two sides with \`and\` between them; each is a whole number or several with \`plus\`, at most ${limits.parts} of them and ${limits.sum} in all.`,
    read(settings) {
        const left = readSide(settings);
        if ('mends' in left) return left;
        const next = settings.peek();
        if (!settings.skip('and')) {
            const isSide = settings.texts.length === left.length * 2 && Number(next) >= 1 && Number(next) <= limits.sum && Number.isInteger(Number(next));
            return settings.wrongNext("What lies on the other side? Write it after 'and', as in: show balance 12 and 7 plus 5", isSide ? `${left.join(' plus ')} and ${Number(next)}` : undefined);
        }
        const right = readSide(settings);
        if ('mends' in right) return right;
        return settings.tooMuch('A balance has two sides') ?? { kind: 'balance', left, right };
    },
    next(settings) {
        if (!/^\d/.test(settings.at(-1) ?? '')) return [];
        return settings.includes('and') ? ['plus'] : ['and', 'plus'];
    },
    inWords({ left, right }) {
        const [onLeft, onRight] = [sumOf(left), sumOf(right)];
        const verdict = onLeft === onRight ? 'It hangs level.' : `The ${onLeft > onRight ? 'left' : 'right'} side is heavier and hangs lower.`;
        return `Balance: ${sideInWords(left)} on the left, ${sideInWords(right)} on the right. ${verdict}`;
    }
};

export const sumOf = (parts: readonly number[]): number => parts.reduce((sum, part) => sum + part, 0);

const sideInWords = (parts: readonly number[]): string => (parts.length > 1 ? `${parts.join(' + ')} = ${sumOf(parts)}` : String(parts[0]));

function readSide(settings: SettingsReader): number[] | PictureFault {
    const parts: number[] = [];
    do {
        const part = wholeNumber(settings, `What lies on this side? Write a whole number from 1 to ${limits.sum}, as in: show balance 12 and 7 plus 5`, {
            from: 1, to: limits.sum, outside: text => (Number(text) < 1 ? 'What weighs 0 is not there: write what lies on this side.' : `A side of the balance holds up to ${limits.sum}; ${text} is too much.`)
        });
        if (isFault(part)) return part;
        parts.push(part);
        if (parts.length > limits.parts) return settings.wrong(`A side of the balance has room for ${limits.parts} numbers.`);
        if (sumOf(parts) > limits.sum) return settings.wrong(`A side of the balance holds up to ${limits.sum}; ${parts.join(' plus ')} is ${sumOf(parts)}.`);
    } while (settings.skip('plus'));
    return parts;
}
