/** An invented autumn of eight weeks that uses every field the term view shows; the stock of the beans is worked out by hand. */
import type { CoverageFigures, CoverageObjective, Does, FrameworkNode } from '@haversack/server/planning/coverage-figures';
import type { Meeting, ScheduleFigures, TaughtFigures, WeekPlan } from '@haversack/server/planning/schedule-figures';
import type { MoneyFigure, OrderFigures, PackCount, Quantity, RecordWeek, SupplyFigures, ThingRecord } from '@haversack/server/planning/supply-figures';
import type { TermFigures } from '@haversack/server/planning/term-figures';
import { figure, place } from './fixture-tools.js';

const today = '2026-09-23';
const heading = { course: { title: 'Measure and Make', place: place('year.course', 10) }, class: { title: 'Harbour co-op, autumn', place: place('year.course', 40) } };

const titles = [
    'Which is heavier?', 'Heavier than ten cubes', 'Jars that look alike', 'A market of parcels', 'How long is a stride?', 'Long, longer, longest: measuring with tapes and strings of our own',
    'Shadows at noon', 'A ruler of our own', 'Half full, quite full', 'Ten cups in a bucket', 'Cooking by weight', 'The harbour map', 'Tides and tables', 'What we can measure now'
];
const lessons = titles.map((title, index) => ({ name: `lesson-${index + 1}`, title, place: place(`lesson-${index + 1}.lesson`, 0) }));

const lessonAt = (number: number): (typeof lessons)[number] => {
    const found = lessons[number - 1];
    if (!found) throw new Error(`the fixture has no lesson ${number}`);
    return found;
};

const taught = (number: number, more: Partial<TaughtFigures> = {}): TaughtFigures => {
    const { name, title, place: at } = lessonAt(number);
    return { lesson: name, title, place: at, minutes: 45, ...more };
};
const meeting = (date: string, label: string, list: TaughtFigures[], free?: Meeting['free']): Meeting =>
    ({ date, label, lessons: [...new Set(list.map(one => one.lesson))], taught: list, minutes: list.reduce((sum, one) => sum + one.minutes, 0), free });
const weekOf = (number: number, meetings: Meeting[], remarks: string[] = []): WeekPlan =>
    ({ number, from: meetings[0]?.date, to: meetings[meetings.length - 1]?.date, meetings, remarks });

