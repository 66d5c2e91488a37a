import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readDays, readPercent, readQuantity, readSource, readUse, type Understood } from '../../server/importing/cells.js';
import { currencyInHeading, currencyOf, looksLikeMoney, readPrice } from '../../server/importing/money.js';
import { freeName, isWrittenAsName, nameFromTitle } from '../../server/importing/names.js';
import { numberAt, styleOf } from '../../server/importing/numbers.js';
import { plural, singular, written } from '../../server/importing/quantities.js';
import { tableOf } from './programme.js';

const quantity = (text: string, style = {}): string => {
    const read = readQuantity(text, style);
    return 'cannot' in read ? read.cannot : `${written(read.value)}${read.value.packs ? ` [${read.value.packs}]` : ''}${read.remark ? ` (${read.remark})` : ''}`;
};

// Ways of writing amounts that people use: common practice, no source. Units convert exactly: 1 cl is 10 ml, 1 dl is 100 ml, 1 mg is 1/1000 g
// (BIPM, The International System of Units, 9th edition, table 7); a dozen is twelve.
describe('amounts with the unit in the cell', () => {
    test.each([
        ['500 g', '500 g'], ['500g', '500 g'], ['2 kg', '2 kg'], ['2 KG.', '2 kg'], ['12 pcs', '12'], ['12', '12'], ['1 1/2 cups', '1 1/2 cups'], ['1½ cups', '1 1/2 cups'], ['½ cup', '1/2 cup'], ['3/4 lb', '3/4 lb'],
        ['1,5 kg', '1.5 kg'], ['0.5 l', '0.5 l'], ['.5 l', '0.5 l'], ['1.250,5 g', '1250.5 g'], ['1,250.5 g', '1250.5 g'], ['1’250 g', '1250 g'], ['1.234.567 g', '1234567 g'], ['25 cl', '250 ml'], ['2 dl', '200 ml'], ['500 mg', '0.5 g'],
        ['8 fl oz', '8 fl oz'], ['8 fl. oz.', '8 fl oz'], ['2 x 250 ml', '500 ml'], ['3x12', '36'], ['a dozen', '12'], ['2 dozen', '24'], ['3 sets', '3 sets'], ['box of 12', '12'], ['pack of 500 g', '500 g'], ['12/pack', '12'], ['12 per box', '12'],
        ['500 g bag', '500 g'], ['Box (12)', '12'], ['4 bags', '4 [bags]'], ['10 m', '10 m'], ['6"', '6 in'], ['100 Stück', '100'], ['0', '0'], ['20 sheets', '20 sheets']
    ])('%s', (text, says) => { expect(quantity(text)).toBe(says); });

    test.each(['some', '', 'about 3', '-3', '3 or 4', '2026-09-01', '12/25/2026', '1/0 cup', '1.2.3', '1,23,456 g', '3 large red boxes', '9'.repeat(40), '5 per', '1e9', '٣', '∞'])('%j is no amount', text => {
        expect(quantity(text)).toMatch(/is no amount that can be read$/);
    });

    test('a mark that may stand for thousands or decimals is read as the sheet writes the others, else told', () => {
        expect(quantity('1,234 g')).toBe('1234 g (1,234 is taken as 1234)');
        expect(quantity('1.234 kg')).toBe('1.234 kg (1.234 is taken as 1.234)');
        expect(quantity('1,234 kg', { decimalComma: true })).toBe('1.234 kg');
        expect(quantity('1.234 g', { decimalComma: true })).toBe('1234 g');
        expect(quantity('1,234 g', { decimalComma: false })).toBe('1234 g');
        expect(quantity('0,125 kg', { decimalComma: false })).toBe('0.125 kg');
        expect(styleOf(tableOf([['Item', '3,20'], ['x', '1.234,5']]))).toEqual({ decimalComma: true });
        expect(styleOf(tableOf([['Item', '$3.20']]))).toEqual({ decimalComma: false });
        expect(styleOf(tableOf([['Item', '1,234']]))).toEqual({ decimalComma: undefined });
    });

    test('thousands apart by a blank are told, since two numbers may be meant', () => {
        expect(quantity('12 250 ml')).toBe('12250 ml (12 250 is taken as 12250)');
        expect(quantity('12\u00a0250 ml')).toBe('12250 ml (12 250 is taken as 12250)');
    });

    test('a number is exact, however it is written', () => {
        fc.assert(fc.property(fc.integer({ min: 0, max: 999_999 }), fc.integer({ min: 0, max: 99 }), fc.boolean(), (whole, part, comma) => {
            const grouped = String(whole).replace(/(?<=\d)(?=(?:\d{3})+$)/g, comma ? '.' : ',');
            const number = numberAt(`${grouped}${comma ? ',' : '.'}${String(part).padStart(2, '0')}`, {});
            expect(number?.value.mul(100).valueOf()).toBe(whole * 100 + part);
        }));
    });
});

