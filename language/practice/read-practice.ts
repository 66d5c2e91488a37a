import type { PartSheet, PracticeLine, Range } from '../sheets/sheet.js';
import { largestNumber } from './number-names.js';
import { isReturn, kindOf, lineInWords } from './practice-lines.js';
import type { ItemSet, PracticeItem } from './practice-item.js';

/** A way to mend a line: other text in its place, a line below it, or the line away. */
export type Mend = { title: string; at: Range } & ({ text: string } | { below: string } | { remove: true });

/** What is wrong in a practice, in one or two sentences. */
export interface PracticeProblem {
    message: string;
    at: Range;
    mends: Mend[];
}

/** What of a part of a lesson its items depend on. */
export type PracticePart = Pick<PartSheet, 'name' | 'items' | 'practice' | 'from' | 'piece'>;

/** A line that can be practised. */
export interface ReadLine {
    line: PracticeLine;
    /** Its number among the lines of the practice, from 0. */
    index: number;
    set: ItemSet;
}

/** What a practice asks for, as far as it is possible; what is not is among the problems and makes no item. */
export interface ReadPractice {
    lines: ReadLine[];
    /** Items that come back between the others, each with the number of the line that says so. */
    returns: { index: number; item: PracticeItem }[];
    problems: PracticeProblem[];
}

/** Reads the lines of a practice. A range that is turned round is read the other way: a check of its own tells of it. */
export function readPractice({ practice = [] }: PracticePart): ReadPractice {
    const read: ReadPractice = { lines: [], returns: [], problems: [] };
    const whole = practice.map((line, index) => ({ line, index })).filter(({ line: { numbers } }) => numbers.length > 0 && numbers.every(number => number !== ''));
    for (const { line, index } of whole) {
        const set = isReturn(line) ? undefined : readLine(line, read.problems);
        if (set) read.lines.push({ line, index, set });
    }
    const fine = read.problems.length === 0;
    for (const { line, index } of whole) if (isReturn(line)) readReturn(line, index, read, fine);
    return read;
}

function readLine(line: PracticeLine, problems: PracticeProblem[]): ItemSet | undefined {
    const found = kindOf(line);
    if (!found) return undefined;
    const { kind, form } = found;
    const impossible = (message: string, right: string): undefined => {
        problems.push({ message, at: line.at, mends: right === lineInWords(line) ? [] : [changeTo(line, right)] });
        return undefined;
    };
    const fraction = line.numbers.find(number => !isWhole(number));
    if (fraction !== undefined) {
        return impossible(`Practice is with whole numbers, and ${fraction} is none: write a whole number, as in '${kind.example}'.`, lineInWords(line, line.numbers.map(number => Math.round(Number(number)))));
    }
    const numbers = line.numbers.map(Number);
    const outside = numbers.find(number => number < kind.least || number > kind.most);
    if (outside !== undefined) {
        const written = line.numbers[numbers.indexOf(outside)]!;
        if (kind.words === 'arrange digits' && outside < kind.least) return impossible(`${written} has only one digit, so nothing can be arranged: write a number of two to six digits, as in '${kind.example}'.`, kind.example);
        const right = numbers.map(number => Math.min(Math.max(number, kind.least), kind.most));
        const wanted = right[right.length - 1] === right[0] && right.length > 1 ? kind.example : lineInWords(line, right);
        return impossible(`'${kind.words}' goes from ${kind.least} to ${kind.most}, and ${written} lies outside.`, wanted);
    }
    const [first = 0, second = first] = numbers;
    const set = kind.items(Math.min(first, second), Math.max(first, second), form);
    return set.total > 0 ? set : impossible(`There is no item in '${lineInWords(line)}': ${kind.none}. Write another number, as in '${kind.example}'.`, kind.example);
}

