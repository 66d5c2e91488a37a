import { parse } from 'csv-parse/sync';
import ICAL from 'ical.js';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { termRequest, type BriefRefusal, type TermAnswer, type TermParams } from '../../server/protocol/pages.js';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start({ programme: join(import.meta.dirname, '../../examples/year'), today: '2026-10-01' }); });
afterAll(() => client.stop());

const ask = (params: TermParams = {}, of = client): Promise<TermAnswer & Partial<BriefRefusal>> => of.connection.sendRequest(termRequest, params);
const html = (answer: TermAnswer, id: string): string => answer.sections.find(section => section.id === id)?.html ?? '';

describe('the term as a file of its own', () => {
    test('the shopping list, read by csv-parse', async () => {
        const rows = parse((await ask({ class: 'millpond', format: 'csv' })).text!, { bom: true }) as string[][];
        expect(rows[0]?.slice(0, 4)).toEqual(['Order by', 'Needed by', 'Week', 'Thing']);
        expect(rows.find(row => row[3] === 'Table salt')?.slice(5, 9)).toEqual(['1 pack of 500 g at 0.60 EUR', expect.any(String), '0.60', 'EUR']);
    });

    test('a calendar, read by ical.js; written over itself it is the same, and a class with hours is timed', async () => {
        const text = (await ask({ class: 'millpond', format: 'ics' })).text!;
        const events = new ICAL.Component(ICAL.parse(text) as unknown[]).getAllSubcomponents('vevent').map(event => new ICAL.Event(event));
        expect(events.find(({ summary }) => summary === 'Market day')?.startDate.toString()).toBe('2027-03-11');
        expect((await ask({ class: 'millpond', format: 'ics', before: text })).text).toBe(text);
        expect((await ask({ class: 'friday-table', format: 'ics' })).text).toContain('DTSTART:20260911T140000');
    });

    test('all figures for programs', async () => {
        const figures = JSON.parse((await ask({ class: 'rook-lane', format: 'json' })).text!) as Record<string, unknown>;
        expect(figures).toMatchObject({ format: 'haversack-term', version: 1, schedule: { class: 'rook-lane' }, supplies: { learners: 2 } });
    });

    test('no calendar without dates, said', async () => {
        const undated = await Client.start({ programme: { 'a.course': 'course sums\n  unit one\n    add-1\n', 'a.lesson': 'lesson add-1\n  activity counters 10 min\n    do: Count.\n' } });
        expect((await ask({ format: 'ics' }, undated)).refusal).toMatch(/^A calendar needs dates, and this plan has none/);
        await undated.stop();
    });
});

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

    test('passes over what is of another kind than the protocol says', async () => {
        const strange = { uri: 7, line: 'first', class: ['millpond'], today: {}, known: 'all', format: 1 } as unknown as TermParams;
        expect((await ask(strange)).sections.map(({ id, hash }) => [id, hash])).toEqual((await ask()).sections.map(({ id, hash }) => [id, hash]));
        expect((await ask(null as never)).sections.length).toBeGreaterThan(0);
    });

    test('refuses in a teacher\'s words', async () => {
        expect((await ask({ class: 'nobody' })).refusal).toMatch(/^There is no class 'nobody' in this programme\. Its classes are .*millpond/);
        for (const today of ['yesterday', '2026-02-30']) expect((await ask({ today })).refusal).toContain(`'${today}' is no date`);
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
