import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start(); });
afterAll(() => client.stop());

const shake = 'lessons/shake-1.lesson';
const cli = join(import.meta.dirname, '../../.build/cli/haversack.cjs');
const plain = (html: string): string => html.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');

describe('the brief of a week', () => {
    test('has its sections in the order of the week, each with a hash', async () => {
        const answer = await client.brief({ week: 1 });
        expect(answer.sections.map(({ id }) => id)).toEqual(['week', 'fetch', ...answer.sections.map(({ id }) => id).filter(id => ['shelf', 'buy', 'cautions'].includes(id)), 'lesson-listen-1', 'ahead']);
        expect(answer.sections.every(({ html, hash }) => html!.length > 0 && hash.length > 0)).toBe(true);
        expect(answer).toMatchObject({ week: 1, weeks: 9, class: 'attic', classes: [{ name: 'attic', title: 'Saturday group in the attic' }], title: 'The Cupboard Orchestra, week 1' });
        expect(answer.text).toBeUndefined();
    });

    test('sends again only what the preview does not have', async () => {
        const first = await client.brief({ week: 3 });
        const known = Object.fromEntries(first.sections.map(({ id, hash }) => [id, hash]));
        const again = await client.brief({ week: 3, known });
        expect(again.sections).toEqual(first.sections.map(({ id, hash }) => ({ id, hash })));
        const other = await client.brief({ week: 3, known: { ...known, week: 'another' } });
        expect(other.sections.filter(({ html }) => html !== undefined).map(({ id }) => id)).toEqual(['week']);
    });

    test('follows a change: new figures, and only the sections that show them', async () => {
        await client.open(shake);
        const before = await client.brief({ week: 3 });
        expect(plain(before.sections.find(({ id }) => id === 'fetch')!.html!)).toMatch(/Mixing bowls[^,]* 3 ,/);
        const heard = client.heard.length;
        await client.edit(shake, 'mixing-bowl   1 per pair', 'mixing-bowl   2 per pair');
        await client.until('the server to tell of the change', () => client.heard.slice(heard).includes('haversack/changed'));
        const after = await client.brief({ week: 3, known: Object.fromEntries(before.sections.map(({ id, hash }) => [id, hash])) });
        expect(plain(after.sections.find(({ id }) => id === 'fetch')!.html!)).toMatch(/Mixing bowls[^,]* 6 ,/);
        expect(after.sections.find(({ id }) => id === 'ahead')!.html).toBeUndefined();
        await client.edit(shake, 'mixing-bowl   2 per pair', 'mixing-bowl   1 per pair');
    });

    test('is that of the lesson at the cursor, of the file’s lesson, or the first', async () => {
        expect((await client.brief({ uri: client.uri(shake), line: 12 })).week).toBe(3);
        expect((await client.brief({ uri: client.uri('lessons/travel-2.lesson') })).week).toBeGreaterThan(3);
        expect((await client.brief({ uri: client.uri('inventory.kit'), line: 3 })).week).toBe(1);
        expect((await client.brief()).week).toBe(1);
    });

    test('tells where the declaration at the cursor stands, and how many errors the file has', async () => {
        const line = client.at('inventory.kit', 'material |rice').line;
        const { around, problems } = await client.brief({ uri: client.uri('inventory.kit'), line });
        expect(around!.from).toBe(line);
        expect(around!.to).toBeGreaterThan(line + 3);
        expect(problems).toBe(0);
        await client.open('lessons/listen-2.lesson');
        await client.edit('lessons/listen-2.lesson', '    scarf  ', '    scarv  ');
        expect((await client.brief({ uri: client.uri('lessons/listen-2.lesson'), line: 3 })).problems).toBe(1);
        await client.edit('lessons/listen-2.lesson', '    scarv  ', '    scarf  ');
    });

    test.each(['html', 'md', 'json'] as const)('as %s it is the text that the command line writes', async format => {
        const answer = await client.brief({ week: 2, format });
        expect(answer.sections).toEqual([]);
        expect(answer.text).toBe(execFileSync(process.execPath, [cli, 'brief', client.folder, '--week', '2', '--format', format], { encoding: 'utf8' }));
    });
});

describe('refused, in words', () => {
    test.each([
        ['a week past the end', { week: 99 }, 'There is no week 99: the last one is week 9.'],
        ['week 0', { week: 0 }, 'There is no week 0: the last one is week 9.'],
        ['a negative week', { week: -1 }, 'There is no week -1: the last one is week 9.'],
        ['half a week', { week: 1.5 }, 'There is no week 1.5: the last one is week 9.'],
        ['an unknown class', { class: 'nobody' }, "There is no class 'nobody' in this programme. Its classes are attic."]
    ])('%s', async (_, params, refusal) => {
        expect(await client.brief(params)).toEqual({ refusal });
    });

    test('a programme without lessons, and lessons without a course', async () => {
        const empty = await Client.start({ programme: {} });
        expect((await empty.brief()).refusal).toMatch(/^There is no lesson in this folder yet\./);
        await empty.open('untitled:one', 'lesson one "One"\n');
        const { refusal, week } = await empty.brief({ uri: 'untitled:one', line: 0 });
        if (refusal === undefined) expect(week).toBe(1);
        else expect(refusal).toMatch(/course/);
        await empty.stop();
    });

    test('an address that is none of the programme does no harm', async () => {
        expect((await client.brief({ uri: 'http://[broken', line: -5 })).week).toBe(1);
        expect((await client.brief({ uri: client.uri('nothing.lesson'), line: 1e9 })).week).toBe(1);
    });
});
