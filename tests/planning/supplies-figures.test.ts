/** What is told of a term's stock and buying, with the lines it comes from: records, orders, costs. Amounts worked out by hand in the names of the tests. */
import { describe, expect, test } from 'vitest';
import type { ClassSheet, MaterialSheet, Need } from '@haversack/language/sheets/sheet';
import { newPlanningCache } from '../../server/planning/cache.js';
import { packsInWords } from '../../server/planning/supplies/buying-words.js';
import { netOf, weeksInWords } from '../../server/planning/supplies/order-figures.js';
import { costsOf, isLate, type LedgerOrder } from '../../server/planning/supplies/orders.js';
import { planSupplies } from '../../server/planning/supplies/plan-supplies.js';
import { termPlanOf } from '../../server/planning/supplies/term-plan.js';
import { amount, book, consumable, counted, course, days, held, klass, lesson, material, measured, meets, need, on, pack, percent, print, programme, range, reusable } from './sheets.js';
import { bean, rows, supplies, weekly } from './supplies-sheets.js';

const undated: Partial<ClassSheet> = { starts: undefined, meets: [] };
const optional = (name: string, text: string) => need(name, text, 'class', { optional: true });
const delivery = (value: string, currency = 'USD') => ({ delivery: { value, currency, at: range() } });
const euros = (text: string, value: string) => ({ ...pack(text), cost: { value, currency: 'EUR', at: range() } });

describe('what the term needs, and who asks', () => {
    const needOf = (thing: MaterialSheet, ...needs: (string | Need | undefined)[]) => {
        const found = supplies(weekly(thing, needs)).things[0]!.need;
        return [found.text, ...found.trail.map(({ words }) => words)];
    };
    test('one lesson, without a sum', () => {
        expect(needOf(consumable('bead'), undefined, '15')).toEqual(['15', 'week 2, Mon 14 Sep, “L2”: 15']);
        expect(needOf(reusable('cube'), '15')).toEqual(['15', 'week 1, Mon 7 Sep, “L1”: 15']);
    });
    test('used up: 15 and 25 are 40; 10 % to spare, 17 and 28 whole ones, are 45', () => {
        const asked = ['week 1, Mon 7 Sep, “L1”: 15', 'week 3, Mon 21 Sep, “L3”: 25', 'used up, so all together: 40'];
        expect(needOf(consumable('bead'), '15', undefined, '25')).toEqual(['40', ...asked]);
        expect(needOf(consumable('bead', { spare: percent('10') }), '15', undefined, '25')).toEqual(['45', ...asked, 'with spares and losses, week by week: 45']);
        expect(needOf(consumable('bead', { spare: percent('10') }), '15')).toEqual(['17', asked[0], 'with spares and losses, week by week: 17']);
    });
    test('a tenth to spare and a tenth lost make 11/9 of a metre, exactly', () => {
        expect(supplies(weekly(consumable('ribbon', { ...measured('m'), spare: percent('10'), loss: percent('10') }), ['1 m'])).things[0]!.need.exact).toBe('11/9');
    });
    test('handed back: the most at once, and what spares make of that', () => {
        const asked = ['week 1, Mon 7 Sep, “L1”: 15', 'week 2, Mon 14 Sep, “L2”: 25'];
        expect(needOf(reusable('cube'), '15', '25')).toEqual(['25', ...asked, 'handed back, so the most at once: 25']);
        expect(needOf(reusable('cube', { spare: percent('10') }), '15', '25')).toEqual(['28', ...asked, 'handed back, so the most at once: 25', 'spare 10%: 25 becomes 27 1/2', 'rounded up to whole things: 28']);
    });
    test('parts of a whole add up exactly: a third and a half of a metre are five sixths', () => {
        expect(supplies(weekly(consumable('ribbon', measured('m')), ['1/3 m', '1/2 m'])).things[0]!.need).toMatchObject({ exact: '5/6', trail: [{}, {}, {}] });
        expect(rows(supplies(weekly(consumable('ribbon', measured('m')), ['1/3 m', '1/2 m', '1/4 m'], { meets: meets('mon', 'thu') })), 'ribbon')?.map(row => row[0])).toEqual(['5/6', '0.25']);
    });
    test('each step leads to the line that asks', () => {
        const sheets = weekly(consumable('bead'), ['15', '25']);
        const lines = [...sheets.lessons.values()].map(({ uri, needs }) => ({ uri, range: needs[0]!.at }));
        const { need: { trail }, runsOut, place } = supplies(sheets).things[0]!;
        expect(trail.map(step => step.place)).toEqual([...lines, undefined]);
        expect([runsOut, place.range]).toEqual([undefined, sheets.materials.get('bead')!.at]);
    });
});

