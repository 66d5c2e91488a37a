import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ClassSheet, MaterialSheet } from '@haversack/language/sheets/sheet';
import type { WeekBrief } from '../../server/planning/figures.js';
import { planWeek } from '../../server/planning/week.js';
import type { file} from './sheets.js';
import {
    activity, amount, book, consumable, counted, course, days, held, kit, klass, lesson, measured, meets, mention, need, off, on, pack, percent,
    print, programme, range, reusable
} from './sheets.js';

type Declared = Parameters<typeof file>[number];
const uses = (name: string, count = 1) => [{ kit: mention(name), count, at: range() }];

/** Lessons l1, l2 ... each with its needs, two a week on Monday and Thursday from 7 September 2026, seven learners. */
function plan(things: Declared[], needs: ReturnType<typeof need>[][], own: Partial<ClassSheet> = {}) {
    const lessons = needs.map((n, i) => lesson(`l${i + 1}`, n));
    const sheets = programme(...things, ...lessons, course('c', lessons.map(l => l.name)),
        klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon', 'thu'), ...own }));
    return (week: number) => planWeek(sheets, { week });
}
const thing = (brief: WeekBrief, name: string) => brief.fetch.flatMap(g => g.things).find(t => t.name === name);
const text = (brief: WeekBrief, name: string) => thing(brief, name)?.amount.text;

describe('one week', () => {
    test('reusable: the largest lesson; consumable: the sum; the trail says so', () => {
        const brief = plan([reusable('cube'), consumable('bean', measured('g'))], [
            [need('cube', '20', 'pair'), need('bean', '150 g', 'pair')], [need('cube', '10', 'learner'), need('bean', '100 g', 'pair')]
        ])(1);
        expect([text(brief, 'cube'), text(brief, 'bean')]).toEqual(['80', '1 kg']);
        expect(thing(brief, 'cube')?.amount.trail.map(s => s.words)).toEqual([
            '“L1”, Mon 7 Sep: 20 x 4 pairs = 80', '“L2”, Thu 10 Sep: 10 x 7 learners = 70', 'handed back, so the largest of 2 lessons: 80'
        ]);
        expect(thing(brief, 'bean')?.amount.trail.at(-1)?.words).toBe('used up, so all 2 lessons together: 1 kg');
        expect(thing(brief, 'cube')).toMatchObject({ days: ['Mon 7 Sep', 'Thu 10 Sep'], lessons: [{ name: 'l1' }, { name: 'l2' }], use: 'reusable' });
        expect(thing(brief, 'cube')?.amount.trail[0]?.place?.uri).toBe('file:///demo/all.course');
    });
    test('parts: the union, and none where the whole thing is wanted', () => {
        const card = reusable('card', { ...counted('set', 'sets'), parts: ['ones', 'tens', 'hundreds'].map(mention) });
        const some = plan([card], [[need('card (tens)', '1 set', 'pair')], [need('card (ones)', '1 set', 'class')]])(1);
        expect(thing(some, 'card')?.parts.map(p => p.title)).toEqual(['Ones', 'Tens']);
        expect(text(some, 'card')).toBe('4 sets');
        expect(thing(plan([card], [[need('card (tens)', '1 set', 'pair')], [need('card', '1 set', 'class')]])(1), 'card')?.parts).toEqual([]);
    });
    test('units that were never declared and do not fit are left out and said', () => {
        const brief = plan([consumable('sand')], [[need('sand', '1 kg', 'class')], [need('sand', '1 l', 'class')]])(1);
        expect(text(brief, 'sand')).toBe('1 kg');
        expect(brief.assumptions).toEqual(['In “L2”, 1 l of “Sand” is left out: it cannot be added to 1 kg.']);
    });
    test('spares before rounding up', () => {
        expect(text(plan([reusable('cube', { spare: percent('10') })], [[need('cube', '7/2', 'class')]])(1), 'cube')).toBe('4');
    });
    test('partly optional: how much of it', () => {
        const lines = (second: boolean) => plan([reusable('cube', { spare: percent('10') })], [
            [need('cube', '10', 'class')], [need('cube', '20', 'class', { optional: true })], [need('cube', '20', 'class', { optional: second })]
        ])(1);
        expect(thing(lines(true), 'cube')?.amount.trail.at(-1)?.words).toBe('11 of it optional: 11 without');
        expect(text(lines(true), 'cube')).toBe('22');
        const alone = plan([reusable('cube')], [[need('cube', '20', 'class', { optional: true })]])(1);
        expect(thing(alone, 'cube')?.amount.trail.map(s => s.words)).toEqual(['“L1”, Mon 7 Sep: 20 x the whole class = 20 (optional)']);
    });
    // 1 US cup is 236.5882365 ml (NIST Handbook 44, appendix C).
    test('a written amount is told as written, then rounded up for fetching', () => {
        const water = thing(plan([consumable('water', measured('ml'))], [[need('water', '1/3 cup', 'learner')]])(1), 'water');
        expect(water?.amount.text).toBe('560 ml');
        expect(water?.amount.trail.map(s => s.words)).toEqual(['“L1”, Mon 7 Sep: 1/3 cup x 7 learners = 2 1/3 cups = 552.04 ml', 'rounded up to 560 ml']);
    });
    test('prints: copies, pages and sheets', () => {
        const brief = plan([print('two', 3, true), print('one', 2)], [[need('two', '1', 'learner'), need('one', '1', 'learner')]])(1);
        expect(brief.fetch.map(g => [g.source, g.title])).toEqual([['printed', 'To print']]);
        expect(brief.fetch[0]?.things.map(t => [t.amount.text, t.remark])).toEqual([
            ['7 copies', '7 copies of 3 pages: 21 pages, 14 sheets two-sided'], ['7 copies', '7 copies of 2 pages: 14 pages, 14 sheets one-sided']
        ]);
        expect(brief.buy).toEqual([]);
    });

    const lineOf = fc.record({ each: fc.integer({ min: 1, max: 99 }), per: fc.constantFrom('learner', 'pair', 'group', 'class', 'group of 3') });
    test('over any lessons: consumable week = sum of lessons, reusable week between the largest and the sum', () => {
        fc.assert(fc.property(fc.array(lineOf, { minLength: 1, maxLength: 2 }), fc.integer({ min: 1, max: 40 }), (lines, learners) => {
            const brief = plan([reusable('cube'), consumable('bead')], lines.map(l => [need('cube', String(l.each), l.per), need('bead', String(l.each), l.per)]),
                { learners: { count: learners, at: range() }, groupsOf: 4 })(1);
            const each = (name: string) => brief.lessons.map(l => Number(l.needs.find(n => n.name === name)?.amount.exact));
            const total = (numbers: number[]) => numbers.reduce((a, b) => a + b, 0);
            expect(Number(thing(brief, 'bead')?.amount.exact)).toBe(total(each('bead')));
            const cubes = Number(thing(brief, 'cube')?.amount.exact);
            expect(cubes).toBeLessThanOrEqual(total(each('cube')));
            expect(cubes).toBeGreaterThanOrEqual(Math.max(...each('cube')));
        }), { numRuns: 60 });
    });
});

describe('where it comes from', () => {
    const source = (sheet: Declared, more: Parameters<typeof need>[3] = {}, extra: Declared[] = [], own: Partial<ClassSheet> = {}) =>
        plan([sheet, ...extra], [[need(sheet.name, '1', 'class', more)]], own)(1).fetch[0]?.source;
    test('what is declared wins, then the kit that holds it', () => {
        expect(source(reusable('cube', { source: 'shop' }), {}, [kit('box', ['cube', '5'])], { kits: uses('box') })).toBe('shop');
        expect(source(reusable('cube'), { inKit: false }, [kit('box', ['cube', '5'])], { kits: uses('box') })).toBe('kit');
        expect(source(reusable('cube'), {}, [kit('box', ['cube', '5'])])).toBe('home');
    });
    test('then the claim of the need, then packs, then home', () => {
        expect(source(reusable('cube'), { inKit: true })).toBe('kit');
        expect(source(reusable('cube', { packs: [pack('1')] }))).toBe('shop');
        expect(source(consumable('bean', { packs: [pack('1')] }), { inKit: false })).toBe('shop');
        expect(source(reusable('cube'))).toBe('home');
    });
    test('books: library unless a price says shop', () => {
        expect(source(book('tales'))).toBe('library');
        expect(source(book('tales', { cost: { value: '5', currency: 'EUR', at: range() } }))).toBe('shop');
    });
    test('groups in the order kit, home, shop, library, print', () => {
        const brief = plan([print('page'), book('tales'), reusable('cube', { source: 'shop' }), reusable('jar'), reusable('scale', { source: 'kit' })],
            [['page', 'tales', 'cube', 'jar', 'scale'].map(n => need(n, '1', 'class'))])(1);
        expect(brief.fetch.map(g => g.title)).toEqual(['From the kit', 'From home', 'From the shop', 'From the library', 'To print']);
    });
});

describe('the shelf', () => {
    const brief = plan([reusable('cube'), consumable('chalk'), reusable('scale'), reusable('drum'), book('tales'), book('workbook'), kit('box', ['cube', '99'], ['scale', '1'], ['drum', '1'])], [
        [need('cube', '1', 'pair'), need('chalk', '1', 'pair')], [], [need('scale', '1', 'class')], [need('tales', '1', 'class')], [need('cube', '1', 'pair')]
    ], { kits: uses('box') });
    test('kit pieces and books of other weeks stay on it, with the week of their next use', () => {
        expect(brief(1).stayOnShelf.map(s => [s.name, s.why])).toEqual([
            ['scale', 'In the kit “Box”; next used in week 2.'], ['drum', 'In the kit “Box”; no lesson of this plan uses it.'], ['tales', 'Next used in week 2.']
        ]);
        expect(brief(1).stayOnShelf.map(s => [s.kit?.title, s.nextWeek])).toEqual([['Box', 2], ['Box', undefined], [undefined, undefined]]);
    });
    test('what was put away for good is not told again', () => {
        expect(brief(2).putAway.map(s => s.name)).toContain('scale');
        expect(brief(3).stayOnShelf.map(s => s.name)).toEqual(['drum']);
    });
    test('a library book is told of two weeks ahead, a book of the shop from the start', () => {
        const far = (source: 'library' | 'shop') => plan([book('tales', { source })], [[], [], [], [], [], [], [need('tales', '1', 'class')]]);
        expect([1, 2, 3].map(w => far('library')(w).stayOnShelf.length)).toEqual([0, 1, 1]);
        expect(far('shop')(1).stayOnShelf[0]?.why).toBe('Next used in week 4.');
    });
    test('what is used for the last time can be put away', () => {
        expect(brief(1).putAway).toEqual([]);
        expect(brief(2).putAway.map(s => s.name)).toEqual(['scale', 'tales']);
        expect(brief(3).putAway[0]?.after).toBe('Mon 21 Sep');
        expect(brief(3).putAway[0]?.why).toBe('Used for the last time on Mon 21 Sep; no later week needs it.');
    });
    test('what is new', () => {
        expect([1, 2, 3].map(w => brief(w).fetch.flatMap(g => g.things).filter(t => t.isNew).map(t => t.name))).toEqual([['cube', 'chalk'], ['scale', 'tales'], []]);
        expect(brief(1).next?.newThings.map(t => [t.title, t.source])).toEqual([['Scale', 'kit'], ['Tales', 'library']]);
    });
    test('of a choice, only what was chosen counts as used', () => {
        const either = plan([reusable('cube'), reusable('button')], [[need('cube or button', '1', 'pair')], [], [need('cube', '1', 'pair')]], { onHand: [held('button', '9')] });
        expect([thing(either(1), 'button')?.isNew, thing(either(2), 'cube')?.isNew]).toEqual([true, true]);
        expect(either(1).putAway.map(s => s.name)).toEqual(['button']);
    });
    test('what would do in place of what was chosen is not called unused', () => {
        const box = [reusable('bell'), reusable('cup'), reusable('drum'), kit('box', ['bell', '4'], ['cup', '9'], ['drum', '1'])];
        const either = plan(box, [[], [], [need('bell or cup', '7', 'class')], [], []], { kits: uses('box') });
        expect(either(1).stayOnShelf.filter(s => s.kit && s.nextWeek === undefined).map(s => s.name)).toEqual(['drum']);
        expect(either(1).stayOnShelf.find(s => s.name === 'bell')).toMatchObject({ why: 'Would do in week 2 in place of what is chosen there.' });
        expect([2, 3].map(w => either(w).stayOnShelf.map(s => s.name))).toEqual([['drum'], ['drum']]);
    });
    test('what lessons call not needed, unless another lesson of the week needs it', () => {
        const sheets = (second: string[]) => programme(book('workbook'), lesson('a', [], [], { notNeeded: [mention('workbook')] }),
            lesson('b', second.map(n => need(n, '1', 'class'))), course('c', ['a', 'b']), klass('k', 'c', 7));
        expect(planWeek(sheets([]), { week: 1 }).stayOnShelf).toMatchObject([{ name: 'workbook', why: 'Not needed for “A”.' }]);
        expect(planWeek(sheets(['workbook']), { week: 1 }).stayOnShelf).toEqual([]);
    });
});

describe('buying', () => {
    const bean = consumable('bean', { ...measured('g'), source: 'shop', arrives: days(6), packs: [pack('500 g', '2.10'), pack('2 kg')] });
    test('what is missing, its packs, and the last day to order', () => {
        const [line] = plan([bean], [[], [need('bean', '150 g', 'pair')]], { onHand: [held('bean', '400 g')] })(1).buy;
        expect(line).toMatchObject({
            name: 'bean', missing: { text: '200 g' }, packs: ['packs of 500 g at 2.10 USD', 'packs of 2 kg'], neededBy: '2026-09-10', orderBy: '2026-09-04',
            when: 'needed Thu 10 Sep; arrives in 6 days, so order by Fri 4 Sep', source: 'shop'
        });
        expect(line?.missing.trail[0]?.words).toBe('600 g needed less 400 g at hand');
    });
    test('packs in the plural of their unit or counted word', () => {
        const packsOf = (more: Partial<MaterialSheet>) => plan([consumable('card', { source: 'shop', ...more })], [[need('card', '90', 'class')]])(1).buy[0]?.packs;
        expect(packsOf({ ...measured('sheet'), packs: [pack('25 sheet', '2.10'), pack('1 sheets'), pack('1/2 sheet'), pack('1 1/2 sheet')] }))
            .toEqual(['packs of 25 sheets at 2.10 USD', 'packs of 1 sheet', 'packs of 1/2 sheet', 'packs of 1 1/2 sheets']);
        expect(packsOf({ ...counted('box', 'boxes'), packs: [pack('12 box'), pack('1 boxes'), pack('30')] }))
            .toEqual(['packs of 12 boxes', 'packs of 1 box', 'packs of 30']);
        expect(packsOf({ ...measured('kg'), packs: [pack('2000 grams')] })).toEqual(['packs of 2000 g']);
    });
    test('without dates, days before', () => {
        const [line] = plan([bean], [[need('bean', '150 g', 'pair')]], { starts: undefined })(1).buy;
        expect(line).toMatchObject({ when: 'needed on Day 1; arrives in 6 days, so order at least 6 days before' });
        expect(line?.orderBy).toBeUndefined();
    });
    test('nothing optional, nothing from home or the library, unless packs are declared for it', () => {
        const listed = (sheet: Declared, more = {}) => plan([sheet], [[need(sheet.name, '1', 'class', more)]], { onHand: [held(sheet.name, '0')] })(1).buy.map(b => b.name);
        expect(listed(reusable('cube', { source: 'shop' }))).toEqual(['cube']);
        expect(listed(reusable('cube', { source: 'shop' }), { optional: true })).toEqual([]);
        expect(listed(reusable('jar', { source: 'home' }))).toEqual([]);
        expect(listed(reusable('jar', { source: 'home', packs: [pack('6')] }))).toEqual(['jar']);
        expect(listed(book('tales'))).toEqual([]);
        expect(listed(reusable('scale', { source: 'kit' }))).toEqual(['scale']);
    });
    test('next week: only what cannot wait for its own brief', () => {
        const late = consumable('late', { source: 'shop', arrives: days(3) });
        const brief = plan([bean, late, consumable('soon', { source: 'shop' }), consumable('day', { source: 'shop' })],
            [[], [], [need('soon', '1', 'class')], [need('bean', '1 g', 'class'), need('late', '1', 'class'), need('day', '1', 'class')]])(1);
        // Bean: Thu 17 Sep less 6 days is Fri 11 Sep. Late: Mon 14 Sep is the first meeting. Soon is needed at it. Day can wait.
        expect(brief.next?.order.map(o => [o.name, o.orderBy])).toEqual([['soon', undefined], ['bean', '2026-09-11'], ['late', '2026-09-14']]);
    });
    test('what takes longer than a week to arrive is told in time', () => {
        const slow = consumable('slow', { source: 'shop', arrives: days(14) });
        const none = [[], []];
        const brief = plan([slow], [...none, ...none, ...none, [need('slow', '1', 'class')]]);
        // Needed Mon 28 Sep (week 4), so by Mon 14 Sep, the first meeting of week 2: week 1 is the last brief that can tell it.
        expect([1, 2, 3].map(w => brief(w).next?.order.map(o => o.when))).toEqual([
            ['needed Mon 28 Sep; arrives in 14 days, so order by Mon 14 Sep'],
            ['needed Mon 28 Sep; arrives in 14 days, so order by Mon 14 Sep'],
            ['needed Mon 28 Sep; arrives in 14 days, so order by Mon 14 Sep']
        ]);
    });
    test("next week: a thing that is handed back is not bought again on top of this week's", () => {
        const cube = reusable('cube', { source: 'shop' });
        const next = plan([cube], [[need('cube', '20', 'class')], [], [need('cube', '30', 'class')]], { onHand: [held('cube', '5')] });
        expect(next(1).buy[0]?.missing.text).toBe('15');
        expect(next(1).next?.order[0]?.missing.text).toBe('10');
        const used = consumable('bead', { source: 'shop' });
        expect(plan([used], [[need('bead', '20', 'class')], [], [need('bead', '30', 'class')]])(1).next?.order[0]?.missing.text).toBe('30');
    });
});

describe('weeks', () => {
    test('a week that does not exist is said, not thrown', () => {
        const brief = plan([], [[]]);
        for (const week of [0, 2, -1, 1.5, Number.NaN]) {
            expect(brief(week)).toMatchObject({ weeks: 1, lessons: [], fetch: [], stayOnShelf: [], meetings: [] });
            expect(brief(week).assumptions.at(-1)).toBe(`The plan has 1 week: there is no week ${week}.`);
            expect(brief(week).next).toBeUndefined();
        }
    });
    test('an empty programme too', () => {
        const brief = planWeek(programme(), { week: 1 });
        expect(brief.course).toEqual({ name: '', title: 'All lessons' });
        expect(brief.assumptions).toEqual([
            'No class is declared: one learner, one kit and four lessons a week.',
            'No course is declared: all lessons are planned in the order of the files.',
            'There are no lessons to plan.'
        ]);
    });
    test('dates, remarks and ages', () => {
        const brief = plan([], [[], [], []], { off: [off('2026-09-10', undefined, 'Fair')], ages: { from: 6, to: 9, at: range() } })(1);
        expect(brief).toMatchObject({ week: 1, weeks: 2, from: '2026-09-07', to: '2026-09-07', remarks: ['Fair: no meeting on Thu 10 Sep.'], ages: { from: 6 } });
        expect(brief.next).toMatchObject({ week: 2, from: '2026-09-14', lessons: [{ title: 'L2' }, { title: 'L3' }] });
    });
    test('figures survive JSON', () => {
        const brief = plan([reusable('cube', { cautions: [{ kind: 'small-parts', at: range() }] })], [[need('cube', '1/3', 'pair')]], { onHand: [held('cube', '1')] })(1);
        expect(JSON.parse(JSON.stringify(brief))).toEqual(brief);
    });
    test('minutes and activities of one lesson', () => {
        const sheets = programme(reusable('cube'), lesson('a', [], [activity('x', [need('cube', '1', 'class')]), activity('y', [], { minutes: 25 })]), lesson('b', [], [activity('z')]));
        expect(planWeek(sheets, { week: 1 })).toMatchObject({ minutes: 45, lessons: [{ minutes: 35 }, { minutes: 10 }] });
    });
});

test('amount() of the helper splits number and unit', () => expect(amount('1 1/2 fl oz')).toMatchObject({ value: '1 1/2', unit: 'fl oz' }));
