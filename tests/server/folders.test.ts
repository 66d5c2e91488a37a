import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { Hover, Location, WorkspaceEdit, WorkspaceSymbol } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;
const examples = join(import.meta.dirname, '../../examples');

const kit = (title: string, pack: number): string => `material cup "${title}"\n  consumable\n  pack of ${pack} costs 3.00 EUR\n\nmaterial lid "Lid"\n  reusable\n`;
const lesson = (perPair: number, thing = 'cup'): string => [
    'lesson pour-1 "Pouring"', '  objectives', '    introduces pour', '  materials', `    ${thing} ${perPair} per pair`, '    lid 1 per pair', '  activity pour-it "Pour" 20 min', `    do: Pour from {${thing}} to {${thing}} under the {lid}.`, ''
].join('\n');
const course = (title: string, group: string, learners: number): string => [
    'objective pour "Pour without spilling"', '', `course kitchen "${title}"`, '  unit water "Water"', '    pour-1', '',
    `class ${group} "Group ${group}"`, '  teaches kitchen', `  learners ${learners}`, '  adults 1', '  ages 6 to 8', '  groups of 2', '  starts 2026-09-07', '  ends 2026-12-18', '  meets mon', '  session 50 min', ''
].join('\n');

/** Two editions of one course with the same names: last year's and this year's. */
const editions: Record<string, string> = {
    'last/inventory.kit': kit('Old cup', 10), 'last/pour.lesson': lesson(1), 'last/kitchen.course': course('Kitchen, as it was', 'oaks', 6),
    'this/inventory.kit': kit('New cup', 25), 'this/pour.lesson': lesson(3), 'this/kitchen.course': course('Kitchen', 'elms', 8)
};

const hoverText = async (file: string, marked: string): Promise<string> => JSON.stringify((await client.ask<Hover>('textDocument/hover', file, marked)).contents);

