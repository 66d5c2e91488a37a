/** Details of a week: what a shared cupboard means for it, weeks that are not there, where each line leads, and words that few lessons need. */
import { describe, expect, test } from 'vitest';
import { gatherProgramme } from '@haversack/language/sheets/programme';
import type { ClassSheet, LessonSheet, ObjectiveSheet, PartSheet } from '@haversack/language/sheets/sheet';
import { planWeek } from '../../server/planning/week.js';
import {
    activity, book, consumable, counted, course, file, game, held, kit, klass, lesson, material, measured, meets, mention, need, off, on, part, print, programme, prose, range, reusable, section, step, uri
} from './sheets.js';

type Declared = Parameters<typeof file>[number];
const place = (sheet: { at: ReturnType<typeof range> }) => ({ uri, range: sheet.at });

describe('a cupboard that classes share', () => {
    const group = (name: string, days: Parameters<typeof meets>, more: Partial<ClassSheet> = {}) => klass(name, 'c', 7, { starts: on('2026-09-07'), meets: meets(...days), ...more });
    const cube = reusable('cube', { source: 'shop' });
    const bean = consumable('bean', { ...measured('g'), source: 'shop' });
    const remarks = (lessons: LessonSheet[], cubes: string, other: ClassSheet, week = 1, more: Partial<ClassSheet> = {}) =>
        planWeek(programme(cube, bean, ...lessons, course('c', lessons.map(({ name }) => name)), group('k', ['mon'], { onHand: [held('cube', cubes)], ...more }), other), { class: 'k', week }).remarks;
    const own = group('m', ['mon'], { sharesWith: [mention('k')] });
    const cubes = (count: string) => [lesson('l1', [need('cube', count, 'class')])];

    test('does not hold enough for both on one day: how much for whom, and how much is missing', () => {
        expect(remarks(cubes('25'), '10', own)).toEqual(['Mon 7 Sep: 40 of “Cube” are missing: 25 for “K” and 25 for “M”, 10 at hand.']);
        expect(remarks(cubes('5'), '9', own)).toEqual(['Mon 7 Sep: 1 of “Cube” is missing: 5 for “K” and 5 for “M”, 9 at hand.']);
        expect(remarks(cubes('5'), '10', own)).toEqual([]);
        expect(remarks(cubes('25'), '10', group('m', ['mon']))).toEqual([]);
        expect(remarks(cubes('25'), '30', group('m', ['tue'], { sharesWith: [mention('k')] }))).toEqual([]);
    });
    test('only of the days of this week', () => {
        const two = [lesson('l1', [need('cube', '5', 'class')]), lesson('l2', [need('cube', '25', 'class')]), lesson('l3', [need('cube', '5', 'class')])];
        expect([1, 2, 3].map(week => remarks(two, '10', own, week))).toEqual([[], ['Mon 14 Sep: 40 of “Cube” are missing: 25 for “K” and 25 for “M”, 10 at hand.'], []]);
        expect(remarks(two, '10', own, 2, { starts: undefined })).toEqual([]);
        expect(remarks(two, '10', own, 9)).toEqual([]);
    });
    test('what the others use up this week, all their lessons together; of what is handed back nothing is said', () => {
        const beans = [lesson('l1', [need('bean', '300 g', 'class'), need('cube', '1', 'class')]), lesson('l2', [need('bean', '50 g', 'class')]), lesson('l3', [need('bean', '20 g', 'class')])];
        expect(remarks(beans, '9', group('m', ['mon', 'thu'], { sharesWith: [mention('k')] }))).toEqual(['“M” uses 350 g of “Bean” this week too, from the same cupboard.']);
        expect(remarks(beans, '9', group('m', ['mon'], { sharesWith: [mention('k')], starts: on('2026-09-14') }))).toEqual([]);
        expect(remarks(beans, '9', group('m', ['mon'], { sharesWith: [mention('k')], starts: on('2026-09-14') }), 3)).toEqual(['“M” uses 50 g of “Bean” this week too, from the same cupboard.']);
    });
});

