import { strFromU8 } from 'fflate';
import { columnNumber, limits, tooManyColumns, tooManyRows, type Refusal } from './table.js';
import type { WorkbookParts } from './unpack-workbook.js';

/** What is looked up in a workbook's XML beside its cells. Only attributes are read, so that plain patterns do. */

export interface SheetName {
    name: string;
    hidden: boolean;
    path: string;
}

/** The sheets of a workbook in the order of their tabs. */
export function sheetNames(parts: WorkbookParts): SheetName[] {
    const targets = new Map(tags(textOf(parts, 'xl/_rels/workbook.xml.rels'), 'Relationship').map(tag => [attribute(tag, 'Id') ?? '', attribute(tag, 'Target') ?? '']));
    return tags(textOf(parts, 'xl/workbook.xml'), 'sheet').flatMap(tag => {
        const name = attribute(tag, 'name');
        const target = targets.get(attribute(tag, '[\\w-]+:id') ?? '') ?? '';
        const path = target.startsWith('/') ? target.slice(1) : `xl/${target}`;
        return name ? [{ name, hidden: /hidden/i.test(attribute(tag, 'state') ?? ''), path }] : [];
    });
}

/** What a sheet's XML tells of its cells, by address such as "C4", that their values do not. */
export interface CellFacts {
    /** The currency sign or code that a number is shown with. */
    shownIn: ReadonlyMap<string, string>;
    /** Cells that show an error such as "#N/A", or a formula whose result was never worked out: then without a text. */
    errors: ReadonlyMap<string, string>;
}

/** Looks through a sheet once. One that reaches further than an inventory does is refused: a reader would make room for all of it. */
export function factsOfCells(parts: WorkbookParts, { path }: SheetName): CellFacts | Refusal {
    const signs = currencySigns(textOf(parts, 'xl/styles.xml'));
    const shownIn = new Map<string, string>();
    const errors = new Map<string, string>();
    let open: { address: string; isError: boolean; formula: boolean } | undefined;
    for (const [tag, end, word = '', value = ''] of textOf(parts, path).matchAll(/<(\/?)(?:\w+:)?(c|row|f|v)(?:\s[^<>]*)?>([^<]*)/g)) {
        if (end !== '') {
            if (word === 'c' && open?.formula) errors.set(open.address, '');
            if (word === 'c') open = undefined;
        } else if (word === 'f' || word === 'v') {
            if (open && word === 'f') open.formula = true;
            if (open && word === 'v') {
                open.formula = false;
                if (open.isError) errors.set(open.address, value);
            }
        } else {
            const address = attribute(tag, 'r') ?? '';
            const [, letters = '', digits = ''] = /^([A-Za-z]*)(\d*)$/.exec(address) ?? [];
            if (digits.length > 7 || Number(digits) > limits.rows) return tooManyRows();
            if (letters.length > 3 || columnNumber(letters) > limits.columns) return tooManyColumns();
            if (word !== 'c') continue;
            const sign = signs[Number(attribute(tag, 's') ?? Number.NaN)];
            if (sign !== undefined) shownIn.set(address, sign);
            open = /\/>/.test(tag) ? undefined : { address, isError: attribute(tag, 't') === 'e', formula: false };
        }
    }
    return { shownIn, errors };
}

/** The currency sign or code of each cell style, in their order. */
function currencySigns(styles: string): (string | undefined)[] {
    const formats = new Map(tags(styles, 'numFmt').map(tag => [attribute(tag, 'numFmtId') ?? '', attribute(tag, 'formatCode') ?? '']));
    const start = styles.search(/<(?:\w+:)?cellXfs\b/);
    const end = styles.search(/<\/(?:\w+:)?cellXfs>/);
    return start < 0 ? [] : tags(styles.slice(start, end < 0 ? undefined : end), 'xf').map(tag => currencyIn(formats.get(attribute(tag, 'numFmtId') ?? '') ?? ''));
}

/** "€" of `[$€-407] #,##0.00`, "EUR" of `#,##0.00 "EUR"`, "$" of `"$"#,##0.00`. */
function currencyIn(written: string): string | undefined {
    // A format has 255 characters at most (Excel's own limit, from memory).
    const format = written.slice(0, 500);
    const bracketed = /\[\$([^\]-]+)(?:-[^\]]*)?\]/.exec(format)?.[1];
    const quoted = /"\s*([A-Z]{3}|[^"\w\s]?\p{Sc})\s*"/u.exec(format)?.[1];
    return (bracketed ?? quoted ?? /\p{Sc}/u.exec(format.replace(/\[[^\]]*\]/g, ''))?.[0])?.trim() || undefined;
}

function textOf(parts: WorkbookParts, path: string): string {
    const part = parts.get(path);
    return part ? strFromU8(part) : '';
}

function tags(xml: string, name: string): string[] {
    return xml.match(new RegExp(`<(?:\\w+:)?${name}(?:\\s[^<>]*)?>`, 'g')) ?? [];
}

function attribute(tag: string, name: string): string | undefined {
    const found = new RegExp(`\\s${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`).exec(tag);
    return found ? unescaped(found[1] ?? found[2] ?? '') : undefined;
}

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

function unescaped(text: string): string {
    return text.replace(/&(?:#(\d{1,7})|#x([\da-fA-F]{1,6})|(\w+));/g, (whole, decimal?: string, hex?: string, name?: string) => {
        const code = decimal ? Number(decimal) : hex ? Number.parseInt(hex, 16) : undefined;
        if (code !== undefined) return code <= 0x10ffff ? String.fromCodePoint(code) : '';
        return entities[name ?? ''] ?? whole;
    });
}
