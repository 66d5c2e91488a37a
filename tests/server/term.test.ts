import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { termRequest, type BriefRefusal, type TermAnswer, type TermParams } from '../../server/protocol.js';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start({ programme: join(import.meta.dirname, '../../examples/year'), today: '2026-10-01' }); });
afterAll(() => client.stop());

const ask = (params: TermParams = {}, of = client): Promise<TermAnswer & Partial<BriefRefusal>> => of.connection.sendRequest(termRequest, params);
const html = (answer: TermAnswer, id: string): string => answer.sections.find(section => section.id === id)?.html ?? '';

describe('the term of a class', () => {
    test('comes in sections, seen from the day it is where the server runs', async () => {
        const answer = await ask({ class: 'millpond' });
        expect(answer.sections.map(({ id }) => id)).toEqual(expect.arrayContaining(['term', 'term-calendar', 'term-buy', 'term-stock', 'term-coverage', 'term-frameworks']));
        expect(answer).toMatchObject({ class: 'millpond', title: 'The term: The Orchard Year, Millpond co-op, 2026 to 2027' });
        expect(answer.classes.map(({ name }) => name)).toEqual(expect.arrayContaining(['millpond', 'rook-lane']));
        expect(html(answer, 'term')).toContain('Seen from Thu 1 Oct 2026.');
        expect(html(answer, 'term-calendar')).toContain(`data-uri="${client.uri('lessons/count/count-1.lesson')}" data-line="`);
    });

    test('is seen from another day, or of another class, when that is asked for', async () => {
        const late = await ask({ class: 'millpond', today: '2027-06-20' });
        expect(html(late, 'term')).toContain('Seen from Sun 20 Jun 2027.');
        const other = await ask({ class: 'rook-lane' });
        expect(other.class).toBe('rook-lane');
        const at = client.text('classes.course').split('\n').findIndex(line => line.startsWith('class rook-lane'));
        expect((await ask({ uri: client.uri('classes.course'), line: at + 3 })).class).toBe('rook-lane');
    });

    test('sends again only what the preview does not have', async () => {
        const first = await ask({ class: 'millpond' });
        const known = Object.fromEntries(first.sections.map(({ id, hash }) => [id, hash]));
        const again = await ask({ class: 'millpond', known });
        expect(again.sections).toEqual(first.sections.map(({ id, hash }) => ({ id, hash })));
        const tomorrow = await ask({ class: 'millpond', known, today: '2026-10-05' });
        expect(tomorrow.sections.filter(section => section.html !== undefined).map(({ id }) => id).slice(0, 2)).toEqual(['term', 'term-calendar']);
    });

    test('is one page without a script, or Markdown, when asked for', async () => {
        const page = await ask({ class: 'millpond', format: 'html' });
        expect(page.sections).toEqual([]);
        expect(page.text).toMatch(/^<!doctype html>/);
        expect(page.text).not.toMatch(/<script|file:\/\//);
        expect((await ask({ class: 'millpond', format: 'md' })).text).toMatch(/^# The term\n/);
    });

    test('refuses in a teacher\'s words', async () => {
        expect((await ask({ class: 'nobody' })).refusal).toMatch(/^There is no class 'nobody' in this programme\. Its classes are .*millpond/);
        for (const today of ['yesterday', '2026-02-30', 7 as never]) expect((await ask({ today })).refusal).toContain(`'${today}' is no date`);
        const empty = await Client.start({ programme: {} });
        expect((await ask({}, empty)).refusal).toContain('no lesson in this folder yet');
        await empty.stop();
    });
});

test('a programme without a class has a term of plain weeks', async () => {
    const alone = await Client.start({ programme: { 'a.lesson': 'lesson one "One"\n  activity look "Look" 10 min\n    do: Look.\n', 'a.course': 'course all "All"\n  unit u "Unit"\n    one\n' } });
    const answer = await ask({}, alone);
    expect(html(answer, 'term-calendar')).toContain('Day 1');
    expect(answer.class).toBeUndefined();
    await alone.stop();
});
