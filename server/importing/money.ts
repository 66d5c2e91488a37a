import Fraction from 'fraction.js';
import { decimalsOfCurrency } from '@haversack/language/facts/currencies';
import { mostCharacters, readQuantity, shortened, unitOf, type Understood } from './cells.js';
import { numberAt, type NumberStyle } from './numbers.js';
import { numeral, type Quantity } from './quantities.js';

/** What a price may be in when the cell does not say, and how sure that is. */
export interface CurrencyHints {
    /** Said by whoever imports: counts before all but a code in the cell. */
    asked?: string;
    /** The one currency that the programme uses, where it is one. */
    own?: string;
}

export interface Price {
    /** In the currency's major unit, with as many decimals as it has. */
    value: string;
    currency: string;
    /** "4.50 per kg" is the price of 1 kg. */
    per?: Quantity;
}

/** Signs that one currency alone uses, and those that several do. */
const signs: Readonly<Record<string, readonly string[]>> = {
    '€': ['EUR'], '₹': ['INR'], '₺': ['TRY'], '₽': ['RUB'], '₩': ['KRW', 'KPW'], '₪': ['ILS'], '₫': ['VND'], '₱': ['PHP'], '₦': ['NGN'], '₴': ['UAH'], '฿': ['THB'], '₡': ['CRC'], '₵': ['GHS'], '₸': ['KZT'],
    '£': ['GBP', 'EGP', 'FKP', 'GIP', 'SHP', 'SYP', 'LBP', 'SDG', 'SSP'], '¥': ['JPY', 'CNY'], '￥': ['JPY', 'CNY'],
    $: ['USD', 'CAD', 'AUD', 'NZD', 'SGD', 'HKD', 'TWD', 'MXN', 'BRL', 'ARS', 'CLP', 'COP', 'FJD', 'JMD', 'TTD', 'BBD', 'BSD', 'BZD', 'GYD', 'XCD', 'NAD', 'LRD', 'SRD', 'UYU'],
    us$: ['USD'], 'u$s': ['USD'], ca$: ['CAD'], c$: ['CAD'], au$: ['AUD'], a$: ['AUD'], nz$: ['NZD'], hk$: ['HKD'], s$: ['SGD'], nt$: ['TWD'], mx$: ['MXN'], r$: ['BRL'],
    zł: ['PLN'], kč: ['CZK'], ft: ['HUF'], lei: ['RON'], kr: ['SEK', 'NOK', 'DKK', 'ISK'], 'kr.': ['DKK', 'SEK', 'NOK', 'ISK'], r: ['ZAR'], rs: ['INR', 'PKR', 'LKR', 'NPR', 'MUR'], 'rs.': ['INR', 'PKR', 'LKR', 'NPR', 'MUR'],
    fr: ['CHF'], 'fr.': ['CHF'], sfr: ['CHF'], 'sfr.': ['CHF'], euro: ['EUR'], euros: ['EUR'], dollar: ['USD', 'CAD', 'AUD', 'NZD'], dollars: ['USD', 'CAD', 'AUD', 'NZD'], pounds: ['GBP'], rupees: ['INR', 'PKR', 'LKR', 'NPR']
};

/** Of signs that several currencies use, those whose first one everybody outside its other countries means. */
const usuallyFirst = new Set(['£', '₩']);

const codes: ReadonlySet<string> = new Set(Intl.supportedValuesOf('currency'));

/** True for an ISO 4217 code that the JavaScript engine knows. */
export function isCurrencyCode(code: string): boolean {
    return codes.has(code);
}

/** The currency that a sign, code or name stands for; what is ambiguous is settled by the hints, else `cannot` asks. */
export function currencyOf(sign: string, { asked, own }: CurrencyHints): Understood<string> {
    const plain = sign.trim();
    const code = plain.toUpperCase();
    if (isCurrencyCode(code)) return { value: code };
    const known = signs[plain.toLowerCase()];
    if (!known) return { cannot: `'${shortened(sign)}' is no currency that is known` };
    if (known.length === 1) return { value: known[0]! };
    if (asked !== undefined && known.includes(asked)) return { value: asked };
    if (asked !== undefined) return { cannot: `'${plain}' does not stand for ${asked}` };
    if (own !== undefined && known.includes(own)) return { value: own, remark: `${plain} is taken as ${own}, the currency of the programme` };
    if (usuallyFirst.has(plain)) return { value: known[0]!, remark: `${plain} is taken as ${known[0]}` };
    return { cannot: `${plain} may be ${known.slice(0, 3).join(', ')}${known.length > 3 ? ' or another currency' : ''}: say which` };
}

