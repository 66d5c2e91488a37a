import { GrammarAST, type LangiumDocument } from 'langium';
import type { CompletionProvider } from 'langium/lsp';
import { CompletionItemKind, CompletionTriggerKind, InsertTextFormat, type CompletionItem, type CompletionList, type CompletionParams } from 'vscode-languageserver-protocol';
import { measureNamed } from '@haversack/language/checks/amounts-in';
import { declarationsOf, type ProgrammeView } from '@haversack/language/checks/programme-view';
import { cautionKinds } from '@haversack/language/facts/cautions';
import { statementsIn, type Statement } from '@haversack/language/facts/statements';
import { units, type Unit } from '@haversack/language/facts/units';
import type { Edge, GrammarState } from '@haversack/language/lexer/automaton';
import { fitLine, type DraftToken } from '@haversack/language/lexer/fit-line';
import type { Spot } from '@haversack/language/lexer/open-blocks';
import { contextOfLine, type LineContext } from '@haversack/language/lexer/read-lines';
import { usualStep } from '@haversack/language/lexer/indentation';
import { isComment, linesOf } from '@haversack/language/lexer/scan';
import type { AdaptationSheet, Declared, FileSheet, LessonSheet } from '@haversack/language/sheets/sheet';
import { adaptingOf } from '../planning/cache.js';
import type { HaversackServerServices } from '../workspace/services.js';
import { addedNeeds } from './added-needs.js';
import { AdaptationCandidates, type ChangeLine } from './adaptation-candidates.js';
import { blockSnippets } from './block-snippets.js';
import { changeSnippet } from './change-snippets.js';
import { candidatesFor, lessonAt, type Candidate } from './candidates.js';
import type { OfferedName } from './completion-resolve.js';
import { completeShowLine } from './show-lines.js';
import { practiceLineItems } from './practice-completion.js';

/** A list longer than this helps nobody and takes long to send. */
const mostItems = 300;
const noItems: CompletionList = { isIncomplete: false, items: [] };
/** How many characters a block may stand to the right. */
const deepestBlock = 200;
/** Nobody types a longer name; in a longer word nothing is looked for. */
const longestWord = 400;

/** The first of the two words of the one unit that is no single word; it is offered whole, among the units. */
const fluid = 'fl';

/** Completes whatever the grammar allows at the cursor: it asks the same automaton that reads the file. */
export class HaversackCompletion implements CompletionProvider {
    readonly completionOptions = { triggerCharacters: ['{', ' ', '(', '.'] };

    constructor(private readonly services: HaversackServerServices) {}

    getCompletion(document: LangiumDocument, params: CompletionParams): CompletionList {
        const text = document.textDocument.getText();
        const offset = document.textDocument.offsetAt(params.position);
        const context = contextOfLine(text, params.position.line, this.services.parser.Lexer.automaton);
        const typed = /[\p{L}\p{N}-]*$/u.exec(text.slice(Math.max(0, offset - 80), offset))![0];
        const { isIncomplete, items } = context ? this.listAt(document, text, offset, context, typed) : noItems;
        // What a blank or a brace opened is asked for anew with the first letter: until then VS Code chooses nothing, so that Enter behind a blank begins a line.
        return { isIncomplete: isIncomplete || params.context?.triggerKind === CompletionTriggerKind.TriggerCharacter, items };
    }