describe('two editions in two folders of one window', () => {
    beforeAll(async () => { client = await Client.start({ programme: editions, folders: ['last', 'this'] }); });
    afterAll(() => client.stop());

    test('nothing counts as declared twice, and everything is found', () => {
        for (const file of Object.keys(editions)) expect(client.problems(file).filter(({ severity }) => severity === 1)).toEqual([]);
    });

    test('a name leads to its own edition', async () => {
        for (const edition of ['last', 'this']) {
            const found = await client.ask<Location[]>('textDocument/definition', `${edition}/pour.lesson`, 'c|up 1 per pair'.replace('1', edition === 'last' ? '1' : '3'));
            expect(JSON.stringify(found)).toContain(`/${edition}/inventory.kit`);
        }
    });

    test('hover tells of its own edition, with figures of its own plan', async () => {
        expect(await hoverText('last/pour.lesson', 'c|up 1')).toMatch(/Old cup.*pack of 10 /);
        expect(await hoverText('this/pour.lesson', 'c|up 3')).toMatch(/New cup.*pack of 25 /);
    });

    test('who uses a thing, and its other name, stay in the edition', async () => {
        const used = await client.ask<Location[]>('textDocument/references', 'this/inventory.kit', 'material c|up', { context: { includeDeclaration: true } });
        expect(used).toHaveLength(4);
        expect(used.every(({ uri }) => uri.includes('/this/'))).toBe(true);
        const edit = await client.ask<WorkspaceEdit>('textDocument/rename', 'this/inventory.kit', 'material c|up', { newName: 'mug' });
        expect(Object.keys(edit.changes ?? {}).sort()).toEqual([client.uri('this/inventory.kit'), client.uri('this/pour.lesson')].sort());
    });

    test('completion offers what its own edition has', async () => {
        await client.open('last/inventory.kit');
        await client.open('this/pour.lesson');
        await client.change('last/inventory.kit', `${editions['last/inventory.kit']}\nmaterial cork "Cork"\n  reusable\n`);
        await client.edit('this/pour.lesson', '    lid 1', '    c\n    lid 1');
        const offered = await client.complete('this/pour.lesson', '    c|\n');
        expect(offered.map(({ label }) => label)).toContain('cup');
        expect(offered.map(({ label }) => label)).not.toContain('cork');
        await client.close('last/inventory.kit');
        await client.close('this/pour.lesson');
        await client.settled();
    });

    test('a name that another edition has may be taken, one of the own may not', async () => {
        await client.writeOutside('last/extra.kit', 'material ladle "Ladle"\n  reusable\n');
        await client.settled();
        const edit = await client.ask<WorkspaceEdit>('textDocument/rename', 'this/inventory.kit', 'material c|up', { newName: 'ladle' });
        expect(Object.keys(edit.changes ?? {})).toHaveLength(2);
        await expect(client.ask('textDocument/rename', 'last/inventory.kit', 'material c|up', { newName: 'ladle' })).rejects.toThrow('There is another material');
        await client.deleteOutside('last/extra.kit');
        await client.settled();
    });

    test('a thing that only the other edition uses is unused, and one that only it has is unknown', async () => {
        await client.writeOutside('this/pour.lesson', lesson(3, 'mug'));
        await client.writeOutside('last/mug.kit', 'material mug "Mug"\n  reusable\n');
        await client.settled();
        expect(client.codes('this/pour.lesson')).toContain('unknown-name');
        await client.until('the cup to be unused', () => client.codes('this/inventory.kit').includes('unused-thing'));
        await client.until('the mug to be unused', () => client.codes('last/mug.kit').includes('unused-thing'));
        expect(client.codes('last/inventory.kit')).not.toContain('unused-thing');
        await client.writeOutside('this/pour.lesson', editions['this/pour.lesson']!);
        await client.deleteOutside('last/mug.kit');
        await client.settled();
        expect(client.codes('this/pour.lesson')).not.toContain('unknown-name');
    });

    test('a brief is of the edition of the file; without a file, of the first with a class or of the class that is named', async () => {
        const titles = async (params: object): Promise<[string, (string | undefined)[]]> => {
            const { title, classes } = await client.brief({ week: 1, ...params });
            return [title, classes.map(({ name }) => name)];
        };
        expect(await titles({ uri: client.uri('last/inventory.kit') })).toEqual(['Kitchen, as it was, week 1', ['oaks']]);
        expect(await titles({ uri: client.uri('this/pour.lesson') })).toEqual(['Kitchen, week 1', ['elms']]);
        expect(await titles({})).toEqual(['Kitchen, as it was, week 1', ['oaks']]);
        expect(await titles({ class: 'elms' })).toEqual(['Kitchen, week 1', ['elms']]);
        // The class was chosen while the other edition was in sight.
        expect(await titles({ uri: client.uri('this/pour.lesson'), class: 'oaks' })).toEqual(['Kitchen, week 1', ['elms']]);
        expect((await client.brief({ uri: client.uri('this/pour.lesson'), class: 'birches' })).refusal).toContain("no class 'birches'");
        const text = async (edition: string): Promise<string> => (await client.brief({ week: 1, uri: client.uri(`${edition}/pour.lesson`), format: 'md' })).text!;
        // 6 learners in pairs: 3 pairs of 1 cup; 8 learners: 4 pairs of 3 cups.
        expect(await text('last')).toMatch(/\*\*3\*\*.*[Oo]ld cup|[Oo]ld cup.*\b3\b/);
        expect(await text('this')).toMatch(/\*\*12\*\*.*[Nn]ew cup|[Nn]ew cup.*\b12\b/);
    });

    test('the symbols of the workspace are those of all editions', async () => {
        const found = await client.connection.sendRequest<WorkspaceSymbol[]>('workspace/symbol', { query: 'pour-1' });
        expect(found.map(({ location }) => location.uri).sort()).toEqual([client.uri('last/pour.lesson'), client.uri('this/pour.lesson')]);
    });

    test('a file that was never saved belongs to none of them', async () => {
        const file = 'untitled:Untitled-1';
        await client.open(file, 'lesson extra\n  materials\n    lid 1 per pair\n    spoon 1 per pair\n\nmaterial spoon\n  reusable\n');
        await client.settled();
        expect(client.problems(file).filter(({ code }) => code === 'unknown-name').map(({ range }) => client.inRange(file, range))).toEqual(['lid']);
        await client.close(file);
        await client.settled();
        expect(client.problems(file)).toEqual([]);
    });

    test('typing in one edition tells nothing new of the other', async () => {
        await client.open('this/pour.lesson');
        const before = client.toldOf('last/');
        await client.edit('this/pour.lesson', 'cup 3 per pair', 'beaker 3 per pair');
        await client.settled();
        await client.until('the cup to be used less', () => client.codes('this/pour.lesson').includes('unknown-name'));
        expect(client.toldOf('last/')).toBe(before);
        await client.close('this/pour.lesson');
        await client.settled();
    });
});

