/** Supplies and schedule as text for a terminal and as Markdown. */
import fc from 'fast-check';
import MarkdownIt from 'markdown-it';
import { describe, expect, test } from 'vitest';
import { figuresJson } from '@haversack/server/exports/json';
import { scheduleMarkdown } from '@haversack/server/exports/schedule-markdown';
import { scheduleText } from '@haversack/server/exports/schedule-text';
import { suppliesMarkdown } from '@haversack/server/exports/supplies-markdown';
import { suppliesText } from '@haversack/server/exports/supplies-text';
import { meeting, order, place, schedule, supplies, taught } from './figures.js';

const figure = (text: string) => ({ exact: text, text, trail: [] });
const quantity = (text: string) => ({ exact: text, text });
const term = schedule([
    meeting('2026-09-07', 'Mon 7 Sep', taught('weigh-1', 'Which is heavier?', { piece: { number: 1, of: 2 } })),
    { date: '2026-09-08', label: 'Tue 8 Sep', lessons: [], taught: [], minutes: 0, free: { why: 'catch-up', words: 'Kept free to catch up.' } },
    meeting('2026-09-10', 'Thu 10 Sep', taught('weigh-1', 'Which is heavier?', { why: 'repeat', remark: 'again: the children were unsure on Mon 7 Sep' }))
], {
    daysOff: [{ from: '2026-09-14', to: '2026-09-15', title: 'Fair', costs: true }, { from: '2026-09-19', to: '2026-09-19', title: 'A Saturday', costs: false }],
    unplaced: [{ lesson: 'last', title: 'The last one', place, why: 'no meeting is left before 11 September.' }],
    proposals: [{ title: 'Meet on Wednesdays too', gives: 'All lessons fit.', givesUp: 'free Wednesdays.', places: 1 }],
    assumptions: ['One lesson a meeting.']
});
const bought = supplies([order('Gram cubes', { late: { days: 2, words: 'should have been ordered 2 days ago' } }), order('Paste', { week: 2, cost: undefined, orderBy: undefined, packs: [], joined: 'one order for weeks 2 and 3' })], {
    weeks: [{ number: 1, from: '2026-09-14', to: '2026-09-17' }, { number: 2, from: '2026-09-21', to: '2026-09-24' }],
    shortages: [{ name: 'cube', title: 'Gram cubes', place, week: 2, meeting: 'Tue 22 Sep', needed: figure('80'), atHand: figure('60'), missing: figure('20'), lessons: [], standIns: [{ name: 'b', title: 'Beads', text: '20 beads in place of 20 gram cubes: 40 at hand', enough: true }] }],
    clashes: [{ name: 'balance', title: 'Pan balance', place, date: '2026-09-15', meeting: 'Tue 15 Sep', classes: [{ name: 'a', title: 'Shed', place, needed: quantity('4'), lessons: [] }, { name: 'b', title: 'Barn', place, needed: quantity('3'), lessons: [] }], together: figure('7'), atHand: figure('6'), missing: figure('1') }],
    costs: { byWeek: [{ week: 1, money: [{ minor: '2900', currency: 'USD', text: '29.00 USD' }] }], term: [{ minor: '2900', currency: 'USD', text: '29.00 USD' }], perLearner: [{ minor: '415', currency: 'USD', text: '4.15 USD' }], unpriced: [{ name: 'paste', title: 'Paste' }] }
});

