import Fraction from 'fraction.js';
import type { Exact, Source } from '@haversack/language/sheets/sheet';
import { isPackWord, isPieces, readDays, readPercent, readQuantity, readSource, readUse, saysNothing, shortened, unitOf, type LeadTime, type Understood } from './cells.js';
import { useOf, type Column, type ColumnPlan } from './columns.js';
import { plainHeading, type Meaning } from './headings.js';
import { currencyOf, readPrice, type CurrencyHints, type Price } from './money.js';
import { isWrittenAsName } from './names.js';
import type { NumberStyle } from './numbers.js';
import { numeral, written, type Quantity } from './quantities.js';
import { oneLine, safeTitle } from './safe-text.js';
import type { Cell, Table } from './table.js';

/** What a row of a spreadsheet says of a thing. What it does not say is absent. */
export interface InventoryRow {
    /** From 1, as the spreadsheet counts. */
    row: number;
    name?: string;
    title: string;
    use?: 'reusable' | 'consumable';
    pack?: { amount: Quantity; cost?: { value: Exact; currency: string } };
    lead?: LeadTime;
    keeps?: LeadTime;
    source?: Source;
    onHand?: Quantity;
    safetyStock?: Quantity;
    spare?: Exact;
    notes: string[];
    /** What was taken for granted or could not be used, in words. */
    remarks: string[];
    /** True where something of the row could not be read and was left out. */
    lost: boolean;
}

export interface SkippedRow {
    row: number;
    title: string;
    why: string;
    /** True for rows that are no things, such as headings and totals. */
    expected?: boolean;
}

export interface InventoryRows {
    rows: InventoryRow[];
    skipped: SkippedRow[];
    blank: number;
    /** Prices without a currency that could be told. */
    currencyUnknown: boolean;
}

/** Reads every row below the headings. */
export function readRows(table: Table, { headingRow, columns }: ColumnPlan, hints: CurrencyHints, style: NumberStyle): InventoryRows {
    const reading: InventoryRows = { rows: [], skipped: [], blank: 0, currencyUnknown: false };
    const headings = headingRow === undefined ? undefined : rowKey(table.rows[headingRow]!);
    const fullRows = table.rows.slice((headingRow ?? -1) + 1).filter(row => row.filter(({ text }) => text !== '').length > 1).length;
    let groupUse: 'reusable' | 'consumable' | undefined;
    let afterBreak = true;
    for (let index = (headingRow ?? -1) + 1; index < table.rows.length; index++) {
        const cells = table.rows[index]!;
        const filled = cells.filter(({ text }) => text !== '');
        if (filled.length === 0) {
            reading.blank++;
            afterBreak = true;
            continue;
        }
        const skip = (why: string): void => { reading.skipped.push({ row: index + 1, title: shortened(filled[0]!.text), why, expected: true }); };
        const group = filled.length === 1 && fullRows > 0 ? groupHeading(filled[0]!.text, afterBreak, table, index) : undefined;
        afterBreak = false;
        if (rowKey(cells) === headings) skip('the headings again');
        else if (/^(?:grand |sub[- ]?)?totals?:?$|^sum:?$|^(?:gesamt|summe):?$/i.test(filled[0]!.text)) skip('a total: totals are worked out');
        else if (group) {
            groupUse = group.use ?? (group.clears ? undefined : groupUse);
            skip(group.use ? `a heading: what follows is ${group.use}` : 'a heading');
            afterBreak = true;
        } else {
            const row = new RowReader(index + 1, cells, columns, hints, style).read(groupUse);
            if ('why' in row) reading.skipped.push(row);
            else reading.rows.push(row);
        }
    }
    reading.currencyUnknown = reading.rows.some(({ remarks }) => remarks.some(remark => remark.endsWith(': say which')));
    return reading;
}

function rowKey(cells: readonly Cell[]): string {
    const words = cells.map(({ text }) => plainHeading(text));
    while (words.at(-1) === '') words.pop();
    return words.join('|');
}

/** A cell that stands alone in its row is a heading of what follows where it looks like one, else a thing with nothing but a title. */
function groupHeading(text: string, afterBreak: boolean, { rows }: Table, index: number): { use?: 'reusable' | 'consumable'; clears: boolean } | undefined {
    const use = readUse(text);
    if (use) return { use, clears: true };
    const next = rows[index + 1]?.filter(cell => cell.text !== '').length ?? 0;
    const loud = text.length > 3 && text === text.toUpperCase() && text !== text.toLowerCase();
    return text.endsWith(':') || ((loud || afterBreak) && next > 1) ? { clears: true } : undefined;
}

class RowReader {
    private readonly remarks: string[] = [];
    private lost = false;

    constructor(private readonly row: number, private readonly cells: readonly Cell[], private readonly columns: readonly Column[], private readonly hints: CurrencyHints, private readonly style: NumberStyle) {}

