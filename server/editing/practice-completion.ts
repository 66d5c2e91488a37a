import { CompletionItemKind, type CompletionItem } from 'vscode-languageserver-protocol';
import { statementAt } from '@haversack/language/facts/statements';
import type { DraftToken } from '@haversack/language/lexer/fit-line';
import { lineInWords } from '@haversack/language/practice/practice-lines';
import { practiceItems } from '@haversack/language/practice/sequence';
import type { PracticeLine } from '@haversack/language/sheets/sheet';

const nowhere = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/** Lines that are often wanted in a practice: words, then numbers. */
const usual: readonly PracticeLine[] = ([
    ['name numbers', '11', '99'], ['name numbers in words', '11', '99'], ['name numbers in places', '11', '99'],
    ['write numbers', '11', '99'], ['write numbers from words', '11', '99'], ['write numbers from places', '11', '99'],
    ['digits and words', '20', '999'], ['arrange digits', '481'], ['fives and tens', '6', '20'],
    ['sums', '2', '10'], ['sums', '2', '20'], ['differences', '0', '10'], ['differences', '0', '20'],
    ['doubles', '1', '10'], ['halves', '2', '20'],
    ['missing parts', '2', '10'], ['missing parts', '5', '20'], ['bonds', '10'], ['bonds', '6', '10'],
    ['compare numbers', '10', '99'], ['return to', '67'], ['return to', '7', '8']
] as const).map(([words, ...numbers]) => ({ words: words.split(' '), numbers: [...numbers], at: nowhere }));

/** Whole lines of a practice, each with items that it gives; behind words that stand already, what may complete them. */
export function practiceLineItems(block: string, tokens: readonly DraftToken[]): CompletionItem[] {
    if (block !== 'practice') return [];
    const typed = tokens.map(({ text }) => text.toLowerCase());
    return usual.flatMap((line, index) => {
        const whole = lineInWords(line);
        const words = whole.split(' ');
        const rest = words.slice(typed.length).join(' ');
        // Half a range is better finished by hand.
        if (rest === '' || typed.some((word, at) => word !== words[at] || /^\d/.test(word))) return [];
        return [{
            label: rest, kind: CompletionItemKind.Snippet, detail: whole, documentation: itemsOf(line) ?? statementAt('practice', 'return to')?.says,
            insertText: rest, sortText: `25${String(index).padStart(3, '0')}`
        }];
    });
}

function itemsOf(line: PracticeLine): string | undefined {
    const items = practiceItems({ name: 'example', practice: [line] }, 'example', { count: 3 });
    return items.length === 0 ? undefined : items.map(({ ask, answer, room }) => (room === 'gap' ? ask.replace('?', answer) : `${ask} → ${answer}`)).join('\n');
}