    /** `letters` are those of the word that is being typed. */
    private listAt(document: LangiumDocument, text: string, offset: number, context: LineContext, letters: string): CompletionList {
        const { line } = context;
        // A remark is nobody's to complete.
        if (offset > line.content && isComment(text, line.content)) return noItems;
        const typed = text.slice(line.content, offset);
        const sheet = this.services.sheets.sheetOf(document);
        const adaptation = adaptationAt(sheet, line.number);
        const lesson = adaptation ? this.lessonOfChange(adaptation, line.number) : lessonAt(sheet.lessons, line.number);
        const brace = /\{([\p{L}\p{N}-]*)$/u.exec(typed);
        if (brace && (brace.index === 0 || typed[brace.index - 1] !== '\\')) return this.inBraces(text, offset, brace[1]!, letters, lesson, document);
        const word = /[\p{L}\p{N}-]*$/u.exec(typed.slice(-longestWord))![0];
        const before = line.content + typed.length - word.length;
        const items: CompletionItem[] = [];
        // What stands after the cursor must not reach back into the words before it: "travel-2.lon" is one word only when read whole.
        const left = text.slice(0, before);
        for (const spot of spotsToComplete(context)) {
            const fit = fitLine(left, { ...line, end: before }, line.content, spot.state);
            if (fit.prose || fit.stopped || behindRemark(text, fit.at, before)) continue;
            const change = adaptation && spot.head === 'adaptation' ? { adaptation, line: line.number, tokens: fit.tokens } : undefined;
            if (fit.tokens.length === 0) items.push(...this.heads(spot, change), ...this.wholeBlocks(spot, context, text, offset, lesson, document));
            for (const item of this.nextItems(fit.state, fit.tokens, lesson, document, line.number, change)) items.push(item);
            items.push(...practiceLineItems(spot.head, fit.tokens));
        }
        return mostUseful(unique(items), ({ label }) => label, ({ sortText, label }) => sortText ?? label, letters);
    }

    /** Names for prose. What is not among the materials yet comes with the line that puts it there. */
    private inBraces(text: string, offset: number, typed: string, letters: string, lesson: LessonSheet | undefined, document: LangiumDocument): CompletionList {
        const rest = /^[\p{L}\p{N}-]*\}?/u.exec(text.slice(offset, offset + 80))![0];
        const range = { start: document.textDocument.positionAt(offset - typed.length), end: document.textDocument.positionAt(offset + rest.length) };
        const view = this.viewOf(document);
        const added = addedNeeds(this.services.sheets.sheetOf(document), text, range.start.line, view);
        // Chosen among as bare names: whole items of thousands of them take longer to make than to send.
        const { isIncomplete, items } = mostUseful(candidatesFor('Nameable', view, lesson, undefined), nameOf, sortTextOf, letters);
        return {
            isIncomplete,
            items: items.map(candidate => {
                const item = nameItem(candidate, lesson);
                const need = added(candidate.name);
                return {
                    ...item, insertText: undefined, filterText: candidate.name, textEdit: { range, newText: `${candidate.name}}` },
                    ...(need && { detail: `${item.detail}; adds “${need.line}” to the materials`, additionalTextEdits: [need.edit] })
                };
            })
        };
    }

    private heads(spot: Spot, change: ChangeLine | undefined): CompletionItem[] {
        const items = statementsIn(spot.head).filter(statement => statement.head !== '' && spot.state.accepts(statement.head.split(' ')[0]!)).map(headItem);
        if (!change || !this.services.client.takesSnippets) return items;
        const lessons = this.candidatesOf(change).stillTaught(change);
        return items.map(item => {
            const snippet = changeSnippet(item.label, lessons);
            return snippet === undefined ? item : { ...item, insertText: snippet, insertTextFormat: InsertTextFormat.Snippet };
        });
    }

    /** At the end of a line that says nothing else. */
    private wholeBlocks({ head, state }: Spot, { line }: LineContext, text: string, offset: number, lesson: LessonSheet | undefined, document: LangiumDocument): CompletionItem[] {
        if (text.slice(offset, line.end).trim() !== '') return [];
        const indent = text.slice(line.start, line.content).replace('\uFEFF', '');
        const step = stepOf(text, indent);
        // Each line of each block begins with it: nobody writes as far to the right.
        if (indent.length + step.length > deepestBlock) return [];
        return blockSnippets(head, word => state.accepts(word), {
            view: this.viewOf(document), lesson, today: this.services.today.date, takesSnippets: this.services.client.takesSnippets, indent, step
        });
    }

    /** In what is added to a lesson its own things come first. */
    private lessonOfChange({ changes, uri }: AdaptationSheet, line: number): LessonSheet | undefined {
        const change = changes.filter(({ head }) => head.start.line < line).at(-1);
        const lesson = change && (change.does === 'add to lesson' ? change.lesson : change.does === 'add to activity' ? change.activity.lesson : undefined);
        return lesson && this.services.sheets.viewOf(uri).programme.lessons.get(lesson.name);
    }

