/**
 * Problems for code hosts, held against the rules of SARIF 2.1.0 (OASIS Standard, with errata 01: numbers of sections stand beside each rule).
 * The log is read back by a reader of its own, which counts lines and makes edits by itself.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { allCodes } from '@haversack/language/checks/all-checks';
import { version } from '@haversack/server/version';
import { allPlanChecks } from '@haversack/server/plan-checks/all-plan-checks';
import serverPackage from '../../server/package.json' with { type: 'json' };
import { firstSteps, folder, haversack } from '../cli/run.js';

interface Region { startLine: number; startColumn: number; endLine: number; endColumn: number }
interface Location { uri: string; uriBaseId?: string; index?: number }
interface Message { text: string }
interface Result {
    ruleId: string;
    ruleIndex: number;
    level: string;
    message: Message;
    locations: { physicalLocation: { artifactLocation: Location; region: Region } }[];
    relatedLocations?: { id: number; message: Message; physicalLocation: { artifactLocation: Location; region: Region } }[];
    fixes?: { description: Message; artifactChanges: { artifactLocation: Location; replacements: { deletedRegion: Region; insertedContent?: Message }[] }[] }[];
}
interface Log {
    $schema: string;
    version: string;
    runs: [{
        tool: { driver: { name: string; semanticVersion: string; rules: { id: string; shortDescription: Message; fullDescription: Message; help: Message & { markdown: string }; defaultConfiguration: { level: string } }[] } };
        invocations: { executionSuccessful: boolean }[];
        columnKind: string;
        originalUriBaseIds: Record<string, { uri?: string }>;
        artifacts: { location: Location }[];
        results: Result[];
    }];
}

const kit = 'material drum "A drum"\n  reusable\n  from kit\n  counted in pair / pairs\n\nmaterial drum\n  reusable\n';
/** Characters beyond the sixteen-bit plane before a problem, both kinds of line ends, a brace and something like a link in a name's place. */
const lesson = 'lesson a "😀 Drums"\r\n  about: 🥁🥁 Play the {drumm} now.\r\n  materials\r\n    drum\r\n    tambour 1 per pair in kit\r\n  activity play 10 min\r\n    do: Beat {Two Words} and {[x](javascript:alert)}.\r\n';

async function checked(files: Record<string, string>): Promise<{ desk: string; log: Log; listed: { file: string; line: number; column: number; severity: string; code: string; message: string; fixes: string[] }[]; code: number | null }> {
    const desk = folder({});
    for (const [name, text] of Object.entries(files)) writeFileSync(join(desk, name), text);
    const { out, code } = await haversack(['check', '.', '--format', 'sarif', '--today', '2026-01-01'], desk);
    const json = await haversack(['check', '.', '--format', 'json', '--today', '2026-01-01'], desk);
    return { desk, log: JSON.parse(out) as Log, listed: (JSON.parse(json.out) as { problems: never[] }).problems, code };
}

const files = { 'a b.kit': kit, 'a.lesson': lesson };

/** A message as a viewer shows it (3.11.5). */
const shown = ({ text }: Message): string => {
    expect(text.replaceAll('{{', '').replaceAll('}}', '')).not.toMatch(/[{}]/);
    return text.replaceAll('{{', '{').replaceAll('}}', '}');
};

/** The offset of a place in a text, lines and UTF-16 columns from 1 (3.30.2, 3.14.27). */
function offset(text: string, line: number, column: number): number {
    let at = 0;
    for (let passed = 1; passed < line; passed++) {
        const next = /\r\n|\r|\n/.exec(text.slice(at));
        if (!next) throw new Error(`There is no line ${line}.`);
        at += next.index + next[0].length;
    }
    return at + column - 1;
}

