import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CodeAction, Hover, MarkupContent } from 'vscode-languageserver-protocol/node';
import { practiceRequest, type PracticeAnswer, type PracticeParams, type PracticeRefusal } from '../../server/protocol/practice.js';
import { Client } from './client.js';

const drill = 'drill.lesson';
const programme = {
    [drill]: [
        'lesson drill-1 "Sums and names"', '  practice sums "Sums" 6 items', '    sums 2 to 20', '    differences 0 to 20', '    return to 7 and 8',
        '  practice cards "Cards" 12 items', '    arrange digits of 481', '', 'lesson quiet-1 "Quiet"', '  activity rest 5 min', '    do: Rest.', ''
    ].join('\n'),
    'year.course': 'course year\n  unit one\n    drill-1\n    quiet-1\nclass hill\n  teaches year\n  learners 4\nadaptation more of year for hill\n  add to quiet-1\n    practice added 3 items\n      bonds of 5\n'
};
let client: Client;
beforeAll(async () => { client = await Client.start({ programme }); });
afterAll(() => client.stop());

const ask = (params: PracticeParams): Promise<PracticeAnswer & PracticeRefusal> => client.connection.sendRequest(practiceRequest, params);
const hover = async (file: string, marked: string): Promise<string | undefined> => ((await client.ask<Hover | null>('textDocument/hover', file, marked))?.contents as MarkupContent | undefined)?.value;
const itemsOf = async (params: PracticeParams): Promise<{ ask: string; answer: string }[]> => {
    const { practice } = JSON.parse((await ask({ ...params, format: 'json' })).text) as { practice: { practices: { items: { ask: string; answer: string }[] }[] } };
    return practice.practices.flatMap(({ items }) => items);
};

describe('hover', () => {
    test('on the practice: its first items with answers, and how many there could be', async () => {
        const text = (await hover(drill, 'practice su|ms "Sums"'))!;
        expect(text).toContain('6 of 400 possible items:');
        const [first] = await itemsOf({ lesson: 'drill-1', practice: 'sums' });
        expect(text).toContain(`1. ${first!.ask.replace('?', first!.answer)}`);
    });

    test('on a line: what the line means and its items; on one that returns: where it stands', async () => {
        const line = (await hover(drill, '    su|ms 2 to 20'))!;
        expect(line).toContain('Additions whose result lies in this range.');
        expect(line).toMatch(/`sums 2 to 20`: \d of 190 possible items:\n\n1\. \d+ \+ \d+ = \d+/);
        expect(await hover(drill, 'sums 2 to 2|0')).toMatch(/^`sums 2 to 20`: /);
        expect(await hover(drill, 'retu|rn to 7 and 8')).toContain('7 + 8 = 15\n\nIt stands 2 times among the 6 items: number 2, 4.');
        expect(await hover(drill, 'arrange digits of 48|1')).toMatch(/^`arrange digits of 481`: all 5 items that are possible:/);
    });

    test('on a practice that an adaptation adds', async () => {
        expect(await hover('year.course', 'bonds o|f 5')).toContain('`bonds of 5`: 3 of 6 possible items:');
    });
});

describe('completion', () => {
    test('offers whole lines with items that they give', async () => {
        await client.open('new.lesson', 'lesson new-1\n  practice one 8 items\n    \n');
        const offers = await client.complete('new.lesson', 'items\n    |');
        expect(offers.map(({ label }) => label)).toEqual(expect.arrayContaining(['name numbers', 'name numbers 11 to 99', 'write numbers 11 to 99 from places', 'arrange digits of 481', 'bonds of 6 to 10', 'return to 7 and 8']));
        expect(offers.find(({ label }) => label === 'arrange digits of 481')!.documentation).toMatch(/^Arrange 4, 8 and 1 to make .* → \d{3}\n/);
        await client.close('new.lesson');
    });

    test('completes a line that is begun', async () => {
        await client.open('new.lesson', 'lesson new-1\n  practice one 8 items\n    bonds of \n');
        expect((await client.complete('new.lesson', 'bonds of |')).map(({ label, insertText }) => insertText ?? label)).toEqual(['10', '6 to 10']);
        await client.close('new.lesson');
        await client.open('new.lesson', 'lesson new-1\n  practice one 8 items\n    name numbers 11 to \n');
        expect((await client.complete('new.lesson', 'numbers 11 to |')).map(({ label }) => label)).toEqual([]);
        await client.close('new.lesson');
    });
});

test('a quick fix asks for as many as there are', async () => {
    await client.open(drill);
    const diagnostic = client.problems(drill).find(({ code }) => code === 'impossible-practice')!;
    expect(diagnostic.message).toBe("12 items of 'arrange digits of 481': there are only 5 besides 481 itself.");
    const [action] = await client.connection.sendRequest<CodeAction[]>('textDocument/codeAction', { textDocument: { uri: client.uri(drill) }, range: diagnostic.range, context: { diagnostics: [diagnostic] } });
    expect(action!.title).toBe('Ask for 5 items');
    await client.apply(action!.edit!);
    expect(client.text(drill)).toContain('practice cards "Cards" 5 items\n');
    await client.change(drill, programme[drill]!);
});

describe('the sheet', () => {
    test('and its key as pages of their own, for the lesson at the cursor', async () => {
        const sheet = await ask({ uri: client.uri(drill), line: 3 });
        expect(sheet).toMatchObject({ lesson: 'drill-1', title: 'Sums and names', practices: [{ name: 'sums' }, { name: 'cards' }] });
        expect(sheet.text).toMatch(/^<!doctype html>/);
        expect(sheet.text).not.toContain('Answer key');
        expect((await ask({ uri: client.uri(drill), line: 3, key: true })).text).toContain('Answer key: Sums');
        expect((await ask({ lesson: 'drill-1', practice: 'cards', format: 'text' })).text).toMatch(/^Cards\n/);
        expect((await ask({ lesson: 'drill-1', format: 'md', key: true })).text).toMatch(/^# Answer key: Sums\n/);
    });

    test('has the items of the brief, and further ones when asked', async () => {
        const brief = await client.brief({ class: 'hill', week: 1, format: 'md' });
        const items = await itemsOf({ lesson: 'drill-1', practice: 'sums' });
        for (const { ask: asked } of items) expect(brief.text).toContain(`. ${asked}\n`);
        expect(await itemsOf({ lesson: 'drill-1', practice: 'sums', more: 20 })).toHaveLength(20);
    });

    test('of a lesson as a class is taught it', async () => {
        expect((await ask({ lesson: 'quiet-1', class: 'hill', format: 'text' })).text).toMatch(/^Added\nQuiet\n/);
    });

    test.each([
        [{}, 'Which lesson? Put the cursor into one.'], [{ lesson: 'none' }, "There is no lesson 'none'."], [{ lesson: 'quiet-1' }, 'No practice items can be made for “Quiet”.'],
        [{ lesson: 'drill-1', practice: 'song' }, "has no practice 'song' with items"], [{ lesson: 'drill-1', more: 0 }, 'from 1 to 200'], [{ lesson: 'drill-1', more: 1e9 }, 'from 1 to 200'], [{ lesson: 'drill-1', class: 'nobody' }, "There is no class 'nobody'"]
    ] as [PracticeParams, string][])('or why there is none: %j', async (params, says) => expect((await ask(params)).refusal).toContain(says));

    test('with the lessons to choose from where none is meant', async () => {
        expect((await ask({})).lessons).toEqual([{ name: 'drill-1', title: 'Sums and names' }]);
    });
});
