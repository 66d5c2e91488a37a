import { toCardinal } from 'n2words/en-US';

/** The largest number that items are made of: six digits, from ones to hundred thousands. */
export const largestNumber = 999_999;

const places = ['', 'ten', 'hundred', 'thousand', 'ten-thousand', 'hundred-thousand'] as const;

/** A whole number from 0 to `largestNumber` in ordinary English: "one hundred forty-three". */
export function inWords(number: number): string {
    return toCardinal(number);
}

/**
 * A whole number from 0 to `largestNumber` by its places: "1-hundred 4-ten 3". A count always stands before its place ("1-ten", never a
 * bare "ten"), and an empty place is silent: 205 is "2-hundred 5". No published form is known; teaching with such names is
 * known as explicit number names (Magargee and Beauford 2016, doi 10.1007/s10649-016-9682-y).
 */
export function inPlaces(number: number): string {
    if (number === 0) return '0';
    const digits = [...String(number)];
    return digits.flatMap((digit, index) => {
        const place = places[digits.length - 1 - index];
        return digit === '0' ? [] : [place ? `${digit}-${place}` : digit];
    }).join(' ');
}

/** The words that are heard when a name is read aloud: "forty-three" is two, "2-ten" is "two ten". */
export function wordsSaid(name: string): string[] {
    return name.split(/[ -]/).map(word => (/^\d$/.test(word) ? inWords(Number(word)) : word));
}

/** A name as it is also said, with "and" before the tens and ones: "four hundred and eighteen". Undefined where no "and" can be: below one hundred, and in "two hundred". */
export function withAnd(name: string): string | undefined {
    const said = name.replace(/(hundred|thousand) (?!thousand)(?=[a-z-]+(?: thousand|$))/g, '$1 and ');
    return said === name ? undefined : said;
}
