import { counted } from '../facts/wording.js';
import { wholeNumber } from './numbers.js';
import type { PictureKind } from './picture-kind.js';
import type { Picture } from './picture.js';
import { isFault } from './settings-reader.js';

type ArrayPicture = Extract<Picture, { kind: 'array' }>;

const limits = { rows: 12, columns: 20 };
const missing = `How many rows, and how many in each? Write up to ${limits.rows} rows by up to ${limits.columns}, as in: show array 3 by 4`;

export const array: PictureKind<ArrayPicture> = {
    kind: 'array', title: 'Array', examples: ['array 3 by 4', 'array 6 by 8'],
    says: 'Equal rows one below the other, for multiplying and dividing.',
    settings: `How many rows, \`by\` how many in each row: 1 to ${limits.rows} by 1 to ${limits.columns}.`,
    read(settings) {
        const [first, second] = [Number(settings.texts[0]), Number(settings.texts.find((text, index) => index > 0 && /^\d/.test(text)))];
        const turned = settings.texts.length === 3 && fits(second, first) ? `${second} by ${first}` : undefined;
        const rows = wholeNumber(settings, missing, {
            from: 1, to: limits.rows, instead: () => [turned],
            outside: text => (Number(text) < 1 ? 'An array has at least one row.' : `An array has up to ${limits.rows} rows; ${text} are too many.${turned ? ` Turned round it fits: show array ${turned}` : ''}`)
        });
        if (isFault(rows)) return rows;
        if (!settings.skip('by')) return settings.wrongNext(missing, settings.texts.length <= 3 && fits(first, second) ? `${first} by ${second}` : undefined);
        const columns = wholeNumber(settings, missing, {
            from: 1, to: limits.columns, instead: () => [turned],
            outside: text => (Number(text) < 1 ? 'A row has at least one in it.' : `A row has up to ${limits.columns}; ${text} are too many.`)
        });
        if (isFault(columns)) return columns;
        return settings.tooMuch('An array has rows and columns') ?? { kind: 'array', rows, columns };
    },
    next: settings => (settings.length === 1 ? ['by'] : []),
    inWords: ({ rows, columns }) => `Array: ${counted(rows, 'row')} of ${columns}, ${rows * columns} in all.`
};

function fits(rows: number, columns: number): boolean {
    return Number.isInteger(rows) && Number.isInteger(columns) && rows >= 1 && rows <= limits.rows && columns >= 1 && columns <= limits.columns;
}