/** `fine`: every other line could be read, so that a number which none of them has is surely wrong. */
function readReturn(line: PracticeLine, index: number, read: ReadPractice, fine: boolean): void {
    const said = lineInWords(line);
    const problem = (message: string, mends: Mend[]): void => void read.problems.push({ message, at: line.at, mends: [...mends, { title: `Remove '${said}'`, at: line.at, remove: true }] });
    const fraction = line.numbers.find(number => !isWhole(number));
    if (fraction !== undefined) {
        return problem(`Practice is with whole numbers, and ${fraction} is none: write the number that comes back, as in 'return to 67'.`, [changeTo(line, lineInWords(line, line.numbers.map(number => Math.round(Number(number)))))]);
    }
    const numbers = line.numbers.map(Number);
    const found = read.lines.find(({ set }) => set.find(numbers) !== undefined);
    if (!found) {
        if (fine) problem(...notFound(line, numbers, read));
        return;
    }
    const item = found.set.at(found.set.find(numbers)!);
    if (read.returns.some(one => one.item.ask === item.ask)) return;
    if (read.lines.length === 1 && found.set.total <= read.returns.length + 1) {
        return problem(`Nothing is left to come between: '${lineInWords(found.line)}' has only ${found.set.total === 1 ? 'one item' : `${found.set.total} items`}, and what comes back never stands twice running. Practise more beside it.`, widened(found.line, numbers, 5).filter(mend => 'text' in mend && mend.text !== lineInWords(found.line)));
    }
    read.returns.push({ index, item });
}

function notFound(line: PracticeLine, numbers: readonly number[], { lines }: ReadPractice): [message: string, mends: Mend[]] {
    const said = lineInWords(line);
    const example = exampleFor(numbers);
    const add: Mend[] = example === undefined ? [] : [{ title: `Add '${example}'`, at: line.at, below: example }];
    const such = example ?? 'name numbers 11 to 99';
    if (lines.length === 0) return [`'${said}' needs something to come back between: write what else is practised, such as '${such}'.`, add];
    const two = numbers.length > 1;
    const fitting = lines.filter(other => takesPairs(other.line) === two);
    if (fitting.length === 0) {
        return two ? [`'${said}' comes back to two numbers, as in a sum, but no line of this practice asks for two. Add a line such as '${such}'.`, add]
            : [`'${said}' comes back to one number, but the lines of this practice ask for two. Write both, as in 'return to 7 and 8', or add a line such as '${such}'.`, add];
    }
    const listed = fitting.map(other => `'${lineInWords(other.line)}'`).join(' or ');
    const wider = fitting.flatMap(other => widened(other.line, numbers));
    return [`${numbers.join(' and ')} ${two ? 'are' : 'is'} not asked for in ${listed}, so ${two ? 'they' : 'it'} cannot come back. Return to what is practised, or practise more.`, wider.slice(0, 1)];
}

/** The range of a line made wide enough for these numbers, and wider still by `more`, where that helps. */
function widened(line: PracticeLine, numbers: readonly number[], more = 0): Mend[] {
    const found = kindOf(line);
    const [first, second] = numbers;
    if (!found || line.numbers.length < 2 || first === undefined) return [];
    const { kind, form } = found;
    const ends = [...line.numbers.map(Number), ...(second === undefined ? [first] : kind.ends?.(first, second) ?? [])];
    const from = Math.max(kind.least, Math.min(...ends));
    const to = Math.min(kind.most, Math.max(...ends) + more);
    const set = kind.items(from, to, form);
    return set.find(numbers) === undefined || set.total < 2 ? [] : [changeTo(line, lineInWords(line, [from, to]))];
}

const takesPairs = (line: PracticeLine): boolean => kindOf(line)?.kind.ends !== undefined;

/** A line that asks for these numbers among others; undefined where none can. */
function exampleFor([first = 0, second]: readonly number[]): string | undefined {
    const [words, from, to] = second === undefined ? ['name numbers', Math.min(first, 11), Math.max(first, 99)] : ['sums', 2, Math.max(first + second, 20)];
    const possible = to <= largestNumber && (second === undefined || (first > 0 && second > 0));
    return possible ? `${words} ${from} to ${to}` : undefined;
}

const isWhole = (number: string): boolean => /^\d+$/.test(number);

function changeTo({ at }: PracticeLine, text: string): Mend {
    return { title: `Change to '${text}'`, at, text };
}
