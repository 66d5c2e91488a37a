import { describe, expect, test } from 'vitest';
import { gatherProgramme } from '@haversack/language/sheets/programme';
import type { ClassSheet, FileSheet, MaterialSheet } from '@haversack/language/sheets/sheet';
import { newPlanningCache } from '../../server/planning/cache.js';
import type { SupplyFigures } from '../../server/planning/supply-figures.js';
import { planSupplies } from '../../server/planning/supplies/plan-supplies.js';
import { termPlanOf } from '../../server/planning/supplies/term-plan.js';
import { planWeek } from '../../server/planning/week.js';
import {
    activity, book, consumable, course, days, file, held, kit, klass, lesson, meets, mention, need, on, pack, percent, programme, range, reusable, section, step
} from './sheets.js';
import { bean, rows, supplies, weekly } from './supplies-sheets.js';

const bought = ({ orders }: SupplyFigures) => orders.map(o => [o.week, o.packs.map(p => `${p.count} x ${p.text.replace(/^.* of /, '')}`).join(' + '), o.covers]);

describe('the record of a thing', () => {
    test('week by week, with what orders and packs bring', () => {
        const found = supplies(weekly(bean({ packs: [pack('500 g', '2.10')] }), ['300 g', undefined, '300 g', '300 g'], { onHand: [held('bean', '400 g')], onOrder: [held('bean', '100 g', '2026-09-15')] }));
        expect(rows(found, 'bean')).toEqual([['300', '0', '0', '100'], ['0', '0', '0', '100'], ['300', '100', '500', '400'], ['300', '0', '0', '100']]);
        expect(found.things[0]).toMatchObject({ use: 'consumable', unit: 'g', opening: { text: '400 g' }, need: { text: '900 g' }, packs: ['packs of 500 g at 2.10 USD'] });
        expect(found.things[0]?.runsOut).toMatchObject({ week: 3, date: '2026-09-21', text: 'not enough from week 3 (Mon 21 Sep) on: 100 g missing' });
        expect(found.orders[0]).toMatchObject({ id: 'bean@3', net: { text: '400 g' }, bought: { text: '500 g' }, leftOver: { text: '100 g' }, cost: { text: '2.10 USD' }, covers: [3, 4], joined: 'what is not used then serves week 4 too' });
    });
    test('a safety stock stays; spares and losses count by week', () => {
        const safe = supplies(weekly(bean({ safetyStock: { value: '50', unit: 'g', at: range() } }), ['100 g', '100 g'], { onHand: [held('bean', '120 g')] }));
        expect(rows(safe, 'bean')).toEqual([['100', '0', '30', '50'], ['100', '0', '100', '50']]);
        expect(safe.things[0]?.safety?.text).toBe('50 g');
        // 100 whole ones and 10 %: a spare marks up to 110, a loss divides to 111.11, so 112.
        const counted = (more: Partial<MaterialSheet>) => rows(supplies(weekly(consumable('bead', { source: 'shop', ...more }), ['100'])), 'bead')?.[0]?.[0];
        expect([counted({ spare: percent('10') }), counted({ loss: percent('10') })]).toEqual(['110', '112']);
    });
    test('what is handed back needs the most at once and is bought once', () => {
        const found = supplies(weekly(reusable('cube', { source: 'shop', packs: [pack('20', '4.50')] }), ['30', '25', '45'], { onHand: [held('cube', '10')] }));
        expect(rows(found, 'cube')).toEqual([['30', '0', '20', '30'], ['25', '0', '0', '30'], ['45', '0', '20', '50']]);
        expect(found.things[0]?.need.text).toBe('45');
    });
    test('what is asked for from home is not bought', () => {
        const found = supplies(weekly(reusable('jar', { source: 'home' }), ['9']));
        expect(found.orders).toEqual([]);
        expect(found.shortages).toEqual([]);
        expect(found.things[0]).toMatchObject({ weeks: [{ unmet: { exact: '9' }, net: { exact: '0' } }], remarks: ['Asked for, not bought.'] });
        expect(found.things[0]?.runsOut).toBeUndefined();
    });
    test('books are bought, without a record', () => {
        const tales = book('tales', { source: 'shop', cost: { value: '12', currency: 'EUR', at: range() } });
        const found = planSupplies(programme(tales, lesson('a', [need('tales', '2', 'class')]), course('c', ['a']), klass('k', 'c', 7)), {});
        expect(found.things).toEqual([]);
        expect(found.orders[0]).toMatchObject({ name: 'tales', packs: [{ count: 2, text: '2 copies at 12.00 EUR' }], cost: { text: '24.00 EUR' } });
    });
    test('how long it keeps is counted in days, from meeting to meeting', () => {
        // Needed on Thursday 10 and Monday 14 September: four days, though in two weeks. A pack holds enough for both.
        const found = (keepsDays: number, own: Partial<ClassSheet> = { meets: meets('mon', 'thu') }) => supplies(weekly(bean({ packs: [pack('500 g', '2.10')], keeps: days(keepsDays) }), [undefined, '100 g', '100 g'], own)).orders.map(o => o.covers);
        expect([found(6), found(3)]).toEqual([[[1, 2]], [[1], [2]]]);
        // On Mondays alone it is seven days.
        expect([found(6, {}), found(8, {})]).toEqual([[[2], [3]], [[2, 3]]]);
    });
    test('what some lesson of a week cannot do without is bought, for all of them', () => {
        const optional = { ...need('bean', '100 g', 'class'), optional: true };
        const plain = need('bean', '50 g', 'class');
        const orders = (...needs: typeof plain[]) => supplies(programme(bean(), ...needs.map((one, i) => lesson(`l${i}`, [one])), course('c', needs.map((_, i) => `l${i}`)), klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon', 'thu') }))).orders.map(o => o.net.exact);
        expect([orders(optional, plain), orders(plain, optional), orders(optional, optional)]).toEqual([['150'], ['150'], []]);
    });
    test('what comes from home is bought too from the week on in which some is known to come, where packs say how', () => {
        const jar = (more: Partial<MaterialSheet>) => reusable('jar', { source: 'home', ...more });
        const coming = { onOrder: [held('jar', '4', '2026-09-14')] };
        const packs = { packs: [pack('6', '3.00')] };
        expect(bought(supplies(weekly(jar(packs), ['9', '9', '9'], coming)))).toEqual([[2, '1 x 6 at 3.00 USD', [2]]]);
        expect(bought(supplies(weekly(jar(packs), ['9', '9', '9'])))).toEqual([]);
        expect(bought(supplies(weekly(jar({}), ['9', '9', '9'], coming)))).toEqual([]);
    });
    test('what is left over goes off', () => {
        const found = supplies(weekly(bean({ packs: [pack('500 g', '2.10')], keeps: days(14) }), ['100 g', '100 g', '100 g']));
        expect(bought(found)).toEqual([[1, '1 x 500 g at 2.10 USD', [1, 2]], [3, '1 x 500 g at 2.10 USD', [3]]]);
        expect(found.things[0]?.weeks.map(w => w.spoiled?.exact)).toEqual([undefined, undefined, '300']);
        expect(found.things[0]?.remarks).toContain('300 g of what is bought goes off before it is used.');
    });
});

describe('orders', () => {
    test('the cheapest packs, and weeks joined where one delivery is cheaper', () => {
        const found = supplies(weekly(bean({ packs: [pack('100 g', '1.00')], delivery: { value: '3', currency: 'USD', at: range() } }), ['100 g', '100 g', '100 g']));
        expect(found.orders).toHaveLength(1);
        expect(found.orders[0]).toMatchObject({ covers: [1, 2, 3], cost: { text: '6.00 USD' }, delivery: { text: '3.00 USD' }, joined: 'one order for weeks 1 to 3: 6.00 USD less than week by week' });
    });
    test('late against a day that is passed in, only while the need is still to come', () => {
        const slow = weekly(bean({ packs: [pack('500 g')], arrives: days(10) }), [undefined, '100 g']);
        // Needed Mon 14 Sep; ten days before is Fri 4 Sep (check value of a script written apart from this engine).
        expect(supplies(slow).orders[0]).toMatchObject({ orderBy: '2026-09-04', orderWeek: 0, neededBy: '2026-09-14', when: 'needed Mon 14 Sep; arrives in 10 days, so order by Fri 4 Sep' });
        expect(supplies(slow).orders[0]?.late).toBeUndefined();
        const late = (today: string) => supplies(slow, today).orders[0]?.late;
        expect(late('2026-09-04')).toBeUndefined();
        expect(late('2026-09-07')).toEqual({ days: 3, words: '3 days too late: the last day to order was Fri 4 Sep' });
        expect(late('2026-09-14')?.days).toBe(10);
        expect(late('2026-09-15')).toBeUndefined();
    });
    test('working days skip weekends and the days off of the class', () => {
        const working = (own: Partial<ClassSheet> = {}) => supplies(weekly(bean({ arrives: { days: 10, working: true, at: range() } }), [undefined, '100 g'], own)).orders[0];
        // 10 working days before Mon 14 Sep is Mon 31 Aug; with Mon 7 Sep off, Fri 28 Aug (the same script).
        expect(working()).toMatchObject({ orderBy: '2026-08-31', when: 'needed Mon 14 Sep; arrives in 10 working days, so order by Mon 31 Aug' });
        expect(working({ off: [{ from: on('2026-09-07'), at: range() }], starts: on('2026-08-31') })?.orderBy).toBe('2026-08-28');
    });
    test('a release stands in the week of its last day to order', () => {
        // Needed Mon 21 Sep; eight days before is Sun 13 Sep, the last day of week 1.
        const found = supplies(weekly(bean({ arrives: days(8) }), [undefined, undefined, '100 g']));
        expect(found.things[0]?.weeks.map(w => w.releases.exact)).toEqual(['100', '0', '0']);
    });
    test('currencies are never added up; a learner pays a share, rounded up', () => {
        const other = consumable('seed', { source: 'shop', packs: [{ ...pack('10', '2.00'), cost: { value: '2.00', currency: 'EUR', at: range() } }] });
        const sheets = programme(bean({ packs: [pack('500 g', '2.10')] }), other, consumable('glue', { source: 'shop' }), lesson('a', [need('bean', '100 g', 'class'), need('seed', '10', 'class'), need('glue', '1', 'class')]), course('c', ['a']), klass('k', 'c', 4));
        const { costs } = planSupplies(sheets, { class: 'k' });
        expect(costs.term.map(m => m.text)).toEqual(['2.00 EUR', '2.10 USD']);
        expect(costs.perLearner.map(m => m.text)).toEqual(['0.50 EUR', '0.53 USD']);
        expect(costs.byWeek).toEqual([{ week: 1, money: costs.term }]);
        expect(costs.unpriced).toEqual([{ name: 'glue', title: 'Glue' }]);
    });
    test('of packs in two currencies one is compared, said', () => {
        const mixed = bean({ packs: [pack('500 g', '2.10'), { ...pack('500 g', '1.00'), cost: { value: '1.00', currency: 'EUR', at: range() } }] });
        const found = supplies(weekly(mixed, ['100 g']));
        expect(found.orders[0]?.cost?.text).toBe('2.10 USD');
        expect(found.things[0]?.remarks).toEqual(['Packs are compared in USD only: prices in other currencies are left out.']);
    });
});

describe('shortages', () => {
    const cube = reusable('cube', { standIns: [{ thing: mention('button'), give: '2', replaces: '1', at: range() }], source: 'kit' });
    test('of what is handed back, by meeting, with what would mend them', () => {
        const found = supplies(weekly(cube, ['30', '20'], { onHand: [held('cube', '20'), held('button', '25')] }, [reusable('button')]));
        expect(found.shortages).toHaveLength(1);
        expect(found.shortages[0]).toMatchObject({
            name: 'cube', week: 1, date: '2026-09-07', meeting: 'Mon 7 Sep', needed: { text: '30' }, atHand: { text: '20' }, missing: { text: '10' }, order: 'cube@1', lessons: [{ name: 'l1' }],
            standIns: [{ name: 'button', enough: true, text: '20 of “Button” in place of 10: 25 at hand' }]
        });
        const poor = supplies(weekly(cube, ['30'], { onHand: [held('cube', '20'), held('button', '19')] }, [reusable('button')]));
        expect(poor.shortages[0]?.standIns[0]).toMatchObject({ enough: false });
    });
    test('what a meeting itself uses cannot stand in', () => {
        const sheets = programme(cube, reusable('button'), lesson('a', [need('cube', '30', 'class'), need('button', '10', 'class')]), course('c', ['a']), klass('k', 'c', 7, { onHand: [held('cube', '20'), held('button', '25')] }));
        expect(planSupplies(sheets, { class: 'k' }).shortages[0]?.standIns[0]).toMatchObject({ enough: false, text: '20 of “Button” in place of 10: 15 at hand' });
    });
    test('a written order that comes on the day mends the meeting', () => {
        expect(supplies(weekly(cube, ['30'], { onHand: [held('cube', '20')], onOrder: [held('cube', '10', '2026-09-07')] })).shortages).toEqual([]);
        expect(supplies(weekly(cube, ['30'], { onHand: [held('cube', '20')], onOrder: [held('cube', '10', '2026-09-08')] })).shortages).toHaveLength(1);
    });
});

describe('one cupboard for several classes', () => {
    const two = (own: Partial<ClassSheet> = {}, other: Partial<ClassSheet> = {}) => programme(
        reusable('cube', { source: 'kit' }), bean({ packs: [pack('500 g', '2.10')] }), kit('box', ['cube', '10']),
        lesson('a', [need('cube', '20', 'class'), need('bean', '100 g', 'class')]), lesson('b', [need('cube', '15', 'class'), need('bean', '100 g', 'class')]), course('c', ['a', 'b']),
        klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon'), kits: [{ kit: mention('box'), count: 2, at: range() }], onHand: [held('bean', '150 g')], ...own }),
        klass('other', 'c', 5, { starts: on('2026-09-07'), meets: meets('mon'), kits: [{ kit: mention('box'), count: 1, at: range() }], onHand: [held('bean', '50 g')], sharesWith: [mention('k')], ...other })
    );
    test('stock is pooled, what is used up is drawn down by both, and there is one set of orders', () => {
        const own = supplies(two());
        expect(own).toMatchObject({ sharedWith: [{ name: 'other' }], learners: 12, classTitle: 'K and Other' });
        expect(rows(own, 'bean')).toEqual([['200', '0', '0', '0'], ['200', '0', '500', '300']]);
        expect(rows(own, 'cube')?.[0]).toEqual(['40', '0', '10', '40']);
        expect(supplies(two(), undefined, 'other').orders.map(o => [o.id, o.bought.text])).toEqual(own.orders.map(o => [o.id, o.bought.text]));
        expect(own.assumptions).toContain('The cupboard is shared with “Other”: stock, needs, orders and costs are those of all of them.');
    });
    test('a clash by meeting: the same day, and where both have hours the same hour', () => {
        const clash = supplies(two()).clashes;
        expect(clash.map(c => [c.date, c.together.text, c.atHand.text, c.missing.text, c.classes.map(own => [own.name, own.needed.text])])).toEqual([['2026-09-07', '40', '30', '10', [['k', '20'], ['other', '20']]]]);
        const hours = (one: string, other: string) => supplies(two({ sections: [section('s', 7, one)] }, { sections: [section('t', 5, other)] })).clashes.length;
        expect([hours('9:00', '09:00'), hours('9:00', '10:30')]).toEqual([1, 0]);
        expect(supplies(two({}, { meets: meets('tue') })).clashes).toEqual([]);
    });
    test('the brief of a week says what the other class takes and where there is not enough for both', () => {
        const remarks = (name: string, sheets = two()) => planWeek(sheets, { class: name, week: 1 }).remarks;
        expect(remarks('k')).toEqual(['Mon 7 Sep: 10 of “Cube” are missing: 20 for “K” and 20 for “Other”, 30 at hand.', '“Other” uses 100 g of “Bean” this week too, from the same cupboard.']);
        expect(remarks('other')).toContain('“K” uses 100 g of “Bean” this week too, from the same cupboard.');
        expect(remarks('k', two({}, { meets: meets('tue') }))).toEqual(['“Other” uses 100 g of “Bean” this week too, from the same cupboard.']);
        expect(remarks('k', two({}, { sharesWith: [] }))).toEqual([]);
    });
    test('weeks of one class in which the other meets alone are told in its next', () => {
        const found = supplies(two({ starts: on('2026-09-14') }));
        expect(rows(found, 'bean')?.map(r => r[0])).toEqual(['300', '100']);
    });
    test("the week's brief has the pooled stock less what the other class used", () => {
        const bean2 = planWeek(two(), { class: 'other', week: 2 }).fetch.flatMap(g => g.things).find(t => t.name === 'bean');
        expect(bean2?.atHand?.text).toBe('0 g');
        const cube1 = planWeek(two(), { class: 'other', week: 1 }).fetch.flatMap(g => g.things).find(t => t.name === 'cube');
        expect(cube1?.atHand?.trail.map(s => s.words)).toEqual(['1 kit “Box” with 10: 10', '2 kits “Box” with 10: 20']);
    });
});

describe("the brief's at hand tells what earlier weeks bought", () => {
    test('in packs', () => {
        const sheets = weekly(bean({ packs: [pack('500 g', '2.10')] }), ['100 g', '600 g', '300 g', '50 g']);
        const brief = planWeek(sheets, { class: 'k', week: 3 });
        const [thing] = brief.fetch[0]?.things ?? [];
        expect(thing?.atHand).toMatchObject({ text: '300 g' });
        expect(thing?.atHand?.trail.map(s => s.words)).toEqual(['1 pack of 500 g bought for week 1: 500 g', '1 pack of 500 g bought for week 2: 500 g', 'used in weeks 1 and 2: 700 g']);
        expect(thing?.missing).toBeUndefined();
        expect(brief.buy).toEqual([]);
        expect(planWeek(sheets, { class: 'k', week: 2 }, { today: '2026-09-01' }).buy[0]).toMatchObject({ missing: { text: '200 g' }, packsToBuy: [{ text: '1 pack of 500 g at 2.10 USD' }], cost: { text: '2.10 USD' }, covers: [2, 3], when: 'needed Mon 14 Sep' });
    });
});

describe('lessons in pieces and again', () => {
    const card = reusable('card', { source: 'kit' });
    const long = lesson('long', [need('card', '8', 'class'), need('bean', '40 g', 'class')], [
        activity('one', [need('bean', '10 g', 'class')], { minutes: 40, steps: [step('do', 'Use the {bean}.')] }), activity('two', [need('card', '12', 'class')], { minutes: 40 })
    ]);
    const term = (own: Partial<ClassSheet>) => planSupplies(programme(card, bean(), long, lesson('after'), course('c', ['long', 'after']), klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon'), ...own })), { class: 'k' });
    test('what a split lesson uses up comes once, to its first piece; what is handed back to each', () => {
        const found = term({ session: { minutes: 45, at: range() } });
        expect(rows(found, 'bean')?.map(r => r[0])).toEqual(['50', '0', '0']);
        expect(rows(found, 'card')?.map(r => r[0])).toEqual(['8', '12', '0']);
    });
    test('a whole lesson again needs all of its things again', () => {
        const found = term({ log: [{ lesson: mention('long'), on: on('2026-09-07'), at: range() }] });
        expect(rows(found, 'bean')?.map(r => r[0])).toEqual(['50', '50', '0']);
        expect(rows(found, 'card')?.map(r => r[0])).toEqual(['12', '12', '0']);
    });
    test('a part again needs its own things and those that its steps name', () => {
        const check = { kind: 'checkpoint' as const, name: 'end', title: 'End', at: range(), head: range(), whole: range(), minutes: 5, steps: [], needs: [], cautions: [] };
        const repeats = { ...long, parts: [...long.parts, { ...check, unsure: { then: 'repeat' as const, activity: mention('one'), when: 'tomorrow' as const, at: range() } }] };
        const found = planSupplies(programme(card, bean(), repeats, lesson('after'), course('c', ['long', 'after']), klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon'), log: [{ lesson: mention('long'), on: on('2026-09-07'), at: range() }] })), { class: 'k' });
        expect(rows(found, 'bean')?.map(r => r[0])).toEqual(['50', '50']);
        expect(rows(found, 'card')?.map(r => r[0])).toEqual(['12', '0']);
    });
});

describe('a kept plan', () => {
    const inventory = file(bean(), reusable('cube', { source: 'kit' }));
    const taught = (amount: string, minutes = 10): FileSheet => ({ ...file(lesson('a', [need('bean', amount, 'class')], [activity('x', [], { minutes })])), uri: 'file:///demo/a.lesson' });
    const rest: FileSheet = { ...file(lesson('b', [need('cube', '3', 'class')]), course('c', ['a', 'b']), klass('k', 'c', 7)), uri: 'file:///demo/rest.course' };
    const first = gatherProgramme([inventory, taught('100 g'), rest]);
    test('counts only the things of the changed lesson again', () => {
        const cache = newPlanningCache();
        const term = termPlanOf(cache, first).term({ class: 'k' });
        const [beans, cubes, { schedule }] = [term.ledger('bean'), term.ledger('cube'), term.plan];
        const same = [...first.files.values()];
        const sheet = same.find(f => f.uri.endsWith('a.lesson'))!;
        const needs = [{ ...sheet.lessons[0]!.needs[0]!, amount: { ...sheet.lessons[0]!.needs[0]!.amount!, value: '200' } }];
        const later = gatherProgramme(same.map(f => (f === sheet ? { ...f, lessons: [{ ...f.lessons[0]!, needs }] } : f)));
        const again = termPlanOf(cache, later).term({ class: 'k' });
        expect(again.plan.schedule).toBe(schedule);
        expect(again.ledger('cube')).toBe(cubes);
        expect(again.ledger('bean')).not.toBe(beans);
        expect(again.ledger('bean')?.record.gross).toEqual([200n]);
    });
    test('other minutes make another schedule, another inventory another ledger', () => {
        const cache = newPlanningCache();
        const { schedule } = termPlanOf(cache, first).term({ class: 'k' }).plan;
        expect(termPlanOf(cache, gatherProgramme([inventory, taught('100 g', 20), rest])).term({ class: 'k' }).plan.schedule).not.toBe(schedule);
        const priced = gatherProgramme([file(bean({ packs: [pack('500 g', '2.10')] }), reusable('cube', { source: 'kit' })), taught('100 g', 20), rest]);
        expect(termPlanOf(cache, priced).term({ class: 'k' }).costs()).toEqual([{ minor: 210n, currency: 'USD' }]);
    });
});
