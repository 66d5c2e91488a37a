import { textEditsFor } from '@haversack/language/checks/apply-edits';
import type { Edit, Explained, Fix, Problem } from '@haversack/language/checks/check';
import type { Range } from '@haversack/language/sheets/sheet';

export interface SarifOptions {
    /** Of the program that found the problems. */
    version: string;
    /** Every code that a problem can have. */
    rules: readonly Explained[];
    /** Address of the folder that a code host takes for the root; places in it are told relative to it. */
    root: string;
    /** Addresses of the files that were looked at. */
    files: readonly string[];
    textOf(uri: string): string | undefined;
}

/** How a severity is called there (SARIF 2.1.0, 3.27.10). */
const levels = { error: 'error', warning: 'warning', information: 'note', hint: 'note' } as const;

/** What stands for the root, whose own address is not told: nobody need know where on a machine it lies (3.14.14). */
const rootId = 'SRCROOT';

/**
 * Problems in the Static Analysis Results Interchange Format (OASIS SARIF 2.1.0), which code hosts show beside the lines. Lines and columns count from 1
 * in UTF-16 code units; mends are its fixes.
 */
export function problemsSarif(problems: readonly Problem[], { version, rules, root, files, textOf }: SarifOptions): string {
    const place = placesIn(root, files);
    const numbers = new Map(rules.map(({ code }, number) => [code, number]));
    const results = problems.map(({ code, severity, message, uri, at, related = [], fixes = [] }) => ({
        ruleId: code,
        ...(numbers.has(code) ? { ruleIndex: numbers.get(code) } : {}),
        level: levels[severity],
        message: plain(message),
        locations: [{ physicalLocation: { artifactLocation: place(uri), region: regionOf(at) } }],
        ...(related.length > 0 ? { relatedLocations: related.map((one, id) => ({ id: id + 1, message: plain(one.message), physicalLocation: { artifactLocation: place(one.place.uri), region: regionOf(one.place.range) } })) } : {}),
        ...(fixes.length > 0 ? { fixes: fixes.map(fix => asFix(fix, place, textOf)) } : {})
    }));
    return `${JSON.stringify({
        $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
        version: '2.1.0',
        runs: [{
            tool: { driver: { name: 'Haversack', semanticVersion: version, rules: rules.map(asRule) } },
            invocations: [{ executionSuccessful: true }],
            columnKind: 'utf16CodeUnits',
            defaultEncoding: 'utf-8',
            originalUriBaseIds: { [rootId]: { description: plain('The folder in which haversack was started.') } },
            artifacts: files.map(uri => ({ location: place(uri), roles: ['analysisTarget'] })),
            results
        }]
    }, undefined, 2)}\n`;
}

type Locate = (uri: string) => { uri: string; uriBaseId?: string; index?: number };

/** Where a file lies: below the root, or else by its whole address (3.4.4). */
function placesIn(root: string, files: readonly string[]): Locate {
    const folder = root.endsWith('/') ? root : `${root}/`;
    const numbers = new Map(files.map((uri, number) => [uri, number]));
    return uri => ({
        ...(uri.startsWith(folder) ? { uri: uri.slice(folder.length), uriBaseId: rootId } : { uri }),
        ...(numbers.has(uri) ? { index: numbers.get(uri) } : {})
    });
}

function asRule({ code, title, explains, severity, wrong, right }: Explained): object {
    const examples = wrong === '' ? [] : ['Wrong:', fenced(wrong), 'Right:', fenced(right)];
    return {
        id: code,
        shortDescription: plain(title),
        fullDescription: plain(explains),
        help: { ...plain(explains), markdown: doubled([explains, ...examples].join('\n\n')) },
        defaultConfiguration: { level: levels[severity] }
    };
}

/** Edits of one file go together (3.56); the range of an insertion is worked out from the file's text. */
function asFix({ title, edits }: Fix, place: Locate, textOf: SarifOptions['textOf']): object {
    const addresses = [...new Set(edits.map(({ uri }) => uri))];
    const replacements = (uri: string): object[] => textEditsFor(textOf(uri) ?? '', edits.filter((edit: Edit) => edit.uri === uri))
        .map(({ range, newText }) => ({ deletedRegion: regionOf(range), ...(newText === '' ? {} : { insertedContent: { text: newText } }) }));
    return { description: plain(title), artifactChanges: addresses.map(uri => ({ artifactLocation: place(uri), replacements: replacements(uri) })) };
}

/** The end column is that behind the last character (3.30.8). */
function regionOf({ start, end }: Range): object {
    return { startLine: start.line + 1, startColumn: start.character + 1, endLine: end.line + 1, endColumn: end.character + 1 };
}

/** Text of which nothing is taken for a link to somewhere (3.11.6). */
function plain(text: string): { text: string } {
    return { text: doubled(text.replaceAll('](', '] (')) };
}

/** A brace alone would begin a placeholder (3.11.5). */
function doubled(text: string): string {
    return text.replace(/[{}]/g, '$&$&');
}

function fenced(lines: string): string {
    return `\`\`\`\n${lines}\n\`\`\``;
}
