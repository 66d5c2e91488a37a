import { GrammarAST, isCompositeCstNode, isLeafCstNode, type AstNode, type CstNode, type LeafCstNode, type Reference } from 'langium';
import type * as ast from '../generated/ast.js';
import { mention, mentions, propertyRange, propertyRanges, rangeOf } from './ast-ranges.js';
import type { Ages, Amount, Caution, Declared, Held, Money, Need, Per, PictureLine, Prose, ProsePart, Range, Span, Step, WrittenDate } from './sheet.js';
import { nearest } from '../lexer/nearest.js';
import { titleFromName } from './titles.js';

/** Parts that several families of declarations share, from syntax nodes to plain data. */

export function declared(node: AstNode & { name: string; title?: string }, uri: string): Declared {
    const name = node.name ?? '';
    return { name, title: node.title?.trim() || titleFromName(name), uri, at: propertyRange(node, 'name'), whole: rangeOf(node) };
}

/** A word of the language as it was meant: one that the lexer read in spite of its spelling is still written as it was. */
export function keyword<W extends string>(written: W, words: readonly W[]): W {
    return words.includes(written) ? written : (nearest(written.toLowerCase(), words) as W | undefined) ?? written;
}

export function amount(node: ast.Amount | undefined): Amount | undefined {
    if (!node) return undefined;
    const value = [node.whole, node.fraction].filter(part => part !== undefined).join(' ');
    return { value, unit: unitWord(node.unit), at: rangeOf(node) };
}

/** The grammar keeps `fl oz` as its first word. */
export function unitWord(unit: string | undefined): string | undefined {
    return unit === 'fl' ? 'fl oz' : unit;
}

export function money(node: ast.Money | undefined): Money | undefined {
    return node && { value: node.value, currency: node.currency, at: rangeOf(node) };
}

export function span(node: ast.Days | undefined): Span | undefined {
    return node && { days: Number(node.count) * (keyword(node.unit, ['day', 'days', 'week', 'weeks']).startsWith('week') ? 7 : 1), ...(node.working ? { working: true } : {}), at: rangeOf(node) };
}

export function ages(node: ast.Ages | undefined): Ages | undefined {
    return node && { from: Number(node.from), to: node.to === undefined ? (node.andUp ? undefined : Number(node.from)) : Number(node.to), at: rangeOf(node) };
}

export function day(node: ast.Day | undefined): WrittenDate | undefined {
    return node && { date: node.date, at: rangeOf(node) };
}

/** A longer number is a slip of the hand, and sums of it would be no numbers. */
const mostCounted = 1_000_000_000;

export function count(text: string): number;
export function count(text: string | undefined): number | undefined;
export function count(text: string | undefined): number | undefined {
    return text === undefined ? undefined : Math.min(Number(text), mostCounted);
}

/** A node whose rule takes in the fragment Prose of the grammar. */
type ProseNode = AstNode & { texts: string[]; names: Reference[] };

/** Texts and names of a node in the order in which they stand. */
export function prose(node: ProseNode): Prose {
    const parts: ProsePart[] = [];
    const { texts, names } = node;
    let text = 0;
    let name = 0;
    let start: Range['start'] | undefined;
    let end: Range['end'] | undefined;
    let last: { text: string; starts: Range['start'][] } | undefined;
    const addText = (words: string, at: Range['start'], newLine: boolean): void => {
        if (!last) parts.push((last = { text: newLine ? `\n${words}` : words, starts: newLine ? [at, at] : [at] }));
        else if (newLine) {
            last.text += `\n${words}`;
            last.starts.push(at);
        } else last.text += words;
    };
    let afterName = false;
    for (const leaf of ownLeaves(node)) {
        const kind = leaf.tokenType.name;
        if (kind === 'TEXT') {
            const at = leaf.range;
            addText(texts[text++]!, at.start, end !== undefined && at.start.line > end.line);
            start ??= at.start;
            end = at.end;
        } else if (kind === 'NAME' && isNameInProse(leaf)) {
            const at = leaf.range;
            if (end !== undefined && at.start.line > end.line) addText('', at.start, true);
            parts.push({ name: names[name++]!.$refText, at });
            last = undefined;
            start ??= at.start;
            end = at.end;
            afterName = true;
            continue;
        } else if (kind === '}' && afterName) {
            end = leaf.range.end;
        }
        afterName = false;
    }
    // A list that grew item by item keeps room for 16 more; there are as many of these as statements.
    return { parts: parts.slice(), at: start && end ? { start, end } : rangeOf(node) };
}

