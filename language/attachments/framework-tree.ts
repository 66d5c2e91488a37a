import type { FrameworkItem } from './attachment.js';
import { isObject, wordsOf, type JsonObject } from './case-package.js';
import { several } from './several.js';

/** An item as read, with the address by which associations may name it. */
export type PlainItem = FrameworkItem & { uri?: string };

/** Deeper levels are lifted to this one, so that whoever draws, sends or prints a tree needs no care of its own. */
const deepest = 50;

interface Link {
    /** Index of the parent in the items; -1 for the document. */
    parent: number;
    sequence: number;
    /** Belongs to a named grouping: an order beside the main one. */
    grouped: boolean;
}

/**
 * Puts items under their parents by their isChildOf associations. Every item stands in the tree exactly once: where several parents
 * are named, under the first in the file, an item before the document and the main order before a named grouping; where none is
 * known, at the top. A circle is cut at its first item in the file.
 */
export function frameworkTree(items: readonly PlainItem[], associations: readonly unknown[], document: JsonObject | undefined): { items: FrameworkItem[]; remarks: string[] } {
    const remarks: string[] = [];
    const { links, unknownParents, tied } = readLinks(items, associations, document);
    const chosen = items.map((_, i) => choose(links.get(i) ?? []));
    const elsewhere = items.filter((_, i) => new Set((links.get(i) ?? []).map(l => l.parent).filter(p => p >= 0)).size > 1);
    const circles = cutCircles(chosen);
    if (!tied && items.length > 1) {
        remarks.push('The file does not say which items belong under which (it has no isChildOf associations), so they stand in one list.');
    }
    if (elsewhere.length > 0) remarks.push(`${counted(elsewhere.length, 'item')} under several others (${nameOf(elsewhere)}); each is shown once, under the first.`);
    const orphans = unknownParents.filter(i => !chosen[i]);
    if (orphans.length > 0) {
        remarks.push(`${counted(orphans.length, 'item')} under an item that the file does not have (${nameOf(orphans.map(i => items[i]!))}); shown at the top.`);
    }
    if (circles.length > 0) remarks.push(`Items stand under one another in a circle; it is cut at ${nameOf(circles.map(i => items[i]!))}, shown at the top.`);
    return { items: build(items, chosen, remarks), remarks };
}

function readLinks(items: readonly PlainItem[], associations: readonly unknown[], document: JsonObject | undefined) {
    const indexes = new Map<string, number>();
    items.forEach(({ uri }, i) => { if (uri !== undefined && !indexes.has(uri)) indexes.set(uri, i); });
    items.forEach(({ identifier }, i) => indexes.set(identifier, i));
    for (const id of [wordsOf(document?.identifier), wordsOf(document?.uri)]) if (id !== undefined && !indexes.has(id)) indexes.set(id, -1);
    const links = new Map<number, Link[]>();
    const unknownParents = new Map<number, string>();
    let tied = false;
    for (const entry of associations) {
        if (!isObject(entry) || wordsOf(entry.associationType)?.replaceAll(' ', '').toLowerCase() !== 'ischildof') continue;
        const child = indexOf(entry.originNodeURI, indexes);
        if (child === undefined || child < 0) continue;
        tied = true;
        const parent = indexOf(entry.destinationNodeURI, indexes);
        if (parent === undefined) {
            if (!unknownParents.has(child)) unknownParents.set(child, namesOf(entry.destinationNodeURI)[0] ?? '');
            continue;
        }
        const link: Link = { parent, sequence: sequenceOf(entry.sequenceNumber), grouped: entry.CFAssociationGroupingURI !== undefined && entry.CFAssociationGroupingURI !== null };
        const known = links.get(child);
        if (known) known.push(link);
        else links.set(child, [link]);
    }
    // A file without its document's identifier: the one parent that no item has is the document.
    const isDocument = wordsOf(document?.identifier) === undefined && new Set(unknownParents.values()).size === 1;
    return { links, tied, unknownParents: isDocument ? [] : [...unknownParents.keys()] };
}

