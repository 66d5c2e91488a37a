/** Weeks and days of a cupboard, what is in use at once, where it is not enough, and what may stand in. Dates counted on a calendar, amounts by hand. */
import { describe, expect, test } from 'vitest';
import type { ClassSheet, MaterialSheet, ThingSheet } from '@haversack/language/sheets/sheet';
import { newPlanningCache } from '../../server/planning/cache.js';
import { atHandIn } from '../../server/planning/supplies/ledger.js';
import { termPlanOf } from '../../server/planning/supplies/term-plan.js';
import { consumable, course, days, held, klass, lesson, measured, meets, mention, need, off, on, pack, percent, programme, range, reusable, section } from './sheets.js';
import { bean, rows, supplies, weekly } from './supplies-sheets.js';

type Amounts = Record<string, string>;
const group = (name: string, more: Partial<ClassSheet> = {}, teaches = 'c') => klass(name, teaches, 7, { starts: on('2026-09-07'), meets: meets('mon'), ...more });
const shares = (...names: string[]) => ({ sharesWith: names.map(mention) });
/** Lessons of one course in turn, each with amounts of things for the class. */
const sheetsOf = (things: ThingSheet[], lessons: Amounts[], ...classes: ClassSheet[]) => {
    const all = lessons.map((needs, i) => lesson(`l${i + 1}`, Object.entries(needs).map(([name, text]) => need(name, text, 'class'))));
    return programme(...things, ...all, course('c', all.map(({ name }) => name)), ...classes);
};
const termOf = (sheets: ReturnType<typeof programme>, name = 'k') => termPlanOf(newPlanningCache(), sheets).term({ class: name });
const cube = reusable('cube', { source: 'kit' });

