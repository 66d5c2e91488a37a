import { unitNamed, type Unit } from '../facts/units.js';
import type { Amount, Exact, ThingSheet } from '../sheets/sheet.js';

/** A positive whole number over another. */
interface Share {
    n: bigint;
    d: bigint;
}

/** Longer numbers are slips of the hand. */
const longest = 40;
const written = /^(?:(\d+) +)?(\d+)\/(\d+)$|^(\d+)(?:\.(\d+))?$/;

/** Reads "20", "14.50", "1/2" or "1 1/2"; undefined for anything else, a zero below the line included. */
function read(text: Exact): Share | undefined {
    const trimmed = text.trim();
    const found = trimmed.length <= longest ? written.exec(trimmed) : null;
    if (!found) return undefined;
    const [, whole = '0', above = '0', below = '1', integer, decimals = ''] = found;
    if (integer !== undefined) return { n: BigInt(integer + decimals), d: 10n ** BigInt(decimals.length) };
    const d = BigInt(below);
    return d === 0n ? undefined : { n: BigInt(whole) * d + BigInt(above), d };
}

function times(a: Share, b: Share): Share {
    return lowest({ n: a.n * b.n, d: a.d * b.d });
}

function lowest({ n, d }: Share): Share {
    let [a, b] = [n, d];
    while (b !== 0n) [a, b] = [b, a % b];
    return a === 0n ? { n, d } : { n: n / a, d: d / a };
}

/** A decimal where one is exact, else a whole number with a fraction: text that is read back. */
function write(share: Share): Exact {
    const { n, d } = lowest(share);
    for (let decimals = 0; decimals <= 12; decimals++) {
        const scale = 10n ** BigInt(decimals);
        if (scale % d !== 0n) continue;
        const digits = String(n * (scale / d)).padStart(decimals + 1, '0');
        return decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
    }
    return n > d ? `${n / d} ${n % d}/${d}` : `${n}/${d}`;
}

export interface Ratio {
    give: Exact;
    replaces: Exact;
}

/** Whether both sides are more than nothing. */
export function isRatio({ give, replaces }: Ratio): boolean {
    const [a, b] = [read(give), read(replaces)];
    return a !== undefined && b !== undefined && a.n > 0n && b.n > 0n;
}

export function isOneForOne({ give, replaces }: Ratio): boolean {
    const [a, b] = [read(give), read(replaces)];
    return a !== undefined && b !== undefined && a.n * b.d === b.n * a.d;
}

/**
 * How much of `other` does for an amount of `thing`, exactly. The ratio counts each in what it is measured or counted in; an amount in
 * another unit of the same kind keeps its unit (150 g, 2 for 1: 300 g). An amount that cannot be read stays as it is written.
 */
export function inStead(amount: Amount, thing: ThingSheet | undefined, other: ThingSheet | undefined, { give, replaces }: Ratio): Amount {
    const [value, more, less] = [read(amount.value), read(give), read(replaces)];
    if (!value || !more || !less || less.n === 0n) return amount;
    const share = times(more, { n: less.d, d: less.n });
    const own = amount.unit === undefined ? undefined : unitNamed(amount.unit);
    const [from, to] = [unitOf(thing), unitOf(other)];
    if (own && to?.dimension === own.dimension) return { ...amount, value: write(times(value, share)) };
    const inOwn = own && from?.dimension === own.dimension ? times(value, perUnit(own, from)) : value;
    return { value: write(times(inOwn, share)), unit: to?.symbol ?? wordOf(other), at: amount.at };
}

/** How many of the one unit make the other. */
function perUnit(unit: Unit, of: Unit): Share {
    const [a, b] = [read(unit.factor), read(of.factor)];
    return a && b ? times(a, { n: b.d, d: b.n }) : { n: 1n, d: 1n };
}

function unitOf(thing: ThingSheet | undefined): Unit | undefined {
    if (thing?.kind !== 'material' || thing.counted) return undefined;
    const units = [thing.measured?.unit, ...thing.packs.map(({ amount }) => amount.unit)];
    for (const unit of units) {
        const known = unit === undefined ? undefined : unitNamed(unit);
        if (known) return known;
    }
    return undefined;
}

function wordOf(thing: ThingSheet | undefined): string | undefined {
    return thing?.kind === 'material' ? thing.counted?.many : undefined;
}

/** True for what is gone after use: measured goods of which nothing is said, as the plan counts them, and copies. */
export function isUsedUp(thing: ThingSheet | undefined): boolean {
    if (thing?.kind !== 'material') return thing?.kind === 'print';
    const unit = unitOf(thing);
    return thing.use ? thing.use === 'consumable' : unit !== undefined && unit.dimension !== 'length';
}

/** What an amount of a thing is told in: a unit's dimension, or pieces. */
function kindOf(thing: ThingSheet | undefined, amount?: Amount): string {
    const own = amount?.unit === undefined ? undefined : unitNamed(amount.unit);
    return own?.dimension ?? unitOf(thing)?.dimension ?? 'pieces';
}

/** Whether nothing but a ratio says how much of `other` does for an amount of `thing`: one is weighed and the other counted, or the like. */
export function isUnlike(amount: Amount, thing: ThingSheet | undefined, other: ThingSheet | undefined): boolean {
    return kindOf(thing, amount) !== kindOf(other);
}

/** "measured in g", "counted". */
export function measureInWords(thing: ThingSheet | undefined, amount?: Amount): string {
    const own = amount?.unit === undefined ? undefined : unitNamed(amount.unit);
    const unit = own ?? unitOf(thing);
    return unit ? `measured in ${unit.symbol}` : 'counted';
}