/** Identifier and address of a node, which may be an object (LinkGenURI) or a bare text. */
function namesOf(node: unknown): string[] {
    return (isObject(node) ? [node.identifier, node.uri] : [node]).flatMap(name => wordsOf(name) ?? []);
}

function indexOf(node: unknown, indexes: ReadonlyMap<string, number>): number | undefined {
    const names = namesOf(node);
    for (const name of names) {
        const index = indexes.get(name);
        if (index !== undefined) return index;
    }
    // An address of another server than the items' own still ends with the identifier.
    for (const name of names) {
        const index = indexes.get(name.slice(name.lastIndexOf('/') + 1));
        if (index !== undefined) return index;
    }
    return undefined;
}

function sequenceOf(value: unknown): number {
    const said = wordsOf(value);
    const number = said === undefined ? Number.NaN : Number(said);
    return Number.isFinite(number) ? number : Number.POSITIVE_INFINITY;
}

function choose(links: readonly Link[]): Link | undefined {
    const rank = (link: Link): number => (link.grouped ? 2 : 0) + (link.parent < 0 ? 1 : 0);
    return links.reduce<Link | undefined>((best, link) => (best && rank(best) <= rank(link) ? best : link), undefined);
}

/** Takes the parent away from the first item of every circle and tells which items these are. */
function cutCircles(chosen: (Link | undefined)[]): number[] {
    const cut: number[] = [];
    /** The walk on which an item was met; 0 for none yet. */
    const met = new Array<number>(chosen.length).fill(0);
    for (let start = 0; start < chosen.length; start++) {
        let at = start;
        while (at >= 0 && met[at] === 0) {
            met[at] = start + 1;
            at = chosen[at]?.parent ?? -1;
        }
        if (at < 0 || met[at] !== start + 1) continue;
        let first = at;
        for (let next = chosen[at]!.parent; next !== at; next = chosen[next]!.parent) first = Math.min(first, next);
        chosen[first] = undefined;
        cut.push(first);
    }
    return cut;
}

function build(items: readonly PlainItem[], chosen: readonly (Link | undefined)[], remarks: string[]): FrameworkItem[] {
    const under = new Map<number, number[]>();
    items.forEach((_, i) => {
        const parent = chosen[i]?.parent ?? -1;
        const children = under.get(parent);
        if (children) children.push(i);
        else under.set(parent, [i]);
    });
    for (const children of under.values()) {
        // Infinity less Infinity is not a number: items without a place keep the file's order.
        children.sort((a, b) => (sequence(a) - sequence(b) || a - b));
    }
    const roots: FrameworkItem[] = [];
    const lifted: FrameworkItem[] = [];
    const stack = (under.get(-1) ?? []).toReversed().map(index => ({ index, level: 1, into: roots }));
    for (let next = stack.pop(); next; next = stack.pop()) {
        const { identifier, code, statement, type } = items[next.index]!;
        const item: FrameworkItem = { identifier, code, statement, type, children: [] };
        const { level, into } = next;
        into.push(item);
        if (level > deepest) lifted.push(item);
        const children = level >= deepest ? into : item.children;
        for (const index of (under.get(next.index) ?? []).toReversed()) stack.push({ index, level: level + 1, into: children });
    }
    if (lifted.length > 0) remarks.push(`The framework is more than ${deepest} levels deep; what lies deeper is shown on level ${deepest} (${nameOf(lifted)}).`);
    return roots;

    function sequence(index: number): number {
        return chosen[index]?.sequence ?? Number.POSITIVE_INFINITY;
    }
}

function counted(count: number, one: string): string {
    return count === 1 ? `One ${one} stands` : `${count} ${one}s stand`;
}

function nameOf(items: readonly FrameworkItem[]): string {
    return several(items.map(item => item.code ?? item.statement));
}
