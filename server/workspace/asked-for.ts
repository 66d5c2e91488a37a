/** What the preview's requests have in common: where the cursor is, for which class, and what is on the page already. */
import { URI, UriUtils } from 'langium';
import { declarationsOf } from '@haversack/language/checks/programme-view';
import type { Declared, FileSheet } from '@haversack/language/sheets/sheet';
import type { BriefRefusal, BriefSection } from '../protocol/pages.js';
import type { HaversackServerServices } from './services.js';

interface AskedFor {
    uri?: string;
    line?: number;
}

export function unknownClass(name: string | undefined, { plans }: HaversackServerServices): BriefRefusal | undefined {
    if (name === undefined || plans.current.programme.classes.has(name)) return undefined;
    const classes = plans.classes();
    return { refusal: `There is no class '${name}' in this programme.${classes.length > 0 ? ` Its classes are ${classes.map(one => one.name).join(', ')}.` : ''}` };
}

/** The sections with their html only where the preview has another text. */
export function withoutKnown(sections: readonly Required<BriefSection>[], known: Record<string, string> = {}): BriefSection[] {
    return sections.map(({ id, html, hash }) => (known[id] === hash ? { id, hash } : { id, hash, html }));
}

/** The folder that a whole page names its files from: the one around the file, or the first. */
export function folderOf({ uri }: AskedFor, { shared }: HaversackServerServices): string | undefined {
    const folders = shared.workspace.WorkspaceManager.workspaceFolders ?? [];
    const around = uri === undefined ? undefined : folders.find(folder => UriUtils.contains(folder.uri, URI.parse(uri)));
    const folder = around ?? folders[0];
    return folder && URI.parse(folder.uri).toString();
}

export function declarationAt({ uri, line }: AskedFor, services: HaversackServerServices): { from: number; to: number } | undefined {
    const sheet = sheetAt(uri, services);
    const found = sheet && line !== undefined ? declarationsOf(sheet).find(declared => covers(declared, line)) : undefined;
    return found && { from: found.whole.start.line, to: found.whole.end.line };
}

/** Errors in the file that is being written; the preview says that it shows the text as far as it can be read. */
export function problemsIn(uri: string | undefined, services: HaversackServerServices): number {
    const document = uri === undefined ? undefined : services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
    return document?.diagnostics?.filter(({ severity }) => severity === 1).length ?? 0;
}

/** The class at the cursor, or that of the adaptation there: the one it is for, else the first that is taught its course. */
export function classAt({ uri, line }: AskedFor, services: HaversackServerServices): string | undefined {
    const sheet = line === undefined ? undefined : sheetAt(uri, services);
    if (!sheet || line === undefined) return undefined;
    const group = sheet.classes.find(one => covers(one, line));
    if (group) return group.name;
    const adaptation = sheet.adaptations.find(one => covers(one, line));
    const { classes } = services.plans.current.programme;
    if (!adaptation?.forClass) return adaptation && [...classes.values()].find(({ teaches }) => teaches !== undefined && teaches.name === adaptation.of?.name)?.name;
    return classes.has(adaptation.forClass.name) ? adaptation.forClass.name : undefined;
}

export function sheetAt(uri: string | undefined, services: HaversackServerServices): FileSheet | undefined {
    return uri === undefined ? undefined : services.plans.current.programme.files.get(URI.parse(uri).toString());
}

function covers({ whole }: Declared, line: number): boolean {
    return whole.start.line <= line && line <= whole.end.line;
}
