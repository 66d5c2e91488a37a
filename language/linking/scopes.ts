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
        }
    }
}

/** When a name in braces is of several kinds, the first of these is meant. */
const nameableKinds = [ast.Material.$type, ast.Print.$type, ast.Book.$type, ast.Game.$type, ast.Lesson.$type, ast.Objective.$type, ast.TaughtWord.$type];

/** Where a reference looks: parts in their material or lesson, everything else in the whole programme. */
export class HaversackScopeProvider extends DefaultScopeProvider {
    override getScope(context: ReferenceInfo): Scope {
        const { container, property } = context;
        if (ast.isNeedOption(container) && property === 'parts') {
            const thing = container.thing?.ref;
            return ast.isMaterial(thing) ? this.scopeOf(thing.parts) : EMPTY_SCOPE;
        }
        if ((ast.isSkipActivity(container) || ast.isSplit(container)) && property === 'activity') {
            const lesson = container.lesson?.ref;
            return lesson ? this.scopeOf(lesson.parts.filter(part => !ast.isGamePlay(part))) : EMPTY_SCOPE;
        }
        if (ast.isUnsure(container)) {
            const lesson = AstUtils.getContainerOfType(container, ast.isLesson);
            return lesson ? this.scopeOf(lesson.parts.filter(ast.isRepeatable)) : EMPTY_SCOPE;
        }
        const types = property === 'names' ? nameableKinds : [this.reflection.getReferenceType(context)];
        return new IndexScope(this.indexManager as NameIndex, types);
    }

    private scopeOf(nodes: readonly (AstNode & { name: string })[]): Scope {
        return new MapScope(nodes.filter(node => node.name).map(node => this.descriptions.createDescription(node, node.name)));
    }
}

/** Everything of some types that the programme declares; of one name the first type decides. */
class IndexScope implements Scope {
    constructor(private readonly index: NameIndex, private readonly types: readonly string[]) {}

    getElement(name: string): AstNodeDescription | undefined {
        return this.index.find(this.types, name);
    }

    getElements(name: string): ReturnType<Scope['getElements']> {
        return this.getAllElements().filter(description => description.name === name);
    }

    getAllElements(): ReturnType<Scope['getAllElements']> {
        return stream(this.types).flatMap(type => this.index.allElements(type));
    }
}