const schedule: ScheduleFigures = {
    course: 'measure-and-make', class: 'harbour', starts: '2026-09-14', ends: '2026-11-10', session: 50,
    weeks: [
        weekOf(1, [meeting('2026-09-14', 'Mon 14 Sep', [taught(1)]), meeting('2026-09-16', 'Wed 16 Sep', [taught(2)])]),
        weekOf(2, [
            meeting('2026-09-21', 'Mon 21 Sep', [
                taught(2, { minutes: 20, parts: [1], why: 'repeat', remark: 'again: the children were unsure on Wed 16 Sep', because: place('year.course', 61) }), taught(3, { minutes: 25 })
            ]),
            meeting('2026-09-23', 'Wed 23 Sep', [taught(4, { minutes: 50, parts: [0, 1], piece: { number: 1, of: 2 } })])
        ]),
        weekOf(3, [meeting('2026-09-28', 'Mon 28 Sep', [taught(4, { minutes: 30, parts: [2], piece: { number: 2, of: 2 } })])], ['Boat day: no meeting on Wed 30 Sep.']),
        weekOf(4, [
            meeting('2026-10-05', 'Mon 5 Oct', [], { why: 'catch-up', words: 'Kept free to catch up, after 4 lessons.', place: place('year.course', 55) }),
            meeting('2026-10-07', 'Wed 7 Oct', [taught(8, { why: 'fixed', remark: 'fixed for this day: Visit of the carpenter', because: place('year.course', 56) })])
        ]),
        weekOf(5, [meeting('2026-10-12', 'Mon 12 Oct', [taught(5)]), meeting('2026-10-14', 'Wed 14 Oct', [taught(6)])]),
        weekOf(6, [meeting('2026-10-26', 'Mon 26 Oct', [taught(7)]), meeting('2026-10-28', 'Wed 28 Oct', [taught(1, { minutes: 10, parts: [3], why: 'revisit', remark: 'once more: the children were unsure on Mon 14 Sep', because: place('year.course', 62) }), taught(9, { minutes: 40 })])], ['Apple week: no meetings 19 to 23 October.']),
        weekOf(7, [meeting('2026-11-02', 'Mon 2 Nov', [taught(10)]), meeting('2026-11-04', 'Wed 4 Nov', [taught(11)])]),
        weekOf(8, [meeting('2026-11-09', 'Mon 9 Nov', [], { why: 'waiting', words: 'Nothing can be taught yet: what is left waits for “tides” on Mon 16 Nov.' })])
    ],
    daysOff: [
        { from: '2026-09-30', to: '2026-09-30', title: 'Boat day', place: place('year.course', 51), costs: true },
        { from: '2026-10-19', to: '2026-10-23', title: 'Apple week', place: place('year.course', 52), costs: true },
        { from: '2026-10-31', to: '2026-10-31', title: 'Lantern evening', calendar: 'calendars/harbour.ics', place: place('year.course', 53), costs: false }
    ],
    unplaced: [12, 13, 14].map(number => ({ lesson: lessonAt(number).name, title: lessonAt(number).title, place: lessonAt(number).place, why: 'no meeting is left before Tue 10 Nov' })),
    proposals: [
        { title: 'End on Wed 18 Nov', gives: 'All 3 lessons fit.', givesUp: 'It takes 8 more days.', places: 3, line: { head: 'ends', text: 'ends 2026-11-18' } },
        { title: 'Keep no day free to catch up', gives: '1 lesson more fits.', givesUp: 'A lesson that has to be repeated then has no room.', places: 1 }
    ],
    problems: [{ kind: 'session-overrun', message: 'The lesson “A market of parcels” takes 80 minutes and a meeting has 50: it is taught in 2 parts.', place: lessonAt(4).place, lesson: 'lesson-4' }],
    assumptions: ['A checkpoint without “if unsure” repeats the whole lesson.'],
    trail: [{ words: 'Mon and Wed from Mon 14 Sep 2026', place: place('year.course', 50) }]
};

const amount = (count: number, unit = ''): Quantity => ({ exact: String(count), text: unit ? `${count} ${unit}` : String(count) });

/** Weeks from [gross, scheduled, on hand at the end, net, receipts, releases]. */
const record = (unit: string, rows: readonly (readonly [number, number, number, number, number, number])[]): RecordWeek[] => rows.map(([gross, scheduled, onHand, net, receipts, releases], index) => ({
    week: index + 1, gross: amount(gross, unit), scheduled: amount(scheduled, unit), onHand: amount(onHand, unit), net: amount(net, unit), receipts: amount(receipts, unit), releases: amount(releases, unit)
}));

const idle = [0, 0, 0, 0] as const;
const beans: ThingRecord = {
    name: 'dried-bean', title: 'Dried beans', place: place('inventory.kit', 27), use: 'consumable', source: 'shop', unit: 'g',
    opening: figure('400 g', { words: 'declared on hand', place: place('year.course', 44) }), safety: amount(50, 'g'), packs: ['packs of 500 g at 2.10 USD'],
    weeks: record('g', [[150, 0, 250, 0, 0, 0], [300, 200, 150, 0, 0, 0], [0, 0, 150, 0, 0, 0], [600, 0, 50, 500, 500, 500], [0, 0, 50, 0, 0, 0], [260, 0, 290, 260, 500, 500], [100, 0, 190, 0, 0, 0], [0, 0, 190, 0, 0, 0]]),
    need: figure('1410 g', 'Which is heavier?: 150 g', 'and 4 more lessons'), runsOut: { week: 4, date: '2026-10-07', text: 'not enough from week 4 (Wed 7 Oct) on: 500 g missing', place: place('lesson-8.lesson', 9) }, remarks: []
};
const clay: ThingRecord = {
    name: 'modelling-clay', title: 'Modelling clay', place: place('inventory.kit', 70), use: 'consumable', source: 'shop', unit: 'kg', lead: { days: 6, working: true }, packs: ['blocks of 1 kg at 4.80 EUR'],
    weeks: record('kg', [[0, 0, 0, 0, 0, 0], [0, 0, 0, 0, 0, 1], [1, 0, 0, 1, 1, 0], [...idle, 0, 1], [1, 0, 0, 1, 1, 0], [...idle, 0, 0], [...idle, 0, 0], [...idle, 0, 0]]),
    need: figure('2 kg', 'A market of parcels: 1 kg', 'How long is a stride?: 1 kg'), runsOut: { week: 3, date: '2026-09-28', text: 'none at hand in week 3 (Mon 28 Sep): 1 kg missing' }, remarks: ['Kept for 3 weeks only.']
};
const sticks: ThingRecord = {
    name: 'craft-stick', title: 'Craft sticks', place: place('inventory.kit', 75), use: 'consumable', source: 'kit', opening: figure('200'), packs: [],
    weeks: record('', [[20, 0, 180, 0, 0, 0], [20, 0, 160, 0, 0, 0], [0, 0, 160, 0, 0, 0], [20, 0, 140, 0, 0, 0], [20, 0, 120, 0, 0, 0], [20, 0, 100, 0, 0, 0], [20, 0, 80, 0, 0, 0], [0, 0, 80, 0, 0, 0]]),
    need: figure('120', '6 lessons of 20'), remarks: []
};
const cubes: ThingRecord = {
    name: 'gram-cube', title: 'Gram cubes', place: place('inventory.kit', 6), use: 'reusable', source: 'kit', opening: figure('60'), packs: ['packs of 100 at 14.50 USD'],
    weeks: record('', [[80, 0, 60, 20, 0, 0]]), need: figure('80', '20 for each of 4 pairs'), remarks: []
};

