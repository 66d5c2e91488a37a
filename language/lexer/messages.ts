import { statementAt, statementsIn, statements } from '../facts/statements.js';
import type { BraceProblem, DraftToken, Fit } from './fit-line.js';
import type { Mended } from './mend-line.js';
import { nearest } from './nearest.js';
import type { ReadingProblem } from './problems.js';
import type { Line } from './scan.js';

/** Sentences for everything that can be wrong in a line, in a teacher's words. */

type Code = ReadingProblem['code'];

function problem(code: Code, line: Line, offset: number, length: number, message: string, mend?: ReadingProblem['mend']): ReadingProblem {
    return { code, message, severity: 'error', offset, length: Math.max(length, 1), line: line.number + 1, column: offset - line.start + 1, mend };
}

const isWord = (symbol: string): boolean => /^[a-z]/.test(symbol);

function firstWords(tokens: readonly DraftToken[]): string {
    const words: string[] = [];
    for (const token of tokens) {
        if (!isWord(token.symbol)) break;
        words.push(token.symbol);
    }
    return words.join(' ');
}

/** What facts/statements.ts calls the statement that these tokens begin, in this block. */
export function headOf(block: string, tokens: readonly DraftToken[]): string {
    const words = firstWords(tokens);
    if (words === '') return '';
    if ((block === 'lesson' || block === 'add to') && tokens[0]!.symbol === 'game') return 'game in a lesson';
    return statementAt(block, words)?.head || tokens[0]!.symbol;
}

function reads(block: string, tokens: readonly DraftToken[]): string {
    const statement = statementAt(block, firstWords(tokens));
    return statement ? ` It reads like this: ${statement.example}` : '';
}

function inBlock(block: string): string {
    return block === 'file' ? 'at the left edge of a file' : `in ${/^[aeio]/.test(block) ? 'an' : 'a'} ${block} block`;
}

/** A line that would be right elsewhere. */
export function misplaced(line: Line, head: string, fit: Fit, column: number): ReadingProblem {
    const word = firstWords(fit.tokens) || fit.tokens[0]!.text;
    const end = fit.tokens[fit.tokens.length - 1]!;
    const where = head === 'file' ? 'stands at the left edge of the file' : `belongs to the ${head} above`;
    return problem('indentation', line, line.content, end.start + end.text.length - line.content,
        `'${word}' ${where}: begin this line ${column === 0 ? 'at the left edge' : `after ${column} spaces`}.`, indentMend(line, column));
}

export function tooDeep(line: Line, column: number): ReadingProblem {
    return problem('indentation', line, line.content, Math.min(line.end - line.content, 40),
        `This line stands deeper than the one above it, which takes nothing under it. Begin it ${column === 0 ? 'at the left edge' : `after ${column} spaces`}.`,
        indentMend(line, column));
}

export function betweenColumns(line: Line, head: string, column: number): ReadingProblem {
    return problem('indentation', line, line.content, Math.min(line.end - line.content, 40),
        `This line is read as part of the ${head} block, but does not line up with the lines above. Begin it after ${column} spaces.`, indentMend(line, column));
}

export function tabsAndSpaces(line: Line): ReadingProblem {
    return problem('tabs-and-spaces', line, line.start, line.content - line.start,
        'Tabs and spaces are mixed at the start of this line, so its depth is not certain. Use one or the other throughout the file.');
}

function indentMend(line: Line, column: number): ReadingProblem['mend'] {
    return { title: 'Line it up', offset: line.start, length: line.content - line.start, text: ' '.repeat(column) };
}

export function saidTwice(line: Line, block: string, fit: Fit): ReadingProblem {
    const last = fit.tokens[fit.tokens.length - 1]!;
    return {
        ...problem('said-twice', line, line.content, last.start + last.text.length - line.content,
            `This ${block} has said '${firstWords(fit.tokens)}' before; the line further down counts. Keep one of the two.`),
        severity: 'warning'
    };
}

