import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Hover, MarkupContent } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';
import { adaptedPlan, planProgramme } from './plan-programme.js';

const town = ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Town//EN', 'BEGIN:VEVENT', 'UID:a', 'DTSTAMP:20260101T000000Z', 'DTSTART;VALUE=DATE:20260923',
    'DTEND;VALUE=DATE:20260924', 'SUMMARY:Market day', 'END:VEVENT', 'END:VCALENDAR', ''].join('\r\n');
const attic = 'class attic "Attic"\n  teaches weighing\n  learners 2\n  on hand\n    sand 400 g\n  starts 2026-09-16\n  meets wed\n  off from "town.ics"\n';

let client: Client;
beforeAll(async () => { client = await Client.start({ programme: { ...planProgramme, 'z.course': attic, 'town.ics': town }, today: '2026-08-31' }); });
afterAll(() => client.stop());

/** The lines of the hover, with no mark-up. */
async function hover(file: string, marked: string): Promise<string[]> {
    const found = await client.ask<Hover>('textDocument/hover', file, marked);
    return (found.contents as MarkupContent).value.replace(/\\/g, '').split('\n');
}

test('a material: what the term needs of it, when it runs out, the next order', async () => {
    const lines = await hover('things.kit', 'material sa|nd');
    // 7 learners, 50 g and 100 g each: 1050 g; 400 g and an order of 500 g are there: 150 g missing in the second week.
    expect(lines).toContain('- Harbour co-op: 1.05 kg needed over the term; 400 g at hand before the first week; not enough from week 2 (Mon 21 Sep) on: 150 g missing; buy 1 pack of 500 g at 2.00 EUR: needed Mon 21 Sep; arrives in 10 days, so order by Fri 11 Sep');
    expect(lines).toContain('- Millpond co-op: 300 g needed over the term; 400 g at hand before the first week');
});

test('a material: how long an order takes, in the days it counts', async () => {
    await client.open('things.kit');
    await client.edit('things.kit', 'arrives in 10 days', 'arrives in 10 working days');
    expect(await hover('things.kit', 'material sa|nd')).toContain('- arrives in 10 working days');
    await client.edit('things.kit', 'arrives in 10 working days', 'arrives in 10 days');
});

test('a lesson: when each class is taught it, and what is to be bought', async () => {
    expect((await hover('weigh.lesson', 'lesson weigh|-2')).slice(1)).toEqual(['- Harbour co-op: Mon 21 Sep; to buy: fine sand', '- Millpond co-op: Tue 22 Sep', '- Attic: Wed 30 Sep']);
});

test('a class: its days and what it costs', async () => {
    expect(await hover('weighing.course', 'class har|bour')).toEqual(['**Harbour co-op** (class)', '- Mon 14 Sep to Mon 21 Sep: 2 meetings in 2 weeks', '- to buy for 2.00 EUR, 0.29 EUR for each learner']);
});

test('a class that ends too early: what is left out', async () => {
    await client.open('weighing.course');
    await client.edit('weighing.course', '  starts 2026-09-14\n', '  starts 2026-09-14\n  ends 2026-09-18\n');
    expect(await hover('weighing.course', 'class har|bour')).toContain('- 1 lesson without a day: “Three bags”');
    expect(await hover('weigh.lesson', 'lesson weigh|-2')).toContain('- Harbour co-op: not taught: No meeting is left before the class ends on Friday 18 September 2026.');
    await client.edit('weighing.course', '  ends 2026-09-18\n', '');
});

test('an objective: said once where it is alike for all classes', async () => {
    expect((await hover('weighing.course', 'objective comp|are')).slice(-1)).toEqual(['- introduced in week 1, checked in week 2; visited again after 1 meeting']);
});

test('a calendar: the days it takes away', async () => {
    expect(await hover('z.course', 'from "to|wn.ics"')).toEqual(['**town.ics** (calendar, for Attic)', '- Wed 23 Sep: Market day']);
});

test('a lesson that adaptations join, split or leave out, class by class', async () => {
    const other = await Client.start({ programme: adaptedPlan('  split weigh-3 after five-bags\n', '  skip lesson weigh-2\n'), today: '2026-08-31' });
    const told = async (file: string, marked: string) => ((await other.ask<Hover>('textDocument/hover', file, marked)).contents as MarkupContent).value.replace(/\\/g, '').split('\n');
    expect(await told('weigh.lesson', 'lesson weigh|-2')).toEqual(['**Three bags** (lesson, 20 min)', '- Harbour co-op: left out by “For the harbour”', '- Millpond co-op: Tue 22 Sep']);
    expect(await told('weigh.lesson', 'activity three|-bags')).toEqual(['**Three bags** (activity)', '- 20 min', '- Harbour co-op: left out with its lesson by “For the harbour”']);
    expect(await told('more.lesson', 'lesson weigh|-3')).toEqual(['**Five bags** (lesson, 30 min, week 2)', '- Harbour co-op: Mon 21 Sep and Mon 28 Sep; in 2 parts', '- Millpond co-op: Tue 29 Sep and Tue 6 Oct; in 2 parts']);
    await other.stop();
});

test('the preview at a lesson that is joined or left out opens the week that tells of it', async () => {
    const joined = await Client.start({ programme: adaptedPlan('', '  join weigh-2 with weigh-3\n'), today: '2026-08-31' });
    expect(await joined.brief({ uri: joined.uri('more.lesson'), line: 2, class: 'harbour' })).toMatchObject({ week: 2 });
    expect(await joined.brief({ uri: joined.uri('more.lesson'), line: 2, class: 'millpond' })).toMatchObject({ week: 3 });
    await joined.stop();
    const without = await Client.start({ programme: adaptedPlan('', '  skip lesson weigh-2\n'), today: '2026-08-31' });
    const left = await without.brief({ uri: without.uri('weigh.lesson'), line: 12, class: 'harbour' });
    expect(left.week).toBe(2);
    expect(left.sections.map(({ id }) => id)).toContain('left-out-weigh-2');
    await without.stop();
});
