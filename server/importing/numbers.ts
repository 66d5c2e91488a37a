import Fraction from 'fraction.js';
import type { Table } from './table.js';
import { numeral, type Numeral } from './quantities.js';

/** How a sheet writes its numbers. */
export interface NumberStyle {
    /** True: 1.234,50. False: 1,234.50. Absent: the sheet does not show. */
    decimalComma?: boolean;
}

/** A number at the beginning of a text, and what follows it. */
export interface NumberRead extends Numeral {
    rest: string;
    /** What was taken for granted. */
    remark?: string;
}

const parts: Readonly<Record<string, string>> = {
    '½': '1/2', '⅓': '1/3', '⅔': '2/3', '¼': '1/4', '¾': '3/4', '⅕': '1/5', '⅖': '2/5', '⅗': '3/5', '⅘': '4/5', '⅙': '1/6', '⅚': '5/6', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8'
};

const fraction = /^(?:(\d{1,4}) +)?(\d{1,3})\/(\d{1,3})(?![\d.,/])/;
// Thousands may stand apart by a blank of any width or an apostrophe.
const apart = /^\d{1,3}(?:[ \u00a0\u2009\u202f'’]\d{3})+(?:[.,]\d+)?(?![\d/])/;
const together = /^(?:\d+(?:[.,]\d+)*|[.,]\d+)/;
const longest = 15;

/** A longer text is no amount; what is looked for in it would take too long. */
const mostRead = 1000;

/** Reads the number that a text begins with: whole, decimal, fraction or mixed, with thousands marked in any usual way. */
export function numberAt(text: string, style: NumberStyle): NumberRead | undefined {
    if (text.length > mostRead) return undefined;
    const plain = text.replace(/(\d?)\s*([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])/gu, (_, before: string, sign: string) => `${before && `${before} `}${parts[sign]}`).trim();
    const mixed = fraction.exec(plain);
    if (mixed) {
        const [all, whole = '0', above, below] = mixed;
        return Number(below) === 0 ? undefined : { ...numeral(new Fraction(`${whole} ${above}/${below}`), true), rest: plain.slice(all.length).trim() };
    }
    const found = (apart.exec(plain) ?? together.exec(plain))?.[0];
    const decimal = found && asDecimal(found, style);
    if (!decimal || decimal.text.replace('.', '').length > longest) return undefined;
    return { ...numeral(new Fraction(decimal.text)), rest: plain.slice(found.length).trim(), remark: decimal.remark };
}

/** Which mark is the decimal one: the last of two kinds, else one that cannot mark thousands, else as the sheet does elsewhere. */
function asDecimal(written: string, { decimalComma }: NumberStyle): { text: string; remark?: string } | undefined {
    const digits = written.replace(/[ \u00a0\u2009\u202f'’]/g, '');
    const [, integer = '', mark, decimals = ''] = /^(.*?)(?:([.,])(\d+))?$/.exec(digits) ?? [];
    const whole = integer.replace(/[.,]/g, '') || '0';
    const asPart = { text: decimals === '' ? whole : `${whole}.${decimals}` };
    const asThousands = { text: whole + decimals };
    if (mark === undefined) return written.includes(' ') ? { ...asPart, remark: `${written} is taken as ${asPart.text}` } : asPart;
    if (/[.,]/.test(integer)) {
        if (!/^\d{1,3}(?:\.\d{3})+$|^\d{1,3}(?:,\d{3})+$/.test(integer)) return undefined;
        if (!integer.includes(mark)) return asPart;
        return decimals.length === 3 ? asThousands : undefined;
    }
    if (decimals.length !== 3 || !/^[1-9]\d{0,2}$/.test(integer) || written !== digits) return asPart;
    if (decimalComma !== undefined) return decimalComma === (mark === ',') ? asPart : asThousands;
    const meant = mark === ',' ? asThousands : asPart;
    return { ...meant, remark: `${digits} is taken as ${meant.text}` };
}

/** What the numbers of a sheet show of how it writes decimals: those that can be read in one way only. */
export function styleOf({ rows, decimalComma }: Table): NumberStyle {
    let commas = 0;
    let points = 0;
    for (const row of rows) {
        for (const { text, is } of row) {
            if (is !== 'text' || text.length > 40) continue;
            if (/(?:^|[^\d.,])\d+(?:\.\d{3})*,(?:\d{1,2}|\d{4,})(?!\d)/.test(text)) commas++;
            if (/(?:^|[^\d.,])\d+(?:,\d{3})*\.(?:\d{1,2}|\d{4,})(?!\d)/.test(text)) points++;
        }
    }
    if (commas !== points) return { decimalComma: commas > points };
    return { decimalComma: commas > 0 ? undefined : decimalComma };
}