/** The currency named in a heading such as "Price (USD)" or "Cost in €". */
export function currencyInHeading(heading: string): string | undefined {
    const code = [...heading.matchAll(/(?<![\p{L}])[A-Z]{3}(?![\p{L}])/gu)].map(([word]) => word).find(isCurrencyCode);
    return code ?? /(?:US|CA|AU|NZ|HK)?\p{Sc}/u.exec(heading)?.[0];
}

/** True for a text that shows money beyond doubt: a number with a currency's sign or code. */
export function looksLikeMoney(text: string): boolean {
    const { sign, rest } = withoutSign(text);
    return sign !== '' && /^\d/.test(rest) && (/\p{Sc}/u.test(sign) || isCurrencyCode(sign.toUpperCase()));
}

/**
 * "$4.50", "EUR 3,20", "£2", "3.20", "4.50/kg", "2.10 per 500 g". `shownIn` is a sign or code from elsewhere: how the workbook
 * shows the cell, the column's heading, a currency column.
 */
export function readPrice(text: string, shownIn: string | undefined, hints: CurrencyHints, style: NumberStyle): Understood<Price> {
    if (text.length > mostCharacters) return { cannot: `'${shortened(text)}' is no price that can be read` };
    const [, amount = text, each] = /^(.*?\d.*?)\s*(?:\/|\bper\b|(?=\beach\b|\bea\b))\s*(?:an?\s+)?([^/]+)$/i.exec(text.trim()) ?? [];
    const { sign, rest } = withoutSign(amount);
    const number = numberAt(rest, style);
    if (!number || number.rest !== '') return { cannot: `'${shortened(text)}' is no price that can be read` };
    const per = each === undefined ? undefined : perWhat(each, style);
    if (each !== undefined && !per) return { cannot: `'${shortened(text)}' is no price that can be read` };
    const currency = currencyFor(sign || shownIn, hints);
    if ('cannot' in currency) return currency;
    const decimals = decimalsOfCurrency(currency.value);
    const rounded = number.value.round(decimals);
    const value = withDecimals(rounded, decimals);
    const roundedRemark = rounded.equals(number.value) ? undefined : `the price ${shortened(number.text)} is rounded to ${value}`;
    const remarks = [currency.remark, number.remark, roundedRemark].filter(remark => remark !== undefined);
    return { value: { value, currency: currency.value, ...(per && { per }) }, remark: remarks.length > 0 ? remarks.join('; ') : undefined };
}

function currencyFor(sign: string | undefined, hints: CurrencyHints): Understood<string> {
    if (sign !== undefined) return currencyOf(sign, hints);
    if (hints.asked !== undefined) return { value: hints.asked };
    if (hints.own !== undefined) return { value: hints.own, remark: `the price is taken as ${hints.own}, the currency of the programme` };
    return { cannot: 'no currency stands with the price: say which' };
}

/** A sign or code before or after the number. */
function withoutSign(text: string): { sign: string; rest: string } {
    const plain = text.trim();
    const [, before = '', rest = ''] = /^((?:[\p{L}]{1,3})?\p{Sc}|[\p{L}]{1,4}\.?(?=[\s\d]))?\s*(.*)$/u.exec(plain) ?? [];
    // German and Swiss prices end on a dash: 3,-
    const undashed = (words: string): string => words.replace(/[.,][-–—]{1,2}$/, '');
    if (before !== '') return { sign: before, rest: undashed(rest) };
    const [, number = plain, after = ''] = /^(.*?[\d.,])\s*((?:[\p{L}]{1,3})?\p{Sc}|[\p{L}]{1,8}\.?)$/u.exec(plain) ?? [];
    return { sign: after, rest: undashed(number) };
}

function perWhat(words: string, style: NumberStyle): Quantity | undefined {
    const plain = words.trim().replace(/\.$/, '');
    if (/^(?:each|ea|piece|pc|item|unit|one)$/i.test(plain)) return numeral(new Fraction(1));
    const unit = unitOf(plain);
    if (unit) return { ...numeral(unit.times), unit: unit.unit };
    const quantity = readQuantity(plain, style);
    return 'value' in quantity && /^\d/.test(plain) && !quantity.value.packs ? quantity.value : undefined;
}

function withDecimals(value: Fraction, decimals: number): string {
    const text = value.toString(decimals);
    const [whole = '0', part = ''] = text.split('.');
    return decimals === 0 || (part === '' && decimals > 2) ? whole : `${whole}.${part.padEnd(Math.min(decimals, 2), '0')}`;
}
