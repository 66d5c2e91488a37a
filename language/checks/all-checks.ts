import type { Check, Explained } from './check.js';
import { parserCode, readingCodes } from './reading.js';
import { unknownName } from './unknown-name.js';

/** Every check beyond reading and names, in the order of the reference. */
export const allChecks: readonly Check[] = [];

/** Every code that a problem can have, as the reference lists them. */
export const allCodes: readonly Explained[] = [...readingCodes, parserCode, unknownName, ...allChecks];