describe('a record says what is known', () => {
    test('nothing of what nobody says', () => {
        const found = supplies(weekly(reusable('cube'), ['3'])).things[0]!;
        expect(found).toMatchObject({ use: 'reusable', unit: undefined, opening: undefined, safety: undefined, lead: undefined, packs: [], source: 'home' });
    });
    test('unit, reserve, days on the way, packs', () => {
        const sheet = consumable('sheet', { ...counted('sheet', 'sheets'), safetyStock: amount('5'), arrives: days(3), packs: [pack('25 sheets', '2.00')] });
        const found = supplies(weekly(sheet, ['3'], { onHand: [held('sheet', '1')] })).things[0]!;
        expect(found).toMatchObject({ use: 'consumable', unit: 'sheets', opening: { text: '1 sheet' }, safety: { text: '5 sheets' }, lead: { days: 3, working: false }, packs: ['packs of 25 sheets at 2.00 USD'] });
        expect(supplies(weekly(bean({ arrives: { days: 2, working: true, at: range() } }), ['3 g'])).things[0]).toMatchObject({ unit: 'g', lead: { days: 2, working: true } });
    });
    test('what arrives in a week without a use is there from that week on; what comes after the term is not', () => {
        const orders = [held('bean', '40 g', '2026-09-10'), held('bean', '7 g', '2026-12-01'), held('bean', '5 g', '2026-09-14')];
        const found = supplies(weekly(bean(), ['10 g', undefined, undefined, '50 g'], { onHand: [held('bean', '10 g')], onOrder: orders }));
        expect(rows(found, 'bean')).toEqual([['10', '0', '0', '0'], ['0', '45', '0', '45'], ['0', '0', '0', '45'], ['50', '0', '5', '0']]);
    });
    test('net, releases and what is not met, week by week', () => {
        const found = supplies(weekly(bean({ arrives: days(7) }), ['10 g', '20 g', optional('bean', '30 g'), '40 g']));
        expect(found.things[0]!.weeks.map(({ net, releases, unmet, spoiled }) => [net.exact, releases.exact, unmet?.exact, spoiled])).toEqual([
            ['10', '20', undefined, undefined], ['20', '0', undefined, undefined], ['0', '40', '30', undefined], ['40', '0', undefined, undefined]
        ]);
    });
    test('what nobody weighs is told rounded: needed up, at hand down', () => {
        // 100/3 g and 200/3 g.
        const found = supplies(weekly(bean(), ['100/3 g'], { onHand: [held('bean', '100 g')] })).things[0]!.weeks[0]!;
        expect([found.gross, found.onHand, found.net]).toEqual([{ exact: '100/3', text: '34 g' }, { exact: '200/3', text: '66 g' }, { exact: '0', text: '0 g' }]);
    });
});

