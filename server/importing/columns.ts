import { isName } from '@haversack/language/lexer/scan';
import { isPackWord, isPieces, readDays, readQuantity, readSource, readUse, readYes, saysNothing, unitOf } from './cells.js';
import { guessHeading, meaningWords, plainHeading, type HeadingGuess, type Meaning } from './headings.js';
import { currencyInHeading, isCurrencyCode, looksLikeMoney } from './money.js';
import type { NumberStyle } from './numbers.js';
import { columnLetter, emptyCell, type Cell, type Refusal, type Table } from './table.js';

/** A column with what it was taken for, and why in words. */
export interface Column {
    /** From 0. */
    index: number;
    letter: string;
    heading: string;
    means: Meaning;
    why: string;
    /** A unit in the heading: "Qty (g)" gives "g". */
    unit?: string;
    /** A currency sign or code in the heading. */
    currency?: string;
    /** Bare numbers count packs: "Packs on hand". */
    packs?: string;
    /** The price of one, not of a pack: "Price each". */
    ofOne?: boolean;
    /** A yes in the cell says this: "Consumable?". */
    yes?: 'reusable' | 'consumable';
    /** What a bare number of a time is in: "Lead time (weeks)". */
    weeks?: boolean;
}

export interface ColumnPlan {
    /** Row of the headings from 0; absent when there are none. */
    headingRow?: number;
    columns: Column[];
}

/** A column that was given its meaning: by its heading, letter ("C") or number from 1. */
export interface GivenColumn {
    column: string;
    means: Meaning;
}

/** Titles, addresses and remarks may stand above the headings. */
const rowsAbove = 40;
/** Cells that are looked at to tell what a column holds. */
const sample = 200;

/** Finds the headings and what each column means. */
export function planColumns(table: Table, given: readonly GivenColumn[], style: NumberStyle): ColumnPlan | Refusal {
    const headingRow = findHeadings(table, given);
    const width = Math.max(...table.rows.map(row => row.length));
    const first = headingRow === undefined ? 0 : headingRow + 1;
    const columns = Array.from({ length: width }, (_, index): Candidate => {
        const heading = headingRow === undefined ? '' : table.rows[headingRow]![index]?.text ?? '';
        const cells = table.rows.slice(first).map(row => row[index] ?? emptyCell).filter(({ text }) => !saysNothing(text));
        return { index, letter: columnLetter(index), heading: heading.replace(/\s+/g, ' '), cells: cells.slice(0, sample), guess: guessHeading(heading) };
    });
    const means = new Map<Candidate, { means: Meaning; why: string }>();
    for (const { column, means: meaning } of given) {
        const found = findColumn(columns, column);
        if (!found) return { refusal: `There is no column '${column}'. ${listed(columns)}` };
        means.set(found, { means: meaning, why: 'as you said' });
    }
    guessAll(columns, means, style);
    const plan = columns.filter(({ heading, cells }) => heading !== '' || cells.length > 0).map((column): Column => {
        const { means: meaning, why } = means.get(column) ?? { means: 'unused' as const, why: column.cells.length === 0 ? 'it is empty' : 'nothing tells what it means' };
        return { index: column.index, letter: column.letter, heading: column.heading, means: meaning, why, ...headingFacts(column.heading, meaning) };
    });
    if (!plan.some(({ means: meaning }) => meaning === 'title' || meaning === 'name')) {
        return { refusal: `No column of the sheet was recognised as the one with the things' titles. Say which it is. ${listed(columns)}`, columns: plan.map(({ letter, heading }) => ({ letter, heading })) };
    }
    return { headingRow, columns: plan };
}

/** How much a table looks like an inventory: the number of columns that its headings explain. */
export function likeness(table: Table): number {
    const row = findHeadings(table, []);
    return row === undefined ? (table.rows.some(cells => cells.some(({ text }) => text !== '')) ? 0 : -1) : understoodIn(table.rows[row]!).size;
}

interface Candidate {
    index: number;
    letter: string;
    heading: string;
    cells: Cell[];
    guess?: HeadingGuess;
}