    read(groupUse: InventoryRow['use']): InventoryRow | SkippedRow {
        const title = safeTitle(this.textOf('title'));
        this.remarks.push(...title.changes.map(change => `title: ${change}`));
        const name = this.name();
        if (title.text === '' && name === undefined) return { row: this.row, title: shortened(this.cells.find(({ text }) => text !== '')?.text ?? ''), why: 'it has no title' };
        if (this.isError('title')) return { row: this.row, title: title.text, why: 'its title is an error of the spreadsheet' };
        const unit = this.unit();
        const pack = this.pack(unit);
        const onHand = this.inUnit(this.quantity('on-hand'), 'on-hand', unit);
        const lead = this.take('lead', (text, { weeks }) => readDays(text, weeks ? 'weeks' : 'days'));
        const keeps = this.take('keeps', (text, { weeks }) => readDays(text, weeks ? 'weeks' : 'days'));
        if (keeps?.working) this.lose(`'${keeps.text}': how long it keeps is counted in days`);
        return {
            row: this.row, name, title: title.text, use: this.use() ?? groupUse, pack, lead, keeps: keeps?.working ? undefined : keeps,
            source: this.source(), onHand: this.unpacked(onHand, pack?.amount), safetyStock: this.unpacked(this.inUnit(this.quantity('safety-stock'), 'safety-stock', unit), pack?.amount),
            spare: this.take('spare', (text, _, cell) => readPercent(text, cell.is === 'number', this.style)), notes: this.notes(), remarks: this.remarks, lost: this.lost
        };
    }

    private columnOf(means: Meaning): Column | undefined {
        return this.columns.find(column => column.means === means);
    }

    private cellOf(means: Meaning): Cell | undefined {
        const column = this.columnOf(means);
        return column && this.cells[column.index];
    }

    private textOf(means: Meaning): string {
        return this.cellOf(means)?.text ?? '';
    }

    private isError(means: Meaning): boolean {
        return this.cellOf(means)?.is === 'error';
    }

    private lose(remark: string): void {
        this.remarks.push(remark);
        this.lost = true;
    }

    /** The value of a column's cell; what cannot be read is told and left out. */
    private take<T>(means: Meaning, read: (text: string, column: Column, cell: Cell) => Understood<T>): T | undefined {
        const column = this.columnOf(means);
        const cell = column && this.cells[column.index];
        if (!column || !cell || saysNothing(cell.text)) return undefined;
        const text = oneLine(cell.text).text;
        const understood: Understood<T> = cell.is === 'error' ? errorOf(text) : read(text, column, cell);
        const where = column.heading === '' ? `column ${column.letter}` : shortened(column.heading);
        if ('cannot' in understood) {
            this.lose(`${where}: ${understood.cannot}`);
            return undefined;
        }
        if (understood.remark !== undefined) this.remarks.push(`${where}: ${understood.remark}`);
        return understood.value;
    }

    private name(): string | undefined {
        return this.take('name', text => {
            const word = text.toLowerCase();
            return isWrittenAsName(word) ? { value: word } : { cannot: `'${shortened(text)}' is no name: names are lower-case words with hyphens` };
        });
    }

    private use(): InventoryRow['use'] {
        return this.take('use', (text, column) => {
            const use = useOf(text, column);
            return use ? { value: use } : { cannot: `'${shortened(text)}' does not say whether it is handed back (reusable) or used up (consumable)` };
        });
    }

    private source(): Source | undefined {
        return this.take('source', text => {
            const source = readSource(text);
            return source ? { value: source } : { cannot: `'${shortened(text)}' is none of kit, home, shop, library and printed` };
        });
    }

    private quantity(means: Meaning): Quantity | undefined {
        return this.take(means, (text, _, cell) => (cell.is === 'date' ? { cannot: `'${text}' is a date: the spreadsheet took an amount for one` } : readQuantity(text, this.style)));
    }

    /** What the unit column says: a unit or word for bare numbers, or a whole amount, which is then the pack. */
    private unit(): { bare?: Quantity; pack?: Quantity } {
        const one = numeral(new Fraction(1));
        const found = this.take('unit', (text): Understood<{ bare?: Quantity; pack?: Quantity }> => {
            const unit = unitOf(text);
            if (unit) return { value: { bare: { ...numeral(unit.times), unit: unit.unit } } };
            if (isPieces(text)) return { value: {} };
            const word = text.trim().toLowerCase().replace(/\.$/, '');
            if (isPackWord(word)) return { value: { bare: { ...one, packs: word } } };
            const quantity = readQuantity(text, this.style);
            if ('value' in quantity) return { value: { pack: quantity.value } };
            return /^\p{L}[\p{L}\p{M}]{0,29}$/u.test(word) ? { value: { bare: { ...one, word } } } : { cannot: `'${shortened(text)}' is no unit that is known` };
        });
        return found ?? {};
    }

