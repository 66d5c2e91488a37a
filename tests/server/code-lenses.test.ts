import { afterEach, expect, test } from 'vitest';
import type { CodeLens } from 'vscode-languageserver-protocol/node';
import { Client, type StartOptions } from './client.js';
import { adaptedPlan, planProgramme } from './plan-programme.js';

let client: Client;
afterEach(() => client.stop());

const start = async (options: StartOptions = {}): Promise<void> => { client = await Client.start({ programme: planProgramme, today: '2026-08-31', ...options }); };
const lenses = (file: string): Promise<CodeLens[]> => client.connection.sendRequest('textDocument/codeLens', { textDocument: { uri: client.uri(file) } });

/** "line of the text: title". */
async function shown(file: string): Promise<string[]> {
    const lines = client.text(file).split('\n');
    return (await lenses(file)).map(({ range, command }) => `${lines[range.start.line]}: ${command!.title}`);
}

test('say what the plan says of lessons, courses, classes and materials', async () => {
    await start();
    expect(client.initialized.capabilities.codeLensProvider).toBeTruthy();
    expect(await shown('weigh.lesson')).toEqual(['lesson weigh-1 "Two bags": week 1 · 15 min', 'lesson weigh-2 "Three bags": week 2 · 20 min · 1 thing to buy']);
    expect(await shown('weighing.course')).toEqual([
        'course weighing "Weighing": 2 weeks, Mon 14 Sep to Mon 21 Sep', 'class harbour "Harbour co-op": 2 weeks, Mon 14 Sep to Mon 21 Sep',
        'class millpond "Millpond co-op": 2 weeks, Tue 15 Sep to Tue 22 Sep'
    ]);
    expect(await shown('things.kit')).toEqual(['material sand "Fine sand": runs out in week 2 · order by Fri 11 Sep']);
});

test('of a lesson that is taught otherwise: where it is, and how', async () => {
    await start({ programme: adaptedPlan('  join weigh-2 with weigh-3\n', '  retime weigh-1 to 10 min\n') });
    expect(await shown('weigh.lesson')).toEqual(['lesson weigh-1 "Two bags": week 1 · 10 min', 'lesson weigh-2 "Three bags": week 2 · joined with “Five bags” · 50 min · 1 thing to buy']);
    expect(await shown('more.lesson')).toEqual(['lesson weigh-3 "Five bags": week 2 · joined with “Three bags” · 50 min · 1 thing to buy']);
    await client.stop();
    await start({ programme: adaptedPlan('  skip lesson weigh-2\n', '  split weigh-3 after five-bags\n') });
    expect([...await shown('weigh.lesson'), ...await shown('more.lesson')]).toEqual([
        'lesson weigh-1 "Two bags": week 1 · 15 min', 'lesson weigh-2 "Three bags": left out for Harbour co-op and Millpond co-op', 'lesson weigh-3 "Five bags": week 2 · in 2 parts · 30 min'
    ]);
    await client.stop();
    await start({ programme: adaptedPlan('', '  skip lesson weigh-3\n') });
    expect(await shown('more.lesson')).toEqual(['lesson weigh-3 "Five bags": week 3 · 30 min · left out for Harbour co-op']);
});

test('only tell where the client names no commands, and lead on where it does', async () => {
    await start();
    expect(new Set((await lenses('weigh.lesson')).map(({ command }) => command!.command))).toEqual(new Set(['']));
    await client.stop();
    await start({ commands: ['haversack.brief.openLesson', 'haversack.term.open'] });
    expect((await lenses('weigh.lesson')).map(({ command }) => command)).toMatchObject([
        { command: 'haversack.brief.openLesson', arguments: [{ uri: client.uri('weigh.lesson'), line: 0 }] },
        { command: 'haversack.brief.openLesson', arguments: [{ uri: client.uri('weigh.lesson'), line: 9 }] }
    ]);
    expect((await lenses('weighing.course')).map(({ command }) => command)).toMatchObject([
        { command: 'haversack.term.open', arguments: [{ class: 'harbour' }] }, { command: 'haversack.term.open', arguments: [{ class: 'harbour' }] },
        { command: 'haversack.term.open', arguments: [{ class: 'millpond' }] }
    ]);
});

test('a client that asks again is told when the plan has changed', async () => {
    await start({ asksAgain: true });
    await client.until('the first plan', () => client.heard.includes('workspace/codeLens/refresh') && client.heard.includes('workspace/inlayHint/refresh'));
    expect((await shown('weigh.lesson'))[0]).toBe('lesson weigh-1 "Two bags": week 1 · 15 min');
    await client.open('weighing.course');
    const told = (): number => client.heard.filter(method => method === 'workspace/codeLens/refresh').length;
    const before = told();
    await client.edit('weighing.course', '    weigh-1\n    weigh-2\n', '    weigh-1\n');
    await client.until('the plan to change', () => told() > before);
    expect(await shown('weigh.lesson')).toEqual(['lesson weigh-1 "Two bags": week 1 · 15 min']);
});

test('a client that does not is never asked to, and one setting switches them off', async () => {
    await start({ settings: { codeLenses: false } });
    expect(await lenses('weigh.lesson')).toEqual([]);
    await client.open('weighing.course');
    await client.edit('weighing.course', 'learners 7', 'learners 8');
    await client.settled();
    expect(client.heard.filter(method => method.endsWith('refresh'))).toEqual([]);
});
