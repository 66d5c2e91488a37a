/**
 * A writer's prose as a small tree: what CommonMark's inline notation says, without HTML, images or unsafe links.
 * HTML and Markdown are both written from this tree, so nothing in a text can become an element by itself.
 */
import MarkdownIt, { type Token } from 'markdown-it';
import { isSafeAddress } from '../markdown/link-address.js';
import type { Prose } from '../planning/figures.js';

export type ProseInline =
    | { kind: 'text'; text: string }
    /** `ending` is what a writer put right behind the braces: the s of {paper-cup}s. */
    | { kind: 'name'; name: string; begins?: true; marked?: true; ending?: string }
    | { kind: 'code'; text: string }
    | { kind: 'break' }
    | { kind: 'em' | 'strong'; inside: ProseInline[] }
    | { kind: 'link'; href: string; inside: ProseInline[] };

export type ProseBlock =
    | { kind: 'paragraph'; inside: ProseInline[] }
    | { kind: 'list'; ordered: boolean; start: number; items: ProseBlock[][] };

/** Quotation marks and emphasis right before a name. */
const setApart = /["“‘«„*_]$/;
/** Characters before a name that can tell whether it begins a sentence. */
const lookBack = 80;
/** Emphasis inside emphasis deeper than this stays the text it is, or a line of asterisks would exhaust whoever walks the tree. */
const deepest = 16;
const listLine = /^[ \t]*(?:[-*+]|\d{1,9}[.)])[ \t]+\S/gm;
const firstPrivateUse = 0xe000;
const lastPrivateUse = 0xf8ff;

const markdown = new MarkdownIt('zero', { html: false })
    .enable(['escape', 'backticks', 'emphasis', 'link', 'autolink', 'entity', 'newline', 'list']);
markdown.validateLink = address => isSafeAddress(address) && !privateUse.test(decoded(address));

const privateUse = /[\ue000-\uf8ff]/;

function decoded(address: string): string {
    try {
        return decodeURIComponent(address);
    } catch {
        return address;
    }
}

/**
 * Reads prose. A name in braces travels through the Markdown parser as a private-use character, its number and the
 * character again: the parser takes it for a word, so emphasis around a name works.
 */
export function readProse(prose: Prose): ProseBlock[] {
    const mark = unusedMark(prose);
    const names: NamePiece[] = [];
    const pieces: string[] = [];
    const before = new Before();
    for (const part of prose.parts) {
        let piece: string;
        if ('text' in part) piece = part.text;
        else {
            const name: NamePiece = { kind: 'name', name: part.name };
            if (beginsSentence(before)) name.begins = true;
            if (setApart.test(before.end)) name.marked = true;
            piece = `${mark}${names.push(name) - 1}${mark}`;
        }
        pieces.push(piece);
        before.add(piece);
    }
    const text = pieces.join('').trim();
    const reading: Reading = { names, mark };
    if (!needsBlocks(text)) {
        const inside = inlines(markdown.parseInline(text, {})[0]?.children ?? [], reading);
        return inside.length ? [{ kind: 'paragraph', inside }] : [];
    }
    return blocks(markdown.parse(text, {}), reading);
}

type NamePiece = ProseInline & { kind: 'name' };

interface Reading {
    names: NamePiece[];
    mark: string;
}

/** What stands before a name. Only its end is kept, or a text of many names would be copied and searched anew for each. */
class Before {
    end = '';
    length = 0;
    blank = true;

    add(piece: string): void {
        this.end = (this.end + piece.slice(-lookBack)).slice(-lookBack);
        this.length += piece.length;
        this.blank &&= piece.trim() === '';
    }
}

/**
 * Whether what follows this text begins a sentence: at the very start, in a new paragraph or list item, or behind a full stop, question or
 * exclamation mark. The stop of "e.g." or "p.m." ends none. A sentence in quotation marks begins behind a comma or colon too.
 */
