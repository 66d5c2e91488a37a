import {
    AstUtils, DefaultScopeComputation, DefaultScopeProvider, EMPTY_SCOPE, MapScope, MultiMap, stream,
    type AstNode, type AstNodeDescription, type LangiumDocument, type ReferenceInfo, type Scope
} from 'langium';
import * as ast from '../generated/ast.js';
import type { NameIndex } from './name-index.js';

/** Which names a file shows to the whole programme: its declarations, and the words its lessons teach. */
export class HaversackScopeComputation extends DefaultScopeComputation {
    /** The scope provider reads parts from their material or lesson directly. */
    override collectLocalSymbols(): Promise<MultiMap<AstNode, AstNodeDescription>> {
        return Promise.resolve(new MultiMap());
    }

    protected override addExportedSymbol(node: AstNode, exports: AstNodeDescription[], document: LangiumDocument): void {
        super.addExportedSymbol(node, exports, document);
        if (ast.isLesson(node)) {
            for (const word of node.words) super.addExportedSymbol(word, exports, document);
        } else if (ast.isAdaptation(node)) {
            for (const word of wordsAdded(node)) super.addExportedSymbol(word, exports, document);
        }
    }
}

/** When a name in braces is of several kinds, the first of these is meant. */
const nameableKinds = [ast.Material.$type, ast.Print.$type, ast.Book.$type, ast.Game.$type, ast.Lesson.$type, ast.Objective.$type, ast.TaughtWord.$type];

/** Where a reference looks: parts in their material or lesson, everything else in the whole programme. */
export class HaversackScopeProvider extends DefaultScopeProvider {
    /** A tree never changes, and a long adaptation is asked once for each of its lines. */
    private readonly partsAdded = new WeakMap<ast.Adaptation, ReadonlyMap<string, readonly ast.LessonPart[]>>();

    override getScope(context: ReferenceInfo): Scope {
        const { container, property } = context;
        if (ast.isNeedOption(container) && property === 'parts') {
            const thing = container.thing?.ref;
            return ast.isMaterial(thing) ? this.scopeOf(thing.parts) : EMPTY_SCOPE;
        }
        if (property === 'part' && isPartOfNamedLesson(container)) return this.scopeOfParts(this.partsOf(container.lesson?.ref, container));
        if (ast.isUnsure(container)) {
            const home = AstUtils.getContainerOfType(container, (node): node is ast.Lesson | ast.AddToLesson => ast.isLesson(node) || ast.isAddToLesson(node));
            const parts = ast.isAddToLesson(home) ? this.partsOf(home.lesson?.ref, home) : home?.parts ?? [];
            return this.scopeOf(parts.filter(ast.isRepeatable));
        }
        const types = property === 'names' ? nameableKinds : [this.reflection.getReferenceType(context)];
        return new IndexScope(this.indexManager as NameIndex, types, container);
    }

    /** The parts of a lesson, and those that the adaptation around a node adds to it. */
    private partsOf(lesson: ast.Lesson | undefined, within: AstNode): readonly ast.LessonPart[] {
        if (!lesson) return [];
        const adaptation = AstUtils.getContainerOfType(within, ast.isAdaptation);
        if (!adaptation) return lesson.parts;
        let added = this.partsAdded.get(adaptation);
        if (!added) this.partsAdded.set(adaptation, added = partsAddedBy(adaptation));
        return [...lesson.parts, ...added.get(lesson.name) ?? []];
    }

    /** Parts by their own names, games by what is played. */
    private scopeOfParts(parts: readonly ast.LessonPart[]): Scope {
        return this.scopeOf(parts.flatMap((part): ast.NamedPart[] => (ast.isGamePlay(part) ? (part.game?.ref ? [part.game.ref] : []) : [part])));
    }

    private scopeOf(nodes: readonly (AstNode & { name: string })[]): Scope {
        return new MapScope(nodes.filter(node => node.name).map(node => this.descriptions.createDescription(node, node.name)));
    }
}

/** Words that an adaptation has lessons teach. */
export function wordsAdded(adaptation: ast.Adaptation): ast.TaughtWord[] {
    return adaptation.changes.flatMap(change => (ast.isAddToLesson(change) ? change.words : []));
}

/** A line of an adaptation that names a lesson and a part of it. */
export function isPartOfNamedLesson(node: AstNode): node is ast.PartOfLesson | ast.SplitLesson | ast.AddToLesson {
    return ast.isPartOfLesson(node) || ast.isSplitLesson(node) || ast.isAddToLesson(node);
}

/** Parts that an adaptation adds, by the lesson that gets them. */
function partsAddedBy(adaptation: ast.Adaptation): Map<string, ast.LessonPart[]> {
    const added = new Map<string, ast.LessonPart[]>();
    for (const change of adaptation.changes) {
        const lesson = ast.isAddToLesson(change) ? change.lesson?.$refText : undefined;
        if (!ast.isAddToLesson(change) || lesson === undefined || change.parts.length === 0) continue;
        const parts = added.get(lesson) ?? [];
        for (const part of change.parts) parts.push(part);
        added.set(lesson, parts);
    }
    return added;
}

/** Everything of some types that the programme around a node declares; of one name the first type decides. */
class IndexScope implements Scope {
    constructor(private readonly index: NameIndex, private readonly types: readonly string[], private readonly from: AstNode) {}

    getElement(name: string): AstNodeDescription | undefined {
        return this.index.find(this.types, name, this.from);
    }

    getElements(name: string): ReturnType<Scope['getElements']> {
        return this.getAllElements().filter(description => description.name === name);
    }

    getAllElements(): ReturnType<Scope['getAllElements']> {
        return stream(this.types).flatMap(type => this.index.elementsSeenFrom(this.from, type));
    }
}