/** The row among the first ones whose cells say most as headings; ties go to the first. A row with a single known word is none. */
function findHeadings({ rows }: Table, given: readonly GivenColumn[]): number | undefined {
    let best: number | undefined;
    let most = 0;
    const named = new Set(given.map(({ column }) => plainHeading(column)));
    rows.slice(0, rowsAbove).forEach((row, index) => {
        const filled = row.filter(({ text }) => text !== '');
        // Years and the like may head a column; a row with many of these is data.
        if (filled.filter(isData).length * 4 > filled.length) return;
        const understood = understoodIn(row).size;
        const asked = filled.filter(({ text }) => named.has(plainHeading(text))).length;
        const alone = filled.length === 1 && rows.slice(index + 1, index + 6).some(({ length }) => length > 1) && rows.slice(index + 1, index + 6).some(next => next.filter(({ text }) => text !== '').length > 1);
        const worth = alone && asked === 0 ? 0 : understood + asked;
        if (worth > most) {
            best = index;
            most = worth;
        }
    });
    return best;
}

function isData({ text, is }: Cell): boolean {
    return is === 'number' || is === 'date' || looksLikeMoney(text) || (/^\d/.test(text) && 'value' in readQuantity(text, {}));
}

function understoodIn(row: readonly Cell[]): Set<Meaning | string> {
    const found = new Set<Meaning | string>();
    for (const { text } of row) {
        const guess = guessHeading(text);
        // A row of data rarely consists of these words, but "Name" of a person or a sentence with "stock" in it may.
        if (guess && guess.sure > 1) found.add(guess.means === 'unused' ? `unused ${plainHeading(text)}` : guess.means);
    }
    return found;
}

function findColumn(columns: readonly Candidate[], wanted: string): Candidate | undefined {
    const plain = plainHeading(wanted);
    return columns.find(({ heading }) => heading !== '' && heading.toLowerCase() === wanted.trim().toLowerCase())
        ?? (plain === '' ? undefined : columns.find(({ heading }) => plainHeading(heading) === plain))
        ?? columns.find(({ letter, index }) => letter === wanted.trim().toUpperCase() || String(index + 1) === wanted.trim());
}

function listed(columns: readonly Candidate[]): string {
    const shown = columns.filter(({ heading, cells }) => heading !== '' || cells.length > 0).slice(0, 20).map(({ letter, heading }) => (heading === '' ? letter : `${letter} '${heading}'`));
    return shown.length === 0 ? 'The sheet has no columns with anything in them.' : `The columns are ${shown.join(', ')}.`;
}

function guessAll(columns: readonly Candidate[], means: Map<Candidate, { means: Meaning; why: string }>, style: NumberStyle): void {
    const taken = new Map<Meaning, Candidate>();
    for (const [column, { means: meaning }] of means) taken.set(meaning, column);
    const left = columns.filter(column => !means.has(column));
    for (const sure of [3, 2, 1] as const) {
        for (const column of left) {
            const { guess } = column;
            if (means.has(column) || guess?.sure !== sure || column.cells.length === 0) continue;
            const meaning = guess.means === 'title' && looksLikeNames(column.cells) && columns.some(other => other !== column && other.guess?.means === 'title') ? 'name' : guess.means;
            if (meaning === 'unused') means.set(column, { means: meaning, why: guess.why ?? 'as its heading says' });
            else if (sure === 1 && !cellsFit(meaning, column.cells, style)) continue;
            else if (meaning !== 'note' && taken.has(meaning)) means.set(column, { means: 'unused', why: `column ${taken.get(meaning)!.letter} is taken as the ${meaningWords[meaning]} already` });
            else {
                means.set(column, { means: meaning, why: 'by its heading' });
                taken.set(meaning, column);
            }
        }
    }
    // A column with nothing in it means what its heading says, where no other does.
    for (const column of left) {
        const { guess } = column;
        if (means.has(column) || !guess || guess.sure === 1 || guess.means === 'unused' || taken.has(guess.means)) continue;
        means.set(column, { means: guess.means, why: 'by its heading' });
        taken.set(guess.means, column);
    }
    for (const column of left) {
        if (means.has(column) || column.cells.length === 0) continue;
        const meaning = column.heading === '' || !taken.has('title') ? meaningOfCells(column.cells, style) : undefined;
        if (!meaning || taken.has(meaning)) continue;
        means.set(column, { means: meaning, why: 'guessed from its cells' });
        taken.set(meaning, column);
    }
    if (taken.has('title') || taken.has('name')) return;
    const texts = left.filter(column => !means.has(column)).map(column => ({ column, different: new Set(column.cells.filter(({ is, text }) => is === 'text' && /\p{L}{2}/u.test(text)).map(({ text }) => text)).size }));
    const best = texts.reduce<(typeof texts)[number] | undefined>((most, one) => (one.different > (most?.different ?? 0) ? one : most), undefined);
    if (best) means.set(best.column, { means: 'title', why: 'guessed from its cells' });
}