describe('when stock and written orders are not enough any more', () => {
    const runsOut = (thing: MaterialSheet, needs: (string | Need | undefined)[], own: Partial<ClassSheet> = {}) => {
        const sheets = weekly(thing, needs, own);
        const { runsOut: found } = supplies(sheets).things[0]!;
        if (found) expect(found.place).toEqual({ uri: sheets.lessons.get(`l${found.week}`)!.uri, range: sheets.lessons.get(`l${found.week}`)!.needs[0]!.at });
        return found && [found.week, found.date, found.text];
    };
    const bead = consumable('bead', { source: 'shop' });
    const cube = reusable('cube', { source: 'shop' });
    const have = (name: string, text: string, ...orders: [string, string][]): Partial<ClassSheet> => ({ onHand: [held(name, text)], onOrder: orders.map(([size, date]) => held(name, size, date)) });
    test.each<[string, () => unknown, unknown]>([
        ['10 are there: 4, 4 and 4 lack 2 in the third week', () => runsOut(bead, ['4', '4', '4'], have('bead', '10')), [3, '2026-09-21', 'not enough from week 3 (Mon 21 Sep) on: 2 missing']],
        ['12 are just enough', () => runsOut(bead, ['4', '4', '4'], have('bead', '12')), undefined],
        ['10 that are handed back are enough for 10 again and again', () => runsOut(cube, ['10', '10', '12'], have('cube', '10')), [3, '2026-09-21', 'not enough from week 3 (Mon 21 Sep) on: 2 missing']],
        ['none at hand, and to be bought', () => runsOut(bead, [undefined, '9']), [2, '2026-09-14', 'none at hand in week 2 (Mon 14 Sep): 9 missing']],
        ['without dates', () => runsOut(bead, ['9', '9'], { ...undated, ...have('bead', '10') }), [1, undefined, 'not enough from week 1 on: 8 missing']],
        ['asked for from home, nothing known of it', () => runsOut(reusable('jar', { source: 'home' }), ['9']), undefined],
        ['asked for from home, with 4 that come in the second week', () => runsOut(reusable('jar', { source: 'home' }), ['9', '9', '9'], { onOrder: [held('jar', '4', '2026-09-14')] }), [2, '2026-09-14', 'not enough from week 2 (Mon 14 Sep) on: 5 missing']],
        ['what can be done without is never short, but takes what is there', () => runsOut(bead, [optional('bead', '30'), '4'], have('bead', '10')), [2, '2026-09-14', 'not enough from week 2 (Mon 14 Sep) on: 4 missing']],
        ['orders count once, from the week they come in: 2 + 5 are enough for 4 and 3, not for 1 more', () => runsOut(bead, ['2', '4', '1', '1'], have('bead', '2', ['5', '2026-09-09'])), [4, '2026-09-28', 'not enough from week 4 (Mon 28 Sep) on: 1 missing']],
        ['an order that comes later does not help', () => runsOut(bead, ['2', '4'], have('bead', '2', ['5', '2026-09-15'])), [2, '2026-09-14', 'not enough from week 2 (Mon 14 Sep) on: 4 missing']],
        ['an order between two uses', () => runsOut(bead, ['2', undefined, undefined, '5'], have('bead', '2', ['5', '2026-09-15'])), undefined]
    ])('%s', (_, found, expected) => {
        expect(found()).toEqual(expected);
    });
    test('with spares: 20 are there, 20 and a tenth are 22', () => {
        expect(runsOut(reusable('cube', { source: 'shop', spare: percent('10') }), ['20'], have('cube', '20'))).toEqual([1, '2026-09-07', 'not enough from week 1 (Mon 7 Sep) on: 2 missing']);
    });
});

