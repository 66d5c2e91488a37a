import { AstUtils, CstUtils, GrammarAST, type AstNode, type LangiumDocument } from 'langium';
import type { HoverProvider } from 'langium/lsp';
import { MarkupKind, type Hover, type HoverParams } from 'vscode-languageserver-protocol';
import { statementAt } from '@haversack/language/facts/statements';
import * as ast from '@haversack/language/generated/ast';
import { headOf } from '@haversack/language/lexer/messages';
import { fitLine } from '@haversack/language/lexer/fit-line';
import { contextOfLine } from '@haversack/language/lexer/read-lines';
import type { HaversackServerServices } from '../workspace/services.js';
import { describeChange } from './describe-change.js';
import { describe, describeCalendar } from './describe.js';
import { describePicture } from './show-lines.js';
import { practiceHover } from './practice-hover.js';

/** Tells what a name stands for, with computed facts, and what a word of the language means. */
export class HaversackHover implements HoverProvider {
    constructor(private readonly services: HaversackServerServices) {}

    getHoverContent(document: LangiumDocument, params: HoverParams): Hover | undefined {
        const offset = document.textDocument.offsetAt(params.position);
        const root = document.parseResult.value.$cstNode;
        const leaf = root && CstUtils.findLeafNodeAtOffset(root, offset);
        if (!leaf) return undefined;
        const value = ast.isStep(leaf.astNode) && leaf.astNode.word === 'show' ? describePicture(document, params.position.line, this.services)
            : GrammarAST.isKeyword(leaf.grammarSource)
            ? this.aboutKeyword(document, params.position.line, leaf.offset)
            : ast.isDayOff(leaf.astNode) && leaf.tokenType.name === 'STRING' ? describeCalendar(leaf.astNode, this.services)
                : this.aboutName(document, leaf.astNode, offset);
        const practised = ast.isPractice(leaf.astNode) || ast.isPracticeLine(leaf.astNode) ? practiceHover(this.services.sheets.sheetOf(document), params.position.line) : undefined;
        if (practised !== undefined) return { contents: { kind: MarkupKind.Markdown, value: [value, practised].filter(Boolean).join('\n\n') }, range: leaf.range };
        return value ? { contents: { kind: MarkupKind.Markdown, value }, range: leaf.range } : undefined;
    }

    private aboutName(document: LangiumDocument, node: AstNode, offset: number): string | undefined {
        const root = document.parseResult.value.$cstNode!;
        const leaf = CstUtils.findDeclarationNodeAtOffset(root, offset);
        const declaration = leaf && this.services.references.References.findDeclarations(leaf)[0];
        if (!declaration) return undefined;
        const lesson = AstUtils.getContainerOfType(node, ast.isLesson);
        return describe(declaration, this.services, lesson?.name);
    }

    /** The statement that the line begins, for its leading words only. */
    private aboutKeyword(document: LangiumDocument, lineNumber: number, offset: number): string | undefined {
        const text = document.textDocument.getText();
        const context = contextOfLine(text, lineNumber, this.services.parser.Lexer.automaton);
        const spot = context?.spots[0];
        if (!context || !spot) return undefined;
        const fit = fitLine(text, context.line, context.line.content, spot.state);
        const head = headOf(spot.head, fit.tokens);
        const words = head.split(' ').length;
        const index = fit.tokens.findIndex(token => token.start === offset);
        if (index < 0 || index >= words) return undefined;
        const statement = statementAt(spot.head, head === 'game in a lesson' ? 'game' : head);
        const change = spot.head === 'adaptation' ? describeChange(document.uri.toString(), lineNumber, this.services) : undefined;
        return statement && `${change === undefined ? '' : `${change}\n\n`}${statement.says}\n\n\`${statement.example}\``;
    }
}
