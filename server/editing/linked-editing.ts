import { AstUtils, CstUtils, UriUtils, type LangiumDocument } from 'langium';
import type { LinkedEditingRanges, Position } from 'vscode-languageserver-protocol';
import type { HaversackServerServices } from '../workspace/services.js';

/** As many places as a person can follow while typing. */
const mostPlaces = 50;

/** A name as it may look while somebody types it: up to what can stand beside one. */
const wordPattern = '[^\\s{}()\\[\\],.:"“”/#]+';

/**
 * All places of a name, where they all stand in this file: typing where it is declared types in the others. Nothing where another file names it
 * too, or where a line that could not be read may: there only a rename reaches everything. Nor where it is only named: who types there wants
 * to name something else, and must not give this thing another name by it.
 */
export function linkedEditingRanges(document: LangiumDocument, position: Position, services: HaversackServerServices): LinkedEditingRanges | undefined {
    const root = document.parseResult.value.$cstNode;
    const { References } = services.references;
    const leaf = root && CstUtils.findDeclarationNodeAtOffset(root, document.textDocument.offsetAt(position), services.parser.GrammarConfig.nameRegexp);
    const [declared, ...more] = leaf ? References.findDeclarations(leaf) : [];
    if (!declared || more.length > 0 || AstUtils.getDocument(declared) !== document || services.references.NameProvider.getNameNode(declared)?.offset !== leaf?.offset) return undefined;
    const name = services.references.NameProvider.getName(declared);
    if (!name || services.sheets.viewOf(document.uri).programme.unreadable.has(name)) return undefined;
    const places = References.findReferences(declared, { includeDeclaration: true }).toArray();
    const isHere = places.every(({ sourceUri, segment }) => UriUtils.equals(sourceUri, document.uri) && document.textDocument.getText(segment.range) === name);
    return isHere && places.length > 1 && places.length <= mostPlaces ? { ranges: places.map(({ segment }) => segment.range), wordPattern } : undefined;
}