describe('remarks', () => {
    const remarks = (thing: MaterialSheet, needs: (string | Need | undefined)[], own: Partial<ClassSheet> = {}) => supplies(weekly(thing, needs, own)).things[0]!.remarks;
    test('an amount that cannot be added to the others', () => {
        const salt = material('salt', { use: 'consumable', source: 'shop' });
        expect(remarks(salt, ['5 g', '1 cup', '1 kg'])).toEqual(['In “L2”, an amount of “Salt” is left out: it cannot be added to the others.']);
        expect(rows(supplies(weekly(salt, ['5 g', '1 cup', '1 kg'])), 'salt')?.map(row => row[0])).toEqual(['5', '0', '1000']);
    });
    test('stock that goes off is counted as if it kept; what is handed back does not go off', () => {
        expect(remarks(bean({ keeps: days(30) }), ['5 g'])).toEqual(['What is at hand already is counted as if it kept.']);
        expect(remarks(reusable('cube', { source: 'shop', keeps: days(30) }), ['5'])).toEqual([]);
    });
    test('asked for, not bought: only where nothing is ordered and something is missing', () => {
        expect(remarks(reusable('jar', { source: 'home' }), ['9'], { onHand: [held('jar', '9')] })).toEqual([]);
        expect(remarks(bean(), [optional('bean', '9 g'), '9 g'])).toEqual([]);
        expect(remarks(bean(), [optional('bean', '9 g')])).toEqual(['Asked for, not bought.']);
    });
});

describe('packs in words', () => {
    test.each<[string, Partial<MaterialSheet>, string]>([
        ['20', {}, 'packs of 20'], ['25 sheets', counted('sheet', 'sheets'), 'packs of 25 sheets'], ['1 Sheets', counted('sheet', 'sheets'), 'packs of 1 sheet'], ['1/2 SHEET', counted('sheet', 'sheets'), 'packs of 1/2 sheet'],
        ['0 sheet', counted('sheet', 'sheets'), 'packs of 0 sheets'], ['2 cup', {}, 'packs of 2 cups'], ['1 cup', {}, 'packs of 1 cup'], ['1.5 cup', {}, 'packs of 1.5 cups'], ['0.5 kg', measured('g'), 'packs of 0.5 kg'], ['3 box', counted('sheet', 'sheets'), 'packs of 3 box'],
        ['25 STICK', counted('stick', 'sticks'), 'packs of 25 sticks'], ['1 Sticks', counted('stick', 'sticks'), 'packs of 1 stick'], ['3 STICK', {}, 'packs of 3 STICK']
    ])('%s', (text, more, words) => {
        expect(packsInWords(consumable('thing', { ...more, packs: [pack(text)] }))).toEqual([words]);
    });
    test('with the price as declared; a print has none', () => {
        expect(packsInWords(consumable('thing', { packs: [pack('20', '4.5'), pack('50')] }))).toEqual(['packs of 20 at 4.5 USD', 'packs of 50']);
        expect(packsInWords(print('page'))).toEqual([]);
        expect(packsInWords(book('tales', { cost: { value: '1', currency: 'EUR', at: range() } }))).toEqual([]);
    });
});