function beginsSentence(before: Before): boolean {
    const text = before.end.replace(/[*_([]+$/, '').replace(/(^|\s)["“‘]$/, '$1');
    const quoted = text.length < before.end.length && /["“]$/.test(before.end);
    if (text.trim() === '') return before.length <= lookBack || before.blank;
    if (/\n[ \t]*\n\s*$/.test(text) || /(?:^|\n)[ \t]*(?:[-*+]|\d{1,9}[.)])[ \t]+$/.test(text)) return true;
    if (quoted && /[,:]\s+$/.test(text)) return true;
    return /[.!?…]["'”’)*_]*\s+$/.test(text) && !/(?:^|[^\p{L}\p{Co}])\p{L}\.\s+$/u.test(text);
}

/** An answer such as "12." must not turn into an empty numbered list: only real lists and paragraphs count as blocks. */
function needsBlocks(text: string): boolean {
    return /\n[ \t]*\n/.test(text) || (text.match(listLine)?.length ?? 0) > 1;
}

function unusedMark(prose: Prose): string {
    const text = prose.parts.map(part => ('text' in part ? part.text : '')).join('');
    for (let code = firstPrivateUse; code <= lastPrivateUse; code++) {
        const mark = String.fromCharCode(code);
        if (!text.includes(mark)) return mark;
    }
    return '\ufdd0';
}

function blocks(tokens: Token[], reading: Reading): ProseBlock[] {
    const root: ProseBlock[] = [];
    const open: ProseBlock[][] = [root];
    const lists: { items: ProseBlock[][] }[] = [];
    for (const token of tokens) {
        const here = open[open.length - 1] ?? root;
        switch (token.type) {
            case 'inline': {
                const inside = inlines(token.children ?? [], reading);
                if (inside.length) here.push({ kind: 'paragraph', inside });
                break;
            }
            case 'bullet_list_open':
            case 'ordered_list_open': {
                const ordered = token.type === 'ordered_list_open';
                const list = { kind: 'list' as const, ordered, start: Number(token.attrGet('start') ?? 1), items: [] };
                here.push(list);
                lists.push(list);
                break;
            }
            case 'bullet_list_close':
            case 'ordered_list_close':
                lists.pop();
                break;
            case 'list_item_open': {
                const item: ProseBlock[] = [];
                lists[lists.length - 1]?.items.push(item);
                open.push(item);
                break;
            }
            case 'list_item_close':
                open.pop();
                break;
        }
    }
    return root;
}

function inlines(tokens: Token[], reading: Reading): ProseInline[] {
    const root: ProseInline[] = [];
    const open: ProseInline[][] = [root];
    const emptyLinks: boolean[] = [];
    for (const token of tokens) {
        const here = open[open.length - 1] ?? root;
        switch (token.type) {
            case 'em_open':
            case 'strong_open': {
                if (open.length > deepest) {
                    here.push({ kind: 'text', text: token.markup });
                    open.push(here);
                    break;
                }
                const inside: ProseInline[] = [];
                here.push({ kind: token.type === 'em_open' ? 'em' : 'strong', inside });
                open.push(inside);
                break;
            }
            case 'link_open': {
                const href = String(token.attrGet('href') ?? '');
                const inside: ProseInline[] = [];
                // markdown-it does not ask about an empty address: such brackets stay the text they are.
                if (href) here.push({ kind: 'link', href, inside });
                else here.push({ kind: 'text', text: '[' });
                open.push(href ? inside : here);
                emptyLinks.push(!href);
                break;
            }
            case 'link_close':
                if (emptyLinks.pop()) here.push({ kind: 'text', text: ']()' });
                open.pop();
                break;
            case 'em_close':
            case 'strong_close':
                if (open.pop() === open[open.length - 1]) here.push({ kind: 'text', text: token.markup });
                break;
            case 'hardbreak':
                here.push({ kind: 'break' });
                break;
            case 'softbreak':
                here.push({ kind: 'text', text: '\n' });
                break;
            case 'code_inline':
                here.push({ kind: 'code', text: withoutMarks(token.content, reading) });
                break;
            default:
                for (const piece of textAndNames(token.content, reading)) here.push(piece);
        }
    }
    return root;
}

function textAndNames(text: string, { names, mark }: Reading): ProseInline[] {
    let ending = '';
    return text.split(mark).flatMap((piece, index, pieces): ProseInline[] => {
        const name = index % 2 === 1 ? names[Number(piece)] : undefined;
        if (name !== undefined) {
            ending = /^\p{L}*/u.exec(pieces[index + 1] ?? '')?.[0] ?? '';
            return [ending ? { ...name, ending } : name];
        }
        const rest = piece.slice(ending.length);
        ending = '';
        return rest ? [{ kind: 'text', text: rest }] : [];
    });
}

/** Inside code a name stays as it was written. */
function withoutMarks(text: string, { names, mark }: Reading): string {
    return text.split(mark).map((piece, index) => (index % 2 === 1 ? `{${names[Number(piece)]?.name ?? piece}}` : piece)).join('');
}
