import type { LangiumDocument } from 'langium';
import type { SignatureHelpProvider } from 'langium/lsp';
import { MarkupKind, SignatureHelpTriggerKind, type ParameterInformation, type SignatureHelp, type SignatureHelpParams } from 'vscode-languageserver-protocol';
import { measureNamed } from '@haversack/language/checks/amounts-in';
import type { LinePart } from '@haversack/language/facts/line-parts';
import { statementAt } from '@haversack/language/facts/statements';
import { fitLine, type Fit } from '@haversack/language/lexer/fit-line';
import { headOf } from '@haversack/language/lexer/messages';
import { contextOfLine } from '@haversack/language/lexer/read-lines';
import { isComment } from '@haversack/language/lexer/scan';
import { pictureKind } from '@haversack/language/pictures/read-picture';
import type { HaversackServerServices } from '../workspace/services.js';
import { alongParts, nextPart, partOf, type Progress } from './line-words.js';

const between = ' · ';

/** Of a longer word its end tells as much. */
const longestWord = 80;

/** While a line with a fixed order is written: how the whole line reads, and what stands where the cursor is. */
export class HaversackSignatureHelp implements SignatureHelpProvider {
    readonly signatureHelpOptions = { triggerCharacters: [' ', '(', ','], retriggerCharacters: [')', '.'] };

    constructor(private readonly services: HaversackServerServices) {}

    provideSignatureHelp(document: LangiumDocument, { position, context }: SignatureHelpParams): SignatureHelp | undefined {
        const offset = document.textDocument.offsetAt(position);
        const text = document.textDocument.getText().slice(0, offset);
        const read = contextOfLine(text, position.line, this.services.parser.Lexer.automaton);
        const spot = read?.spots[0];
        if (!read || !spot || (read.continuesProse && !spot.opens)) return undefined;
        const { line } = read;
        // Blanks that step in are no question, nor is a line that Enter has just begun: the help would lie over the lines above.
        if (offset <= line.content && context !== undefined && context.triggerKind !== SignatureHelpTriggerKind.Invoked) return undefined;
        const fit = fitLine(text, line, line.content, spot.state);
        if (fit.prose || isRemark(text, fit, line.content)) return undefined;
        const head = headOf(spot.head, fit.tokens);
        const statement = statementAt(spot.head, head === 'game in a lesson' ? 'game' : head);
        if (!statement?.parts) return undefined;
        const words = statement.head === '' ? 0 : statement.head.split(' ').length;
        if (fit.tokens.length < words || (words > 0 && endOf(fit, words - 1) === offset)) return undefined;
        const active = this.activePart(document, text, fit, words, statement.parts);
        return active === undefined ? undefined : {
            signatures: [{ ...labelled(statement.head, statement.parts, this.services.client.takesLabelOffsets, saysOf(fit)), documentation: { kind: MarkupKind.Markdown, value: `\`${statement.example}\`` } }],
            activeSignature: 0, activeParameter: active
        };
    }

    /** The part of the word that the cursor stands at, or the one that comes next. */
    private activePart(document: LangiumDocument, text: string, fit: Fit, words: number, parts: readonly LinePart[]): number | undefined {
        const { tokens, start } = fit;
        const last = tokens.at(-1);
        const typing = /[\p{L}\p{N}-]+$/u.exec(text.slice(-longestWord))?.[0] ?? '';
        if (typing === '') {
            const progress = alongParts(start, tokens, words, parts);
            return this.mayHaveUnit(document, progress, fit) ? progress.part : nextPart(progress, parts);
        }
        const before = alongParts(start, fit.stopped || !last ? tokens : tokens.slice(0, -1), words, parts);
        const begun = before.state.edges.filter(({ symbol }) => /^[a-z]/.test(symbol) && symbol.startsWith(typing));
        return partOf(begun, before.part, parts) ?? (fit.stopped ? nextPart(before, parts) : alongParts(start, tokens, words, parts).part);
    }

    /** Behind the number of an amount: a unit may still come, where the thing is not counted in pieces. */
    private mayHaveUnit(document: LangiumDocument, { state }: Progress, { tokens }: Fit): boolean {
        if (!state.edges.some(({ rule, assignment }) => rule.name === 'Amount' && assignment?.feature === 'unit')) return false;
        const thing = tokens.find(({ symbol }) => symbol === 'NAME')?.text;
        const measured = thing === undefined ? undefined : measureNamed(thing, this.services.sheets.viewOf(document.uri));
        return measured !== undefined && measured.measure !== 'pieces';
    }
}

/** "material (parts) · amount · per whom", with the place of each part in it. */
function labelled(head: string, parts: readonly LinePart[], offsets: boolean, says: (part: LinePart) => string): { label: string; parameters: ParameterInformation[] } {
    let label = head === '' ? '' : `${head} `;
    const parameters = parts.map((part, index): ParameterInformation => {
        if (index > 0) label += between;
        const start = label.length;
        label += part.shows;
        return { label: offsets ? [start, label.length] : part.shows, documentation: { kind: MarkupKind.Markdown, value: says(part) } };
    });
    return { label, parameters };
}

/** What may stand in a picture depends on its kind. */
function saysOf({ tokens }: Fit): (part: LinePart) => string {
    const kind = tokens[0]?.symbol === 'show' && tokens[1] ? pictureKind(tokens[1].text) : undefined;
    return part => (kind && part.takes.includes('settings') ? kind.settings : part.says);
}

function endOf({ tokens }: Fit, index: number): number | undefined {
    const token = tokens[index];
    return token && token.start + token.text.length;
}

/** True where a remark has begun before the cursor. */
function isRemark(text: string, { tokens, at }: Fit, content: number): boolean {
    const from = tokens.length === 0 ? content : at;
    for (let index = from; index < text.length; index++) if (isComment(text, index)) return true;
    return false;
}
