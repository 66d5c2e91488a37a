import {
    DefaultIndexManager, stream, UriUtils, AstUtils,
    type AstNode, type AstNodeDescription, type Cancellation, type LangiumDocument, type LangiumSharedCoreServices, type Reference, type ReferenceDescription, type Stream, type URI
} from 'langium';
import { Programmes } from './programmes.js';

/**
 * Who is called what, by name, so that looking up a name costs the same in a small programme and a large one. References are
 * read off the linked files themselves when somebody asks for them; nothing is written down twice.
 */
export class NameIndex extends DefaultIndexManager {
    readonly programmes: Programmes;
    private readonly byName = new Map<string, AstNodeDescription[]>();

    constructor(services: LangiumSharedCoreServices) {
        super(services);
        this.programmes = new Programmes(services);
    }

    /** What a name means, to those who stand where `from` stands, as one of some types, the first type that has it; of several files the first by address. */
    find(types: readonly string[], name: string, from: AstNode): AstNodeDescription | undefined {
        const named = this.byName.get(name);
        if (!named) return undefined;
        const isSeen = this.seenFrom(from);
        for (const type of types) {
            let best: AstNodeDescription | undefined;
            for (const description of named) {
                if (!this.astReflection.isSubtype(description.type, type) || (isSeen && !isSeen(description.documentUri))) continue;
                if (!best || description.documentUri.toString() < best.documentUri.toString()) best = description;
            }
            if (best) return best;
        }
        return undefined;
    }

    /** All that is called something in the programme of `from`. */
    elementsSeenFrom(from: AstNode, type: string): Stream<AstNodeDescription> {
        const isSeen = this.seenFrom(from);
        const all = this.allElements(type);
        return isSeen ? all.filter(({ documentUri }) => isSeen(documentUri)) : all;
    }

    /** Tells which files are of the programme of `from`; undefined where there is only one. */
    private seenFrom(from: AstNode): ((file: URI) => boolean) | undefined {
        const { programmes } = this;
        if (!programmes.areSeveral) return undefined;
        const own = programmes.of(AstUtils.getDocument(from).uri);
        return file => programmes.of(file) === own;
    }

    override async updateContent(document: LangiumDocument, cancelToken?: Cancellation.CancellationToken): Promise<void> {
        this.forget(document.uri.toString());
        await super.updateContent(document, cancelToken);
        for (const description of this.symbolIndex.get(document.uri.toString()) ?? []) {
            const named = this.byName.get(description.name);
            if (named) named.push(description);
            else this.byName.set(description.name, [description]);
        }
    }

    override removeContent(uri: URI): void {
        this.forget(uri.toString());
        super.removeContent(uri);
    }

    private forget(uri: string): void {
        for (const { name } of this.symbolIndex.get(uri) ?? []) {
            const left = this.byName.get(name)?.filter(description => description.documentUri.toString() !== uri) ?? [];
            if (left.length > 0) this.byName.set(name, left);
            else this.byName.delete(name);
        }
    }

    override updateReferences(): Promise<void> {
        return Promise.resolve();
    }

    override findAllReferences(targetNode: AstNode, astNodePath: string): Stream<ReferenceDescription> {
        const target = AstUtils.getDocument(targetNode).uri;
        const address = target.toString();
        const found: ReferenceDescription[] = [];
        for (const document of this.documents.all) {
            for (const reference of document.references as Reference[]) {
                const description = reference.$nodeDescription;
                const refNode = reference.$refNode;
                if (!description || !refNode || description.path !== astNodePath || description.documentUri.toString() !== address) continue;
                found.push({
                    sourceUri: document.uri, sourcePath: '', targetUri: target, targetPath: astNodePath,
                    segment: { offset: refNode.offset, length: refNode.length, end: refNode.end, range: refNode.range },
                    local: UriUtils.equals(document.uri, target)
                });
            }
        }
        return stream(found);
    }

    override isAffected(document: LangiumDocument, changedUris: Set<string>): boolean {
        const own = document.uri.toString();
        return (document.references as Reference[]).some(({ $nodeDescription: description }) => {
            const target = description?.documentUri.toString();
            return target !== undefined && target !== own && changedUris.has(target);
        });
    }
}
