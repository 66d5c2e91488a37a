import Fraction from 'fraction.js';
import { unitNamed, type Unit } from '@haversack/language/facts/units';
import type { Exact, Source } from '@haversack/language/sheets/sheet';
import { numberAt, type NumberStyle } from './numbers.js';
import { isWrittenAsName } from './names.js';
import { numeral, type Quantity } from './quantities.js';

/** A cell as it was understood, with what was taken for granted; or in words why it could not be. */
export type Understood<T> = { value: T; remark?: string } | { cannot: string };

/** What people write into a cell that says nothing. */
export function saysNothing(text: string): boolean {
    return /^(?:|[-–—.?/]+|n\/?a|nil|tb[ad])$/i.test(text.trim());
}

// Units as people shorten them, beside the spellings of the language; with a factor where the language lacks the unit.
const moreUnits: Readonly<Record<string, [string, string?]>> = {
    gr: ['g'], grs: ['g'], gm: ['g'], gms: ['g'], gs: ['g'], kgs: ['kg'], kilo: ['kg'], kilos: ['kg'], ltr: ['l'], ltrs: ['l'], lt: ['l'], mls: ['ml'], cc: ['ml'],
    cl: ['ml', '10'], dl: ['ml', '100'], mg: ['g', '1/1000'], qt: ['quart'], qts: ['quart'], pt: ['pint'], pts: ['pint'], gal: ['gallon'], gals: ['gallon'],
    mtr: ['m'], mtrs: ['m'], '"': ['in'], '”': ['in'], '″': ['in'], ins: ['in'], "'": ['ft'], '’': ['ft'], '′': ['ft'], yds: ['yd'], lbm: ['lb'], 'fl. oz': ['fl oz'], 'fl. oz.': ['fl oz']
};

const pieces = /^(?:x|×|pcs?|piece|pieces|ea|each|ct|count|counts|no|nos|nr|unit|units|item|items|stk|stück|stuck|st|single|singles|individual)$/;
const packWords = /^(?:pack|packs|packet|packets|package|packages|pkt|pkts|pkg|pkgs|pk|pks|box|boxes|bx|bag|bags|jar|jars|bottle|bottles|tub|tubs|tin|tins|can|cans|carton|cartons|case|cases|tube|tubes|sack|sacks|pouch|pouches)$/;

/** The unit a word stands for, and how many of it. */
export function unitOf(word: string): { unit: Unit; times: Fraction } | undefined {
    const plain = word.trim().toLowerCase().replace(/\s+/g, ' ');
    const undotted = plain.replace(/\.$/, '');
    const [symbol, times = '1'] = (Object.hasOwn(moreUnits, plain) ? moreUnits[plain] : Object.hasOwn(moreUnits, undotted) ? moreUnits[undotted] : undefined) ?? [undotted];
    const unit = unitNamed(symbol);
    return unit && { unit, times: new Fraction(times) };
}

export const isPieces = (word: string): boolean => pieces.test(word.trim().toLowerCase().replace(/\.$/, ''));
export const isPackWord = (word: string): boolean => packWords.test(word.trim().toLowerCase().replace(/\.$/, ''));

/** No amount and no price is longer; in what is, nothing is looked for. */
export const mostCharacters = 200;

/** "500 g", "2 kg", "12 pcs", "1 1/2 cups", "1,5 kg", "2 x 250 ml", "3 sets", "box of 12", "12/pack", "a dozen". */
export function readQuantity(text: string, style: NumberStyle): Understood<Quantity> {
    if (text.length > mostCharacters) return { cannot: `'${shortened(text)}' is no amount that can be read` };
    const plain = text.trim().replace(/\s+/g, ' ');
    const asked = plain.replace(/^(?:an?|one) (?=dozen\b)/i, '1 ').replace(/^(?:[a-z]+ )?(?:of|with|à) (?=\d)/i, '').replace(/^[a-z]+ ?\((\d[^)]*)\)$/i, '$1')
        .replace(/ ?(?:\/|per|in an?|to an?|a) ?([a-z]+)$/i, (whole, word: string) => (isPackWord(word) ? '' : whole));
    const times = /^(\d{1,4}) ?[x×*] ?(?=[\d.,])(.+)$/i.exec(asked);
    const one = simpleQuantity(times?.[2] ?? asked, style);
    if (!one) return { cannot: `'${shortened(text)}' is no amount that can be read` };
    const { remark, ...quantity } = one;
    return { value: times ? { ...quantity, ...numeral(quantity.value.mul(times[1]!)) } : quantity, remark };
}

function simpleQuantity(text: string, style: NumberStyle): (Quantity & { remark?: string }) | undefined {
    const number = numberAt(text, style);
    if (!number) return undefined;
    const { rest, remark, ...value } = number;
    const word = rest.replace(/^of /i, '');
    if (word === '' || isPieces(word)) return { ...value, remark };
    if (/^(?:dozen|dozens|doz|dz)\.?$/i.test(word)) return { ...numeral(value.value.mul(12)), remark };
    const unit = unitOf(word) ?? unitOf(word.replace(/[ -][a-z]+$/i, last => (isPackWord(last.slice(1)) ? '' : last)));
    if (unit) return { ...(unit.times.equals(1) ? value : numeral(value.value.mul(unit.times))), unit: unit.unit, remark };
    if (isPackWord(word)) return { ...value, packs: word.toLowerCase().replace(/\.$/, ''), remark };
    return isWrittenAsName(word.toLowerCase()) && !/\d/.test(word) && word.length <= 30 && !takenWords.has(word.toLowerCase()) ? { ...value, word: word.toLowerCase(), remark } : undefined;
}