describe('the weeks of a cupboard', () => {
    const lessons = [{ bean: '10 g' }, { bean: '20 g' }, { bean: '40 g' }];
    test('of one class are its own', () => {
        const { cupboard } = termOf(sheetsOf([bean()], lessons, group('k', { off: [off('2026-09-14')] })));
        expect(cupboard.slots).toEqual([{ week: 1, from: '2026-09-07', to: '2026-09-07' }, { week: 2, from: '2026-09-21', to: '2026-09-21' }, { week: 3, from: '2026-09-28', to: '2026-09-28' }]);
        expect([1, 3, 4, 9].map(week => cupboard.slotOfWeek(week))).toEqual([0, 2, 3, 3]);
    });
    test('of several are calendar weeks, from the first meeting of any to the last, whoever is asked', () => {
        const sheets = sheetsOf([bean()], lessons, group('k', { meets: meets('tue'), off: [off('2026-09-15')] }), group('m', { starts: on('2026-08-31'), meets: meets('mon', 'thu'), ...shares('k') }));
        const { cupboard } = termOf(sheets);
        // K: 8, 22 and 29 September; M: 31 August, 3 and 7 September.
        expect(cupboard.slots).toEqual([
            { week: 1, from: '2026-08-31', to: '2026-09-03' }, { week: 1, from: '2026-09-07', to: '2026-09-08' }, { week: 2, from: '2026-09-22', to: '2026-09-22' }, { week: 3, from: '2026-09-29', to: '2026-09-29' }
        ]);
        expect([1, 2, 3, 4].map(week => cupboard.slotOfWeek(week))).toEqual([1, 2, 3, 4]);
        // Weeks after M's last are told in its last.
        expect(termOf(sheets, 'm').cupboard.slots.map(({ week }) => week)).toEqual([1, 2, 2, 2]);
        expect([supplies(sheets), supplies(sheets, undefined, 'm')].map(found => rows(found, 'bean')?.map(row => row[0]))).toEqual([['80', '20', '40'], ['30', '110']]);
    });
    test('from the first and to the last, in whichever order the classes stand', () => {
        const two = (one: 'mon' | 'fri', other: 'mon' | 'fri') => termOf(sheetsOf([bean()], lessons.slice(0, 1), group('k', { meets: meets(one) }), group('m', { meets: meets(other), ...shares('k') }))).cupboard.slots;
        expect([two('mon', 'fri'), two('fri', 'mon')]).toEqual([[{ week: 1, from: '2026-09-07', to: '2026-09-11' }], [{ week: 1, from: '2026-09-07', to: '2026-09-11' }]]);
    });
    test('what two calendar weeks need is told in one week of a class that has one: used up together, handed back the most at once', () => {
        const jar = reusable('jar', { source: 'home' });
        // K: 7 and 21 September. M: 7, 14 and 21 September.
        const sheets = sheetsOf([bean(), jar], [{ bean: '100 g', jar: '20' }, { bean: '200 g', jar: '45' }, { bean: '50 g', jar: '30' }], group('k', { off: [off('2026-09-14')], ends: on('2026-09-21') }), group('m', { meets: meets('tue'), ...shares('k') }));
        const found = supplies(sheets);
        expect(rows(found, 'bean')?.map(row => row[0])).toEqual(['200', '450']);
        expect(found.things.find(({ name }) => name === 'jar')!.weeks.map(({ gross, unmet }) => [gross.exact, unmet?.exact])).toEqual([['20', '20'], ['45', '45']]);
        const beans = found.things.find(({ name }) => name === 'bean')!;
        expect(beans.weeks.map(({ net, receipts, unmet }) => [net.exact, receipts.exact, unmet?.exact])).toEqual([['200', '200', undefined], ['450', '450', undefined]]);
        expect(found.orders.map(({ id, covers }) => [id, covers])).toEqual([['bean@1', [1]], ['bean@2', [2]], ['bean@2.2', [2]]]);
        expect(beans.need.trail.map(({ words }) => words)).toEqual([
            'week 1, Mon 7 Sep, “L1”: 100 g', '“M”, week 1, Tue 8 Sep, “L1”: 100 g', '“M”, week 2, Tue 15 Sep, “L2”: 200 g', 'week 2, Mon 21 Sep, “L2”: 200 g', '“M”, week 3, Tue 22 Sep, “L3”: 50 g', 'used up, so all together: 650 g'
        ]);
    });
    test('one order for two calendar weeks of one week of the class serves that week, once', () => {
        const sheets = sheetsOf([bean({ packs: [pack('500 g', '1.00')] })], [{ bean: '100 g' }, { bean: '100 g' }], group('k', { off: [off('2026-09-14')] }), group('m', shares('k')));
        expect(supplies(sheets).orders.map(({ id, covers, net }) => [id, covers, net.text])).toEqual([['bean@1', [1, 2], '400 g']]);
    });
    test('what another class chooses hangs on what the cupboard holds, each class’s things once', () => {
        const choosing = (...onHand: [string, string][][]) => {
            const [own, other, third] = onHand.map(lines => lines.map(([name, text]) => held(name, text)));
            const sheets = programme(cube, reusable('button', { source: 'kit' }), lesson('a'), lesson('b', [need('cube or button', '10', 'class')]), course('c', ['a']), course('d', ['b']), group('k', { onHand: own }), group('m', { onHand: other, ...shares('k') }, 'd'), group('n', { onHand: third, ...shares('k') }));
            return supplies(sheets).things.map(({ name }) => name);
        };
        expect(choosing([], [], [])).toEqual(['cube']);
        expect([choosing([['button', '10']], [], []), choosing([], [['button', '10']], []), choosing([], [], [['button', '10']])]).toEqual([['button'], ['button'], ['button']]);
        // 6 of 10 buttons are further from enough than 7 of 10 cubes.
        expect([choosing([['cube', '7']], [['button', '6']], []), choosing([['button', '6']], [['cube', '7']], []), choosing([['cube', '7']], [], [['button', '6']])]).toEqual([['cube'], ['cube'], ['cube']]);
    });
    test('a class without dates counts alone, and is not counted with those that have some', () => {
        const undated = { starts: undefined, meets: [] };
        const sheets = sheetsOf([bean()], lessons, group('k', shares('m', 'n')), group('m', undated), group('n', undated), group('o', { ...undated, ...shares('p') }), group('p'));
        const needs = (name: string) => {
            const { things, assumptions } = supplies(sheets, undefined, name);
            return [things[0]!.need.text, assumptions.filter(sentence => sentence.startsWith('Without dates for both'))];
        };
        expect(needs('k')).toEqual(['70 g', ['Without dates for both, what “M” and “N” take from the shared cupboard is not counted.']]);
        expect(needs('p')).toEqual(['70 g', ['Without dates for both, what “O” takes from the shared cupboard is not counted.']]);
        expect(needs('o')).toEqual(['70 g', ['Without dates for both, what “P” takes from the shared cupboard is not counted.']]);
    });
});