describe('an order', () => {
    test('two kinds of packs, with delivery: 1.2 kg are a pack of a kilo and one of 200 g, cheaper than two kilos', () => {
        const sheets = weekly(bean({ packs: [pack('200 g', '1.00'), pack('1 kg', '3.00'), pack('700 g', '9.00')], ...delivery('2') }), ['1200 g']);
        const found = supplies(sheets).orders[0]!;
        expect(found).toMatchObject({
            id: 'bean@1', source: 'shop', week: 1, covers: [1], net: { text: '1.2 kg', exact: '1.2' }, leftOver: undefined, cost: { text: '6.00 USD' }, delivery: { text: '2.00 USD' }, neededBy: '2026-09-07', orderBy: undefined, orderWeek: 1, when: 'needed Mon 7 Sep', joined: undefined, late: undefined
        });
        expect(found.bought.trail).toEqual([{ words: '1 pack of 200 g and 1 pack of 1 kg: 1.2 kg' }]);
        const { uri, at, packs } = sheets.materials.get('bean')!;
        expect(found.place).toEqual({ uri, range: at });
        expect(found.packs).toEqual([
            { count: 1, text: '1 pack of 200 g at 1.00 USD', cost: { minor: '100', currency: 'USD', text: '1.00 USD' }, place: { uri, range: packs[0]!.at } },
            { count: 1, text: '1 pack of 1 kg at 3.00 USD', cost: { minor: '300', currency: 'USD', text: '3.00 USD' }, place: { uri, range: packs[1]!.at } }
        ]);
        expect(found.net.trail).toEqual([{ words: 'week 1: 1.2 kg of 1.2 kg needed', place: { uri, range: sheets.lessons.get('l1')!.needs[0]!.at } }]);
    });
    test('several of one pack cost as many times as much; without packs it is the amount itself', () => {
        const found = supplies(weekly(bean({ packs: [pack('200 g', '1.10')] }), ['500 g'])).orders[0]!;
        expect([found.packs.map(({ count, text, cost }) => [count, text, cost?.text]), found.leftOver?.text, found.cost?.text]).toEqual([[[3, '3 packs of 200 g at 1.10 USD', '3.30 USD']], '100 g', '3.30 USD']);
        const loose = supplies(weekly(bean(), ['500 g'])).orders[0]!;
        expect([loose.packs, loose.bought.trail, loose.cost, loose.delivery]).toEqual([[], [{ words: '500 g: 500 g' }], undefined, undefined]);
        const unpriced = supplies(weekly(bean({ packs: [pack('200 g')] }), ['500 g'])).orders[0]!;
        expect([unpriced.packs.map(({ text, cost }) => [text, cost]), unpriced.cost]).toEqual([[['3 packs of 200 g', undefined]], undefined]);
    });
    test('a reserve is told as part of what is missing: 30 of 100 and 50', () => {
        const found = supplies(weekly(bean({ safetyStock: amount('50 g') }), ['100 g'], { onHand: [held('bean', '120 g')] })).orders[0]!;
        expect([found.net.text, found.net.trail.map(({ words }) => words)]).toEqual(['30 g', ['week 1: 30 g of 100 g needed', '50 g stay in reserve']]);
    });
    test('a week that can do without takes what is left over, and is told no amount of', () => {
        const found = supplies(weekly(bean({ packs: [pack('150 g', '1.00')] }), ['100 g', optional('bean', '30 g')])).orders;
        expect(found.map(({ covers, leftOver, joined, net }) => [covers, leftOver?.text, joined, net.trail.map(({ words }) => words)])).toEqual([[[1, 2], '20 g', 'what is not used then serves week 2 too', ['week 1: 100 g of 100 g needed']]]);
    });
    test('joined without prices: fewer deliveries, and no saving is told', () => {
        const found = supplies(weekly(bean({ packs: [pack('100 g')], ...delivery('3') }), ['100 g', '100 g']));
        expect(found.orders.map(({ covers, joined, cost }) => [covers, joined, cost])).toEqual([[[1, 2], 'one order for weeks 1 and 2', undefined]]);
        expect(found.costs.term.map(({ text }) => text)).toEqual(['3.00 USD']);
    });
    test('a larger pack for two weeks: 4.00 for one of 500 g, where two of 300 g are 6.00', () => {
        const found = supplies(weekly(bean({ packs: [pack('300 g', '3.00'), pack('500 g', '4.00')] }), ['250 g', '250 g'])).orders;
        expect(found.map(({ covers, joined, leftOver }) => [covers, joined, leftOver])).toEqual([[[1, 2], 'one order for weeks 1 and 2: 2.00 USD less than week by week', undefined]]);
        expect(found[0]!.net.trail.map(({ words }) => words)).toEqual(['week 1: 250 g of 250 g needed', 'week 2: 250 g of 250 g needed']);
    });
    test('a delivery in another currency is paid, and not compared', () => {
        const found = supplies(weekly(bean({ packs: [pack('100 g', '1.00')], ...delivery('3', 'EUR') }), ['100 g', '100 g']));
        expect(found.orders.map(({ covers, cost, delivery: fee }) => [covers, cost?.text, fee?.text])).toEqual([[[1], '1.00 USD', '3.00 EUR'], [[2], '1.00 USD', '3.00 EUR']]);
        expect(found.costs.term.map(({ text }) => text)).toEqual(['6.00 EUR', '2.00 USD']);
    });
    test('on a day without a date: counted back in days, in weeks begun', () => {
        const at = (arrives: number, week: number, working?: true) => {
            const found = supplies(weekly(bean({ arrives: { days: arrives, working, at: range() } }), [...Array.from({ length: week - 1 }, () => undefined), '5 g'], { starts: undefined })).orders[0]!;
            return [found.orderWeek, found.neededBy, found.orderBy, found.when];
        };
        expect([at(0, 2), at(7, 2), at(8, 2), at(1, 1), at(8, 3, true)]).toEqual([
            [2, undefined, undefined, 'needed on Day 1'], [1, undefined, undefined, 'needed on Day 1; arrives in 7 days, so order at least 7 days before'],
            [0, undefined, undefined, 'needed on Day 1; arrives in 8 days, so order at least 8 days before'], [0, undefined, undefined, 'needed on Day 1; arrives in 1 day, so order at least 1 day before'],
            [1, undefined, undefined, 'needed on Day 1; arrives in 8 working days, so order at least 8 working days before']
        ]);
    });
    test.each([[[3], 'week 3'], [[3, 5], 'weeks 3 and 5'], [[3, 4], 'weeks 3 and 4'], [[3, 4, 5], 'weeks 3 to 5'], [[3, 4, 6], 'weeks 3, 4 and 6'], [[1, 3, 5, 7], 'weeks 1, 3, 5 and 7'], [[3, 5, 6, 8, 11], '5 weeks from 3 to 11'], [[3, 4, 5, 6, 7], 'weeks 3 to 7']])('weeks %j', (weeks, words) => {
        expect(weeksInWords(weeks)).toBe(words);
    });
    test.each([
        ['2026-09-04', '2026-09-14', '2026-09-05', true], ['2026-09-04', '2026-09-14', '2026-09-04', false], ['2026-09-04', '2026-09-14', '2026-09-14', true], ['2026-09-04', '2026-09-14', '2026-09-15', false],
        [undefined, '2026-09-14', '2026-09-05', false], ['2026-09-04', undefined, '2026-09-05', false], ['2026-09-04', '2026-09-14', undefined, false]
    ])('to order by %s for %s, on %s: late %s', (orderBy, neededBy, today, late) => {
        expect(isLate({ orderBy, neededBy }, today)).toBe(late);
    });
});

