/** How much two things have in common, and who of the one side is who on the other. */

/** One aspect of likeness: its items, each with how often it occurs, and how much it weighs. */
export interface Aspect {
    /** "parts", "steps": for the reason that is given. */
    what: string;
    weight: number;
    items: readonly string[];
    /** Too fine to be counted in the reason: words of a text. */
    silent?: boolean;
    /** With less of this in common the two are not the same, whatever else they share. */
    must?: number;
}

export interface Likeness {
    /** From 0 to 1. */
    score: number;
    /** "all 3 parts", "9 of 10 steps": what is the same; empty where nothing is. */
    why: readonly string[];
}

/** The mean of the shares that are the same, by weight; an aspect that neither side has says nothing. */
export function likeness(old: readonly Aspect[], now: readonly Aspect[]): Likeness {
    let total = 0;
    let weights = 0;
    const reasons: string[] = [];
    for (const aspect of old) {
        const other = now.find(({ what }) => what === aspect.what);
        const items = other?.items ?? [];
        const longest = Math.max(aspect.items.length, items.length);
        if (longest === 0) continue;
        const same = common(aspect.items, items);
        const share = (2 * same) / (aspect.items.length + items.length);
        if (share < (aspect.must ?? 0)) return { score: 0, why: [] };
        total += aspect.weight * share;
        weights += aspect.weight;
        if (!aspect.silent && same > 0) reasons.push(shareInWords(same, longest, aspect.what));
    }
    return { score: weights === 0 ? 0 : total / weights, why: reasons };
}

function shareInWords(same: number, all: number, what: string): string {
    if (same < all) return `${same} of ${all} ${what}`;
    return all === 1 ? `the only ${what.replace(/s$/, '')}` : all === 2 ? `both ${what}` : `all ${all} ${what}`;
}

/** How many items both have, each as often as it occurs on both sides. */
export function common(a: readonly string[], b: readonly string[]): number {
    const left = new Map<string, number>();
    for (const item of a) left.set(item, (left.get(item) ?? 0) + 1);
    let same = 0;
    for (const item of b) {
        const count = left.get(item) ?? 0;
        if (count === 0) continue;
        left.set(item, count - 1);
        same++;
    }
    return same;
}

export function wordsOf(text: string): string[] {
    return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}

/** The share of words that two texts have in common, from 0 to 1. */
export function alikeTexts(a: string, b: string): number {
    const [first, second] = [wordsOf(a), wordsOf(b)];
    return first.length + second.length === 0 ? 1 : (2 * common(first, second)) / (first.length + second.length);
}

export interface Pair<T> {
    old: T;
    new: T;
    /** Where the two were recognised by what they say: how much alike they are and in what. */
    recognised?: Likeness;
}

export interface Pairing<T> {
    /** In the order of the old edition. */
    pairs: Pair<T>[];
    gone: T[];
    added: T[];
}

export interface Recognition<T> {
    name(one: T): string;
    /** Equal where two say the same to the letter, names aside; left out, only names tell. */
    saying(one: T): string;
    aspects(one: T, side: 'old' | 'new'): readonly Aspect[];
    /** From this likeness on, two of different names are the same. */
    least: number;
}

/** What the same name is worth beside likeness: a lesson that was rewritten in part stays itself. */
const sameNameBonus = 0.3;
/** An item that so many have tells nobody apart. */
const tooCommon = 40;

/**
 * Pairs each with the one it is most like, never two with one. Those with the same name that say the same are themselves; then the most
 * alike first, so that lessons that were numbered anew are recognised; at last those that have only the name in common.
 */
export function pairUp<T>(old: readonly T[], now: readonly T[], { name, saying, aspects, least }: Recognition<T>): Pairing<T> {
    const partner = new Map<T, Pair<T>>();
    const taken = new Set<T>();
    const take = (pair: Pair<T>): void => {
        partner.set(pair.old, pair);
        taken.add(pair.new);
    };
    const named = new Map<string, T[]>();
    for (const one of now) named.set(name(one), [...named.get(name(one)) ?? [], one]);
    const namesake = (one: T, fits: (other: T) => boolean): T | undefined => named.get(name(one))?.find(other => !taken.has(other) && fits(other));
    for (const one of old) {
        const same = namesake(one, other => saying(one) === saying(other));
        if (same !== undefined) take({ old: one, new: same });
    }
    const restOld = old.filter(one => !partner.has(one));
    const restNew = now.filter(one => !taken.has(one));
    for (const { a, b, like } of mostAlike(restOld, restNew, { name, aspects, least })) {
        if (partner.has(a) || taken.has(b)) continue;
        take(name(a) === name(b) ? { old: a, new: b } : { old: a, new: b, recognised: like });
    }
    for (const one of old) {
        const same = partner.has(one) ? undefined : namesake(one, () => true);
        if (same !== undefined) take({ old: one, new: same });
    }
    return {
        pairs: old.flatMap(one => partner.get(one) ?? []),
        gone: old.filter(one => !partner.has(one)), added: now.filter(one => !taken.has(one))
    };
}

interface Candidate<T> { a: T; b: T; like: Likeness; rank: number; apart: number; sum: number }

/** Pairs that are alike enough, the most alike first; of equal ones those that stand nearest to one another, seen the same way from either side. */
function mostAlike<T>(old: readonly T[], now: readonly T[], { name, aspects, least }: Omit<Recognition<T>, 'saying'>): Candidate<T>[] {
    if (old.length === 0 || now.length === 0) return [];
    const seenNew = now.map(one => aspects(one, 'new'));
    const holders = new Map<string, number[]>();
    seenNew.forEach((list, index) => {
        for (const key of keysOf(list)) holders.set(key, [...holders.get(key) ?? [], index]);
    });
    const namesakes = new Map(now.map((one, index) => [name(one), index]));
    const found: Candidate<T>[] = [];
    old.forEach((a, i) => {
        const seen = aspects(a, 'old');
        const near = new Set<number>();
        for (const key of keysOf(seen)) {
            const list = holders.get(key) ?? [];
            if (list.length <= tooCommon) for (const j of list) near.add(j);
        }
        const namesake = namesakes.get(name(a));
        if (namesake !== undefined) near.add(namesake);
        for (const j of near) {
            const b = now[j]!;
            const like = likeness(seen, seenNew[j]!);
            const same = name(a) === name(b);
            if (like.score < (same ? least / 2 : least)) continue;
            found.push({ a, b, like, rank: Math.round((like.score + (same ? sameNameBonus : 0)) * 1000), apart: Math.abs(i - j), sum: i + j });
        }
    });
    return found.sort((x, y) => y.rank - x.rank || x.apart - y.apart || x.sum - y.sum);
}

function keysOf(aspects: readonly Aspect[]): Set<string> {
    return new Set(aspects.flatMap(({ what, items, silent }) => (silent ? [] : items.map(item => `${what} ${item}`))));
}
