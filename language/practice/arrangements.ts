import { inWords } from './number-names.js';
import type { ItemSet } from './practice-item.js';

/** Every other number that is made of the same digits, in rising order. None begins with zero, and equal digits count once; at most 719 for six digits. */
export function arrangementsOf(number: number): number[] {
    const found: number[] = [];
    const left = new Map<string, number>();
    const digits = String(number);
    for (const digit of [...digits].sort()) left.set(digit, (left.get(digit) ?? 0) + 1);
    const go = (begun: string): void => {
        if (begun.length === digits.length) {
            if (begun !== digits) found.push(Number(begun));
            return;
        }
        for (const [digit, count] of left) {
            if (count === 0 || (digit === '0' && begun === '')) continue;
            left.set(digit, count - 1);
            go(begun + digit);
            left.set(digit, count);
        }
    };
    go('');
    return found;
}

/** Digits to be laid so that they make a named number. */
export function arrangingDigits(number: number): ItemSet {
    const others = arrangementsOf(number);
    const digits = [...String(number)];
    const cards = `${digits.slice(0, -1).join(', ')} and ${digits[digits.length - 1]}`;
    return {
        total: others.length,
        at: index => ({ ask: `Arrange ${cards} to make ${inWords(others[index]!)}`, answer: String(others[index]!), about: [String(others[index]!)], room: 'number' }),
        find: ([wanted, ...more]) => {
            const index = more.length === 0 && wanted !== undefined ? others.indexOf(wanted) : -1;
            return index < 0 ? undefined : index;
        }
    };
}
