import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { changesRequest, termRequest, type BriefRefusal, type ChangesAnswer, type ChangesParams, type TermAnswer } from '../../server/protocol/pages.js';
import { Client } from './client.js';
import { planProgramme } from './plan-programme.js';

const changesFile = `adaptation harbour-days "Harbour days" of weighing for harbour
  skip lesson weigh-1 because: Covered at the market visit, with {sand}.
  retime activity weigh-2.three-bags to 10 min
`;
const programme = { ...planProgramme, 'harbour.course': changesFile };

let client: Client;
beforeAll(async () => { client = await Client.start({ programme, today: '2026-09-01' }); });
afterAll(() => client.stop());

const ask = (params: ChangesParams = {}, of = client): Promise<ChangesAnswer & Partial<BriefRefusal>> => of.connection.sendRequest(changesRequest, params);
const html = (answer: { sections: ChangesAnswer['sections'] }, id: string): string => answer.sections.find(section => section.id === id)?.html ?? '';
const plain = (text: string): string => text.replace(/<[^>]+>/g, '').replace(/\s+/g, ' ');

describe('the changes of a class', () => {
    test('come in sections: each change with its reason and what it breaks', async () => {
        const answer = await ask({ class: 'harbour' });
        expect(answer.sections.map(({ id }) => id)).toEqual(['changes', 'changes-made', 'changes-lessons', 'changes-supplies']);
        expect(answer).toMatchObject({ class: 'harbour', adapted: true, title: 'What is changed: Weighing, Harbour co-op', classes: [{ name: 'harbour' }, { name: 'millpond' }] });
        const made = html(answer, 'changes-made');
        expect(plain(made)).toMatch(/“Two bags” is left out\..*Because.*Covered at the market visit, with fine sand\..*Lost.*“Compare two masses”/);
        expect(made).toContain(`data-uri="${client.uri('harbour.course')}" data-line="1"`);
        expect(plain(html(answer, 'changes'))).toContain('10 minutes of lessons instead of 35.');
    });

    test('are calmly none for a class that is taught the course as it is written', async () => {
        const answer = await ask({ class: 'millpond' });
        expect(answer).toMatchObject({ class: 'millpond', adapted: false, title: 'Nothing is changed: Weighing, Millpond co-op' });
        expect(answer.sections.map(({ id }) => id)).toEqual(['changes']);
        expect(plain(html(answer, 'changes'))).toContain('No adaptation applies to “Millpond co-op”');
        expect(html(answer, 'changes')).toContain('adaptation millpond-changes of weighing for millpond\n  skip lesson weigh-1 because:');
    });

    test('are those of the adaptation or the class at the cursor, else of the class that was shown', async () => {
        const at = { uri: client.uri('harbour.course'), line: 2 };
        expect((await ask(at)).class).toBe('harbour');
        expect((await ask({ ...at, otherwise: 'millpond' })).class).toBe('harbour');
        expect((await ask({ ...at, class: 'millpond' })).class).toBe('millpond');
        const millpond = planProgramme['weighing.course'].split('\n').findIndex(line => line.startsWith('class millpond'));
        expect((await ask({ uri: client.uri('weighing.course'), line: millpond + 1 })).class).toBe('millpond');
        expect((await ask({ uri: client.uri('weigh.lesson'), line: 0, otherwise: 'millpond' })).class).toBe('millpond');
        expect((await ask(at)).around).toEqual({ from: 0, to: 2 });
    });

    test('are sent again only where they differ', async () => {
        const first = await ask({ class: 'harbour' });
        const known = Object.fromEntries(first.sections.map(({ id, hash }) => [id, hash]));
        expect((await ask({ class: 'harbour', known })).sections).toEqual(first.sections.map(({ id, hash }) => ({ id, hash })));
        expect((await ask({ class: 'harbour', known: { ...known, changes: 'another' } })).sections.filter(section => section.html !== undefined).map(({ id }) => id)).toEqual(['changes']);
    });

    test('are a page without a script, Markdown or figures, when asked for', async () => {
        const page = await ask({ class: 'harbour', format: 'html' });
        expect(page.sections).toEqual([]);
        expect(page.text).toMatch(/^<!doctype html>/);
        expect(page.text).not.toMatch(/<script|file:\/\//);
        expect((await ask({ class: 'harbour', format: 'md' })).text).toMatch(/^# What is changed\n/);
        expect(JSON.parse((await ask({ class: 'harbour', format: 'json' })).text!)).toMatchObject({ format: 'haversack-changes', version: 1, changes: { class: { name: 'harbour' }, ledger: { minutes: { before: 35, after: 10 } } } });
        expect(JSON.parse((await ask({ class: 'millpond', format: 'json' })).text!)).toMatchObject({ changes: { class: { name: 'millpond' } } });
    });

    test('pass over what is of another kind than the protocol says, and refuse in a teacher’s words', async () => {
        const strange = { uri: 7, line: 'first', class: ['millpond'], otherwise: 3, known: 'all', format: 1 } as unknown as ChangesParams;
        expect((await ask(strange)).sections).toEqual((await ask()).sections);
        expect((await ask(null as never)).sections.length).toBeGreaterThan(0);
        expect((await ask({ class: 'nobody' })).refusal).toMatch(/^There is no class 'nobody' in this programme\. Its classes are harbour, millpond/);
        const empty = await Client.start({ programme: {} });
        expect((await ask({}, empty)).refusal).toContain('no lesson in this folder yet');
        await empty.stop();
    });
});

describe('the brief and the term of an adapted class', () => {
    test('show each change and lead to its line', async () => {
        const brief = await client.brief({ class: 'harbour', week: 1 });
        const lesson = html(brief, 'lesson-weigh-2');
        expect(brief.sections.map(({ id }) => id)).toEqual(expect.arrayContaining(['left-out-weigh-1', 'lesson-weigh-2']));
        expect(plain(lesson)).toContain('Changed for Harbour co-op: 10 min instead of 20.');
        expect(lesson).toContain(`class="lead" data-uri="${client.uri('harbour.course')}" data-line="2"`);
        expect(plain(html(brief, 'left-out-weigh-1'))).toContain('“Two bags” is left out for Harbour co-op. Covered at the market visit, with fine sand.');
        expect(plain(html(brief, 'week'))).toContain('With the changes of “Harbour days”; left out here: “Two bags”.');
        const other = await client.brief({ class: 'millpond', week: 1 });
        expect(other.sections.map(one => one.html).join('')).not.toMatch(/Changed for|class="change"|left out/);
    });

    test('say of the term which adaptation it is taught with and what is left out', async () => {
        const term: TermAnswer = await client.connection.sendRequest(termRequest, { class: 'harbour' });
        expect(plain(html(term, 'term'))).toMatch(/With the changes of “Harbour days”\..*1 lesson is left out for this class\./);
        expect(plain(html(term, 'term-otherwise'))).toContain('“Two bags” is left out for Harbour co-op.');
    });

    test('follow a line that is written, and only the sections that it touches travel', async () => {
        const own = await Client.start({ programme, today: '2026-09-01' });
        await own.open('harbour.course');
        const before = await ask({ class: 'harbour' }, own);
        const briefBefore = await own.brief({ class: 'harbour', week: 1 });
        const heard = own.heard.length;
        await own.edit('harbour.course', 'to 10 min', 'to 12 min');
        await own.until('the server to tell of the change', () => own.heard.slice(heard).includes('haversack/changed'));
        const known = (of: { sections: ChangesAnswer['sections'] }): Record<string, string> => Object.fromEntries(of.sections.map(({ id, hash }) => [id, hash]));
        const after = await ask({ class: 'harbour', known: known(before) }, own);
        expect(after.sections.filter(section => section.html !== undefined).map(({ id }) => id)).toEqual(['changes', 'changes-made', 'changes-lessons']);
        const brief = await own.brief({ class: 'harbour', week: 1, known: known(briefBefore) });
        expect(brief.sections.filter(section => section.html !== undefined).map(({ id }) => id)).toEqual(['week', 'lesson-weigh-2']);
        expect(plain(html(brief, 'lesson-weigh-2'))).toContain('12 min instead of 20.');
        await own.stop();
    });
});