describe('the last day to order', () => {
    const own = group('k', { starts: on('2026-08-31'), off: [off('2026-09-14', '2026-09-16'), off('2026-09-21')] });
    const { cupboard } = termOf(sheetsOf([bean()], [{}, {}, {}, {}], own));
    // Weeks begin on 31 August, 7 and 28 September and 5 October: on the Mondays of the 14th and the 21st the class is off.
    test.each([
        [0, '2026-10-05', 4], [1, '2026-10-04', 3], [7, '2026-09-28', 3], [8, '2026-09-27', 2], [28, '2026-09-07', 2], [29, '2026-09-06', 1], [35, '2026-08-31', 1], [36, '2026-08-30', 0]
    ])('%i days before 5 October: %s, in week %i', (lead, day, week) => {
        expect(cupboard.orderDay('2026-10-05', { days: lead })).toEqual({ day, week });
    });
    test.each([
        [1, '2026-09-22', '2026-09-18'], [2, '2026-09-22', '2026-09-17'], [3, '2026-09-22', '2026-09-11'], [1, '2026-09-15', '2026-09-11'], [1, '2026-09-17', '2026-09-11']
    ])('%i working days before %s, past weekends and days off: %s', (lead, needed, day) => {
        expect(cupboard.orderDay(needed, { days: lead, working: true }).day).toBe(day);
    });
    test('working days and days of as many are not taken for one another; no day before one that cannot be read', () => {
        const three = cupboard.orderDay('2026-09-22', { days: 3 });
        expect([three.day, cupboard.orderDay('2026-09-22', { days: 3, working: true }).day]).toEqual(['2026-09-19', '2026-09-11']);
        expect(cupboard.orderDay('2026-09-22', { days: 3 })).toBe(three);
        expect([cupboard.orderDay('soon', { days: 3 }), cupboard.orderDay('soon', { days: 3, working: true })]).toEqual([{ day: undefined, week: 0 }, { day: undefined, week: 0 }]);
    });
});

describe('what is there at the start of a week', () => {
    test('before, between and after the weeks that use it, with what has come', () => {
        const ledger = termOf(weekly(bean(), [undefined, '30 g', undefined, '30 g', undefined], { onHand: [held('bean', '50 g')], onOrder: [held('bean', '5 g', '2026-09-09'), held('bean', '7 g', '2026-09-21')] })).ledger('bean')!;
        // 50; + 5; - 30 + 7; the same; - 30.
        expect([0, 1, 2, 3, 4].map(slot => Number(atHandIn(ledger, slot)))).toEqual([50, 55, 32, 32, 2]);
    });
    test('less what has gone off by then', () => {
        const ledger = termOf(weekly(bean({ packs: [pack('500 g', '2.10')], keeps: days(8) }), ['100 g', '100 g', undefined, '100 g'])).ledger('bean')!;
        expect([0, 1, 2, 3].map(slot => Number(atHandIn(ledger, slot)))).toEqual([0, 400, 300, 0]);
    });
});