describe('prices', () => {
    const price = (text: string, hints = {}, shownIn?: string): string => {
        const read = readPrice(text, shownIn, hints, {});
        if ('cannot' in read) return read.cannot;
        const { value, currency, per } = read.value;
        return `${value} ${currency}${per ? ` per ${written(per)}` : ''}${read.remark ? ` (${read.remark})` : ''}`;
    };

    // Codes and their minor units: ISO 4217 (JPY has none, KWD three).
    test.each([
        ['€4.50', '4.50 EUR'], ['4,50 €', '4.50 EUR'], ['EUR 3,20', '3.20 EUR'], ['3.20 EUR', '3.20 EUR'], ['3.2 eur', '3.20 EUR'], ['USD 12', '12.00 USD'], ['US$ 4.50', '4.50 USD'], ['CA$4.50', '4.50 CAD'], ['CHF 1’250.50', '1250.50 CHF'],
        ['€1.234,50', '1234.50 EUR'], ['€ 3,-', '3.00 EUR'], ['JPY 500', '500 JPY'], ['KWD 1.250', '1.25 KWD (1.250 is taken as 1.250)'], ['€4.50/kg', '4.50 EUR per 1 kg'], ['€4.50 each', '4.50 EUR per 1'], ['€2.10 per 500 g', '2.10 EUR per 500 g'],
        ['€3.333', '3.33 EUR (3.333 is taken as 3.333; the price 3.333 is rounded to 3.33)'], ['0.05 €', '0.05 EUR'], ['₹ 120', '120.00 INR']
    ])('%s', (text, says) => { expect(price(text)).toBe(says); });

    test('a bare $ or number is in the currency asked for, else in that of the programme, which is told, else unknown', () => {
        expect(price('$4.50')).toBe('$ may be USD, CAD, AUD or another currency: say which');
        expect(price('$4.50', { own: 'CAD' })).toBe('4.50 CAD ($ is taken as CAD, the currency of the programme)');
        expect(price('$4.50', { own: 'EUR' })).toContain('say which');
        expect(price('$4.50', { own: 'CAD', asked: 'AUD' })).toBe('4.50 AUD');
        expect(price('$4.50', { asked: 'EUR' })).toBe("'$' does not stand for EUR");
        expect(price('3.20')).toBe('no currency stands with the price: say which');
        expect(price('3.20', { own: 'EUR' })).toBe('3.20 EUR (the price is taken as EUR, the currency of the programme)');
        expect(price('3.20', { asked: 'EUR', own: 'USD' })).toBe('3.20 EUR');
        expect(price('£2')).toBe('2.00 GBP (£ is taken as GBP)');
        expect(price('3.20', { own: 'EUR' }, 'GBP')).toBe('3.20 GBP');
        expect(price('€3.20', { asked: 'USD' })).toBe('3.20 EUR');
    });

    test.each(['free', '4.50 or so', 'ask', '3 for 5', '-4.50', '4.50 XQZ', '€', '=1+1', '4.50 per dozen boxes of'])('%j is no price', text => {
        expect(price(text, { asked: 'EUR' })).toMatch(/no price that can be read|no currency that is known/);
    });

    test('what shows money beyond doubt, and currencies in headings', () => {
        expect(['$4.50', '4.50 €', 'EUR 3', '£2.00'].every(looksLikeMoney)).toBe(true);
        expect(['4.50', '3 g', '12 pcs', 'Bell', '100 m', ''].some(looksLikeMoney)).toBe(false);
        expect(['Price (USD)', 'Cost €', 'PRICE', 'Cost in GBP', 'Price £/pack', 'Prix'].map(currencyInHeading)).toEqual(['USD', '€', undefined, 'GBP', '£', undefined]);
        expect(currencyOf('kr', { own: 'NOK' })).toEqual({ value: 'NOK', remark: 'kr is taken as NOK, the currency of the programme' });
    });
});