const usd = (minor: number): MoneyFigure => ({ minor: String(minor), currency: 'USD', text: `${Math.floor(minor / 100)}.${String(minor % 100).padStart(2, '0')} USD` });
const eur = (minor: number): MoneyFigure => ({ minor: String(minor), currency: 'EUR', text: `${Math.floor(minor / 100)}.${String(minor % 100).padStart(2, '0')} EUR` });
const pack = (count: number, text: string, cost: MoneyFigure | undefined, line: number): PackCount => ({ count, text, cost, place: place('inventory.kit', line) });

const orders: OrderFigures[] = [
    {
        id: 'dried-bean-4', name: 'dried-bean', title: 'Dried beans', place: place('inventory.kit', 27), source: 'shop', week: 4, covers: [4, 5], net: figure('500 g', '600 g needed and 50 g kept back, less 150 g'), bought: figure('500 g'),
        packs: [pack(1, '1 pack of 500 g at 2.10 USD', usd(210), 28)], cost: usd(210), neededBy: '2026-10-07', orderWeek: 4, when: 'needed Wed 7 Oct; buy by Tue 6 Oct', leftOver: amount(0, 'g')
    },
    {
        id: 'dried-bean-6', name: 'dried-bean', title: 'Dried beans', place: place('inventory.kit', 27), source: 'shop', week: 6, covers: [6, 7], net: figure('310 g', '360 g needed in weeks 6 and 7'), bought: figure('500 g'),
        packs: [pack(1, '1 pack of 500 g at 2.10 USD', usd(210), 28)], cost: usd(210), neededBy: '2026-10-26', orderWeek: 6, when: 'needed Mon 26 Oct; buy by Sat 24 Oct', leftOver: amount(190, 'g'),
        joined: 'one order for weeks 6 and 7: 2.10 USD less than week by week'
    },
    {
        id: 'modelling-clay-3', name: 'modelling-clay', title: 'Modelling clay', place: place('inventory.kit', 70), source: 'shop', week: 3, covers: [3], net: figure('1 kg', 'A market of parcels: 1 kg'), bought: figure('1 kg'),
        packs: [pack(1, '1 block of 1 kg at 4.80 EUR', eur(480), 71)], cost: eur(730), delivery: eur(250), neededBy: '2026-09-28', orderBy: '2026-09-18', orderWeek: 1,
        late: { days: 5, words: '5 days too late: the last day to order was Fri 18 Sep' }, when: 'needed Mon 28 Sep; arrives in 6 working days, so the last day to order was Fri 18 Sep'
    },
    {
        id: 'modelling-clay-5', name: 'modelling-clay', title: 'Modelling clay', place: place('inventory.kit', 70), source: 'shop', week: 5, covers: [5], net: figure('1 kg'), bought: figure('1 kg'),
        packs: [pack(1, '1 block of 1 kg at 4.80 EUR', eur(480), 71)], cost: eur(730), delivery: eur(250), neededBy: '2026-10-12', orderBy: '2026-10-02', orderWeek: 3, when: 'needed Mon 12 Oct; arrives in 6 working days, so order by Fri 2 Oct'
    },
    {
        id: 'gram-cube-1', name: 'gram-cube', title: 'Gram cubes', place: place('inventory.kit', 6), source: 'kit', week: 1, covers: [1, 2, 4], net: figure('20', '80 needed less 60 in the kits'), bought: figure('100'),
        packs: [pack(1, '1 pack of 100 at 14.50 USD', usd(1450), 7)], cost: usd(1450), neededBy: '2026-09-14', orderBy: '2026-09-08', orderWeek: 0, when: 'needed Mon 14 Sep; arrives in 6 days, so order by Tue 8 Sep', leftOver: amount(80)
    },
    { id: 'paper-bag-2', name: 'paper-bag', title: 'Paper bags', place: place('inventory.kit', 90), source: 'home', week: 2, covers: [2], net: figure('14'), bought: figure('14'), packs: [], neededBy: '2026-09-21', orderWeek: 2, when: 'needed Mon 21 Sep' }
];