describe('days on which one cupboard is not enough for two classes', () => {
    const clashes = (lessons: Amounts[], own: Partial<ClassSheet>, other: Partial<ClassSheet>, thing: MaterialSheet = cube) =>
        supplies(sheetsOf([thing, reusable('rope', { source: 'kit' })], lessons, group('k', { onHand: [held('cube', '30')], ...own }), group('m', { ...shares('k'), ...other }))).clashes
            .map(({ name, date, meeting, together, atHand, missing, classes }) => [name, date, meeting, together.text, atHand.text, missing.text, classes.map(({ name: of, needed, lessons: asking }) => `${of} ${needed.text} ${asking.join()}`)]);
    test('20 and 20 of 30; on the next Monday 15 and 15 are enough', () => {
        expect(clashes([{ cube: '20' }, { cube: '15' }], {}, {})).toEqual([['cube', '2026-09-07', 'Mon 7 Sep', '40', '30', '10', ['k 20 l1', 'm 20 l1']]]);
    });
    test('spares count', () => {
        expect(clashes([{ cube: '14' }], {}, {}, reusable('cube', { source: 'kit', spare: percent('10') }))).toEqual([['cube', '2026-09-07', 'Mon 7 Sep', '31', '30', '1', ['k 16 l1', 'm 16 l1']]]);
    });
    test('each line of the trail names its class, its lesson and its place', () => {
        const sheets = sheetsOf([cube], [{ cube: '20' }], group('k', { onHand: [held('cube', '30')] }), group('m', shares('k')));
        const [clash] = supplies(sheets).clashes;
        const place = { uri: sheets.lessons.get('l1')!.uri, range: sheets.lessons.get('l1')!.needs[0]!.at };
        expect([clash!.place, clash!.title]).toEqual([{ uri: sheets.materials.get('cube')!.uri, range: sheets.materials.get('cube')!.at }, 'Cube']);
        expect([clash!.together.trail, clash!.missing.trail, clash!.classes.map(one => one.place.range)]).toEqual([
            [{ words: '“K”, “L1”: 20', place }, { words: '“M”, “L1”: 20', place }], [{ words: '40 needed together less 30 at hand' }], ['k', 'm'].map(name => sheets.classes.get(name)!.at)
        ]);
    });
    test('by day: of two things the one that clashes first stands first', () => {
        const onHand = [held('cube', '30'), held('rope', '1')];
        expect(clashes([{ cube: '10', rope: '0' }, { rope: '1' }, { cube: '20' }], { onHand }, {}).map(clash => clash.slice(0, 2))).toEqual([['rope', '2026-09-14'], ['cube', '2026-09-21']]);
        expect(clashes([{ cube: '20' }], { meets: meets('thu', 'mon') }, { meets: meets('thu', 'mon'), log: [{ lesson: mention('l1'), on: on('2026-09-07'), at: range() }] }).map(clash => clash[1])).toEqual(['2026-09-07']);
        const weekLong = { meets: meets('mon', 'wed') };
        expect(clashes([{ cube: '20' }, { cube: '16' }], weekLong, weekLong).map(clash => clash.slice(1, 4))).toEqual([['2026-09-07', 'Mon 7 Sep', '40'], ['2026-09-09', 'Wed 9 Sep', '32']]);
    });
    test('several things on several days: by day, then as lessons name them', () => {
        const onHand = [held('cube', '30'), held('rope', '1')];
        expect(clashes([{ cube: '20' }, { rope: '1' }, { cube: '20', rope: '1' }, { cube: '20' }], { onHand }, {}).map(clash => clash.slice(0, 2).join(' '))).toEqual(['cube 2026-09-07', 'rope 2026-09-14', 'cube 2026-09-21', 'rope 2026-09-21', 'cube 2026-09-28']);
    });
    test('none where nobody knows of any, where the other day is meant, or where one class alone has too little', () => {
        expect(clashes([{ cube: '20' }], { onHand: [] }, {})).toEqual([]);
        expect(clashes([{ cube: '20' }], {}, { meets: meets('tue') })).toEqual([]);
        expect(clashes([{ cube: '40' }], { sections: [section('a', 7, '9:00')] }, { sections: [section('b', 7, '10:00')] })).toEqual([]);
        expect(clashes([{ cube: '20' }], {}, {}, consumable('cube', { source: 'kit' }))).toEqual([]);
    });
    test('an order that has come counts, by its day; where nothing else is known, too', () => {
        const coming = (date: string) => ({ onHand: [], onOrder: [held('cube', '30', date)] });
        expect(clashes([{ cube: '20' }], coming('2026-09-07'), {}).map(clash => clash.slice(3, 6))).toEqual([['40', '30', '10']]);
        expect(clashes([{ cube: '20' }], coming('2026-09-08'), {})).toEqual([]);
        expect(clashes([{ cube: '20' }], { onOrder: [held('cube', '10', '2026-09-07')] }, {})).toEqual([]);
    });
    test('none at all is known, too', () => {
        expect(clashes([{ cube: '20' }], { onHand: [held('cube', '0')] }, {}).map(clash => clash.slice(3, 6))).toEqual([['40', '0', '40']]);
    });
    test('what one of the two can do without does not clash', () => {
        const sheets = programme(cube, lesson('a', [need('cube', '20', 'class')]), lesson('b', [need('cube', '20', 'class', { optional: true })]), course('c', ['a']), course('d', ['b']), group('k', { onHand: [held('cube', '30')] }), group('m', shares('k'), 'd'));
        expect(supplies(sheets).clashes).toEqual([]);
    });
    test('crowd by crowd: sections at 9 and 10, another class at 10, and one at any hour', () => {
        const at = (clock: string | undefined, per: string) => {
            const sheets = programme(cube, lesson('l1', [need('cube', '2', per)]), course('c', ['l1']), group('k', { onHand: [held('cube', '1')], sections: [section('a', 5, '9:00'), section('b', 4, '10:00')] }), group('m', { ...shares('k'), sections: [section('d', 6, clock)] }));
            return [supplies(sheets).clashes.map(({ together }) => together.text), supplies(sheets).things[0]!.need.text];
        };
        // 2 for each: at nine 10, at ten 8 + 12; without an hour 12 beside the larger of 10 and 8.
        expect([at('10:00', 'learner'), at(undefined, 'learner'), at('11:00', 'learner')]).toEqual([[['20'], '20'], [['22'], '22'], [[], '12']]);
    });
    test('amounts in parts and other units: half a metre and 100/3 cm at once', () => {
        const sheets = programme(reusable('rope', { ...measured('m'), source: 'kit' }), lesson('a', [need('rope', '1/2 m', 'class')]), lesson('b', [need('rope', '100/3 cm', 'class')]), course('c', ['a']), course('d', ['b']), group('k', { onHand: [held('rope', '1/4 m')] }), group('m', shares('k'), 'd'));
        expect(supplies(sheets).clashes.map(({ together, missing }) => [together.exact, missing.exact])).toEqual([['5/6', '7/12']]);
        expect(supplies(sheets).things[0]!.need.exact).toBe('5/6');
    });
    test('a class with two lessons on one day uses the larger', () => {
        expect(clashes([{ cube: '20' }, { cube: '16' }], { lessonsPerMeeting: { count: 2, at: range() } }, {}).map(clash => [clash[3], clash[6]])).toEqual([['40', ['k 20 l1,l2', 'm 20 l1']]]);
    });
});

