import { EmptyFileSystem, URI } from 'langium';
import { allCodes } from './checks/all-checks.js';
import { AttachmentStore } from './attachments/attachment-store.js';
import { memoryReader } from './attachments/memory-reader.js';
import type { Explained, Fix, Problem } from './checks/check.js';
import { cautionKinds, deferral } from './facts/cautions.js';
import { statements, statementsIn, type Statement } from './facts/statements.js';
import { units } from './facts/units.js';
import { createHaversackServices } from './module.js';
import { pictureKinds } from './pictures/read-picture.js';
import { decisions, introduction } from './reference-words.js';

/** Codes beyond those of the language, and who finds such problems in their examples. */
export interface FurtherCodes {
    codes: readonly Explained[];
    problemsIn(wrong: string, explained: Explained): Promise<readonly Problem[]>;
}

/** The language reference as Markdown, from the tables that the tools themselves read. */
export async function referenceText(further: FurtherCodes): Promise<string> {
    const parts = [
        '<!-- Made by `npm run reference` from the tables in language/. Change those, not this file. -->',
        introduction, statementPages(), unitPage(), cautionPage(), picturePage(), decisions, await codePages(further)
    ];
    return `${parts.map(part => part.trim()).join('\n\n')}\n`;
}

const partsOfLessons = ['warm-up', 'activity', 'game in a lesson', 'practice', 'checkpoint'];

function statementPages(): string {
    const inEveryPart = (statement: Statement): boolean => partsOfLessons.every(part => statement.within.includes(part));
    const blocks = [...new Set(statements.flatMap(({ within }) => within))].filter(block => block !== 'file' && !partsOfLessons.includes(block));
    const pages = [
        '## Every statement',
        'Each block below lists the lines that may stand in it, with an example of each and what it says.',
        page('At the left edge of a file', statementsIn('file')),
        ...blocks.flatMap(block => {
            const own = page(`In ${article(block)} \`${block}\` block`, statementsIn(block));
            return block === 'lesson' ? [own, ...partPages(inEveryPart)] : [own];
        })
    ];
    return pages.join('\n\n');
}

function partPages(inEveryPart: (statement: Statement) => boolean): string[] {
    const own = partsOfLessons.map(part => ({ part, lines: statementsIn(part).filter(statement => !inEveryPart(statement)) }));
    return [
        page('In every part of a lesson: `warm-up`, `activity`, `game`, `practice` and `checkpoint`', statements.filter(inEveryPart)),
        ...own.filter(({ lines }) => lines.length > 0).map(({ part, lines }) => page(`Also in a \`${part}\` block`, lines))
    ];
}

function page(title: string, lines: readonly Statement[]): string {
    return `### ${title}\n\n${table(['Line', 'What it says'], lines.map(({ example, says }) => [code(example), says]))}`;
}

function unitPage(): string {
    const rows = units.map(({ symbol, plural, spellings, title, dimension, factor }) => [
        code(symbol), [...new Set([plural, ...spellings])].filter(word => word !== symbol).join(', '), title, dimension, dimension === 'sheet' ? factor : `${factor} ${base[dimension]}`
    ]);
    return `## Units\n\nA unit can be turned into any other of its kind; the sizes are exact (NIST SP 811, NIST Handbook 44). Things that are not measured are counted: in pieces, or in a word of their own such as \`counted in set / sets\`.\n\n${table(['Unit', 'Also read', 'In full', 'Kind', 'One is'], rows)}`;
}

const base = { mass: 'g', volume: 'ml', length: 'mm', sheet: '' } as const;

function cautionPage(): string {
    const rows = cautionKinds.map(({ kind, title, text }) => [code(kind), title, text]);
    return `## Cautions\n\nEach kind of caution brings its usual words into the brief, beside the step that uses the thing. They are reminders, not a safety assessment. ${deferral}\n\n${table(['Kind', 'Title', 'The usual caution'], rows)}`;
}

