import { papers } from '../brief/look/paper.css.js';
import type { PrintParams } from '../protocol/pages.js';
import { isFlag, isOneOf } from './read-params.js';

/** What a request may say of how its page is printed; any other counts as not said. */
export const printKinds = { paper: isOneOf(papers), printing: isFlag } as const;

export function printOptions({ paper, printing }: PrintParams): PrintParams {
    return { paper, printing };
}