function looksLikeNames(cells: readonly Cell[]): boolean {
    return cells.length > 0 && cells.every(({ text }) => isName(text)) && cells.some(({ text }) => text.includes('-'));
}

const share = (cells: readonly Cell[], fits: (cell: Cell) => boolean): number => cells.filter(fits).length / Math.max(1, cells.length);

/** Whether cells bear out a heading that alone would not be enough. */
function cellsFit(meaning: Meaning, cells: readonly Cell[], style: NumberStyle): boolean {
    switch (meaning) {
        case 'use': return share(cells, ({ text }) => readUse(text) !== undefined) >= 0.6;
        case 'on-hand': return share(cells, ({ text }) => 'value' in readQuantity(text, style)) >= 0.6;
        default: return share(cells, ({ is }) => is === 'text') >= 0.6;
    }
}

/** What cells say by themselves, where they leave no doubt. */
function meaningOfCells(cells: readonly Cell[], style: NumberStyle): Meaning | undefined {
    const most = (fits: (cell: Cell) => boolean): boolean => share(cells, fits) >= 0.7;
    if (most(({ text, shownIn }) => looksLikeMoney(text) || (shownIn !== undefined && /\p{Sc}|^[A-Z]{3}$/u.test(shownIn)))) return 'price';
    if (most(({ text }) => readUse(text) !== undefined)) return 'use';
    if (most(({ text }) => isCurrencyCode(text))) return 'currency';
    if (most(({ text }) => !/^\d+$/.test(text) && 'value' in readDays(text))) return 'lead';
    if (most(({ text }) => readSource(text) !== undefined)) return 'source';
    if (most(({ text }) => unitOf(text) !== undefined || isPieces(text) || isPackWord(text))) return 'unit';
    if (most(({ text, is }) => is !== 'date' && 'value' in readQuantity(text, style))) return 'on-hand';
    return undefined;
}

function headingFacts(heading: string, means: Meaning): Partial<Column> {
    const plain = plainHeading(heading);
    const facts: Partial<Column> = {};
    if (means === 'on-hand' || means === 'pack' || means === 'safety-stock') {
        const bracketed = /[([]\s*(?:in\s+)?([^)\]]+?)\s*[)\]]/.exec(heading.slice(0, 300))?.[1] ?? /\bin (\w+)$/.exec(plain)?.[1];
        if (bracketed !== undefined && unitOf(bracketed)) facts.unit = bracketed;
        if (means === 'on-hand') facts.packs = /\b(?:packs?|packets?|boxes|bags|packages)\b/.exec(plain)?.[0];
    }
    if (means === 'price') {
        facts.currency = currencyInHeading(heading);
        facts.ofOne = /\b(?:each|per (?:item|piece|unit|one)|unit (?:price|cost)|item (?:price|cost)|ea|stuckpreis|einzelpreis)\b/.test(plain);
    }
    if (means === 'use') facts.yes = /consum|used up|single use|dispos/.test(plain) && !/reus|re us/.test(plain) ? 'consumable' : 'reusable';
    if (means === 'lead' || means === 'keeps') facts.weeks = /\b(?:weeks?|wks?)\b/.test(plain);
    return facts;
}

/** A yes or no is only an answer where the heading asks one thing. */
export function useOf(text: string, { heading, yes }: Column): 'reusable' | 'consumable' | undefined {
    const said = readUse(text);
    const asks = plainHeading(heading);
    if (said || yes === undefined || (/consum/.test(asks) && /reus|re us/.test(asks))) return said;
    const answer = /reus|re us|durable|consum|used up|single use|dispos/.test(asks) ? readYes(text) : undefined;
    const other = yes === 'reusable' ? 'consumable' : 'reusable';
    return answer === undefined ? undefined : answer ? yes : other;
}