/** A line that was read after one mend. */
export function mended(text: string, line: Line, block: string, broken: Fit, { how }: Mended): ReadingProblem {
    const shape = reads(block, broken.tokens);
    switch (how.did) {
        case 'respelt': {
            const { piece, as } = how;
            const where = broken.tokens.length === 0 ? ` ${inBlock(block)}` : '';
            return problem('unknown-statement', line, piece.start, piece.text.length,
                `'${piece.text}' means nothing here${where}; did you mean '${as}'?`,
                { title: `Change to '${as}'`, offset: piece.start, length: piece.text.length, text: as });
        }
        case 'renamed':
            return problem('name-spelling', line, how.piece.start, how.piece.text.length,
                `Names are lower-case words with hyphens: write '${how.as}' rather than '${how.piece.text}'.`,
                { title: `Change to '${how.as}'`, offset: how.piece.start, length: how.piece.text.length, text: how.as });
        case 'put in': {
            const at = how.before;
            const after = broken.tokens[broken.tokens.length - 1];
            const spot = after ? after.start + after.text.length : at;
            if (how.symbol === 'NAME') {
                const word = wordBefore(broken.tokens);
                return problem('unfinished-line', line, line.content, spot - line.content, `The name is missing ${word ? `after '${word}'` : 'at the start of this line'}.${shape}`);
            }
            const words = firstWords(broken.tokens);
            const title = how.symbol === ':' ? 'Put in the colon' : 'Put in the comma';
            const sentence = how.symbol === ':' ? `A colon is missing after '${words}'.` : 'A comma is missing between two names.';
            return problem(how.symbol === ':' ? 'missing-colon' : 'unfinished-line', line, line.content, spot - line.content, `${sentence}${shape}`,
                { title, offset: spot, length: 0, text: how.symbol });
        }
        case 'left out': {
            if (!broken.stopped) {
                return problem('unfinished-line', line, line.content, line.end - line.content, `This line stops too early.${shape}`);
            }
            const from = broken.stopped.start;
            const part = text.slice(from, Math.max(how.to, from)).trim();
            return problem('unfinished-line', line, from, part.length, `${unread(part)}${shape}`);
        }
    }
}

/** What stands last: the words that begin the line where nothing follows them, else the last word, with what hangs on it. */
function wordBefore(tokens: readonly DraftToken[]): string {
    if (tokens.every(({ symbol }) => isWord(symbol))) return firstWords(tokens);
    let from = tokens.length - 1;
    while (from > 0 && tokens[from - 1]!.start + tokens[from - 1]!.text.length === tokens[from]!.start) from--;
    return tokens.slice(from).map(({ text }) => text).join('');
}

function unread(part: string): string {
    if (part.startsWith('"') || part.startsWith('“')) return 'The quotation mark that opens here is not closed on this line.';
    const short = part.length > 30 ? `${part.slice(0, 30)}…` : part;
    return `'${short}' does not belong here.`;
}

/** A line that could not be read at all. */
export function unreadable(text: string, line: Line, block: string, broken: Fit, proseAbove: number | undefined): ReadingProblem {
    const whole = text.slice(line.content, line.end).trimEnd();
    if (broken.tokens.length > 0) {
        const part = broken.stopped ? text.slice(broken.stopped.start, line.end).trim() : '';
        const sentence = broken.stopped ? unread(part) : 'This line stops too early.';
        const offset = broken.stopped?.start ?? line.content;
        return problem('unfinished-line', line, offset, broken.stopped ? part.length : whole.length, `${sentence}${reads(block, broken.tokens)}`);
    }
    const word = /^\S+/.exec(whole)![0].replace(/:$/, '');
    const elsewhere = statements.find(statement => statement.head === word || statement.head.startsWith(`${word} `));
    if (elsewhere) {
        const places = [...new Set(statements.filter(({ head }) => head === elsewhere.head).flatMap(({ within }) => within))];
        return problem('wrong-place', line, line.content, word.length,
            `'${word}' does not belong ${inBlock(block)}; it belongs ${places.slice(0, 3).map(inBlock).join(' or ')}.`);
    }
    if (proseAbove !== undefined) {
        return problem('unknown-statement', line, line.content, whole.length,
            'This line begins with no word of the language. If it goes on from the text above, begin it further to the right than that text’s first word.',
            { title: 'Go on from the text above', offset: line.start, length: line.content - line.start, text: ' '.repeat(proseAbove + 2) });
    }
    const heads = statementsIn(block).map(({ head }) => head).filter(head => head !== '');
    const guess = nearest(word.toLowerCase(), heads.map(head => head.split(' ')[0]!));
    const named = statementsIn(block).find(({ head }) => head === '');
    const known = named ? ` A line here begins with a name${heads.length > 0 ? ` or with ${list(heads)}` : ''}. It reads like this: ${named.example}`
        : heads.length > 0 ? ` A line here begins with ${list(heads.slice(0, 6))}${heads.length > 6 ? ' and others' : ''}.` : '';
    return problem('unknown-statement', line, line.content, word.length,
        guess ? `'${word}' begins no line ${inBlock(block)}; did you mean '${guess}'?` : `'${word}' begins no line ${inBlock(block)}.${known}`);
}

function list(words: readonly string[]): string {
    return words.map(word => `'${word}'`).join(', ');
}

/** Something wrong with braces in prose. */
export function brace(text: string, line: Line, { code, start, length, meant }: BraceProblem): ReadingProblem {
    if (code === 'open-brace') {
        return problem(code, line, start, length,
            'This brace is not closed on its line. Write the name and } after it, or \\{ for a plain brace.');
    }
    const inner = text.slice(start, start + length);
    return problem(code, line, start, length,
        `Between braces stands one name, in lower-case words with hyphens.${meant ? ` Did you mean {${meant}}?` : ' For a plain brace write \\{.'}`,
        meant && inner !== `{${meant}}` ? { title: `Change to {${meant}}`, offset: start, length, text: `{${meant}}` } : undefined);
}