function ownLeaves(node: AstNode): LeafCstNode[] {
    const leaves: LeafCstNode[] = [];
    if (node.$cstNode) addOwnLeaves(node.$cstNode, node, leaves);
    return leaves;
}

/** A rule that only chooses between others wraps the node in one more layer. */
function addOwnLeaves(cst: CstNode, node: AstNode, leaves: LeafCstNode[]): void {
    if (!isCompositeCstNode(cst)) return;
    for (const child of cst.content) {
        if (isCompositeCstNode(child)) {
            if (child.astNode === node) addOwnLeaves(child, node, leaves);
        } else if (isLeafCstNode(child) && !child.hidden) leaves.push(child);
    }
}

/** The grammar calls the names in braces `names`. */
function isNameInProse({ grammarSource }: LeafCstNode): boolean {
    const assignment = grammarSource?.$container;
    return GrammarAST.isAssignment(assignment) && assignment.feature === 'names';
}

const stepWords: readonly ast.Step['word'][] = ['about', 'why', 'do', 'say', 'instead', 'more', 'note', 'ready', 'ask', 'watch', 'expect', 'help', 'show'];

export function step(node: ast.Step): Step {
    const word = keyword(node.word, stepWords);
    if (word === 'show') return { word, prose: { parts: [], at: rangeOf(node) }, show: pictureLine(node), under: [], at: rangeOf(node) };
    return { word: word === 'ready' ? 'ready when' : word, prose: prose(node), under: node.under.map(step), at: rangeOf(node) };
}

function pictureLine(node: ast.Step): PictureLine {
    const places = propertyRanges(node, 'settings');
    return {
        picture: { name: node.picture ?? '', at: propertyRange(node, 'picture') },
        settings: node.settings.map((text, index) => ({ text, at: places[index] ?? rangeOf(node) })),
        title: node.title
    };
}

/** Those that say what can hurt; a bare `caution` is told where it stands. */
export function cautions(nodes: readonly ast.Caution[]): Caution[] {
    return nodes.filter(({ kind }) => kind).map(caution);
}

function caution(node: ast.Caution): Caution {
    return { kind: node.kind, kindAt: propertyRange(node, 'kind'), prose: node.hasProse ? prose(node) : undefined, at: rangeOf(node) };
}

export function need(node: ast.Need): Need {
    const per = node.per;
    return {
        options: node.options.map(option => ({ thing: mention(option.thing), parts: mentions(option.parts), at: rangeOf(option) })).filter(option => option.thing.name !== ''),
        amount: amount(node.amount),
        per: per && perWhom(per),
        inKit: node.inKit ? true : node.notInKit ? false : undefined,
        flagAt: node.inKit ? flagRange(node, 'inKit') : node.notInKit ? flagRange(node, 'notInKit') : undefined,
        optional: node.optional,
        at: rangeOf(node)
    };
}

function perWhom(per: ast.Per): Per {
    const who = keyword(per.who, ['learner', 'pair', 'class', 'adult', 'group']);
    return who === 'group' ? { who, size: count(per.size) } : { who };
}

/** From the flag's first word to the word `kit`. */
function flagRange(node: ast.Need, property: 'inKit' | 'notInKit'): Need['flagAt'] {
    const { start } = propertyRange(node, property);
    const words = property === 'inKit' ? /^in\s+kit/ : /^not\s+in\s+kit/;
    const offset = start.character - rangeOf(node).start.character;
    const length = words.exec((node.$cstNode?.text ?? '').slice(offset))?.[0].length ?? 0;
    return { start, end: { line: start.line, character: start.character + length } };
}

export function held(node: ast.Held): Held {
    return { thing: mention(node.thing), amount: amount(node.amount), arriving: day(node.arriving), at: rangeOf(node) };
}

export function notes(steps: readonly ast.Step[]): Prose[] {
    return steps.map(prose);
}
