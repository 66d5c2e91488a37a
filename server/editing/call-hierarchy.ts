import { AstUtils, CstUtils, URI, type AstNode, type LangiumDocument, type Reference } from 'langium';
import type { CallHierarchyProvider } from 'langium/lsp';
import type {
    CallHierarchyIncomingCall, CallHierarchyIncomingCallsParams, CallHierarchyItem, CallHierarchyOutgoingCall, CallHierarchyOutgoingCallsParams, CallHierarchyPrepareParams, Position, Range
} from 'vscode-languageserver-protocol';
import * as ast from '@haversack/language/generated/ast';
import { titleFromName } from '@haversack/language/sheets/titles';
import type { HaversackServerServices } from '../workspace/services.js';
import { symbolKinds } from './symbol-kinds.js';

/** What can use others and be used. */
type Item = ast.Declaration | ast.LessonPart | ast.TaughtWord;

/** An item once more, where its file has changed since. */
interface Known {
    type: string;
    name: string;
    /** The lesson that it stands in: parts of several lessons may have one name. */
    lesson?: string;
}

/**
 * "Used by" and "uses": who names a thing, a lesson, an objective, a part, and what each of them names itself. Hierarchies of calls are the
 * protocol's only tree that goes both ways.
 */
export class HaversackCallHierarchy implements CallHierarchyProvider {
    constructor(private readonly services: HaversackServerServices) {}

    prepareCallHierarchy(document: LangiumDocument, { position }: CallHierarchyPrepareParams): CallHierarchyItem[] | undefined {
        const declared = this.declarationAt(document, position);
        const item = declared && itemOf(declared);
        return item && [this.toProtocol(item)];
    }

    /** Who uses it, with every place. */
    incomingCalls({ item }: CallHierarchyIncomingCallsParams): CallHierarchyIncomingCall[] | undefined {
        const used = this.itemAgain(item);
        if (!used) return undefined;
        // A game within a lesson is used as the game that is played.
        const target = ast.isGamePlay(used) ? used.game?.ref : used;
        const users = new Map<Item, Range[]>();
        for (const { sourceUri, segment } of target ? this.services.references.References.findReferences(target, {}) : []) {
            const document = this.services.shared.workspace.LangiumDocuments.getDocument(sourceUri);
            const root = document?.parseResult.value.$cstNode;
            const leaf = root && CstUtils.findLeafNodeAtOffset(root, segment.offset);
            const user = leaf && userOf(leaf.astNode, used);
            if (user) (users.get(user) ?? users.set(user, []).get(user)!).push(segment.range);
        }
        return [...users].map(([user, fromRanges]) => ({ from: this.toProtocol(user), fromRanges }));
    }

    /** What it uses itself. */
    outgoingCalls({ item }: CallHierarchyOutgoingCallsParams): CallHierarchyOutgoingCall[] | undefined {
        const user = this.itemAgain(item);
        const cst = user?.$cstNode;
        if (!user || !cst) return undefined;
        const used = new Map<Item, Range[]>();
        for (const { $refNode: place, $nodeDescription: description } of AstUtils.getDocument(user).references as Reference[]) {
            if (!place || !description || place.offset < cst.offset || place.end > cst.end) continue;
            const root = this.services.shared.workspace.LangiumDocuments.getDocument(description.documentUri)?.parseResult.value;
            const target = root && this.services.workspace.AstNodeLocator.getAstNode(root, description.path);
            const other = target && itemOf(target);
            // What stands in it is no other.
            if (!other || other === user || AstUtils.findRootNode(other) === AstUtils.findRootNode(user) && isWithin(other, user)) continue;
            (used.get(other) ?? used.set(other, []).get(other)!).push(place.range);
        }
        return [...used].map(([other, fromRanges]) => ({ to: this.toProtocol(other), fromRanges }));
    }

    private declarationAt({ parseResult: { value: { $cstNode: root } }, textDocument }: LangiumDocument, position: Position): AstNode | undefined {
        const leaf = root && CstUtils.findDeclarationNodeAtOffset(root, textDocument.offsetAt(position), this.services.parser.GrammarConfig.nameRegexp);
        return leaf && this.services.references.References.findDeclarations(leaf)[0];
    }

    /** The item that was handed out, in the file as it is now. */
    private itemAgain({ uri, selectionRange, data }: CallHierarchyItem): Item | undefined {
        const document = this.services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
        const known = data as Partial<Known> | undefined;
        if (!document) return undefined;
        const isSame = (node: AstNode | undefined): node is Item => node !== undefined && node.$type === known?.type && this.nameOf(node) === known.name && lessonAround(node)?.name === known.lesson;
        const there = this.declarationAt(document, selectionRange.start);
        if (isSame(there)) return there;
        return AstUtils.streamAllContents(document.parseResult.value).find(isSame);
    }

    private toProtocol(item: Item): CallHierarchyItem {
        const whole = item.$cstNode!.range;
        const place = ast.isGamePlay(item) ? item.game?.$refNode : this.services.references.NameProvider.getNameNode(item);
        const name = this.nameOf(item) ?? '';
        const title = 'title' in item ? item.title?.trim() : undefined;
        const kind = kindOf(item);
        const home = lessonAround(item);
        return {
            name: title || (kind === 'word' ? name : titleFromName(name)) || kind, kind: symbolKinds[kind], uri: AstUtils.getDocument(item).uri.toString(),
            detail: [`${ast.isLessonPart(item) ? partKind(item) : kind} ${name}`, home && `in ${home.name}`].filter(Boolean).join(' '), range: whole, selectionRange: place?.range ?? whole,
            data: { type: item.$type, name, lesson: home?.name } satisfies Known
        };
    }

    private nameOf(node: AstNode): string | undefined {
        return ast.isGamePlay(node) ? node.game?.$refText : this.services.references.NameProvider.getName(node);
    }
}

/** A part of a material is used with its material. */
function itemOf(node: AstNode): Item | undefined {
    if (ast.isMaterialPart(node)) return AstUtils.getContainerOfType(node, ast.isMaterial);
    return ast.isDeclaration(node) || ast.isLessonPart(node) || ast.isTaughtWord(node) ? node : undefined;
}

/** Who names something at a node: the part, where a part of its own lesson is named; else the whole declaration. */
function userOf(node: AstNode, used: Item): Item | undefined {
    const lesson = AstUtils.getContainerOfType(node, ast.isLesson);
    const part = AstUtils.getContainerOfType(node, ast.isLessonPart);
    if (part && part !== used && lesson && AstUtils.getContainerOfType(used, ast.isLesson) === lesson) return part;
    return AstUtils.getContainerOfType(node, ast.isDeclaration);
}

function lessonAround(node: AstNode): ast.Lesson | undefined {
    return AstUtils.getContainerOfType(node.$container, ast.isLesson);
}

function isWithin(node: AstNode, other: AstNode): boolean {
    for (let at: AstNode | undefined = node; at; at = at.$container) if (at === other) return true;
    return false;
}

function kindOf(item: Item): keyof typeof symbolKinds {
    if (ast.isTaughtWord(item)) return 'word';
    return ast.isLessonPart(item) ? 'part' : item.$type.toLowerCase() as keyof typeof symbolKinds;
}

function partKind(part: ast.LessonPart): string {
    return ast.isWarmUp(part) ? 'warm-up' : ast.isGamePlay(part) ? 'game' : part.$type.toLowerCase();
}
