/** An invented week that uses every field of a WeekBrief; its figures are written by hand and belong to nobody's real class. */
import type { BuyFigures, CautionFigures, WeekBrief } from '@haversack/server/planning/figures';
import type { MoneyFigure } from '@haversack/server/planning/supply-figures';
import { figure, place, prose } from './fixture-tools.js';
import { firstLesson, secondLesson, thirdLesson } from './fixture-lessons.js';

const beanCaution: CautionFigures = {
    kind: 'small-parts', thing: 'dried-bean', place: place('inventory.kit', 31),
    text: 'Small parts can be swallowed or pushed into a nose; keep them away from children under three and count them back in.'
};

const glassCaution: CautionFigures = { kind: 'glass', thing: 'glass-jar', place: place('inventory.kit', 52), text: 'Glass breaks; an adult carries it, and shards are swept up by an adult.' };

const usd = (minor: string): MoneyFigure => ({ minor, currency: 'USD', text: `${(Number(minor) / 100).toFixed(2)} USD` });

const beansToBuy: BuyFigures = {
    name: 'dried-bean', title: 'Dried beans', place: place('inventory.kit', 27),
    missing: figure('260 g', '660 g needed on Mon 21 and Wed 23 Sep', 'less 400 g in the cupboard'),
    packs: ['packs of 500 g at 2.10 USD', 'packs of 2 kg at 6.90 USD'], source: 'shop', neededBy: '2026-09-21', orderBy: '2026-09-19',
    when: 'needed Mon 21 Sep; buy by Sat 19 Sep',
    packsToBuy: [{ count: 1, text: '1 pack of 500 g at 2.10 USD', cost: usd('210'), place: place('inventory.kit', 28) }], cost: usd('210'), covers: [3, 4], leftOver: { exact: '240', text: '240 g' }
};

const fieldKit = { name: 'field-kit', title: 'Field kit', place: place('inventory.kit', 80) };

