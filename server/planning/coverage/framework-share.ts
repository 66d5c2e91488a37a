import { attachmentKey, type Programme } from '@haversack/language/sheets/programme';
import type { FrameworkFile, FrameworkItem } from '@haversack/language/attachments/attachment';
import { itemsOfCodes } from '@haversack/language/attachments/items-of-codes';
import type { FrameworkSheet, ObjectiveSheet } from '@haversack/language/sheets/sheet';
import type { FrameworkFigures, FrameworkNode } from '../coverage-figures.js';
import { quoted } from '@haversack/language/facts/wording';
import type { Cell } from './visits.js';

/**
 * How much of a framework the plan meets. CASE does not say when an item is covered, so it is settled here:
 * - What is counted are the items without others under them.
 * - An objective is at work when a taught lesson introduces, practises or checks it.
 * - An item is met when an objective at work is aligned to it.
 * - An objective aligned to an item with others under it answers that item whole, so those under it are met too; how many are met only
 *   so is told beside the share, because a single alignment near the top can claim much.
 * - An item with others under it and no alignment of its own is met when all of them are, not before.
 */
export function frameworkShare(programme: Programme, framework: FrameworkSheet, cells: ReadonlyMap<string, readonly Cell[]>): FrameworkFigures {
    const figures: FrameworkFigures = {
        name: framework.name, title: framework.title, place: { uri: framework.uri, range: framework.at },
        items: 0, met: 0, text: '', tree: [], unknownCodes: []
    };
    const file = fileOf(programme, framework);
    if (typeof file === 'string') return { ...figures, wrong: file, text: `${quoted(framework.title)} cannot be compared with the plan: its file is not readable` };
    const nodes = flatten(file.items);
    const alignments = [...programme.objectives.values()].flatMap(objective => objective.alignsTo
        .filter(aligned => aligned.framework.name === framework.name).map(aligned => ({ objective, aligned })));
    const found = itemsOfCodes(nodes, new Set(alignments.map(a => a.aligned.code)));
    for (const { objective, aligned } of alignments) {
        const flats = found.get(aligned.code);
        if (!flats) figures.unknownCodes.push({ code: aligned.code, objective: objective.name, place: { uri: objective.uri, range: aligned.at } });
        for (const flat of flats ?? []) align(flat, objective, cells.get(objective.name) ?? []);
    }
    settle(nodes);
    figures.document = file.title;
    figures.remarks = [...file.remarks];
    figures.tree = nodes.filter(n => n.parent < 0).map(n => n.node);
    figures.items = figures.tree.reduce((sum, n) => sum + n.leaves, 0);
    figures.met = figures.tree.reduce((sum, n) => sum + n.leavesMet, 0);
    figures.metAbove = nodes.filter(({ node }) => node.children.length === 0 && node.through === 'above').length;
    figures.text = shareText(figures);
    return figures;
}

/** Why there is none, in words, where there is none. */
function fileOf(programme: Programme, framework: FrameworkSheet): FrameworkFile | string {
    if (!framework.from) return `No file is named for ${quoted(framework.title)}. Write: framework ${framework.name} from "frameworks/${framework.name}.json"`;
    const attachment = programme.attachments.get(attachmentKey(framework.uri, framework.from.path));
    if (!attachment) return `The file “${framework.from.path}” has not been read.`;
    if (attachment.state === 'wrong') return attachment.message;
    if (attachment.state === 'calendar') return `The file “${framework.from.path}” is a calendar, not a framework. Name a framework's CASE file here.`;
    return attachment.framework;
}

interface Flat {
    item: FrameworkItem;
    node: FrameworkNode;
    /** Index of the item above; -1 at the top. */
    parent: number;
    /** The first cell of each lesson that works on it; absent, as below, where nothing is aligned. */
    taught?: Map<string, Cell>;
    aligned?: Set<ObjectiveSheet>;
}

/** Items in the order of the tree, each after the one above it; without recursion, so that no depth is too deep. */
function flatten(items: readonly FrameworkItem[]): Flat[] {
    const flats: Flat[] = [];
    const stack = items.map(item => ({ item, parent: -1 })).reverse();
    for (let next = stack.pop(); next; next = stack.pop()) {
        const { item, parent } = next;
        const node: FrameworkNode = {
            code: item.code, statement: item.statement, type: item.type, children: [], objectives: [], lessons: [], leaves: 0, leavesMet: 0, met: false
        };
        flats[parent]?.node.children.push(node);
        const index = flats.push({ item, node, parent }) - 1;
        for (let i = item.children.length - 1; i >= 0; i--) stack.push({ item: item.children[i]!, parent: index });
    }
    return flats;
}

function align(flat: Flat, objective: ObjectiveSheet, cells: readonly Cell[]): void {
    const aligned = flat.aligned ??= new Set();
    const taught = flat.taught ??= new Map();
    if (aligned.has(objective)) return;
    aligned.add(objective);
    flat.node.objectives.push({ name: objective.name, title: objective.title, place: { uri: objective.uri, range: objective.at } });
    for (const cell of cells) if (!taught.has(cell.column.lesson.name)) taught.set(cell.column.lesson.name, cell);
}

/** Downwards what is met through the item above, then upwards the counts and what is met by all that is under it. */
function settle(flats: readonly Flat[]): void {
    for (const { node, taught, parent } of flats) {
        if (taught) {
            node.lessons = [...taught.values()].sort((a, b) => a.column.index - b.column.index)
                .map(({ column, places }) => ({ name: column.lesson.name, title: column.lesson.title, place: places[0]! }));
        }
        const above = flats[parent]?.node.met ?? false;
        node.met = node.lessons.length > 0 || above;
        if (above && node.lessons.length === 0) node.through = 'above';
    }
    for (let i = flats.length - 1; i >= 0; i--) {
        const { node, parent } = flats[i]!;
        if (node.children.length === 0) {
            node.leaves = 1;
            node.leavesMet = node.met ? 1 : 0;
        } else if (node.leavesMet === node.leaves) {
            node.met = true;
        }
        const above = flats[parent]?.node;
        if (!above) continue;
        above.leaves += node.leaves;
        above.leavesMet += node.leavesMet;
    }
}

function shareText({ items, met, metAbove = 0 }: FrameworkFigures): string {
    const above = metAbove === 0 ? '' : metAbove === met ? ', only through an item above' : `, ${metAbove} of them only through an item above`;
    return `${met} of ${items} ${items === 1 ? 'item is' : 'items are'} met (${percent(met, items)} %)${above}`;
}

/** Whole per cent; 0 and 100 only for none and all. */
function percent(part: number, whole: number): number {
    if (part === 0) return 0;
    return part === whole ? 100 : Math.min(99, Math.max(1, Math.round((part * 100) / whole)));
}
