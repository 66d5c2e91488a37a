import {
    AstUtils, DefaultScopeComputation, DefaultScopeProvider, EMPTY_SCOPE, MapScope, MultiMap, stream,
    type AstNode, type AstNodeDescription, type LangiumDocument, type ReferenceInfo, type Scope
} from 'langium';
import * as ast from '../generated/ast.js';

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
export const nameableKinds = [ast.Material.$type, ast.Print.$type, ast.Book.$type, ast.Game.$type, ast.Lesson.$type, ast.Objective.$type, ast.TaughtWord.$type];

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
        if (property === 'names') {
            return new FirstOfScopes(nameableKinds.map(kind => this.getGlobalScope(kind, context)));
        }
        return this.getGlobalScope(this.reflection.getReferenceType(context), context);
    }

    private scopeOf(nodes: readonly (AstNode & { name: string })[]): Scope {
        return new MapScope(nodes.filter(node => node.name).map(node => this.descriptions.createDescription(node, node.name)));
    }
}

/** Several scopes, of which the first that knows a name decides. */
class FirstOfScopes implements Scope {
    constructor(private readonly scopes: readonly Scope[]) {}

    getElement(name: string): AstNodeDescription | undefined {
        for (const scope of this.scopes) {
            const found = scope.getElement(name);
            if (found) return found;
        }
        return undefined;
    }

    getElements(name: string): ReturnType<Scope['getElements']> {
        return stream(this.scopes).flatMap(scope => scope.getElements(name));
    }

    getAllElements(): ReturnType<Scope['getAllElements']> {
        return stream(this.scopes).flatMap(scope => scope.getAllElements());
    }
}