    /** Gives a bare number the unit of its heading, or else that of the unit column. */
    private inUnit(quantity: Quantity | undefined, means: Meaning, { bare }: { bare?: Quantity }): Quantity | undefined {
        if (!quantity || quantity.unit || quantity.word !== undefined || quantity.packs !== undefined) return quantity;
        const column = this.columnOf(means);
        const inHeading = column?.unit === undefined ? undefined : unitOf(column.unit);
        const given: Quantity | undefined = inHeading ? { ...numeral(inHeading.times), unit: inHeading.unit } : column?.packs === undefined ? bare : { ...numeral(new Fraction(1)), packs: column.packs };
        if (!given || (given.packs !== undefined && means === 'pack')) return quantity;
        const { unit, word, packs } = given;
        return { ...(given.value.equals(1) ? quantity : numeral(quantity.value.mul(given.value))), unit, word, packs };
    }

    /** So many packs, as an amount, where the row says how much is in one. */
    private unpacked(quantity: Quantity | undefined, pack: Quantity | undefined): Quantity | undefined {
        if (quantity?.packs === undefined || !pack) return quantity;
        const whole = { ...pack, ...numeral(quantity.value.mul(pack.value)) };
        this.remarks.push(`${quantity.text} ${quantity.packs} of ${written(pack)} are ${written(whole)}`);
        return whole;
    }

    private pack(unit: { bare?: Quantity; pack?: Quantity }): InventoryRow['pack'] {
        const given = this.inUnit(this.quantity('pack'), 'pack', unit) ?? unit.pack;
        const size = given && (given.packs === undefined ? given : { value: given.value, text: given.text });
        const price = this.price();
        if (size?.value.equals(0)) {
            this.lose('a pack of nothing is left out');
            return undefined;
        }
        if (!price) return size && { amount: size };
        const { value, currency, per } = price;
        if (per && !(size && this.columnOf('price')?.ofOne)) {
            if (!size || sameQuantity(size, per)) return { amount: per, cost: { value, currency } };
            this.lose(`the price is that of ${written(per)}, and the pack has ${written(size)}: only the pack is taken`);
            return { amount: size };
        }
        if (!size) return this.packOfOne(unit, value, currency);
        if (!this.columnOf('price')?.ofOne || size.value.equals(1)) return { amount: size, cost: { value, currency } };
        const whole = new Fraction(value).mul(size.value);
        const decimals = value.includes('.') ? value.length - value.indexOf('.') - 1 : 0;
        const cost = whole.toString(decimals);
        const padded = decimals === 0 ? cost : `${cost.split('.')[0]}.${(cost.split('.')[1] ?? '').padEnd(decimals, '0')}`;
        this.remarks.push(`${size.text} at ${value} ${currency} each are ${padded} ${currency}`);
        return { amount: size, cost: { value: padded, currency } };
    }

    /** A price without a pack is that of one thing, or of one of the unit that stands beside it. */
    private packOfOne({ bare }: { bare?: Quantity }, value: string, currency: string): InventoryRow['pack'] {
        const amount: Quantity = bare && bare.packs === undefined ? bare : numeral(new Fraction(1));
        // Where no column is about packs, that is said once for all rows.
        if (this.columnOf('pack') && !this.columnOf('price')?.ofOne) this.remarks.push(`no pack is given, so ${value} ${currency} is taken as the price of ${written(amount)}`);
        return { amount, cost: { value, currency } };
    }

    private price(): Price | undefined {
        return this.take('price', (text, column, cell) => {
            if (cell.is === 'date' || cell.is === 'truth') return { cannot: `'${text}' is no price that can be read` };
            const beside = this.textOf('currency');
            const stated = saysNothing(beside) ? undefined : currencyOf(beside, this.hints);
            if (stated && 'cannot' in stated) return stated;
            return readPrice(text, stated?.value ?? cell.shownIn ?? column.currency, this.hints, this.style);
        });
    }

    private notes(): string[] {
        return this.columns.filter(({ means }) => means === 'note').flatMap(({ index }) => {
            const cell = this.cells[index];
            const { text, changes } = oneLine(cell?.text ?? '');
            if (cell?.is === 'error') this.lose(`note: ${errorOf(text).cannot}`);
            if (text === '' || cell?.is === 'error') return [];
            this.remarks.push(...changes.map(change => `note: ${change}`));
            return [text];
        });
    }
}

function errorOf(text: string): { cannot: string } {
    return { cannot: text.startsWith('#') ? `'${text}' is an error of the spreadsheet` : `it is ${text}: open the spreadsheet in your spreadsheet program and save it there` };
}

function sameQuantity(one: Quantity, other: Quantity): boolean {
    return one.value.equals(other.value) && one.unit?.symbol === other.unit?.symbol && one.word === other.word;
}