describe('text', () => {
    test('a term: a line for each meeting, then what does not fit and what would help', () => {
        expect(scheduleText(term, 'Sums, Shed')).toBe(`Sums, Shed

week  date        day           time  lessons
   1  2026-09-07  Mon 7 Sep   30 min  Which is heavier? (part 1 of 2)
      2026-09-08  Tue 8 Sep           Kept free to catch up.
      2026-09-10  Thu 10 Sep  30 min  Which is heavier? (again: the children were unsure on Mon 7 Sep)

No meetings
  2026-09-14 to 2026-09-15: Fair

Does not fit
  The last one: no meeting is left before 11 September.

What would help
  Meet on Wednesdays too: All lessons fit. It gives up: free Wednesdays.

Taken for granted
  One lesson a meeting.
`);
    });

    test('supplies in the order in which somebody acts on them', () => {
        expect(suppliesText(bought)).toBe(`Shed: 7 learners, 2 weeks

Buy and order
  order by    needed      week  thing       short in all  buy                               cost
  2026-09-08  2026-09-14     1  Gram cubes           120  2 packs of 100 at 14.50 USD  29.00 USD
  on the day  2026-09-14     2  Paste                120  200                           no price

Too late to order in time
  Gram cubes: should have been ordered 2 days ago

One order for several weeks
  Paste, needed 2026-09-14: one order for weeks 2 and 3

Short at a meeting
  Tue 22 Sep: Gram cubes, 80 needed, 60 at hand, 20 missing; 20 beads in place of 20 gram cubes: 40 at hand

Two classes, one cupboard
  Tue 15 Sep: Pan balance, 4 for Shed and 3 for Barn, 6 at hand, 1 missing

Costs
  week 1: 29.00 USD
  whole term: 29.00 USD
  for each learner: 4.15 USD
  without a price: Paste
`);
    });

    test('one week of it', () => {
        const text = suppliesText(bought, { week: 1 });
        expect(text).toContain('Shed: 7 learners, week 1');
        expect(text).toContain('Gram cubes');
        expect(text).toContain('Pan balance');
        expect(text).not.toMatch(/Paste|Tue 22 Sep|whole term/);
    });

    test('nothing that could move the cursor reaches the terminal', () => {
        fc.assert(fc.property(fc.string({ unit: 'binary' }), words => {
            const all = suppliesText(supplies([order(words, { late: { days: 1, words } })], { classTitle: words, assumptions: [words] }))
                + scheduleText(schedule([meeting('2026-09-07', 'Mon', taught('a', words))], { assumptions: [words] }), words);
            expect(all.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
        }));
    });
});

describe('Markdown', () => {
    const words = (markdown: string): string => new MarkdownIt('commonmark').render(markdown).replace(/<[^>]+>/g, '').replaceAll('&quot;', '"').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');

    test('says the same as the text', () => {
        const read = words(suppliesMarkdown(bought));
        for (const fact of ['Gram cubes: 2 packs of 100 at 14.50 USD, 29.00 USD', 'order by Tue 8 Sep', 'should have been ordered 2 days ago', '20 beads in place of 20 gram cubes', '4 for Shed and 3 for Barn', 'For each learner: 4.15 USD', 'Without a price: Paste']) {
            expect(read).toContain(fact);
        }
        const days = words(scheduleMarkdown(term, 'Sums, Shed'));
        for (const fact of ['Mon 7 Sep, 30 min: Which is heavier? (part 1 of 2)', 'Kept free to catch up.', 'The last one: no meeting is left', 'It gives up: free Wednesdays.']) expect(days).toContain(fact);
    });

    test.each(['<script>alert(1)</script>', '[x](javascript:alert(1))', '# no heading', '**bold** `code`', '1. one'])('%s stays text', title => {
        expect(words(suppliesMarkdown(supplies([order(title)])))).toContain(title);
        expect(words(scheduleMarkdown(schedule([meeting('2026-09-07', 'Mon 7 Sep', taught('a', title))]), title))).toContain(title);
    });
});

test('JSON of equal figures is equal text, whatever the order of keys', () => {
    expect(figuresJson('haversack-schedule', { b: 1, a: { d: [{ z: 1, y: 2 }], c: 2 } })).toBe(figuresJson('haversack-schedule', { a: { c: 2, d: [{ y: 2, z: 1 }] }, b: 1 }));
    expect(JSON.parse(figuresJson('haversack-schedule', { schedule: term }))).toMatchObject({ format: 'haversack-schedule', version: 1, schedule: { course: 'sums' } });
});