describe('what an order serves of each week', () => {
    const lot = (period: number, bought: bigint, covers: number[], unused = 0n) => ({ period, counts: [], bought, delivery: 0n, covers, unused });
    const served = (lack: bigint[], lots: ReturnType<typeof lot>[], which = lots.length - 1) => netOf({ ledger: { record: { lack, lots } }, lot: lots[which]! } as unknown as LedgerOrder).map(({ period, amount: of }) => [period, of]);
    test('all of it, with some left over', () => {
        expect(served([100n, 0n, 200n], [lot(0, 500n, [0, 2], 200n)])).toEqual([[0, 100n], [2, 200n]]);
    });
    test('500, 500 for 300, 400 and 300: the first serves 300 and 200, the second the other 200 and 300', () => {
        const lots = [lot(0, 500n, [0, 1]), lot(1, 500n, [1, 2])];
        expect([served([300n, 400n, 300n], lots, 0), served([300n, 400n, 300n], lots)]).toEqual([[[0, 300n], [1, 200n]], [[1, 200n], [2, 300n]]]);
    });
    test('of three orders the last serves what the two before leave: 10 of 30, and 20', () => {
        const lots = [lot(0, 25n, [0, 1]), lot(1, 25n, [1, 2]), lot(2, 40n, [2, 3], 10n)];
        // 20, 10, 40, 20 are asked for: 25 + 25 bring 50, of which the third week gets 20.
        expect([served([20n, 10n, 40n, 20n], lots, 0), served([20n, 10n, 40n, 20n], lots, 1), served([20n, 10n, 40n, 20n], lots)]).toEqual([[[0, 20n], [1, 5n]], [[1, 5n], [2, 20n]], [[2, 20n], [3, 10n]]]);
    });
    test('in words, of two packs for three weeks', () => {
        const found = supplies(weekly(bean({ packs: [pack('500 g', '2.00')], ...delivery('0.10') }), ['300 g', '400 g', '300 g'])).orders;
        expect(found.map(({ covers, net }) => [covers, net.text, net.trail.map(({ words }) => words)])).toEqual([[[1, 2, 3], '1 kg', ['week 1: 300 g of 300 g needed', 'week 2: 400 g of 400 g needed', 'week 3: 300 g of 300 g needed']]]);
        const apart = supplies(weekly(bean({ packs: [pack('500 g', '2.00')] }), ['300 g', '400 g', '300 g'])).orders;
        expect(apart.reduce((sum, { net }) => sum + (net.text === '1 kg' ? 1000 : Number.parseFloat(net.text)), 0)).toBe(1000);
    });
});

