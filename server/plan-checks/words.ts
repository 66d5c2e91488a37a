import { asCommonNoun, singularTitle } from '@haversack/language/sheets/titles';
import type { Figure } from '../planning/figure.js';

/** "20 gram cubes", "1 gram cube", "150 g of uncooked rice", "2 of “Kitchen scale”": a title in the singular would not fit a number. */
export function amountOf(amount: Pick<Figure, 'text'>, { title, name }: { title: string; name: string }): string {
    if (amount.text === '1') return `1 ${asCommonNoun(singularTitle(title, name))}`;
    const several = /^\d+$/.test(amount.text);
    if (several && !/s\b/u.test(title)) return `${amount.text} of “${title}”`;
    return `${amount.text}${/^[\d\s/.,]+$/.test(amount.text) ? '' : ' of'} ${asCommonNoun(title)}`;
}

/** "at 1 more meeting", "at 3 more meetings". */
export function moreMeetings(count: number): string {
    return count === 0 ? '' : ` The same at ${count} more ${count === 1 ? 'meeting' : 'meetings'}.`;
}

export const isPast = (date: string | undefined, today: string): boolean => date !== undefined && date < today;