describe('two whole programmes side by side', () => {
    test('each says what it says alone', async () => {
        const briefs = async (one: Client, file: string): Promise<(string | undefined)[]> => {
            const uri = one.uri(file);
            return Promise.all([1, 2, 3].map(async week => (await one.brief({ uri, week, format: 'md' })).text));
        };
        const alone = await Client.start({ programme: join(examples, 'year') });
        const expected = await briefs(alone, 'programme.course');
        const titles = (await alone.brief()).classes;
        await alone.stop();
        const steps = await Client.start();
        const expectedSteps = await briefs(steps, 'programme.course');
        await steps.stop();
        client = await Client.start({ programme: examples, folders: ['first-steps', 'year'] });
        expect(expected[2]!.length).toBeGreaterThan(1000);
        expect(await briefs(client, 'year/programme.course')).toEqual(expected);
        expect(await briefs(client, 'first-steps/programme.course')).toEqual(expectedSteps);
        expect((await client.brief({ uri: client.uri('year/programme.course') })).classes).toEqual(titles);
        expect([...client.allProblems()].filter(([, problems]) => problems.some(({ severity }) => severity !== 4))).toEqual([]);
        await client.stop();
    // Three servers after one another.
    }, 90_000);
});

describe('folders that are opened and closed', () => {
    afterEach(() => client.stop());

    test('a second folder is read when it is opened, and forgotten with its problems when it is closed', async () => {
        client = await Client.start({ programme: { ...editions, 'this/pour.lesson': lesson(3, 'mug') }, folders: ['last'] });
        expect(client.problems('this/pour.lesson')).toEqual([]);
        await client.changeFolders(['this'], []);
        expect(client.codes('this/pour.lesson')).toContain('unknown-name');
        expect((await client.brief({ week: 1, uri: client.uri('this/pour.lesson') })).title).toBe('Kitchen, week 1');
        await client.changeFolders([], ['this']);
        expect(client.problems('this/pour.lesson')).toEqual([]);
        await client.until('the files to be forgotten', () => client.problems('this/kitchen.course').length === 0);
        expect((await client.brief({ week: 1 })).title).toBe('Kitchen, as it was, week 1');
        expect(await client.connection.sendRequest('workspace/symbol', { query: 'pour-1' })).toHaveLength(1);
    });

    test('a file that is open stays when its folder is closed, by itself', async () => {
        client = await Client.start({ programme: editions, folders: ['last', 'this'] });
        await client.open('this/pour.lesson');
        await client.changeFolders([], ['this']);
        // One folder is left: what lies outside of it counts there for as long as it is open.
        await client.until('the lesson to be declared twice', () => client.codes('this/pour.lesson').includes('declared-twice') || client.codes('last/pour.lesson').includes('declared-twice'));
        await client.close('this/pour.lesson');
        await client.settled();
        expect(client.problems('this/pour.lesson')).toEqual([]);
        await client.until('the lesson to be declared once', () => !client.codes('last/pour.lesson').includes('declared-twice'));
    });

    test('a folder within another belongs to the widest, which takes it in and lets it go', async () => {
        const parts: Record<string, string> = { 'all/inventory.kit': kit('Cup', 10), 'all/unit/pour.lesson': lesson(1) };
        client = await Client.start({ programme: parts, folders: ['all/unit'] });
        expect(client.codes('all/unit/pour.lesson')).toContain('unknown-name');
        await client.changeFolders(['all'], []);
        await client.until('the names to be found', () => !client.problems('all/unit/pour.lesson').some(({ message }) => JSON.stringify(message).includes("'cup'")));
        expect(await client.ask<Location[]>('textDocument/definition', 'all/unit/pour.lesson', 'c|up 1')).toHaveLength(1);
        await client.changeFolders([], ['all']);
        await client.until('the names to be lost', () => client.problems('all/unit/pour.lesson').some(({ message }) => JSON.stringify(message).includes("'cup'")));
        expect(client.problems('all/inventory.kit')).toEqual([]);
    });

    test('files outside of every folder are one programme where no folder or several are open', async () => {
        client = await Client.start({ programme: { ...editions, 'beside/cup.kit': 'material ladle\n  reusable\n', 'beside/stir.lesson': 'lesson stir\n  materials\n    ladle 1 per pair\n' }, folders: ['last', 'this'] });
        await client.open('beside/cup.kit');
        await client.open('beside/stir.lesson');
        await client.settled();
        expect(client.codes('beside/stir.lesson')).not.toContain('unknown-name');
        await client.writeOutside('last/stir.lesson', 'lesson stir-last\n  materials\n    ladle 1 per pair\n');
        await client.settled();
        expect(client.codes('last/stir.lesson')).toContain('unknown-name');
        await client.changeFolders([], ['this']);
        await client.until('the ladle to be found from the only folder', () => !client.codes('last/stir.lesson').includes('unknown-name'));
        await client.changeFolders(['this'], []);
        await client.until('the ladle to be foreign again', () => client.codes('last/stir.lesson').includes('unknown-name'));
    });
});