describe('what orders cost', () => {
    const lots = (...costs: (bigint | undefined)[]) => costs.map(cost => ({ period: 0, counts: [], bought: 1n, cost, delivery: 0n, covers: [0], unused: 0n }));
    const usd = { minor: 300n, currency: 'USD' };
    const of = (facts: object, ...costs: (bigint | undefined)[]) => costsOf({ facts } as never, lots(...costs)).map(({ minor, currency }) => `${minor} ${currency}`);
    test('packs; delivery is within what they cost, unless it is of another currency or nothing is priced', () => {
        expect(of({ currency: 'USD' }, 210n, 420n)).toEqual(['630 USD']);
        expect(of({ currency: 'USD', delivery: usd }, 210n, 420n)).toEqual(['630 USD']);
        expect(of({ currency: 'USD', delivery: { ...usd, currency: 'EUR' } }, 210n, 420n)).toEqual(['630 USD', '600 EUR']);
        expect(of({ delivery: usd }, undefined, undefined)).toEqual(['600 USD']);
        expect(of({ currency: 'USD', delivery: usd }, undefined, 210n)).toEqual(['210 USD', '300 USD']);
        expect(of({}, undefined)).toEqual([]);
        expect(of({ currency: 'USD' })).toEqual([]);
        expect(of({}, 210n)).toEqual([]);
        expect(of({ currency: 'USD' }, 0n)).toEqual(['0 USD']);
    });
});

