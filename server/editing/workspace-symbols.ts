import { DocumentState, interruptAndCheck, URI, UriUtils, type Cancellation } from 'langium';
import type { FuzzyMatcher, LangiumSharedServices, WorkspaceSymbolProvider } from 'langium/lsp';
import type { WorkspaceSymbol, WorkspaceSymbolParams } from 'vscode-languageserver-protocol';
import { declarationsOf } from '@haversack/language/checks/programme-view';
import type { Declared, FileSheet, Range } from '@haversack/language/sheets/sheet';
import type { HaversackServerServices } from '../workspace/services.js';
import { symbolKinds } from './symbol-kinds.js';

/** More than these nobody reads; the editor asks again with more letters. */
const mostSymbols = 1000;

/** Something that has a name: its title, what it is called in the files, and what it stands in. */
interface Named {
    name: string;
    title: string;
    kind: keyof typeof symbolKinds;
    at: Range;
    within: string;
}

/** Everything that has a name in all programmes that are open, found by the name and by the title. */
export class HaversackWorkspaceSymbols implements WorkspaceSymbolProvider {
    private readonly matcher: FuzzyMatcher;

    constructor(private readonly shared: LangiumSharedServices) {
        this.matcher = shared.lsp.FuzzyMatcher;
    }

    async getSymbols({ query }: WorkspaceSymbolParams, token?: Cancellation.CancellationToken): Promise<WorkspaceSymbol[]> {
        const words = query.trim().toLowerCase();
        const symbols: WorkspaceSymbol[] = [];
        for (const document of this.shared.workspace.LangiumDocuments.all.toArray()) {
            if (token) await interruptAndCheck(token);
            if (document.state < DocumentState.Parsed) continue;
            const services = this.shared.ServiceRegistry.getServices(document.uri) as HaversackServerServices;
            const uri = document.uri.toString();
            for (const named of namedIn(services.sheets.sheetOf(document), this.placeOf(document.uri))) {
                if (!this.matcher.match(words, named.name) && !this.matcher.match(words, named.title.toLowerCase())) continue;
                symbols.push({ name: labelOf(named), kind: symbolKinds[named.kind], containerName: named.within, location: { uri, range: named.at } });
                if (symbols.length >= mostSymbols) return symbols;
            }
        }
        return symbols;
    }

    /** The file as seen from its folder, with the folder's name in front where several are open. */
    private placeOf(uri: URI): string {
        const folders = this.shared.workspace.WorkspaceManager.workspaceFolders ?? [];
        const folder = folders.find(one => UriUtils.contains(one.uri, uri));
        if (!folder) return UriUtils.basename(uri);
        const path = UriUtils.relative(URI.parse(folder.uri), uri);
        return folders.length > 1 ? `${folder.name}/${path}` : path;
    }
}

function namedIn(sheet: FileSheet, place: string): Named[] {
    const declared = (declarationsOf(sheet) as (Declared & { kind: Named['kind'] })[]).map(({ name, title, kind, at }): Named => ({ name, title, kind, at, within: `${kind}, ${place}` }));
    const parts = sheet.lessons.flatMap(lesson => lesson.parts.filter(({ kind }) => kind !== 'game').map((part): Named => ({ name: part.name, title: part.title, kind: 'part', at: part.at, within: `${part.kind}, ${lesson.title}` })));
    const units = sheet.courses.flatMap(course => course.units.map(({ name, title, at }): Named => ({ name, title, kind: 'unit', at, within: `unit, ${course.title}` })));
    return [...declared, ...parts, ...units].filter(({ name }) => name !== '');
}

/** Both, for editors look for the typed letters in this text alone. */
function labelOf({ name, title }: Named): string {
    return title.trim() === '' ? name : `${title} (${name})`;
}