describe('meetings that are short', () => {
    const short = (sheets: ReturnType<typeof programme>, name = 'k') => supplies(sheets, undefined, name).shortages.map(({ name: of, week, needed, atHand, missing, lessons, order }) => [of, week, needed.text, atHand.text, missing.text, lessons.map(one => one.name).join(), order]);
    const have = (text: string) => ({ onHand: [held('cube', text)] });
    test('each meeting, and the order that mends it: the last that comes by then', () => {
        expect(short(weekly(cube, ['30', '10', '45', '40'], have('20')))).toEqual([['cube', 1, '30', '20', '10', 'l1', 'cube@1'], ['cube', 3, '45', '20', '25', 'l3', 'cube@3'], ['cube', 4, '40', '20', '20', 'l4', 'cube@3']]);
    });
    test('just enough is enough; with spares it is not', () => {
        expect(short(weekly(cube, ['20'], have('20')))).toEqual([]);
        expect(short(weekly(reusable('cube', { source: 'kit', spare: percent('10') }), ['20'], have('20')))).toEqual([['cube', 1, '22', '20', '2', 'l1', 'cube@1']]);
    });
    test('what is used up is bought, and no meeting is short of it', () => {
        expect(short(weekly(consumable('cube', { source: 'kit' }), ['30'], have('20')))).toEqual([]);
    });
    test('asked for from home: short only where some is known of', () => {
        const jar = reusable('cube', { source: 'home' });
        expect(short(weekly(jar, ['9']))).toEqual([]);
        expect(short(weekly(jar, ['9'], have('4')))).toEqual([['cube', 1, '9', '4', '5', 'l1', undefined]]);
        expect(short(weekly(jar, ['9', '9', '9'], { onOrder: [held('cube', '4', '2026-09-14')] }))).toEqual([['cube', 2, '9', '4', '5', 'l2', undefined], ['cube', 3, '9', '4', '5', 'l3', undefined]]);
    });
    test('what can be done without is never short, and does not count beside what cannot', () => {
        const optional = need('cube', '50', 'class', { optional: true });
        expect(short(weekly(cube, [optional, '30'], have('20')))).toEqual([['cube', 2, '30', '20', '10', 'l2', 'cube@2']]);
        const both = (...needs: typeof optional[]) => programme(cube, ...needs.map((own, i) => lesson(`l${i + 1}`, [own])), course('c', needs.map((_, i) => `l${i + 1}`)), group('k', { ...have('20'), lessonsPerMeeting: { count: 3, at: range() } }));
        expect(short(both(need('cube', '30', 'class'), optional))).toEqual([['cube', 1, '30', '20', '10', 'l1', 'cube@1']]);
        expect(short(both(optional, need('cube', '30', 'class'), need('cube', '25', 'class')))).toEqual([['cube', 1, '30', '20', '10', 'l2,l3', 'cube@1']]);
        expect(short(both(optional, need('cube', '25', 'class'), need('cube', '30', 'class')))).toEqual([['cube', 1, '30', '20', '10', 'l2,l3', 'cube@1']]);
        expect(short(both(optional, need('cube', '20', 'class')))).toEqual([]);
    });
    test('several meetings of a week, each by itself, in their order; things too', () => {
        const onHand = [held('cube', '20'), held('rope', '1')];
        const sheets = sheetsOf([cube, reusable('rope', { source: 'kit' })], [{ rope: '2', cube: '25' }, { cube: '10' }, { cube: '30', rope: '3' }], group('k', { meets: meets('mon', 'wed', 'thu'), onHand }));
        expect(short(sheets).map(found => [found[0], found[5], found[4]])).toEqual([['rope', 'l1', '1'], ['cube', 'l1', '5'], ['rope', 'l3', '2'], ['cube', 'l3', '10']]);
    });
    test('an order that comes within the week is there for the meetings from its day on', () => {
        const of = (date: string) => short(sheetsOf([cube], [{ cube: '30' }, { cube: '29' }], group('k', { meets: meets('mon', 'thu'), onHand: [held('cube', '20')], onOrder: [held('cube', '10', date)] }))).map(found => found[5]);
        expect([of('2026-09-07'), of('2026-09-08'), of('2026-09-10'), of('2026-09-11')]).toEqual([[], ['l1'], ['l1'], ['l1', 'l2']]);
    });
    test('of the own class alone, the lesson named once, each line in the trail', () => {
        const sheets = sheetsOf([cube], [{ cube: '25' }], group('k', have('20')), group('m', { ...shares('k'), meets: meets('tue') }));
        expect([short(sheets), short(sheets, 'm')]).toEqual([[['cube', 1, '25', '20', '5', 'l1', 'cube@1']], [['cube', 1, '25', '20', '5', 'l1', 'cube@1']]]);
        expect(supplies(sheets).shortages.map(({ date }) => date)).toEqual(['2026-09-07']);
        const [found] = supplies(weekly(cube, ['25'], have('20'))).shortages;
        expect([found!.needed.trail.map(({ words }) => words), found!.atHand.trail.map(({ words }) => words), found!.missing.trail.map(({ words }) => words)]).toEqual([['“L1”: 25'], ['on hand: 20'], ['25 needed less 20 at hand']]);
        expect([found!.lessons[0]!.place, found!.needed.trail[0]!.place]).toEqual([found!.needed.trail[0]!.place, found!.lessons[0]!.place]);
    });
});