function picturePage(): string {
    const rows = pictureKinds.map(({ examples, says, settings }) => [examples.map(example => code(`show ${example}`)).join('<br>'), says, settings]);
    return `## Pictures\n\nA \`show\` line in a part of a lesson or in a game draws a picture, with the same told in words below it; a title in quotation marks may follow. What does not fit a picture is told where it stands, with what would fit.\n\n${table(['Line', 'What it shows', 'What may stand there'], rows)}`;
}

async function codePages(further: FurtherCodes): Promise<string> {
    const codes = [...allCodes, ...further.codes];
    const titles = new Map([...await fixTitles({ codes: allCodes, problemsIn }), ...await fixTitles(further)]);
    const pages = codes.map(explained => codePage(explained, titles.get(explained.code) ?? []));
    const list = table(['Code', 'What it tells of', 'Severity'], codes.map(({ code: name, title, severity }) => [`[${name}](#${name})`, title, severity]));
    return `## Every problem\n\nA problem has a code that never changes and a severity that settings can change: an *error* cannot be worked with, a *warning* is very likely a slip, *information* is worth knowing, a *hint* is quiet. In a lesson marked \`draft\`, what is only missing so far is a hint. A line that cannot be read has one message of its own, and what it names is not called unused or missing elsewhere. The last ones, from \`${further.codes[0]!.code}\` on, need the plan: they are looked for when typing rests, for every class that says what it is taught, how many children it has, when it starts and on which days it meets, and they tell of nothing that lies before today.\n\n${list}\n\n${pages.join('\n\n')}`;
}

function codePage({ code: name, severity, title, explains, wrong, right, former, beside, on }: Explained, fixes: readonly string[]): string {
    const lines = [`### ${name}`, `**${title}** (${severity})`, explains];
    if (wrong !== '') lines.push(`Wrong${on === undefined ? '' : `, read on ${on}`}:\n\n${fence(wrong)}`, `Right:\n\n${fence(right)}`);
    if (former !== undefined) lines.push(`Edition 1 said:\n\n${fence(former)}`);
    for (const [path, text] of Object.entries(beside ?? {})) lines.push(`With \`${path}\`:\n\n${fence(text, 'text')}`);
    if (fixes.length > 0) lines.push(`Quick fixes: ${fixes.map(fix => `*${fix}*`).join('; ')}.`);
    return lines.join('\n\n');
}

/** What the fixes of each wrong example are called: the checks are asked, so that the page cannot claim what they do not offer. */
async function fixTitles({ codes, problemsIn: find }: FurtherCodes): Promise<Map<string, string[]>> {
    const titles = new Map<string, string[]>();
    for (const explained of codes) {
        const problems = await find(explained.wrong, explained);
        const own = problems.filter(problem => problem.code === explained.code).flatMap(({ fixes }): readonly Fix[] => fixes ?? []);
        titles.set(explained.code, [...new Set(own.map(({ title }) => title))]);
    }
    return titles;
}

async function problemsIn(wrong: string, { beside }: Explained): Promise<readonly Problem[]> {
    const files = new Map(Object.entries(beside ?? {}).map(([path, text]) => [`file:///programme/${path}`, text]));
    const { shared, haversack } = createHaversackServices(EmptyFileSystem, new AttachmentStore(memoryReader(files)));
    const document = shared.workspace.LangiumDocumentFactory.fromString(wrong, URI.parse('file:///programme/example.course'));
    shared.workspace.LangiumDocuments.addDocument(document);
    await shared.workspace.DocumentBuilder.build([document], { validation: true });
    return haversack.validation.DocumentValidator.lastProblems(document);
}

const article = (word: string): string => (/^[aeio]/.test(word) ? 'an' : 'a');
const code = (text: string): string => `\`${text}\``;
const fence = (text: string, language = 'haversack'): string => `\`\`\`${language}\n${text.trimEnd()}\n\`\`\``;
const cell = (text: string): string => text.replace(/\|/g, '\\|').replace(/\n/g, ' ');

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
    const line = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;
    return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n');
}
