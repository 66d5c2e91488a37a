import { AstUtils, DefaultReferences, type AstNode, type AstNodeLocator, type CstNode, type LangiumCoreServices } from 'langium';

/**
 * A file whose names have not changed is read anew without relinking the files that name it, so their references still lead
 * into its former tree. The node at the same path of the present tree is the one that is meant.
 */
export class CurrentReferences extends DefaultReferences {
    private readonly locator: AstNodeLocator;

    constructor(services: LangiumCoreServices) {
        super(services);
        this.locator = services.workspace.AstNodeLocator;
    }

    override findDeclarations(sourceCstNode: CstNode): AstNode[] {
        return super.findDeclarations(sourceCstNode).map(node => this.inPresentTree(node));
    }

    private inPresentTree(node: AstNode): AstNode {
        const root = AstUtils.getDocument(node).parseResult.value;
        if (AstUtils.findRootNode(node) === root) return node;
        return this.locator.getAstNode(root, this.locator.getAstNodePath(node)) ?? node;
    }
}
