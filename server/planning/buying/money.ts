import { decimalsOfCurrency } from '@haversack/language/facts/currencies';
import type { Money } from '@haversack/language/sheets/sheet';
import Fraction from 'fraction.js';
import { readExact } from '../exact.js';
import type { MoneyFigure } from '../supply-figures.js';
import { ceilDiv } from './offers.js';

/** Whole minor units of a currency: 1450 of USD is 14.50 USD. */
export interface Sum {
    minor: bigint;
    currency: string;
}

/** Undefined where the amount is no number or has a part smaller than the currency's smallest coin. */
export function readMoney({ value, currency }: Pick<Money, 'value' | 'currency'>): Sum | undefined {
    const minor = readExact(value)?.mul(new Fraction(10).pow(decimalsOfCurrency(currency))!);
    return minor && minor.d === 1n ? { minor: minor.s * minor.n, currency } : undefined;
}

/** "14.50 USD", with as many decimals as the currency has. */
export function moneyText({ minor, currency }: Sum): string {
    const places = decimalsOfCurrency(currency);
    const digits = (minor < 0n ? -minor : minor).toString().padStart(places + 1, '0');
    const whole = digits.slice(0, digits.length - places);
    return `${minor < 0n ? '-' : ''}${places === 0 ? whole : `${whole}.${digits.slice(-places)}`} ${currency}`;
}

export function moneyFigure(sum: Sum): MoneyFigure {
    return { minor: sum.minor.toString(), currency: sum.currency, text: moneyText(sum) };
}

/** One sum for each currency, in the order of their codes; currencies are never added to one another. */
export function sumsByCurrency(amounts: Iterable<Sum>): Sum[] {
    const totals = new Map<string, bigint>();
    for (const { minor, currency } of amounts) totals.set(currency, (totals.get(currency) ?? 0n) + minor);
    return [...totals].sort(([a], [b]) => (a < b ? -1 : 1)).map(([currency, minor]) => ({ minor, currency }));
}

/** Rounded up to the smallest coin, so that what the learners pay is enough; `words` say how. Undefined without learners. */
export function perLearner(total: Sum, learners: number): (Sum & { words: string }) | undefined {
    if (!Number.isSafeInteger(learners) || learners < 1) return undefined;
    const minor = ceilDiv(total.minor, BigInt(learners));
    const share = { minor, currency: total.currency };
    const isWhole = minor * BigInt(learners) === total.minor;
    const among = `${moneyText(total)} among ${learners} ${learners === 1 ? 'learner' : 'learners'}`;
    return { ...share, words: `${among}: ${isWhole ? '' : 'rounded up to '}${moneyText(share)} each` };
}