    private candidatesOf({ adaptation: { uri } }: ChangeLine): AdaptationCandidates {
        return new AdaptationCandidates(this.services.sheets.viewOf(uri), adaptingOf(this.services.plans.of(uri).cache));
    }

    private viewOf({ uri }: LangiumDocument): ProgrammeView {
        return this.services.sheets.viewOf(uri);
    }

    /** Units and words that an amount of a thing may have: of its own kind alone, and all where the thing is not known yet. */
    private unitsOf(name: string | undefined, document: LangiumDocument): CompletionItem[] {
        const measured = name === undefined ? undefined : measureNamed(name, this.viewOf(document));
        if (!measured) return unitItems(() => true);
        const { measure } = measured;
        if (measure === 'pieces') return [];
        if ('one' in measure) return [...new Set([measure.one, measure.many])].map(word => valueItem(word, `counted word of ${name}`));
        return unitItems(({ dimension }) => dimension === measure.unit.dimension, measure.unit);
    }

    /** What may come after the words that stand already. */
    private nextItems(
        state: GrammarState, tokens: readonly DraftToken[], lesson: LessonSheet | undefined, document: LangiumDocument, line: number, change: ChangeLine | undefined
    ): CompletionItem[] {
        if (tokens[0]?.symbol === 'show') return completeShowLine(tokens.slice(1).map(token => token.text), this.services.client.showsPictures);
        const items: CompletionItem[] = [];
        const thing = tokens.find(token => token.symbol === 'NAME')?.text;
        for (const [index, edge] of state.edges.entries()) {
            if (/^[a-z]/.test(edge.symbol)) {
                if (tokens.length > 0 && edge.symbol !== fluid) items.push(keywordItem(state, edge, index));
            } else if (GrammarAST.isCrossReference(edge.element)) {
                const type = edge.element.type.$refText;
                const own = change && this.candidatesOf(change).of(type, edge.assignment?.feature, change);
                // One by one: there may be more names than a call takes arguments.
                for (const candidate of own ?? candidatesFor(type, this.viewOf(document), lesson, thing)) items.push(nameItem(candidate, lesson));
            } else {
                items.push(...this.valueItems(edge, thing, document, line));
            }
        }
        return items;
    }

    private valueItems(edge: Edge, thing: string | undefined, document: LangiumDocument, line: number): CompletionItem[] {
        const feature = edge.assignment?.feature;
        if (edge.symbol === 'NAME' && feature === 'measured') return unitItems(() => true);
        if (edge.symbol === 'NAME' && feature === 'unit') {
            if (edge.rule.name === 'Size') return unitItems(unit => unit.dimension === 'length');
            const around = this.services.sheets.sheetOf(document).materials.find(({ whole }) => whole.start.line < line && line <= whole.end.line);
            return this.unitsOf(thing ?? around?.name, document);
        }
        if (edge.symbol === 'NAME' && edge.rule.name === 'Present') return [valueItem('under-threes', 'children under three are in the room')];
        if (edge.symbol === 'NAME' && feature === 'kind') return cautionKinds.map(caution => valueItem(caution.kind, caution.title, caution.text));
        if (edge.symbol === 'NAME' && feature === 'strand') {
            const strands = new Set([...this.viewOf(document).programme.objectives.values()].flatMap(objective => objective.strand ?? []));
            return [...strands].map(strand => valueItem(strand, 'strand'));
        }
        if (edge.symbol === 'CODE' && feature === 'currency') {
            const currencies = new Set([...this.services.sheets.sheetOf(document).materials, ...this.viewOf(document).programme.materials.values()]
                .flatMap(material => material.packs.flatMap(pack => pack.cost?.currency ?? [])));
            return [...currencies].map(currency => valueItem(currency, 'currency'));
        }
        return [];
    }
}

/** One level further in, as the file has it. */
function stepOf(text: string, indent: string): string {
    if (indent.includes('\t')) return '\t';
    const lines = linesOf(text);
    return lines.some(({ start, content }) => text.slice(start, content).includes('\t')) ? '\t' : ' '.repeat(usualStep(lines));
}