describe('the figures of a term', () => {
    const two = (own: Partial<ClassSheet> = {}) => programme(
        bean({ packs: [pack('100 g', '1.00')] }), consumable('seed', { source: 'shop', packs: [euros('10', '2.00')] }), consumable('glue', { source: 'shop' }), print('page', 2),
        lesson('l1', [need('glue', '1', 'class'), need('page', '1', 'learner')]), lesson('l2', [need('bean', '90 g', 'class'), need('seed', '10', 'class')]), lesson('l3', [need('seed', '20', 'class'), need('glue', '1', 'class'), need('bean', '90 g', 'class')]),
        course('c', ['l1', 'l2', 'l3']), klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon'), ...own })
    );
    test('costs by week, of the term, for each learner, and what has no price, once', () => {
        const { costs } = supplies(two());
        expect(costs.byWeek.map(({ week, money }) => [week, money.map(({ text }) => text)])).toEqual([[2, ['2.00 EUR', '1.00 USD']], [3, ['4.00 EUR', '1.00 USD']]]);
        expect([costs.term.map(({ text }) => text), costs.perLearner.map(({ text }) => text), costs.unpriced]).toEqual([['6.00 EUR', '2.00 USD'], ['0.86 EUR', '0.29 USD'], [{ name: 'glue', title: 'Glue' }]]);
    });
    test('orders by week, then by the first use of the thing; records of materials alone', () => {
        const found = supplies(two());
        expect(found.orders.map(({ id }) => id)).toEqual(['glue@1', 'bean@2', 'seed@2', 'glue@3', 'bean@3', 'seed@3']);
        expect(found.things.map(({ name }) => name)).toEqual(['glue', 'bean', 'seed']);
        expect(found.weeks).toEqual([{ number: 1, from: '2026-09-07', to: '2026-09-07' }, { number: 2, from: '2026-09-14', to: '2026-09-14' }, { number: 3, from: '2026-09-21', to: '2026-09-21' }]);
        expect(found).toMatchObject({ course: 'c', class: 'k', classTitle: 'K', sharedWith: [], learners: 7, today: undefined, assumptions: [] });
        expect(supplies(two(), '2026-09-01').today).toBe('2026-09-01');
    });
    test('the costs of the term in numbers, and what is late', () => {
        const slow = programme(bean({ arrives: days(10) }), consumable('glue', { source: 'shop', arrives: days(3) }), lesson('l1', [need('glue', '1', 'class'), need('bean', '1 g', 'class')]), lesson('l2', [need('bean', '1 g', 'class'), need('glue', '1', 'class')]), course('c', ['l1', 'l2']), klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon') }));
        const term = termPlanOf(newPlanningCache(), slow).term({ class: 'k' });
        // To order: glue by 4 and 11 September, beans by 28 August and 4 September.
        expect([term.late('2026-09-05').map(({ id }) => id), term.late('2026-09-01').map(({ id }) => id), term.late('2026-08-28')]).toEqual([['glue@1', 'bean@1', 'bean@2'], ['bean@1'], []]);
        expect(termPlanOf(newPlanningCache(), two()).term({ class: 'k' }).costs()).toEqual([{ minor: 600n, currency: 'EUR' }, { minor: 200n, currency: 'USD' }]);
        expect([term.ledger('gone'), term.ordersFor('gone'), term.ordersFor('bean').length]).toEqual([undefined, [], 2]);
    });
    test('without a class and without a course', () => {
        const found = planSupplies(programme(bean(), lesson('a', [need('bean', '5 g', 'learner')])));
        expect([found.course, found.class, found.classTitle, found.sharedWith, found.learners, found.orders.map(({ net }) => net.text)]).toEqual([undefined, undefined, undefined, [], 1, ['5 g']]);
    });
    test('what is assumed: orders without a day to count from, lines that cannot be counted, each once', () => {
        const ordering = weekly(bean(), ['10 g', '10 g'], { ...undated, onOrder: [held('bean', '5 g', '2026-09-10')] });
        expect(supplies(ordering).assumptions).toContain('Without dates for the weeks, the order of “Bean” is not counted on.');
        expect(supplies(weekly(bean(), ['10 g'], undated)).assumptions).not.toContain('Without dates for the weeks, the order of “Bean” is not counted on.');
        expect(supplies(weekly(bean(), ['10 g'], { onOrder: [held('bean', '5 g', '2026-09-10')] })).assumptions).toEqual([]);
        const odd = weekly(bean(), [need('bean', '1 cup', 'class'), '10 g'], { onHand: [held('bean', '3 cup')], log: [{ lesson: { name: 'l1', at: range() }, on: on('2026-09-07'), at: range() }] });
        expect(supplies(odd).assumptions).toEqual([
            'In “L1”, 1 cup of “Bean” is left out: it is counted in g, and “cup” cannot be made into that.', 'The class has 3 cup of “Bean”, which cannot be counted in g: it is left out.'
        ]);
    });
});