describe('weeks that are not there', () => {
    const two = programme(lesson('a'), lesson('b'), course('c', ['a', 'b']), klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon') }));
    test('say so, and hold nothing', () => {
        const brief = planWeek(two, { week: 3 });
        expect(brief).toMatchObject({ week: 3, weeks: 2, from: undefined, to: undefined, meetings: [], lessons: [], fetch: [], buy: [], stayOnShelf: [], remarks: [], minutes: 0, next: undefined });
        expect(brief.assumptions).toEqual(['The plan has 2 weeks: there is no week 3.']);
        expect(planWeek(two, { week: 0 }).next).toBeUndefined();
        expect(planWeek(programme(lesson('a'), course('c', ['a']), klass('k', 'c', 7)), { week: 2 }).assumptions.at(-1)).toBe('The plan has 1 week: there is no week 2.');
        expect(planWeek(programme(course('c', []), klass('k', 'c', 7)), { week: 1 }).assumptions.at(-1)).toBe('There are no lessons to plan.');
    });
    test('a week says from when to when, what comes next, and where course and class stand', () => {
        const [c, k] = [course('c', ['a', 'b', 'd']), klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon', 'thu'), ages: { from: 6, to: 8, at: range() } })];
        const last = lesson('d', [need('cube', '5', 'class')]);
        const brief = planWeek(programme(reusable('cube'), lesson('a'), lesson('b'), last, c, k), { week: 1 });
        expect(brief).toMatchObject({
            from: '2026-09-07', to: '2026-09-10', course: { name: 'c', title: 'C', place: place(c) }, class: { name: 'k', title: 'K', place: place(k) }, ages: { from: 6, to: 8 },
            next: { week: 2, from: '2026-09-14', lessons: [{ name: 'd', title: 'D', place: place(last) }], newThings: [{ title: 'Cube', amount: { text: '5' }, source: 'home' }], order: [] }
        });
        expect(brief).not.toHaveProperty('unplaced');
        const full = planWeek(programme(lesson('a'), lesson('b'), c, { ...k, ends: on('2026-09-07') }), { week: 1 });
        expect(full.unplaced?.map(one => one.lesson)).toEqual(['b']);
        expect(planWeek(programme(lesson('a')), { week: 1 })).toMatchObject({ course: { name: '', title: 'All lessons' }, class: undefined, lessons: [{ name: 'a' }] });
        expect(planWeek(programme(lesson('a'), { ...c, ages: { from: 4, at: range() } }), { week: 1 }).ages?.from).toBe(4);
    });
    test('remarks of the week and assumptions of its lessons stand in it, each once', () => {
        const unknown = () => lesson('a', [need('gone', '1')], [], { title: 'A' });
        const brief = planWeek(programme(unknown(), course('c', ['a', 'a']), klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon', 'tue', 'thu'), off: [off('2026-09-08', undefined, 'Fair')] })), { week: 1 });
        expect(brief.remarks).toEqual(['Fair: no meeting on Tue 8 Sep.']);
        expect(brief.assumptions).toEqual(['In “A”, “gone” is not counted: no inventory declares it.']);
    });
});

describe('lines lead to where they stand', () => {
    const at = (name: string): ObjectiveSheet => ({ ...lesson(name), kind: 'objective', buildsOn: [], alignsTo: [] }) as unknown as ObjectiveSheet;
    const only = (things: Declared[], parts: PartSheet[], more: Partial<LessonSheet> = {}, own: Partial<ClassSheet> = {}, objectives: ObjectiveSheet[] = []) => {
        const sheets = file(...things, lesson('l', more.needs, parts, more), course('c', ['l']), klass('k', 'c', 7, { groupsOf: 3, ...own }));
        return planWeek(gatherProgramme([{ ...sheets, objectives }]), { week: 1 }).lessons[0]!;
    };
    test('objectives, needs, steps and those under them, cautions', () => {
        const mass = at('mass');
        const [ask, expected] = [step('ask', 'Which?'), step('expect', 'This.')];
        const [own, sharp] = [need('cube', '2', 'pair'), { kind: 'sharp', at: range() }];
        const given = activity('a', [own], { steps: [{ ...ask, under: [{ ...expected, uri: 'file:///demo/added.course' }] }], cautions: [sharp] });
        const figures = only([reusable('cube')], [given], { introduces: [mention('mass')], checks: [mention('gone')] }, {}, [mass]);
        expect(figures.objectives).toEqual([{ does: 'introduces', name: 'mass', title: 'Mass', place: place(mass) }, { does: 'checks', name: 'gone', title: 'gone', place: undefined }]);
        expect(figures.parts[0]).toMatchObject({
            place: place(given), needs: [{ place: place(own) }], cautions: [{ kind: 'sharp', place: place(sharp) }], steps: [{ place: place(ask), under: [{ place: { uri: 'file:///demo/added.course', range: expected.at } }] }]
        });
    });
    test('a part that was brought in, with its steps and cautions', () => {
        const elsewhere = 'file:///demo/elsewhere.lesson';
        const brought = activity('a', [], { uri: elsewhere, steps: [step('do', 'Sing.')], cautions: [{ kind: 'hot', at: range() }] });
        expect(only([], [brought]).parts[0]).toMatchObject({ place: { uri: elsewhere }, steps: [{ place: { uri: elsewhere } }], cautions: [{ place: { uri: elsewhere } }] });
    });
    test('of a choice the reason stands first', () => {
        const [line] = only([reusable('cube'), reusable('peg')], [], { needs: [need('cube or peg', '5', 'class')] }).needs;
        expect(line?.amount.trail.map(({ words }) => words)).toEqual(['Cube or Peg: Cube, the first named, because none is at hand', '5 x the whole class = 5']);
        expect(only([reusable('cube')], [], { needs: [need('cube', '5', 'class')] }).needs[0]?.amount.trail).toHaveLength(1);
    });
    test('a game: its rules as far as they are written, its steps, cautions of what its rules speak of', () => {
        const rules = (more: object) => only([book('tales'), game('hop', [], [2], { found: { book: mention('tales'), at: range(), ...more } })], [part('game', 'hop')]).parts[0]?.game?.rules;
        expect(rules({})).toBe('Tales');
        expect(rules({ edition: '2', page: '40' })).toBe('Tales, edition 2, page 40');
        expect(rules({ book: mention('gone'), chapter: 'Hops', number: '7' })).toBe('gone, chapter “Hops”, number 7');
        const bead = reusable('bead', { cautions: [{ kind: 'small-parts', at: range() }] });
        const [own, deal] = [game('hop', [], [2, 4], { steps: [] }), step('do', 'Deal the {bead}s.', [step('help', 'Count the {lamp}s.')])];
        const played = only([bead, reusable('lamp', { cautions: [{ kind: 'hot', at: range() }] }), { ...own, steps: [deal] }], [part('game', 'hop')]).parts[0];
        expect(played?.cautions.map(({ kind, thing }) => [kind, thing])).toEqual([['small-parts', 'bead'], ['hot', 'lamp']]);
        expect(played?.game).toMatchObject({ place: place(own), steps: [{ place: place(deal), under: [{ word: 'help' }] }], players: '2 to 4 players', tables: "3 tables of 3, 2 and 2 play at once (the class's own groups fit 2 to 4 players)" });
        expect(only([], [part('game', 'hop')]).parts[0]?.game).toBeUndefined();
        expect(only([game('hop', [])], [activity('hop')]).parts[0]?.game).toBeUndefined();
    });
    test('a section of nobody plays at no table', () => {
        const sections = [section('early', 0), section('late', 4)];
        expect(only([game('hop', [], [2, 4])], [part('game', 'hop')], {}, { learners: undefined, sections }).parts[0]?.game?.tables).toMatch(/^Late: /);
    });
    test('once unsure, a part of the other piece of the lesson is named with it', () => {
        const unsure = (of?: string) => ({ then: 'repeat', activity: mention('a'), when: 'today', at: range(), ...(of === undefined ? {} : { of }) }) as const;
        const two = (of?: string) => planWeek(programme(lesson('l', [], [activity('a', [], { title: 'Sorting' })]), lesson('m', [], [part('checkpoint', 'end', { unsure: unsure(of) })]), course('c', ['m', 'l']), klass('k', 'c', 7)), { week: 1 })
            .lessons[0]?.parts[0]?.unsure;
        expect([two(), two('l'), two('gone')]).toEqual(['Repeat “a” today.', 'Repeat “Sorting” of “L” today.', 'Repeat “a” today.']);
    });
    test('what is not needed, what it follows and words: titles where there are any', () => {
        expect(only([book('workbook')], [], { notNeeded: [mention('workbook'), mention('gone')], follows: [mention('l'), mention('old')], words: [mention('two-pan-scale')] })).toMatchObject({
            notNeeded: [{ name: 'workbook', title: 'Workbook' }, { name: 'gone', title: 'gone' }], follows: [{ name: 'l', title: 'L' }, { name: 'old', title: 'old' }], words: ['two pan scale']
        });
    });
    test('a thing of the lesson itself, which no part uses or speaks of, warns there', () => {
        const lamp = reusable('lamp', { cautions: [{ kind: 'hot', at: range() }] });
        expect(only([lamp], [activity('a', [need('lamp', '1', 'class')])], { needs: [need('lamp', '1', 'class')] }).cautions).toEqual([]);
        expect(only([lamp], [activity('a')], { needs: [need('lamp', '1', 'class')] }).cautions.map(({ thing }) => thing)).toEqual(['lamp']);
        expect(only([lamp], [activity('a', [need('lamp', '1', 'class')])]).cautions).toEqual([]);
    });
    test('cautions with two sizes, and by the ages of the course where the class has none', () => {
        const peg = material('peg', { size: { sides: ['10', '30'], unit: 'mm', at: range() } });
        const cautions = (own: Partial<ClassSheet>) => planWeek(programme(peg, lesson('l', [need('peg', '5', 'class')]), course('c', ['l'], { ages: { from: 2, at: range() } }), klass('k', 'c', 7, own)), { week: 1 }).cautions.map(({ computed }) => computed);
        expect(cautions({})).toEqual(['10 mm square, 30 mm long; the youngest learners are 2']);
        expect(cautions({ ages: { from: 12, at: range() } })).toEqual([]);
    });
});

describe('things of the week', () => {
    const things = (sheets: Declared[], needs: ReturnType<typeof need>[], own: Partial<ClassSheet> = {}) =>
        planWeek(programme(...sheets, lesson('l', needs), course('c', ['l']), klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon'), ...own })), { week: 1 }).fetch.flatMap(group => group.things);
    test('where they are declared, their parts, their lessons and days', () => {
        const card = reusable('card', { ...counted('set', 'sets'), parts: [mention('tens'), mention('ones-cards')], notes: [prose('Old.')] });
        expect(things([card], [need('card (ones-cards)', '1 set', 'pair')])).toMatchObject([{
            place: place(card), kind: 'material', use: 'reusable', parts: [{ name: 'ones-cards', title: 'Ones cards' }], days: ['Mon 7 Sep'], lessons: [{ name: 'l', title: 'L' }], optional: false, or: [], isNew: true, notes: [{ parts: [{ text: 'Old.' }] }]
        }]);
    });
    test('parts that were never declared come last, as they were written', () => {
        const card = reusable('card', { parts: [mention('ones'), mention('tens')] });
        expect(things([card], [need('card (hundreds, tens, ones)', '1', 'class')])[0]?.parts.map(({ name }) => name)).toEqual(['ones', 'tens', 'hundreds']);
    });
    test('what else would do, by its title where there is one', () => {
        expect(things([reusable('cube'), reusable('peg')], [need('cube or peg or gone', '1', 'class')])[0]?.or).toEqual(['Peg', 'gone']);
    });
    test('what is missing, and why', () => {
        const missing = (sheet: Declared, own: Partial<ClassSheet> = {}) => things([sheet], [need(sheet.name, '10', 'class')], own).map(({ missing: figure }) => [figure?.text, figure?.trail.map(({ words }) => words)]);
        expect(missing(reusable('cube', { source: 'shop' }))).toEqual([['10', ['10 needed less nothing at hand']]]);
        expect(missing(reusable('cube', { source: 'shop' }), { onHand: [held('cube', '4')] })).toEqual([['6', ['10 needed less 4 at hand']]]);
        expect(missing(reusable('cube', { source: 'shop' }), { onHand: [held('cube', '10')] })).toEqual([[undefined, undefined]]);
        // From home or a library it is asked for; it is missing only where some of it is known to be there.
        expect(missing(reusable('cube', { source: 'home' }))).toEqual([[undefined, undefined]]);
        expect(missing(reusable('cube', { source: 'library' }))).toEqual([[undefined, undefined]]);
        expect(missing(reusable('cube', { source: 'home' }), { onHand: [held('cube', '4')] })).toEqual([['6', ['10 needed less 4 at hand']]]);
        expect(missing(reusable('cube', { source: 'shop' }), { onOrder: [held('cube', '9', '2026-09-10')] })[0]?.[1]).toEqual(['10 needed less nothing at hand', '9 on order, arriving Thu 10 Sep']);
        expect(missing(print('page'), { onHand: [held('page', '4')] })).toEqual([[undefined, undefined]]);
    });
    test('copies and sheets, whatever the number of pages', () => {
        const remark = (pages: number, twoSided = false, copies = '7') => things([print('page', pages, twoSided)], [need('page', copies, 'class')])[0]?.remark;
        expect(remark(1)).toBe('7 copies of 1 page: 7 pages, 7 sheets one-sided');
        expect(remark(4, true, '1')).toBe('1 copy of 4 pages: 4 pages, 2 sheets two-sided');
        expect([remark(0), remark(Number.NaN), remark(-3)]).toEqual(Array.from({ length: 3 }, () => '7 copies of 1 page: 7 pages, 7 sheets one-sided'));
        expect(remark(1.5)).toBe('7 copies of 2 pages: 14 pages, 14 sheets one-sided');
        expect(things([reusable('cube')], [need('cube', '1')])[0]?.remark).toBeUndefined();
    });
    test('a kit that holds it is where it comes from', () => {
        const own = { kits: [{ kit: mention('box'), count: 1, at: range() }] };
        expect(things([reusable('cube'), kit('box', ['cube', '20'])], [need('cube', '10', 'class')], own)).toMatchObject([{ source: 'kit', atHand: { text: '20' } }]);
    });
    test('what nobody called reusable or used up: pieces and lengths come back, the rest is used up', () => {
        const use = (...[own]: [Parameters<typeof material>[1]]) => things([material('x', { use: undefined, ...own })], [need('x', '5', 'class')])[0]?.use;
        expect([use({}), use(measured('g')), use(measured('m')), use({ ...counted('box', 'boxes') }), use({ use: 'consumable' })]).toEqual(['reusable', 'consumable', 'reusable', 'reusable', 'consumable']);
    });
    test('sections at different hours hand on what is handed back; in a trail of several sections each has its line', () => {
        const sections = [section('early', 4, '9:00'), section('late', 3, '10:00')];
        const [cube] = things([reusable('cube')], [need('cube', '2', 'learner'), need('cube', '1', 'class')], { learners: undefined, sections });
        expect([cube?.amount.text, cube?.amount.trail.map(({ words }) => words.replace('“L”, Mon 7 Sep: ', ''))]).toEqual(['9', [
            'Early: 2 x 4 learners = 8', 'Early: 1 x the whole class = 1', 'in use at the same time: 9', 'Late: 2 x 3 learners = 6', 'Late: 1 x the whole class = 1', 'in use at the same time: 7',
            'sections that meet at the same hour add up, others share: 9'
        ]]);
    });
});