const supplies: SupplyFigures = {
    course: 'measure-and-make', class: 'harbour', classTitle: 'Harbour co-op, autumn', sharedWith: [{ name: 'hill', title: 'Hill families' }], learners: 7, today,
    weeks: schedule.weeks.map(({ number, from, to }) => ({ number, from, to })),
    things: [beans, clay, sticks, cubes],
    orders,
    shortages: [{
        name: 'gram-cube', title: 'Gram cubes', place: place('inventory.kit', 6), week: 1, date: '2026-09-14', meeting: 'Mon 14 Sep', needed: figure('80', '20 for each of 4 pairs = 80'), atHand: figure('60', '3 kits of 20'), missing: figure('20'),
        lessons: [{ name: 'lesson-1', title: 'Which is heavier?', place: place('lesson-1.lesson', 8) }],
        standIns: [
            { name: 'dried-bean', title: 'Dried beans', text: '40 dried beans in place of 20 gram cubes: 400 g at hand', enough: true },
            { name: 'button', title: 'Buttons', text: '20 buttons in place of 20 gram cubes: 12 at hand', enough: false }
        ],
        order: 'gram-cube-1'
    }],
    clashes: [{
        name: 'pan-balance', title: 'Pan balance', place: place('inventory.kit', 1), date: '2026-09-16', meeting: 'Wed 16 Sep',
        classes: [
            { name: 'harbour', title: 'Harbour co-op, autumn', place: place('year.course', 40), needed: amount(4), lessons: ['Heavier than ten cubes'] },
            { name: 'hill', title: 'Hill families', place: place('year.course', 80), needed: amount(2), lessons: ['Which is heavier?'] }
        ],
        together: figure('6', '4 + 2'), atHand: figure('4'), missing: figure('2')
    }],
    costs: {
        byWeek: [{ week: 1, money: [usd(1450)] }, { week: 3, money: [eur(730)] }, { week: 4, money: [usd(210)] }, { week: 5, money: [eur(730)] }, { week: 6, money: [usd(210)] }],
        term: [usd(1870), eur(1460)], perLearner: [usd(267), eur(209)], unpriced: [{ name: 'paper-bag', title: 'Paper bags' }]
    },
    assumptions: ['No safety stock is declared for modelling clay.']
};

const does: Record<string, Does> = { i: 'introduces', p: 'practises', c: 'checks' };

/** `visits`: "1i 3p 6pc" for introduced in lesson 1, practised in 3, practised and checked in 6. */
function objective(name: string, title: string, line: number, visits: string, text: string, more: Partial<CoverageObjective> = {}): CoverageObjective {
    const cells = visits.split(' ').filter(Boolean).map(visit => {
        const number = Number.parseInt(visit, 10);
        return { lesson: number - 1, does: [...visit.replace(/\d/g, '')].map(letter => does[letter] ?? 'practises'), place: place(`lesson-${number}.lesson`, 2 + line % 3) };
    });
    return { name, title, place: place('objectives.course', line), strand: 'measuring', cells, spacing: [], text, gaps: [], trail: [], alignsTo: [], ...more };
}

