import type { Edit } from '@haversack/language/checks/check';
import type { Programme } from '@haversack/language/sheets/programme';
import { planColumns, type ColumnPlan, type GivenColumn } from './columns.js';
import { measureFor } from './fit-quantity.js';
import { HoldingsEdits, type Holder } from './holdings-edits.js';
import { readRows, type InventoryRow, type InventoryRows } from './inventory-rows.js';
import { matchThings, type MatchedThing } from './match-things.js';
import { mergeRows } from './merge-rows.js';
import { isCurrencyCode, type CurrencyHints } from './money.js';
import { styleOf } from './numbers.js';
import type { ImportReport, ReportedColumn, ReportedRow } from './report.js';
import type { Refusal, Table } from './table.js';
import { materialEdits, newMaterial } from './thing-edits.js';

export interface ImportChoices {
    /** Address of the file that new materials go to. It may not be there yet. */
    file: string;
    columns?: readonly GivenColumn[];
    /** ISO 4217 code for prices that do not say theirs. */
    currency?: string;
    /** Whose `on hand` takes what is there. */
    class?: string;
    /** The kit that takes it instead. */
    kit?: string;
}

export interface ImportPlan {
    report: ImportReport;
    /** In several files; only what differs. */
    edits: Edit[];
}

/** New lines after this line stand after the last. */
const end = Number.MAX_SAFE_INTEGER;

/**
 * Works out what an inventory's spreadsheet would change in a programme, without changing anything. `textOf` gives the text of a file
 * of the programme, without a byte order mark.
 */
export function planImport(programme: Programme, textOf: (uri: string) => string, table: Table, choices: ImportChoices): ImportPlan | Refusal {
    const refusal = checkChoices(programme, choices);
    if (refusal) return refusal;
    const style = styleOf(table);
    const columns = planColumns(table, choices.columns ?? [], style);
    if ('refusal' in columns) return columns;
    const reading = readRows(table, columns, currencyHints(programme, choices.currency), style);
    const { things, skipped } = matchThings(reading.rows, programme);
    const holder = holderOf(programme, choices);
    const holdings = holder && new HoldingsEdits(holder);
    const edits: Edit[] = [];
    const fresh: string[] = [];
    const rows: ReportedRow[] = [...reading.skipped, ...skipped].map(({ row, title, why, expected }) => ({ row, does: 'skipped', title, changes: [], remarks: [why], lost: expected !== true }));
    const lineAt = linesBy(textOf);
    for (const match of things) {
        const { reported, edits: made, lines } = takeThing(match, programme, lineAt, holdings);
        rows.push(...reported);
        edits.push(...made);
        if (lines) fresh.push('', ...lines);
    }
    if (fresh.length > 0) edits.push({ uri: choices.file, afterLine: end, deeper: 0, lines: fresh });
    edits.push(...holdings?.edits() ?? []);
    return { edits, report: reportOf(table, columns, reading, rows.sort((a, b) => a.row - b.row), holder) };
}

type LineAt = (uri: string, line: number) => string;

/** Each file's text is cut into lines once. */
function linesBy(textOf: (uri: string) => string): LineAt {
    const files = new Map<string, string[]>();
    return (uri, line) => {
        const lines = files.get(uri) ?? textOf(uri).split(/\r\n|\r|\n/);
        files.set(uri, lines);
        return lines[line] ?? '';
    };
}

function takeThing(match: MatchedThing, programme: Programme, lineAt: LineAt, holdings: HoldingsEdits | undefined): { reported: ReportedRow[]; edits: Edit[]; lines?: string[] } {
    const { name, thing, by } = match;
    const wanted = mergeRows(match.rows as [InventoryRow, ...InventoryRow[]]);
    const measure = measureFor(wanted, thing, programme);
    const done: ReportedRow = { row: wanted.row, does: 'same', name, title: wanted.title || (thing?.title ?? ''), changes: [], remarks: [...wanted.remarks], lost: wanted.lost };
    const edits: Edit[] = [];
    let lines: string[] | undefined;
    const add = ({ changes = [], remarks, lost }: { changes?: string[]; remarks: string[]; lost: boolean }): void => {
        done.changes.push(...changes);
        done.remarks.push(...remarks);
        done.lost ||= lost;
    };
    if (!thing) {
        const made = newMaterial(name, wanted, measure);
        lines = made.lines;
        done.does = 'new';
        add({ ...made, changes: made.lines.slice(1).map(line => line.trim()) });
    } else if (thing.kind === 'material') {
        const change = materialEdits(thing, by, wanted, measure, line => lineAt(thing.uri, line));
        edits.push(...change.edits);
        add(change);
    } else if (wanted.packs.length > 0 || wanted.lead || wanted.use || wanted.source || wanted.spare !== undefined || wanted.safetyStock || wanted.notes.length > 0) {
        add({ remarks: [`'${name}' is a ${thing.kind}: of its row only what is on hand is taken`], lost: true });
    }
    if (holdings) add(holdings.take(name, wanted, measure));
    if (thing && done.changes.length > 0) done.does = 'changed';
    const others = wanted.others.map(({ row, remarks, lost }): ReportedRow => ({ row: row.row, does: 'skipped', name, title: row.title, changes: [], remarks, lost }));
    return { reported: [done, ...others], edits, lines };
}

