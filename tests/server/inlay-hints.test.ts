import { afterAll, beforeAll, expect, test } from 'vitest';
import type { InlayHint } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';
import { adaptedPlan, planProgramme } from './plan-programme.js';

let client: Client;
beforeAll(async () => { client = await Client.start({ programme: planProgramme, today: '2026-08-31' }); });
afterAll(() => client.stop());

/** The lines that have a hint, with it; `from` and `to` are the lines in view. */
async function shown(file: string, from = 0, to = 1000, of = client): Promise<string[]> {
    const hints: InlayHint[] = await of.connection.sendRequest('textDocument/inlayHint', { textDocument: { uri: of.uri(file) }, range: { start: { line: from, character: 0 }, end: { line: to, character: 0 } } });
    const lines = of.text(file).split('\n');
    return hints.map(({ position, label }) => {
        // At the end of the line, where it cannot be taken for text.
        expect(position.character).toBe(lines[position.line]!.length);
        return `${lines[position.line]!.trim()} → ${String(label)}`;
    });
}

test('amounts of needs for the first class that is taught the lesson; what is at hand only where it is too little', async () => {
    expect(client.initialized.capabilities.inlayHintProvider).toBeTruthy();
    expect(await shown('weigh.lesson')).toEqual([
        'gram-cube  20 per pair  in kit → 80 in all', 'sand       50 g per learner  not in kit → 350 g in all',
        // 7 learners, 100 g each: 700 g; 400 g + 500 g on order - 350 g used before = 550 g.
        'sand 100 g per learner  not in kit → 700 g in all, 550 g at hand'
    ]);
});

test('days of the lessons in a course', async () => {
    expect(await shown('weighing.course')).toEqual(['weigh-1 → Mon 14 Sep', 'weigh-2 → Mon 21 Sep']);
});

test('only for the lines in view', async () => {
    expect(await shown('weigh.lesson', 0, 5)).toEqual(['gram-cube  20 per pair  in kit → 80 in all']);
});

test('follow the text', async () => {
    await client.open('weigh.lesson');
    await client.edit('weigh.lesson', '20 per pair', '25 per pair');
    expect((await shown('weigh.lesson'))[0]).toContain('→ 100 in all');
    await client.edit('weigh.lesson', '25 per pair  in kit', '25 per pair  in kit  # or fewer');
    expect((await shown('weigh.lesson'))[0]).toBe('gram-cube  25 per pair  in kit  # or fewer → 100 in all, 80 at hand');
});

test('one setting switches them off', async () => {
    const other = await Client.start({ programme: planProgramme, settings: { inlayHints: false } });
    expect(await shown('weigh.lesson', 0, 1000, other)).toEqual([]);
    await other.stop();
});

test('of what a class is taught otherwise: at the lines where it is written, and what is left out', async () => {
    const joined = await Client.start({ programme: adaptedPlan('', '  join weigh-1 with weigh-3\n  skip lesson weigh-2\n  swap bean for gram-cube in weigh-3\n'), today: '2026-08-31' });
    expect(await shown('more.lesson', 0, 1000, joined)).toEqual(['bean 3 per learner → 21 gram cubes in all', 'bean 2 per pair → 8 gram cubes in all']);
    expect(await shown('weighing.course', 0, 1000, joined)).toEqual(['weigh-1 → Mon 14 Sep', 'weigh-2 → left out', 'weigh-3 → Mon 14 Sep']);
    await joined.stop();
    const split = await Client.start({ programme: adaptedPlan('', '  split weigh-3 after five-bags\n'), today: '2026-08-31' });
    expect(await shown('more.lesson', 0, 1000, split)).toEqual(['bean 3 per learner → 21 in all', 'bean 2 per pair → 8 in all']);
    await split.stop();
});
