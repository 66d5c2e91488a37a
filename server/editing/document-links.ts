import { UriUtils, type LangiumDocument } from 'langium';
import type { DocumentLinkProvider } from 'langium/lsp';
import type { DocumentLink } from 'vscode-languageserver-protocol';
import { resolvePath } from '@haversack/language/attachments/attachment-path';
import { isSafeAddress } from '../markdown/link-address.js';
import type { HaversackServerServices } from '../workspace/services.js';
import { prosesOf } from './proses.js';
import type { ProsePart, Range } from '@haversack/language/sheets/sheet';

/** A link in a text longer than this is no link of a person's. */
const longest = 2000;
const mostLinks = 1000;
/** Characters that stand in no address. */
// eslint-disable-next-line no-control-regex
const neverInAddresses = /[\u0000-\u0020\u007F"<>\\^`{|}]/;

/**
 * Links in a text, as CommonMark has them: `[words](address "title")` and `<address>`. Every piece is a loop over characters that end it, so
 * a text of nothing but brackets takes no longer than another.
 */
const linkPattern = /\[[^[\]\n]{0,500}\]\(\s{0,20}<?([^\s<>()]*(?:\([^\s<>()]*\)[^\s<>()]*)*)>?(?:\s{1,20}"[^"\n]{0,500}")?\s{0,20}\)|<([a-z]+:[^\s<>]+)>/gi;

/** Files that the programme names, and links in texts: only addresses that can do no harm, and files that lie in the programme. */
export class HaversackDocumentLinks implements DocumentLinkProvider {
    constructor(private readonly services: HaversackServerServices) {}

    getDocumentLinks(document: LangiumDocument): DocumentLink[] {
        const sheet = this.services.sheets.sheetOf(document);
        const folders = (this.services.shared.workspace.WorkspaceManager.workspaceFolders ?? []).map(({ uri }) => uri);
        const file = (path: string, at: Range, tooltip: string): DocumentLink[] => {
            const place = resolvePath(document.uri.toString(), path, folders);
            if ('wrong' in place) return [];
            const inside = { start: { ...at.start, character: at.start.character + 1 }, end: { ...at.end, character: at.end.character - 1 } };
            return [{ range: inside, target: UriUtils.normalize(place.uri), tooltip }];
        };
        const files = [
            ...sheet.frameworks.flatMap(({ from }) => (from ? file(from.path, from.at, `Open the framework ${from.path}`) : [])),
            ...sheet.classes.flatMap(({ offFrom }) => offFrom.flatMap(({ path, at }) => file(path, at, `Open the calendar ${path}`)))
        ];
        const links = prosesOf(sheet).flatMap(({ parts }) => parts.flatMap(part => linksIn(part)));
        return [...files, ...links].slice(0, mostLinks);
    }
}

function linksIn(part: ProsePart): DocumentLink[] {
    if (!('text' in part) || !part.starts) return [];
    const { starts } = part;
    return part.text.split('\n').flatMap((line, index) => {
        const start = starts[index];
        if (!start || !/[[<]/.test(line)) return [];
        return [...line.matchAll(linkPattern)].flatMap(found => {
            const written = found[1] ?? found[2] ?? '';
            if (written.length > longest || isEscaped(line, found.index) || neverInAddresses.test(written) || !isSafeAddress(written)) return [];
            const character = start.character + found.index + found[0].indexOf(written, found[1] === undefined ? 1 : found[0].indexOf(']('));
            const range = { start: { line: start.line, character }, end: { line: start.line, character: character + written.length } };
            return [{ range, target: written, tooltip: `Open ${written}` }];
        });
    });
}

/** `\[` begins no link, `\\[` does. */
function isEscaped(line: string, at: number): boolean {
    let marks = 0;
    while (line[at - 1 - marks] === '\\') marks++;
    return marks % 2 === 1;
}