function checkChoices(programme: Programme, { currency, class: className, kit }: ImportChoices): Refusal | undefined {
    if (currency !== undefined && !isCurrencyCode(currency)) return { refusal: `'${currency}' is no currency: give its code of three letters, such as USD or EUR.` };
    if (className !== undefined && kit !== undefined) return { refusal: 'What is on hand goes either to a class or into a kit: name one of them.' };
    if (className !== undefined && !programme.classes.has(className)) return { refusal: `There is no class '${className}'. ${known('class', 'classes', programme.classes.keys())}` };
    if (kit !== undefined && !programme.kits.has(kit)) return { refusal: `There is no kit '${kit}'. ${known('kit', 'kits', programme.kits.keys())}` };
    return undefined;
}

function known(one: string, many: string, names: Iterable<string>): string {
    const all = [...names];
    return all.length === 0 ? `This programme declares no ${one}.` : all.length === 1 ? `The only ${one} is ${all[0]}.` : `The ${many} are ${all.join(', ')}.`;
}

function holderOf(programme: Programme, { class: className, kit }: ImportChoices): Holder | undefined {
    return className !== undefined ? programme.classes.get(className) : kit !== undefined ? programme.kits.get(kit) : undefined;
}

/** The currency that is asked for, and the one that all prices of the programme are in, where that is one. */
function currencyHints(programme: Programme, asked: string | undefined): CurrencyHints {
    const used = new Set<string>();
    for (const { packs, delivery } of programme.materials.values()) {
        for (const { cost } of packs) if (cost) used.add(cost.currency.toUpperCase());
        if (delivery) used.add(delivery.currency.toUpperCase());
    }
    for (const { cost } of programme.books.values()) if (cost) used.add(cost.currency.toUpperCase());
    return { asked, own: used.size === 1 ? [...used].find(isCurrencyCode) : undefined };
}

function reportOf(table: Table, { headingRow, columns }: ColumnPlan, reading: InventoryRows, rows: ReportedRow[], holder: Holder | undefined): ImportReport {
    const hasHoldings = reading.rows.some(({ onHand }) => onHand !== undefined);
    const reported = columns.map(({ letter, heading, means, why }): ReportedColumn => {
        if (means === 'on-hand' && !holder) return { letter, heading, means, why: 'no class or kit is chosen that has it', left: true };
        return { letter, heading, means, why, left: means === 'unused' };
    });
    const remarks = [...table.remarks];
    if (headingRow === undefined) remarks.push('No row of headings was found, so the columns are guessed from their cells.');
    const price = columns.find(({ means }) => means === 'price');
    if (price && !price.ofOne && !columns.some(({ means }) => means === 'pack') && reading.rows.some(({ pack }) => pack?.cost)) {
        remarks.push(`No column says what a pack is, so each price is taken as the price of one, or of what stands in the unit column.`);
    }
    if (reading.currencyUnknown) remarks.push('Some prices are left out because their currency is not certain.');
    const silent = rows.filter(({ does, changes }) => does === 'new' && !changes.some(line => line === 'reusable' || line === 'consumable')).length;
    if (silent === 1) remarks.push("One new material does not say whether it is handed back or used up: write 'reusable' or 'consumable' under it.");
    if (silent > 1) remarks.push(`${silent} new materials do not say whether they are handed back or used up: write 'reusable' or 'consumable' under each.`);
    const asks: ImportReport['asks'] = [...(reading.currencyUnknown ? ['currency' as const] : []), ...(hasHoldings && !holder ? ['class' as const] : [])];
    return { sheet: table.sheet, headingRow: headingRow === undefined ? undefined : headingRow + 1, columns: reported, rows, remarks, asks, blankRows: reading.blank };
}
