import { EmptyFileSystem, URI } from 'langium';
import { allCodes } from './checks/all-checks.js';
import type { Explained } from './checks/check.js';
import { cautionKinds, deferral } from './facts/cautions.js';
import { statements, statementsIn, type Statement } from './facts/statements.js';
import { units } from './facts/units.js';
import { createHaversackServices } from './module.js';
import { decisions, introduction } from './reference-words.js';

/** The language reference as Markdown, from the tables that the tools themselves read. */
export async function referenceText(): Promise<string> {
    const parts = [
        '<!-- Made by `npm run reference` from the tables in language/. Change those, not this file. -->',
        introduction, statementPages(), unitPage(), cautionPage(), decisions, await codePages()
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

async function codePages(): Promise<string> {
    const titles = await fixTitles();
    const pages = allCodes.map(explained => codePage(explained, titles.get(explained.code) ?? []));
    const list = table(['Code', 'What it tells of', 'Severity'], allCodes.map(({ code: name, title, severity }) => [`[${name}](#${name})`, title, severity]));
    return `## Every problem\n\nA problem has a code that never changes and a severity that settings can change: an *error* cannot be worked with, a *warning* is very likely a slip, *information* is worth knowing, a *hint* is quiet. In a lesson marked \`draft\`, what is only missing so far is a hint. A line that cannot be read has one message of its own, and what it names is not called unused or missing elsewhere.\n\n${list}\n\n${pages.join('\n\n')}`;
}

function codePage({ code: name, severity, title, explains, wrong, right }: Explained, fixes: readonly string[]): string {
    const lines = [`### ${name}`, `**${title}** (${severity})`, explains];
    if (wrong !== '') lines.push(`Wrong:\n\n${fence(wrong)}`, `Right:\n\n${fence(right)}`);
    if (fixes.length > 0) lines.push(`Quick fixes: ${fixes.map(fix => `*${fix}*`).join('; ')}.`);
    return lines.join('\n\n');
}

/** What the fixes of each wrong example are called: the checks are asked, so that the page cannot claim what they do not offer. */
async function fixTitles(): Promise<Map<string, string[]>> {
    const titles = new Map<string, string[]>();
    for (const { code: name, wrong } of allCodes) {
        const { shared, haversack } = createHaversackServices(EmptyFileSystem);
        const document = shared.workspace.LangiumDocumentFactory.fromString(wrong, URI.parse('file:///example.course'));
        shared.workspace.LangiumDocuments.addDocument(document);
        await shared.workspace.DocumentBuilder.build([document], { validation: true });
        const problems = haversack.validation.DocumentValidator.lastProblems(document);
        const own = problems.filter(problem => problem.code === name).flatMap(({ fixes }) => fixes ?? []);
        titles.set(name, [...new Set(own.map(({ title }) => title))]);
    }
    return titles;
}

const article = (word: string): string => (/^[aeio]/.test(word) ? 'an' : 'a');
const code = (text: string): string => `\`${text}\``;
const fence = (text: string): string => `\`\`\`haversack\n${text.trimEnd()}\n\`\`\``;
const cell = (text: string): string => text.replace(/\|/g, '\\|').replace(/\n/g, ' ');

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
    const line = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;
    return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n');
}