describe('times, shares and words', () => {
    const days = (text: string, bare: 'days' | 'weeks' = 'days'): string => {
        const read = readDays(text, bare);
        return 'cannot' in read ? read.cannot : `${read.value.text} = ${read.value.days}${read.value.working ? ' working' : ''}${read.remark ? ` (${read.remark})` : ''}`;
    };

    test.each([
        ['6 days', '6 days = 6'], ['1 day', '1 day = 1'], ['2 weeks', '2 weeks = 14'], ['2 wks', '2 weeks = 14'], ['10 working days', '10 working days = 10 working'], ['5 business days', '5 working days = 5 working'], ['7', '7 days = 7'], ['next day', '1 day = 1'],
        ['5-7 days', "7 days = 7 (of '5-7 days' the longer time is taken)"], ['3 to 5 working days', "5 working days = 5 working (of '3 to 5 working days' the longer time is taken)"], ['about 10 days', '10 days = 10'], ['0', '0 days = 0']
    ])('%s', (text, says) => { expect(days(text)).toBe(says); });

    test('a bare number in a column of weeks', () => { expect(days('2', 'weeks')).toBe('2 weeks = 14'); });

    test.each(['soon', '2 months', '1.5 weeks', '-3', '99999 days'])('%j is no time', text => { expect(days(text)).toMatch(/is no number of days or weeks$/); });

    test('percentages', () => {
        const percent = (text: string, isNumber = false): Understood<string> => readPercent(text, isNumber, {});
        expect(percent('10%')).toEqual({ value: '10', remark: undefined });
        expect(percent('12,5 %')).toEqual({ value: '12.5', remark: undefined });
        expect(percent('0.1', true)).toEqual({ value: '10', remark: '0.1 is taken as 10%' });
        expect('cannot' in percent('ten')).toBe(true);
    });

    test('uses and sources', () => {
        expect(['Reusable', 're-usable', 'Equipment', 'non-consumable', 'durable'].map(readUse)).toEqual(Array(5).fill('reusable'));
        expect(['Consumable', 'CONSUMABLES', 'used up', 'single-use', 'disposable'].map(readUse)).toEqual(Array(5).fill('consumable'));
        expect(['toy', '', 'use'].map(readUse)).toEqual([undefined, undefined, undefined]);
        expect(['Shop', 'buy online', 'home', 'families', 'Library', 'in the kit', 'photocopy', 'shelf 3'].map(readSource)).toEqual(['shop', 'shop', 'home', 'home', 'library', 'kit', 'printed', undefined]);
    });

    // English plurals of the kind that amounts stand in: from memory.
    test('one and many', () => {
        expect(['sets', 'boxes', 'batches', 'trays', 'berries', 'glass', 'set'].map(singular)).toEqual(['set', 'box', 'batch', 'tray', 'berry', 'glass', 'set']);
        expect(['set', 'box', 'tray', 'berry'].map(plural)).toEqual(['sets', 'boxes', 'trays', 'berries']);
    });
});

describe('names', () => {
    test.each([
        ['Pan Balance', 'pan-balance'], ['Crème brûlée', 'creme-brulee'], ['Maßband', 'massband'], ['Ærø & Øl', 'aero-ol'], ["Teacher's bell", 'teachers-bell'], ['  Gram cubes (1 cm)  ', 'gram-cubes-1-cm'], ['3D shapes', '3d-shapes'], ['2026-09-14', 'item-2026-09-14'],
        ['12', 'item-12'], ['1/2', '1-2'], ['🎲🎲', 'item'], ['Кубики', 'кубики'], ['積み木', '積み木'], ['#', 'item'], ['material', 'material'], ['Łódź', 'lodz'], ['½ litre jug', '1-2-litre-jug']
    ])('%s', (title, name) => { expect(nameFromTitle(title)).toBe(name); });

    test('a name whatever the title', () => {
        fc.assert(fc.property(fc.string({ unit: 'grapheme', maxLength: 60 }), title => {
            const name = nameFromTitle(title);
            expect(isWrittenAsName(name)).toBe(true);
            expect([...name].length).toBeLessThanOrEqual(46);
        }), { numRuns: 500 });
    });

    test('a clash takes the first free number', () => {
        expect(freeName('bell', name => ['bell', 'bell-2'].includes(name))).toBe('bell-3');
    });
});

test('reading a cell of any kind never fails', () => {
    fc.assert(fc.property(fc.oneof(fc.string({ maxLength: 40 }), fc.string({ unit: 'binary', maxLength: 20 }), fc.stringMatching(/^[\d.,/ x"€$-]{0,20}$/)), text => {
        for (const read of [readQuantity(text, {}), readPrice(text, undefined, { own: 'EUR' }, {}), readDays(text), readPercent(text, false, {})]) expect('cannot' in read || 'value' in read).toBe(true);
    }), { numRuns: 800 });
});