const gap = (of: string, kind: CoverageObjective['gaps'][number]['kind'], message: string, lesson: number, line: number): CoverageObjective['gaps'][number] =>
    ({ kind, objective: of, message, place: place(`lesson-${lesson}.lesson`, line), lesson: `lesson-${lesson}` });

const objectives: CoverageObjective[] = [
    objective('compare-mass', 'Compare the masses of two objects', 1, '1i 2p 4p 11pc', 'Introduced in week 1, practised 3 times at widening gaps, checked in week 7.', { alignsTo: [{ framework: 'harbour-aims', code: 'M.1' }], widening: true, spacing: [1, 2, 8] }),
    objective('estimate-length', 'Estimate a length in strides and hands before it is measured', 4, '5i 6p', 'Introduced in week 5, practised once; never checked.', { gaps: [gap('estimate-length', 'never-checked', 'No lesson checks “Estimate a length in strides and hands before it is measured”.', 6, 3)], alignsTo: [{ framework: 'harbour-aims', code: 'M.2' }] }),
    objective('fill-and-count', 'Measure how much a vessel holds', 7, '9ic 10p', 'Introduced and checked in week 6, practised in week 7.'),
    objective('read-table', 'Read a small table', 10, '3p 7i 11c', 'Practised in week 2, introduced in week 6, checked in week 7.', { strand: 'data', gaps: [gap('read-table', 'practised-before-introduced', '“Read a small table” is practised in “Jars that look alike” before “Shadows at noon” introduces it.', 3, 4)] }),
    objective('read-map', 'Find a way on a map', 13, '', 'In no lesson of this plan.', { strand: undefined, gaps: [{ kind: 'never-used', objective: 'read-map', message: 'No lesson names “Find a way on a map”.', place: place('objectives.course', 13) }] })
];

const ref = (name: string, title: string, line: number): { name: string; title: string; place: ReturnType<typeof place> } => ({ name, title, place: place('objectives.course', line) });
const leaf = (code: string, statement: string, met: boolean, more: Partial<FrameworkNode> = {}): FrameworkNode =>
    ({ code, statement, children: [], objectives: [], lessons: [], leaves: 1, leavesMet: met ? 1 : 0, met, ...more });

const coverage: CoverageFigures = {
    course: 'measure-and-make', class: 'harbour', revisitWithin: 12, assumptions: [], objectives, gaps: objectives.flatMap(one => one.gaps),
    lessons: lessons.slice(0, 11).map((lesson, index) => {
        const week = [1, 1, 2, 2, 5, 5, 6, 4, 6, 7, 7][index] ?? 1;
        return { ...lesson, index, meeting: index + 1, label: schedule.weeks[week - 1]?.meetings[0]?.label, date: schedule.weeks[week - 1]?.from, week };
    }),
    frameworks: [
        {
            name: 'harbour-aims', title: 'Harbour aims', place: place('objectives.course', 20), document: 'Aims of the harbour schools, invented', items: 3, met: 2, text: '2 of 3 items are met (67 %)',
            tree: [
                {
                    code: 'M', statement: 'Measuring', children: [
                        leaf('M.1', 'Compares and orders masses', true, { objectives: [ref('compare-mass', 'Compare the masses of two objects', 1)], lessons: [lessonAt(1), lessonAt(11)] }),
                        leaf('M.2', 'Estimates before measuring', true, { objectives: [ref('estimate-length', 'Estimate a length in strides and hands before it is measured', 4)], lessons: [lessonAt(5)] })
                    ], objectives: [], lessons: [], leaves: 2, leavesMet: 2, met: true
                },
                { code: 'T', statement: 'Time', children: [leaf('T.1', 'Tells the time in hours', false)], objectives: [], lessons: [], leaves: 1, leavesMet: 0, met: false }
            ],
            unknownCodes: [{ code: 'M.9', objective: 'read-map', place: place('objectives.course', 15) }]
        },
        { name: 'old-aims', title: 'Old aims', place: place('objectives.course', 22), wrong: 'The file “frameworks/old.json” is not there.', items: 0, met: 0, text: 'not read', tree: [], unknownCodes: [] }
    ]
};

export const term: TermFigures = { ...heading, schedule, supplies, coverage, today };