function unitItems(fits: (unit: Unit) => boolean, first?: Unit): CompletionItem[] {
    return units.filter(fits).map(unit => ({ ...valueItem(unit.symbol, unit.title), ...(unit === first && { sortText: '0' }) }));
}

/** True where a remark stands between the words read and the cursor. */
function behindRemark(text: string, from: number, to: number): boolean {
    for (let at = from; at < to; at++) if (isComment(text, at)) return true;
    return false;
}

/** Leaves out what has not the typed letters in their order, and of a very long list all but the first; the editor asks again. */
function mostUseful<T>(all: readonly T[], labelOf: (one: T) => string, sortTextOf: (one: T) => string, typed: string): { isIncomplete: boolean; items: T[] } {
    const letters = [...typed.toLowerCase()];
    const fitting = all.filter(one => {
        const label = labelOf(one);
        let at = -1;
        return letters.every(letter => (at = label.indexOf(letter, at + 1)) >= 0);
    });
    if (fitting.length <= mostItems) return { isIncomplete: false, items: fitting };
    const sorted = fitting.map(one => ({ one, by: sortTextOf(one) })).sort((a, b) => (a.by < b.by ? -1 : 1));
    return { isIncomplete: true, items: sorted.slice(0, mostItems).map(({ one }) => one) };
}

/** The spot that the indentation says; where prose goes on, only statements that may stand under it. */
function spotsToComplete({ spots, continuesProse }: LineContext): Spot[] {
    return spots.slice(0, 1).filter(spot => !continuesProse || spot.opens);
}

/** The adaptation around a line: the last declaration above it. */
function adaptationAt(sheet: FileSheet, line: number): AdaptationSheet | undefined {
    const above = declarationsOf(sheet).filter(({ whole }) => whole.start.line < line);
    const last = above.reduce<Declared | undefined>((found, one) => (!found || one.whole.start.line > found.whole.start.line ? one : found), undefined);
    return sheet.adaptations.find(adaptation => adaptation === last);
}

function headItem(statement: Statement, index: number): CompletionItem {
    const colon = statement.example.startsWith(`${statement.head}:`);
    const alone = statement.example === statement.head;
    return {
        label: statement.head,
        kind: CompletionItemKind.Keyword,
        detail: statement.example,
        documentation: statement.says,
        insertText: statement.head + (colon ? ': ' : alone ? '' : ' '),
        insertTextFormat: InsertTextFormat.PlainText,
        sortText: `2${String(index).padStart(3, '0')}`
    };
}

/** A keyword with those that must follow it, such as `in kit`, in the order in which the grammar names them. */
function keywordItem(state: GrammarState, edge: Edge, index: number): CompletionItem {
    let words = edge.symbol;
    let next = state.after(edge);
    while (next && next.edges.length > 0 && next.edges.every(edge => edge.symbol === next!.edges[0]!.symbol) && /^[a-z]/.test(next.edges[0]!.symbol)) {
        words += ` ${next.edges[0]!.symbol}`;
        next = next.move(next.edges[0]!.symbol);
    }
    return {
        label: words, kind: CompletionItemKind.Keyword, sortText: `3${String(index).padStart(3, '0')}`, ...(next?.accepts(':') && { insertText: `${words}: ` })
    };
}

const nameOf = ({ name }: Candidate): string => name;

const sortTextOf = ({ name, rank, order }: Candidate): string => `${rank}${order === undefined ? '' : String(order).padStart(5, '0')}${name}`;

function nameItem(candidate: Candidate, lesson: LessonSheet | undefined): CompletionItem {
    const { name, title, detail, kind, declared } = candidate;
    return {
        label: name, kind, detail, documentation: title, insertText: name, sortText: sortTextOf(candidate), labelDetails: { description: title },
        ...(declared && { data: { ...declared, lesson: lesson?.name } satisfies OfferedName })
    };
}

function valueItem(label: string, detail: string, documentation?: string): CompletionItem {
    return { label, kind: CompletionItemKind.Unit, detail, documentation, sortText: `1${label}` };
}

function unique(items: CompletionItem[]): CompletionItem[] {
    const seen = new Set<string>();
    return items.filter(item => {
        const key = `${item.label} ${item.kind}`;
        return !seen.has(key) && seen.add(key);
    });
}