// Words that mean something else in a line of the language.
const takenWords = new Set(['per', 'in', 'of', 'to', 'or', 'for', 'not', 'min', 'kit', 'and', 'up', 'at', 'on', 'by', 'costs', 'optional', 'arriving', 'working', 'day', 'days', 'week', 'weeks', 'than', 'left', 'only', 'more', 'about']);

export function readUse(text: string): 'reusable' | 'consumable' | undefined {
    const plain = text.trim().toLowerCase().replace(/[:.]$/, '');
    if (/^(?:non[- ]?consumables?|re-?usables?|re-?used|durables?|equipment|tools?|permanent|returned|handed back|keep|kept|not used up)(?: (?:items?|things?|materials?|supplies|goods))?$/.test(plain)) return 'reusable';
    if (/^(?:consumables?|consumed|used up|uses up|single[- ]use|disposables?|non[- ]?reusables?|not re-?usable|perishables?)(?: (?:items?|things?|materials?|supplies|goods))?$/.test(plain)) return 'consumable';
    return undefined;
}

export function readYes(text: string): boolean | undefined {
    const plain = text.trim().toLowerCase();
    if (/^(?:y|yes|true|x|✓|✔|1|ja|oui|sí|si)$/.test(plain)) return true;
    return /^(?:n|no|false|0|nein|non|✗|✘)$/.test(plain) ? false : undefined;
}

export function readSource(text: string): Source | undefined {
    const plain = text.trim().toLowerCase();
    const sources: [Source, RegExp][] = [
        ['kit', /^(?:(?:in )?(?:the )?kits?|provided|supplied)$/],
        ['home', /^(?:(?:at |from |bring from )?homes?|famil(?:y|ies)|parents?|households?|brought from home|bring)$/],
        ['library', /^(?:(?:the )?librar(?:y|ies)|borrow(?:ed)?|(?:on )?loan)$/],
        ['printed', /^(?:print(?:s|ed|out|outs)?|(?:photo)?cop(?:y|ied|ies)|to print)$/],
        ['shop', /^(?:(?:the )?(?:shops?|stores?|supermarkets?|markets?|grocer(?:y|ies)|retail|online)|(?:to )?(?:buy|bought|order|ordered|purchased?)(?: online)?)$/]
    ];
    return sources.find(([, words]) => words.test(plain))?.[0];
}

export interface LeadTime {
    days: number;
    working: boolean;
    /** As the language writes it: "6 days", "2 weeks", "10 working days". */
    text: string;
}

/** "6 days", "2 wks", "10 working days", "5-7 business days" (the longer is meant), "next day", or a bare number in the unit of the column. */
export function readDays(text: string, bare: 'days' | 'weeks' = 'days'): Understood<LeadTime> {
    const plain = text.trim().toLowerCase().replace(/\s+/g, ' ').replace(/^(?:(?:about|around|approx\.?|ca\.?|up to|within|in) |[~<≤])/, '');
    if (/^(?:next[- ]day|overnight)$/.test(plain)) return { value: { days: 1, working: false, text: '1 day' } };
    const found = /^(?:(\d{1,3}) ?(?:-|–|—|to) ?)?(\d{1,3})\s?(?:(working|business|work|bank)[ -]?)?(d|days?|w|wks?|weeks?|months?)?\.?$/.exec(plain);
    const word = found?.[4] ?? bare;
    if (!found || word.startsWith('month')) return { cannot: `'${shortened(text)}' is no number of days or weeks` };
    const weeks = word.startsWith('w');
    const count = Math.max(Number(found[1] ?? 0), Number(found[2]));
    const working = found[3] !== undefined && !weeks;
    const remark = found[1] === undefined ? undefined : `of '${shortened(text)}' the longer time is taken`;
    return { value: { days: weeks ? count * 7 : count, working, text: `${count} ${working ? 'working ' : ''}${weeks ? 'week' : 'day'}${count === 1 ? '' : 's'}` }, remark };
}

/** "10%", "10 %", 10, or the 0.1 that a workbook keeps for 10%. */
export function readPercent(text: string, isNumber: boolean, style: NumberStyle): Understood<Exact> {
    const number = numberAt(text, style);
    if (!number || !/^(?:%|per ?cent)?$/i.test(number.rest)) return { cannot: `'${shortened(text)}' is no percentage` };
    const share = isNumber && number.value.lt(1) && number.value.gt(0);
    const value = share ? number.value.mul(100) : number.value;
    const { text: exact } = numeral(value);
    if (exact.includes('/')) return { cannot: `'${shortened(text)}' is no percentage` };
    return { value: exact, remark: share ? `${text} is taken as ${exact}%` : number.remark };
}

/** Enough of a cell to find it again. */
export function shortened(text: string): string {
    const plain = text.replace(/\s+/g, ' ').trim();
    return [...plain].length > 40 ? `${[...plain].slice(0, 39).join('')}…` : plain;
}