describe('a log', () => {
    test('is one run of a named version of the format', async () => {
        const { log } = await checked(files);
        expect(log).toMatchObject({ $schema: expect.stringContaining('sarif-schema-2.1.0.json') as unknown, version: '2.1.0' });
        const [run] = log.runs;
        expect(run.invocations).toEqual([{ executionSuccessful: true }]);
        expect(run.columnKind).toBe('utf16CodeUnits');
        expect(run.tool.driver).toMatchObject({ name: 'Haversack', semanticVersion: serverPackage.version });
        expect(version).toBe(serverPackage.version);
    });

    test('explains every code once (3.19.23, 3.49)', async () => {
        const { rules } = (await checked(files)).log.runs[0].tool.driver;
        expect(rules.map(({ id }) => id)).toEqual([...allCodes, ...allPlanChecks].map(({ code }) => code));
        expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
        for (const { shortDescription, fullDescription, help, defaultConfiguration } of rules) {
            for (const text of [shortDescription, fullDescription, help].map(shown)) expect(text).not.toBe('');
            expect(help.markdown.split('```').length % 2).toBe(1);
            expect(['error', 'warning', 'note']).toContain(defaultConfiguration.level);
        }
    });

    test('names files below the folder in which it was made, and not that folder (3.4.3, 3.4.4, 3.14.14)', async () => {
        const { log, desk } = await checked(files);
        const [run] = log.runs;
        expect(run.artifacts.map(({ location }) => location)).toEqual([{ uri: 'a%20b.kit', uriBaseId: 'SRCROOT', index: 0 }, { uri: 'a.lesson', uriBaseId: 'SRCROOT', index: 1 }]);
        expect(run.originalUriBaseIds.SRCROOT).toBeDefined();
        expect(run.originalUriBaseIds.SRCROOT!.uri).toBeUndefined();
        expect(JSON.stringify(log)).not.toContain(desk);
    });

    test('names a file elsewhere by its whole address, without a base', async () => {
        const desk = folder({});
        const elsewhere = folder({ 'a.lesson': 'lesson a\n  follows nowhere\n' });
        const { out } = await haversack(['check', elsewhere, '--format', 'sarif'], desk);
        const [run] = (JSON.parse(out) as Log).runs;
        expect(run.artifacts[0]!.location.uri).toMatch(/^file:\/\/\/.*\/a\.lesson$/);
        expect(run.artifacts[0]!.location.uriBaseId).toBeUndefined();
    });

    test('tells each problem as the list does: rule, level, place and words (3.27)', async () => {
        const { log, listed, code } = await checked(files);
        const [{ results, artifacts, tool: { driver: { rules } } }] = log.runs;
        const levels: Record<string, string> = { error: 'error', warning: 'warning', information: 'note', hint: 'note' };
        expect(code).toBe(1);
        expect(listed.length).toBeGreaterThan(4);
        expect(results.map(({ ruleId, level, message, locations, fixes = [] }) => {
            expect(locations).toHaveLength(1);
            const { artifactLocation, region } = locations[0]!.physicalLocation;
            expect(artifacts[artifactLocation.index!]!.location).toEqual(artifactLocation);
            return { file: decodeURIComponent(artifactLocation.uri), line: region.startLine, column: region.startColumn, level, code: ruleId, message: shown(message), fixes: fixes.map(({ description }) => shown(description)) };
        })).toEqual(listed.map(({ file, line, column, severity, code: ruleId, message, fixes }) => ({ file, line, column, level: levels[severity], code: ruleId, message: message.replaceAll('](', '] ('), fixes })));
        for (const { ruleId, ruleIndex } of results) expect(rules[ruleIndex]!.id).toBe(ruleId);
    });

    test('marks just what is wrong, behind characters of two code units too (3.30)', async () => {
        const { log } = await checked(files);
        const marked = log.runs[0].results.filter(({ message }) => message.text.includes("'drumm'") || message.text.includes('drumm')).map(({ locations: [place] }) => {
            const { startLine, startColumn, endLine, endColumn } = place!.physicalLocation.region;
            return lesson.slice(offset(lesson, startLine, startColumn), offset(lesson, endLine, endColumn));
        });
        expect(marked).toHaveLength(1);
        expect(marked[0]).toMatch(/^\{?drumm\}?$/);
    });

    test('says where else to look, by numbers of their own (3.28.2)', async () => {
        const { log } = await checked(files);
        const related = log.runs[0].results.flatMap(({ relatedLocations = [] }) => relatedLocations.length > 0 ? [relatedLocations] : []);
        expect(related.length).toBeGreaterThan(0);
        for (const places of related) {
            expect(places.map(({ id }) => id)).toEqual(places.map((_, index) => index + 1));
            for (const { message } of places) expect(shown(message)).not.toBe('');
        }
    });

    test('gives mends that mend, made by nothing but what it says (3.55 to 3.57)', async () => {
        const { log } = await checked(files);
        const result = log.runs[0].results.find(({ ruleId, message }) => ruleId === 'unknown-name' && message.text.includes('drumm'))!;
        const fix = result.fixes!.find(({ description }) => description.text.includes("'drum'"))!;
        const mended: Record<string, string> = { ...files };
        for (const { artifactLocation, replacements } of fix.artifactChanges) {
            const name = decodeURIComponent(artifactLocation.uri);
            for (const { deletedRegion: { startLine, startColumn, endLine, endColumn }, insertedContent } of [...replacements].reverse()) {
                const text = mended[name]!;
                mended[name] = text.slice(0, offset(text, startLine, startColumn)) + (insertedContent?.text ?? '') + text.slice(offset(text, endLine, endColumn));
            }
        }
        expect(mended['a.lesson']).toContain('Play the {drum} now.');
        expect((await checked(mended)).log.runs[0].results.some(({ message }) => message.text.includes('drumm'))).toBe(false);
    });

    test('holds no link that leads anywhere (3.11.6)', async () => {
        const { log } = await checked(files);
        const texts: string[] = [];
        JSON.stringify(log.runs[0].results, (key, value: unknown) => {
            if (key === 'text' && typeof value === 'string') texts.push(value);
            return value;
        });
        expect(texts.filter(text => /\[[^\]]*\]\(/.test(text))).toEqual([]);
    });

    test('is the same for the same files, and empty of results where nothing is wrong', async () => {
        expect((await checked(files)).log).toEqual((await checked(files)).log);
        const { out, code } = await haversack(['check', firstSteps, '--format', 'sarif', '--today', '2026-01-01']);
        expect(code).toBe(0);
        expect((JSON.parse(out) as Log).runs[0].results.filter(({ level }) => level !== 'note')).toEqual([]);
    });
});