export const week: WeekBrief = {
    course: { name: 'measure-and-make', title: 'Measure and Make', place: place('year.course', 10) },
    class: { name: 'harbour', title: 'Harbour co-op, autumn', place: place('year.course', 40) },
    week: 3,
    weeks: 12,
    from: '2026-09-21',
    to: '2026-09-24',
    people: {
        learners: 7, adults: 2, pairs: 4, groups: [3, 2, 2], text: '7 learners and 2 adults: 4 pairs; groups of 3, 2 and 2',
        assumptions: ['No kit is declared for the second family: 3 field kits are counted.']
    },
    assumptions: ['No session length is declared: lessons are not split.'],
    remarks: ['Harbour day: no meeting on Fri 25 Sep.'],
    meetings: [
        {
            date: '2026-09-21', label: 'Mon 21 Sep', lessons: ['measure-2', 'weigh-1'], minutes: 50,
            taught: [
                { lesson: 'measure-2', title: 'How long is a stride?', place: place('measuring.lesson', 30), parts: [1], minutes: 10, why: 'repeat', remark: 'again: the children were unsure on Thu 17 Sep', because: place('year.course', 61) },
                { lesson: 'weigh-1', title: 'Which is heavier?', place: place('weighing.lesson', 0), parts: [0, 1], piece: { number: 1, of: 2 }, minutes: 40 }
            ]
        },
        { date: '2026-09-22', label: 'Tue 22 Sep', lessons: [], taught: [], free: { why: 'catch-up', words: 'Kept free to catch up, after 6 lessons.', place: place('year.course', 55) }, minutes: 0 },
        { date: '2026-09-23', label: 'Wed 23 Sep', lessons: ['weigh-2'], taught: [], minutes: 40 },
        { date: '2026-09-24', label: 'Thu 24 Sep', lessons: ['weigh-3'], taught: [], minutes: 40 }
    ],
    minutes: 121,
    fetch: [
        {
            source: 'kit', title: 'From the field kits',
            things: [
                {
                    name: 'pan-balance', title: 'Pan balance', kind: 'material', use: 'reusable', place: place('inventory.kit', 1),
                    amount: figure('4', { words: 'Two mystery bags: 1 for each of 4 pairs = 4', place: place('weighing.lesson', 7) }, { words: 'Reusable: the most at once, 4', place: place('inventory.kit', 2) }),
                    parts: [], days: ['Mon 21 Sep', 'Wed 23 Sep'], lessons: [{ name: 'weigh-1', title: 'Which is heavier?' }, { name: 'weigh-2', title: 'Heavier than ten cubes' }],
                    optional: false, or: [], source: 'kit', kept: prose('hall cupboard, behind the {gram-cube}s'), atHand: figure('3', '3 field kits hold 1 each'), missing: figure('1', '4 needed less 3'), isNew: true,
                    cautions: [], notes: [{ parts: [{ text: 'The beam must swing *freely*; check the pivot before class.' }], at: { start: { line: 3, character: 2 }, end: { line: 3, character: 60 } } }]
                },
                {
                    name: 'gram-cube', title: 'Gram cubes', kind: 'material', use: 'reusable', place: place('inventory.kit', 6),
                    amount: figure('80', { words: 'Two mystery bags: 20 for each of 4 pairs = 80', place: place('weighing.lesson', 8) }),
                    parts: [], days: ['Mon 21 Sep', 'Wed 23 Sep', 'Thu 24 Sep'], lessons: [{ name: 'weigh-1', title: 'Which is heavier?' }],
                    optional: false, or: [], source: 'kit', atHand: figure('60', '3 field kits hold 20 each'), missing: figure('20', '80 needed less 60'), isNew: false, cautions: [], notes: []
                },
                {
                    name: 'place-card', title: 'Place-value cards', kind: 'material', use: 'reusable', place: place('inventory.kit', 12),
                    amount: figure('4 sets', '1 set for each of 4 pairs = 4 sets'), parts: [{ name: 'ones', title: 'Ones' }, { name: 'tens', title: 'Tens' }],
                    days: ['Mon 21 Sep'], lessons: [{ name: 'weigh-1', title: 'Which is heavier?' }], optional: true, or: ['Number strips'],
                    source: 'kit', atHand: figure('6 sets'), isNew: false, cautions: [], notes: []
                },
                {
                    name: 'table-games', title: 'Table games for measuring', kind: 'book', use: 'book', place: place('inventory.kit', 44),
                    amount: figure('1'), parts: [], days: ['Mon 21 Sep'], lessons: [{ name: 'weigh-1', title: 'Which is heavier?' }], optional: false, or: [],
                    source: 'kit', isNew: false, cautions: [], notes: []
                }
            ]
        },
        {
            source: 'home', title: 'From home',
            things: [{
                name: 'glass-jar', title: 'Jars with lids, washed and without labels', kind: 'material', use: 'reusable', place: place('inventory.kit', 50),
                amount: figure('12 jars, each with its own lid', '1 for each of 7 learners = 7', '5 spare = 12'), parts: [], days: ['Thu 24 Sep'],
                lessons: [{ name: 'weigh-3', title: 'Jars that look alike' }], optional: false, or: ['Clear plastic tubs'], source: 'home', isNew: true, cautions: [glassCaution], notes: []
            }]
        },
        {
            source: 'shop', title: 'From the shop',
            things: [{
                name: 'dried-bean', title: 'Dried beans', kind: 'material', use: 'consumable', place: place('inventory.kit', 27),
                amount: figure('660 g', { words: 'Which is heavier?: 150 g for each of 4 pairs = 600 g', place: place('weighing.lesson', 10) }, { words: 'spare 10%: 600 g x 1.1 = 660 g', place: place('inventory.kit', 33) }),
                parts: [], days: ['Mon 21 Sep', 'Wed 23 Sep'], lessons: [{ name: 'weigh-1', title: 'Which is heavier?' }], optional: false, or: [],
                source: 'shop', atHand: figure('400 g', 'declared on hand'), missing: figure('260 g', '660 g less 400 g'), isNew: false, cautions: [beanCaution], notes: []
            }]
        },
        {
            source: 'printed', title: 'To print',
            things: [{
                name: 'record-sheet', title: 'Weighing record sheet', kind: 'print', use: 'print', place: place('inventory.kit', 36),
                amount: figure('7 copies', '1 for each of 7 learners = 7'), parts: [], days: ['Mon 21 Sep'], lessons: [{ name: 'weigh-1', title: 'Which is heavier?' }], optional: false,
                or: [], source: 'printed', isNew: false, cautions: [], notes: [], remark: '7 copies of 2 pages: 14 pages, 7 sheets two-sided'
            }]
        }
    ],
    stayOnShelf: [
        { name: 'table-workbook', title: 'Table workbook', place: place('weighing.lesson', 12), why: 'no lesson of this week opens it' },
        { name: 'spring-scale', title: 'Spring scales', place: place('inventory.kit', 64), why: 'In the kit; next used in week 4.', kind: 'material', kit: fieldKit, nextWeek: 4 },
        { name: 'metre-stick', title: 'Metre sticks', place: place('inventory.kit', 70), why: 'In the kit; next used in week 9.', kind: 'material', kit: fieldKit, nextWeek: 9 },
        { name: 'tape', title: 'Long tape', place: place('inventory.kit', 72), why: 'In the kit; next used in week 6.', kind: 'material', kit: fieldKit, nextWeek: 6 },
        { name: 'gong', title: 'Gong', place: place('inventory.kit', 74), why: 'In the kit; no lesson of this plan uses it.', kind: 'material', kit: fieldKit }
    ],
    putAway: [{ name: 'metre-tape', title: 'Metre tapes', place: place('inventory.kit', 60), why: 'last used in week 2' }],
    buy: [
        beansToBuy,
        {
            name: 'gram-cube', title: 'Gram cubes', place: place('inventory.kit', 6), missing: figure('20', '80 needed less 60 in the kits'), packs: ['packs of 100 at 14.50 USD'], source: 'kit',
            neededBy: '2026-09-21', orderBy: '2026-09-15', when: 'needed Mon 21 Sep; arrives in 6 days, so order by Tue 15 Sep',
            packsToBuy: [{ count: 1, text: '1 pack of 100 at 14.50 USD', cost: usd('1450'), place: place('inventory.kit', 8) }], cost: usd('1450'), covers: [3],
            late: { days: 2, words: '2 days too late: the last day to order was Tue 15 Sep' }
        }
    ],
    cautions: [beanCaution, glassCaution],
    lessons: [firstLesson(beanCaution), secondLesson, thirdLesson(glassCaution)],
    next: {
        week: 4, from: '2026-09-28',
        lessons: [{ name: 'weigh-4', title: 'A market of parcels', place: place('weighing.lesson', 160) }],
        newThings: [{ title: 'Paper bags', amount: figure('14', '2 for each of 7 learners = 14'), source: 'home' }],
        order: [{
            name: 'spring-scale', title: 'Spring scales', place: place('inventory.kit', 64), missing: figure('2', '4 needed less 2'), packs: [], source: 'shop',
            when: 'needed Mon 28 Sep; arrives in 8 days, so the last day to order was Sun 20 Sep'
        }]
    },
    unplaced: [{ lesson: 'weigh-9', title: 'A fair for families', place: place('weighing.lesson', 300), why: 'the term ends before it' }],
    names: {
        'pan-balance': { title: 'Pan balance', kind: 'material', place: place('inventory.kit', 1), fact: 'this week 4, at hand 3' },
        'gram-cube': { title: 'Gram cubes', kind: 'material', place: place('inventory.kit', 6), fact: 'this week 80, at hand 60' },
        'dried-bean': { title: 'Dried beans', kind: 'material', place: place('inventory.kit', 27) },
        'glass-jar': { title: 'Jars with lids', kind: 'material', place: place('inventory.kit', 50) },
        'weigh-1': { title: 'Which is heavier?', kind: 'lesson', place: place('weighing.lesson', 0) },
        balance: { title: 'balance', kind: 'word' }
    },
    ages: { from: 6, to: 9, at: { start: { line: 44, character: 2 }, end: { line: 44, character: 13 } } }
};
