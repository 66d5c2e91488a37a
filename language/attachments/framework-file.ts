import type { Attachment, FrameworkItem } from './attachment.js';
import { frameworkPackage, isObject, listOf, looksLike, wordsOf, type JsonObject } from './case-package.js';
import { frameworkTree, type PlainItem } from './framework-tree.js';
import { jsonFault } from './json-fault.js';
import { several } from './several.js';

const format = 'a framework in the CASE format (1EdTech, JSON) has CFDocument, CFItems and CFAssociations';
const getAnother = 'Save the framework again from where it is published, as CASE JSON with all its items.';

/**
 * Reads a framework of standards: a CFPackage of 1EdTech CASE 1.0 as JSON (field names from the published OpenAPI definition of
 * CASE v1p0). Never throws. What later editions add is passed over; what is missing but not needed is not missed.
 *
 * The tree is in the associations alone: isChildOf leads from the child (origin) to the parent (destination), and items at the top
 * have the document as their parent. Children stand in the order of sequenceNumber, those without one last, in the file's order.
 */
export function readFramework(text: string): Attachment {
    const plain = text.startsWith('\uFEFF') ? text.slice(1) : text;
    const wrong = (message: string): Attachment => ({ state: 'wrong', message });
    let json: unknown;
    try {
        json = JSON.parse(plain);
    } catch {
        return wrong(notJson(plain));
    }
    const found = frameworkPackage(json);
    if (!found) return wrong(`This JSON file is not a framework: ${format}, and this is ${looksLike(json)}. ${getAnother}`);
    const { document, package: content, others } = found;
    const remarks: string[] = [];
    if (others > 0) remarks.push(`The file holds ${others + 1} frameworks; only the first is read. Keep one framework in a file.`);
    const items = readItems(content, remarks);
    if (items.length === 0) {
        return wrong(content.CFItems === undefined
            ? `The file describes a framework but has no CFItems, the list of its items: probably only its cover sheet was saved. ${getAnother}`
            : `The framework in this file has no items (CFItems holds none that can be read). ${getAnother}`);
    }
    const tree = frameworkTree(items, listOf(content.CFAssociations), document);
    return { state: 'framework', framework: { title: wordsOf(document?.title) ?? 'Framework without a title', items: tree.items, remarks: [...remarks, ...tree.remarks, ...codesTwice(items)] } };
}

function notJson(text: string): string {
    if (text.trim() === '') return `The file is empty. ${getAnother}`;
    if (/^\s*</.test(text)) return `The file is a web page or XML, not JSON: ${format}. ${getAnother}`;
    const fault = jsonFault(text);
    if (!fault) return `The file cannot be read as JSON. ${getAnother}`;
    if (fault.cutOff) return `The file breaks off in the middle, at line ${fault.line}, column ${fault.column}: it was probably not saved whole. ${getAnother}`;
    const near = wordsOf(text.slice(fault.offset, fault.offset + 20));
    return `The file is not JSON from line ${fault.line}, column ${fault.column} on${near === undefined ? '' : ` (at “${near}”)`}: ${
        fault.offset === text.search(/\S/) ? format : 'someone may have changed it by hand; a comma, bracket or quotation mark is often what is wrong'}. ${getAnother}`;
}

function readItems(content: JsonObject, remarks: string[]): PlainItem[] {
    const items: PlainItem[] = [];
    const seen = new Set<string>();
    const twice: string[] = [];
    const silent: string[] = [];
    let unreadable = 0;
    for (const entry of listOf(content.CFItems)) {
        if (!isObject(entry)) {
            unreadable += 1;
            continue;
        }
        const item = readItem(entry, items.length);
        if (seen.has(item.identifier)) {
            twice.push(item.code ?? item.identifier);
            continue;
        }
        seen.add(item.identifier);
        if (item.statement === '') {
            item.statement = item.code ?? 'Item without a statement';
            silent.push(item.code ?? item.identifier);
        }
        items.push(item);
    }
    if (unreadable > 0) remarks.push(`${unreadable === 1 ? 'One entry' : `${unreadable} entries`} of CFItems cannot be read and ${unreadable === 1 ? 'is' : 'are'} left out.`);
    if (twice.length > 0) remarks.push(`The file lists ${several(twice)} more than once with the same identifier; the first counts.`);
    if (silent.length > 0) remarks.push(`No statement (fullStatement) is given for ${several(silent)}; the code stands in its place.`);
    return items;
}

function readItem(entry: JsonObject, index: number): PlainItem {
    const uri = wordsOf(entry.uri);
    const item: FrameworkItem = {
        identifier: wordsOf(entry.identifier) ?? uri ?? `item ${index + 1}`,
        statement: wordsOf(entry.fullStatement) ?? wordsOf(entry.abbreviatedStatement) ?? wordsOf(entry.alternativeLabel) ?? '',
        children: []
    };
    const code = wordsOf(entry.humanCodingScheme);
    const type = wordsOf(entry.CFItemType);
    if (code !== undefined) item.code = code;
    if (type !== undefined) item.type = type;
    return uri === undefined ? item : Object.assign(item, { uri });
}

/** Codes that several items have: an objective aligned to such a code is aligned to each of them. */
function codesTwice(items: readonly PlainItem[]): string[] {
    const seen = new Set<string>();
    const twice = new Set<string>();
    for (const { code } of items) {
        if (code !== undefined && seen.has(code)) twice.add(code);
        else if (code !== undefined) seen.add(code);
    }
    return twice.size === 0 ? [] : [`Several items have the code ${several([...twice])}; an objective aligned to it counts for each of them.`];
}
