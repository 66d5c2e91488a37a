/** Decimals of currencies: ISO 4217 list one (published 2024-06-25, as mirrored in the public data set "currency-codes"), and the JavaScript engine's own table. */
import { describe, expect, test } from 'vitest';
import { decimalsOfCurrency } from '@haversack/language/facts/currencies';
import { moneyText, readMoney } from '../../server/planning/buying/money.js';

const listOne: Record<number, string> = {
    0: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF',
    2: 'AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW CNY COP COU CRC CUC CUP CVE CZK DKK DOP '
        + 'DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT '
        + 'MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL '
        + 'THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XCD YER ZAR ZMW ZWG',
    3: 'BHD IQD JOD KWD LYD OMR TND',
    4: 'CLF UYW'
};

/** Here the engine follows the habit of leaving the coins away (CLDR) and not the standard. */
const habit = new Set('AFN ALL COP HUF IDR IQD IRR KPW LAK LBP MGA MMK PKR SLL SOS SYP YER'.split(' '));

describe('ISO 4217', () => {
    test.each(Object.entries(listOne).flatMap(([digits, codes]) => codes.split(' ').map(code => [code, Number(digits)] as const)))('%s has %d decimals', (code, digits) => {
        expect(decimalsOfCurrency(code)).toBe(digits);
    });
    test('the engine agrees where it follows the standard', () => {
        const codes = Intl.supportedValuesOf('currency').filter(code => !habit.has(code));
        const engine = (code: string) => new Intl.NumberFormat('en', { style: 'currency', currency: code }).resolvedOptions().maximumFractionDigits;
        expect(codes.length).toBeGreaterThan(100);
        expect(codes.filter(code => engine(code) !== decimalsOfCurrency(code))).toEqual([]);
    });
});

describe('amounts as the engine writes them', () => {
    test.each([['14.50', 'USD'], ['0.05', 'USD'], ['1450', 'JPY'], ['1.005', 'KWD'], ['1234567890123.45', 'EUR'], ['0', 'EUR'], ['3', 'GBP']])('%s %s', (value, currency) => {
        const format = new Intl.NumberFormat('en', { style: 'currency', currency, currencyDisplay: 'code', useGrouping: false });
        const parts = format.formatToParts(value as Intl.StringNumericLiteral).filter(part => !['currency', 'literal'].includes(part.type));
        expect(moneyText(readMoney({ value, currency })!)).toBe(`${parts.map(part => part.value).join('')} ${currency}`);
    });
});
