import { decimalsOfCurrency } from '../facts/currencies.js';
import type { FileSheet, Money } from '../sheets/sheet.js';
import type { Check } from './check.js';
import { changeTo } from './fixes.js';

const sand = (price: string): string => `material sand\n  consumable\n  measured in g\n  pack of 500 g costs ${price}`;

export const priceNotInCoins: Check = {
    code: 'price-not-in-coins', severity: 'warning', title: 'A price with a part of a coin',
    explains: 'The price has more decimals than its currency has coins for, so nobody can pay it, and sums of it would not come out even. It is left out of the costs until it is a whole number of the smallest coins.',
    wrong: sand('14.505 USD'), right: sand('14.50 USD'),
    *find(file) {
        for (const { value, currency, at } of pricesIn(file)) {
            const places = decimalsOfCurrency(currency);
            const inCoins = rounded(value, places);
            if (inCoins === undefined) continue;
            const has = places === 0 ? 'no decimals' : `${places} decimals`;
            yield { message: `${value} ${currency} is not a whole number of the smallest coins: ${currency} has ${has}. The price is left out.`, at, fixes: [changeTo(file.uri, at, `${inCoins} ${currency}`, false)] };
        }
    }
};

function pricesIn(file: FileSheet): Money[] {
    return [...file.materials.flatMap(({ packs, delivery }) => [...packs.map(({ cost }) => cost), delivery]), ...file.books.map(({ cost }) => cost)].filter(price => price !== undefined);
}

/** The nearest amount with so many decimals, halves up; undefined for one that has no more. */
function rounded(value: string, places: number): string | undefined {
    const [whole = '', part = ''] = value.split('.');
    if (!/[1-9]/.test(part.slice(places))) return undefined;
    const coins = BigInt(whole + part.slice(0, places)) + (part.charAt(places) >= '5' ? 1n : 0n);
    const digits = coins.toString().padStart(places + 1, '0');
    return places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
}
