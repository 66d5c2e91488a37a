/** What the preview's requests have in common: where the cursor is, for which class, and what is on the page already. */
import { URI } from 'langium';
import { declarationsOf } from '@haversack/language/checks/programme-view';
import type { ProgrammeKey } from '@haversack/language/linking/programmes';
import type { Programme } from '@haversack/language/sheets/programme';
import type { Declared, FileSheet } from '@haversack/language/sheets/sheet';
import type { BriefRefusal, BriefSection } from '../protocol/pages.js';
import type { Plans } from './plans.js';
import type { HaversackServerServices } from './services.js';

interface AskedFor {
    uri?: string;
    line?: number;
    class?: string;
    lesson?: string;
}

/** The programme of the file that is asked about; without one that belongs to any, the first that has the class or lesson, or any class at all. */
export function programmeOf({ uri, class: className, lesson }: AskedFor, { programmes, sheets }: HaversackServerServices): ProgrammeKey {
    const { all } = programmes;
    const around = uri === undefined ? undefined : programmes.of(uri);
    if (around !== undefined && all.includes(around)) return around;
    const first = (fits: (programme: Programme) => boolean): ProgrammeKey | undefined => all.find(key => fits(sheets.viewAt(key).programme));
    return first(({ classes, lessons }) => (className !== undefined && classes.has(className)) || (className === undefined && lesson !== undefined && lessons.has(lesson)))
        ?? first(({ classes }) => classes.size > 0) ?? all[0]!;
}

/** The plans of that programme. */
export function plansFor(asked: AskedFor, services: HaversackServerServices): Plans {
    return services.plans.at(programmeOf(asked, services));
}

/** The class that is named; undefined where it is one of another programme, which somebody chose before the file. */
export function classNamed({ uri, class: className }: AskedFor, plans: Plans, { programmes, sheets }: HaversackServerServices): string | undefined {
    const isElsewhere = (name: string): boolean => programmes.all.some(key => sheets.viewAt(key).programme.classes.has(name));
    return className !== undefined && uri !== undefined && programmes.areSeveral && !plans.current.programme.classes.has(className) && isElsewhere(className) ? undefined : className;
}

export function unknownClass(name: string | undefined, plans: Plans): BriefRefusal | undefined {
    if (name === undefined || plans.current.programme.classes.has(name)) return undefined;
    const classes = plans.classes();
    return { refusal: `There is no class '${name}' in this programme.${classes.length > 0 ? ` Its classes are ${classes.map(one => one.name).join(', ')}.` : ''}` };
}

/** The sections with their html only where the preview has another text. */
export function withoutKnown(sections: readonly Required<BriefSection>[], known: Record<string, string> = {}): BriefSection[] {
    return sections.map(({ id, html, hash }) => (known[id] === hash ? { id, hash } : { id, hash, html }));
}

/** The folder that a whole page names its files from, where the programme has one. */
export function folderOf(asked: AskedFor, services: HaversackServerServices): string | undefined {
    return programmeOf(asked, services) || undefined;
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
    const { classes } = services.sheets.viewOf(sheet.uri).programme;
    if (!adaptation?.forClass) return adaptation && [...classes.values()].find(({ teaches }) => teaches !== undefined && teaches.name === adaptation.of?.name)?.name;
    return classes.has(adaptation.forClass.name) ? adaptation.forClass.name : undefined;
}

export function sheetAt(uri: string | undefined, services: HaversackServerServices): FileSheet | undefined {
    return uri === undefined ? undefined : services.sheets.viewOf(uri).programme.files.get(URI.parse(uri).toString());
}

function covers({ whole }: Declared, line: number): boolean {
    return whole.start.line <= line && line <= whole.end.line;
}
