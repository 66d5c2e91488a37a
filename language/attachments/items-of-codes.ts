import type { FrameworkItem } from './attachment.js';

/** Something that is told of one item of a framework. */
interface OfItem {
    item: FrameworkItem;
}

/**
 * Finds the items that codes stand for: by code; else by identifier; else by code in other letters or spacing, where only one
 * item has it. Only what is wanted is kept, since a framework has far more items than a programme names. A code that no item has is absent.
 */
export function itemsOfCodes<T extends OfItem>(all: readonly T[], wanted: ReadonlySet<string>): ReadonlyMap<string, readonly T[]> {
    const found = gather(all, wanted, item => item.code);
    const byIdentifier = gather(all, without(wanted, found), item => item.identifier);
    for (const [code, items] of byIdentifier) found.set(code, items);
    const left = without(wanted, found);
    if (left.size === 0) return found;
    const similar = gather(all, new Set([...left].map(looseCode)), item => item.code && looseCode(item.code));
    for (const code of left) {
        const items = similar.get(looseCode(code));
        if (items?.length === 1) found.set(code, items);
    }
    return found;
}

/** Every item of a tree, without recursion, so that no depth is too deep. In no order that counts. */
export function everyItem(tree: readonly FrameworkItem[]): FrameworkItem[] {
    const items: FrameworkItem[] = [];
    const open = [...tree];
    for (let item = open.pop(); item; item = open.pop()) {
        items.push(item);
        for (const child of item.children) open.push(child);
    }
    return items;
}

function gather<T extends OfItem>(all: readonly T[], wanted: ReadonlySet<string>, keyOf: (item: FrameworkItem) => string | undefined): Map<string, T[]> {
    const found = new Map<string, T[]>();
    if (wanted.size === 0) return found;
    for (const one of all) {
        const key = keyOf(one.item);
        if (key === undefined || !wanted.has(key)) continue;
        const known = found.get(key);
        if (known) known.push(one);
        else found.set(key, [one]);
    }
    return found;
}

function without(wanted: ReadonlySet<string>, found: ReadonlyMap<string, unknown>): ReadonlySet<string> {
    return new Set([...wanted].filter(code => !found.has(code)));
}

function looseCode(code: string): string {
    return code.replace(/\s+/g, '').toLowerCase();
}