describe('what may stand in', () => {
    const standIn = (name: string, give: string, replaces: string) => ({ thing: mention(name), give, replaces, at: range() });
    const found = (standIns: ReturnType<typeof standIn>[], things: ThingSheet[], own: Partial<ClassSheet>, lessons: Amounts[] = [{ cube: '30' }]) =>
        supplies(sheetsOf([reusable('cube', { source: 'kit', standIns }), ...things], lessons, group('k', { ...own, onHand: [held('cube', '20'), ...own.onHand ?? []] }))).shortages.filter(({ name }) => name === 'cube').map(shortage => shortage.standIns.map(({ name, enough, text }) => [name, enough, text]))[0];
    const button = reusable('button', { source: 'kit' });
    const buttons = (text: string) => ({ onHand: [held('button', text)] });
    test('by its ratio, in whole things: 3 for 2 of ten are 15, 1 for 3 are 4', () => {
        expect(found([standIn('button', '3', '2')], [button], buttons('15'))).toEqual([['button', true, '15 of “Button” in place of 10: 15 at hand']]);
        expect(found([standIn('button', '3', '2')], [button], buttons('14'))).toEqual([['button', false, '15 of “Button” in place of 10: 14 at hand']]);
        expect(found([standIn('button', '1', '3')], [button], buttons('4'))).toEqual([['button', true, '4 of “Button” in place of 10: 4 at hand']]);
        expect(found([standIn('button', '1', '1')], [button], {})).toEqual([['button', false, '10 of “Button” in place of 10: 0 at hand']]);
    });
    test('what can be weighed is not made whole: 1 g for 4 of ten is 2.5 g', () => {
        expect(found([standIn('bean', '1', '4')], [bean()], { onHand: [held('bean', '2.5 g')] })).toEqual([['bean', true, '2.5 g of “Bean” in place of 10: 2.5 g at hand']]);
    });
    test('nothing that no inventory declares, and no ratio of nothing or of no number', () => {
        expect(found([standIn('gone', '1', '1'), standIn('button', 'x', '1'), standIn('button', '1', 'x'), standIn('button', '1', '0')], [button], {})).toEqual([]);
    });
    test('less what lessons of that week use of it; of what is used up, less what they use from then on', () => {
        const lessons: Amounts[] = [{ cube: '30' }, { button: '12' }];
        expect(found([standIn('button', '1', '1')], [button], buttons('15'), lessons)).toEqual([['button', true, '10 of “Button” in place of 10: 15 at hand']]);
        expect(found([standIn('button', '1', '1')], [button], buttons('15'), [{ cube: '30', button: '12' }])).toEqual([['button', false, '10 of “Button” in place of 10: 3 at hand']]);
        expect(found([standIn('button', '1', '1')], [button], buttons('15'), [{ cube: '30', button: '22' }])).toEqual([['button', false, '10 of “Button” in place of 10: 0 at hand']]);
        const used = consumable('button', { source: 'home' });
        expect(found([standIn('button', '1', '1')], [used], buttons('15'), lessons)).toEqual([['button', false, '10 of “Button” in place of 10: 3 at hand']]);
        expect(found([standIn('button', '1', '1')], [used], buttons('15'), [{ button: '3' }, { cube: '30' }, { button: '1' }])).toEqual([['button', true, '10 of “Button” in place of 10: 11 at hand']]);
    });
    test('in its own unit, whether lessons use it too or not: 100 g are 0.1 kg', () => {
        const sand = reusable('sand', { ...measured('g'), source: 'kit', standIns: [standIn('rice', '2', '1')] });
        const rice = consumable('rice', { ...measured('kg'), source: 'home' });
        const texts = (more: Amounts) => supplies(sheetsOf([sand, rice], [{ sand: '600 g' }, more], group('k', { onHand: [held('sand', '500 g'), held('rice', '1 kg')] }))).shortages.flatMap(({ standIns }) => standIns.map(({ enough, text }) => [enough, text]));
        expect([texts({}), texts({ rice: '100 g' })]).toEqual([[[true, '0.2 kg of “Rice” in place of 100 g: 1 kg at hand']], [[true, '0.2 kg of “Rice” in place of 100 g: 0.9 kg at hand']]]);
    });
});
