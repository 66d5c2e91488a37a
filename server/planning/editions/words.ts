import type { Amount, Exact, Need, Per, Place } from '@haversack/language/sheets/sheet';
import { unitNamed } from '@haversack/language/facts/units';
import { convert } from '../amounts.js';
import type { Difference, DifferenceKind, EditionGroup } from '../edition-figures.js';
import { readExact } from '../exact.js';
import { listing, quoted } from '@haversack/language/facts/wording';
import type { Likeness } from './alike.js';

/** Words that the comparison of editions uses in many places. */

export function difference(kind: DifferenceKind, says: string, more: Omit<Difference, 'kind' | 'says'> = {}): Difference {
    return { kind, says, ...more };
}

/** A group with something to say; none otherwise. */
export function group(content: EditionGroup): EditionGroup[] {
    return content.differences.length > 0 ? [content] : [];
}

/** "120 instead of 100", "now 120 (nothing was said)", "no longer said (was 100)"; undefined where both are the same. */
export function instead(before: string | undefined, after: string | undefined): string | undefined {
    if (before === after) return undefined;
    if (before === undefined) return `now ${after!}`;
    return after === undefined ? `no longer ${before}` : `${after} instead of ${before}`;
}

/** "9 lessons instead of 8"; undefined where both are the same. */
export function insteadOf(before: number, after: number, one: string, many: string): string | undefined {
    return before === after ? undefined : `${after} ${after === 1 ? one : many} instead of ${before}`;
}

/** How sure it is that two are the same, and why. */
export function sureness({ score, why }: Likeness): string {
    const sure = score >= 0.85 ? 'Certainly the same' : score >= 0.65 ? 'Very likely the same' : 'Perhaps the same';
    if (why.length === 0) return `${sure}: most words agree.`;
    return `${sure}: ${listing(why)} ${why.length === 1 && /^(?:the only|1 of) /.test(why[0]!) ? 'agrees' : 'agree'}.`;
}

export function perText(per: Per | undefined): string {
    if (!per || per.who === 'class') return 'for the class';
    return per.who === 'group' && per.size !== undefined ? `per group of ${per.size}` : `per ${per.who}`;
}

export function amountWritten(amount: Amount | undefined): string {
    return amount ? [amount.value, amount.unit].filter(Boolean).join(' ') : 'no amount';
}

/** "12 per pair (ones, tens), optional". */
export function needText(need: Need, partTitle: (name: string) => string): string {
    const parts = need.options[0]?.parts ?? [];
    const only = parts.length > 0 ? ` (only ${listing(parts.map(({ name }) => partTitle(name)))})` : '';
    return `${amountWritten(need.amount)} ${perText(need.per)}${only}${need.optional ? ', optional' : ''}`;
}

/** Equal for equal amounts: 1/2 kg and 500 g are one. */
export function amountKey(amount: Amount | undefined): string {
    const value = amount && readExact(amount.value);
    if (!amount || !value) return amount ? `? ${amount.value} ${amount.unit ?? ''}` : '';
    const unit = amount.unit === undefined ? undefined : unitNamed(amount.unit);
    const base = unit && unitNamed(smallest[unit.dimension] ?? unit.symbol);
    const inBase = unit && base ? convert(value, unit, base) : undefined;
    return inBase && base ? `${inBase.toFraction()} ${base.symbol}` : `${value.toFraction()} ${(amount.unit ?? '').toLowerCase().replace(/s$/, '')}`;
}

const smallest: Readonly<Record<string, string>> = { mass: 'g', volume: 'ml', length: 'mm' };

export function sameNumber(a: Exact | undefined, b: Exact | undefined): boolean {
    const [first, second] = [a === undefined ? undefined : readExact(a), b === undefined ? undefined : readExact(b)];
    return first && second ? first.equals(second) : a === b;
}

export function minutesText(minutes: number): string {
    return `${minutes} min`;
}

export function titles(list: readonly string[]): string {
    return listing(list.map(quoted));
}

/** What one list has and the other has not, by key, each key once. */
export function comings<T>(old: readonly T[], now: readonly T[], oldKey: (one: T) => string, newKey: (one: T) => string): { gone: T[]; added: T[] } {
    const before = new Set(old.map(oldKey));
    const after = new Set(now.map(newKey));
    return { gone: old.filter(one => !after.has(oldKey(one))), added: now.filter(one => !before.has(newKey(one))) };
}

export interface Sides {
    old?: Place;
    new?: Place;
}
