import type { PracticePart } from '@haversack/language/practice/read-practice';
import type { PracticeLine } from '@haversack/language/sheets/sheet';

const nowhere = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/** A line as a sheet has it: "bonds of 6 to 10" is the word bonds and the numbers 6 and 10. A test compares this with what the language reads. */
export function practiceLine(text: string): PracticeLine {
    const tokens = text.split(' ');
    const linking = tokens[0] === 'return' ? ['and'] : ['to', 'of'];
    return { words: tokens.filter(token => !/^\d/.test(token) && !linking.includes(token)), numbers: tokens.filter(token => /^\d/.test(token)), at: nowhere };
}

export function practicePart(lines: readonly string[], items?: number, name = 'drill'): PracticePart {
    return { name, items, practice: lines.map(practiceLine) };
}
