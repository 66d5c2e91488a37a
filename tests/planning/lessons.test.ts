import { describe, expect, test } from 'vitest';
import { cautionKind } from '@haversack/language/facts/cautions';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import { planWeek } from '../../server/planning/week.js';
import type { file} from './sheets.js';
import {
    activity, amount, book, consumable, course, game, klass, lesson, measured, mention, need, part, programme, prose, range, reusable, section, step
} from './sheets.js';

type Declared = Parameters<typeof file>[number];

function week(things: Declared[], parts: Parameters<typeof lesson>[2] = [], more: Partial<LessonSheet> = {}) {
    return planWeek(programme(...things, lesson('weigh', more.needs, parts, more), course('c', ['weigh']), klass('k', 'c', 7, { groupsOf: 3 })), { week: 1 });
}
const only = (...given: Parameters<typeof week>) => {
    const [first] = week(...given).lessons;
    if (!first) throw new Error('no lesson');
    return first;
};
const caution = (kind: string, text?: string) => ({ kind, prose: text === undefined ? undefined : prose(text), at: range() });

describe('the run of a lesson', () => {
    test('parts start after one another, until one has no minutes', () => {
        const figures = only([], [activity('a', [], { minutes: 5 }), activity('b', [], { minutes: 15 }), activity('c', [], { minutes: undefined }), activity('d')]);
        expect(figures.parts.map(p => p.startsAt)).toEqual([0, 5, 20, undefined]);
        expect(figures).toMatchObject({ minutes: 30, minutesIncomplete: true, meeting: 'Day 1' });
        expect(only([], [activity('a')]).minutesIncomplete).toBe(false);
    });
    test('the aim stands apart from the other steps; what hangs under a step stays there', () => {
        const figures = only([], [], { steps: [step('about', 'Compare two masses.'), step('ask', 'Which?', [step('expect', 'The low one.')])] });
        expect(figures.aim.map(p => p.parts)).toEqual([[{ text: 'Compare two masses.' }]]);
        expect(figures.steps).toMatchObject([{ word: 'ask', under: [{ word: 'expect', place: { uri: 'file:///demo/all.course' } }] }]);
    });
    test('objectives, words, what it follows and what is not needed', () => {
        const figures = only([book('workbook')], [], {
            introduces: [mention('mass')], practises: [mention('length')], checks: [mention('time')], words: [mention('two-pan')], follows: [mention('weigh'), mention('gone')],
            notNeeded: [mention('workbook')], draft: true
        });
        expect(figures.objectives.map(o => [o.does, o.title])).toEqual([['introduces', 'mass'], ['practises', 'length'], ['checks', 'time']]);
        expect(figures).toMatchObject({ words: ['two pan'], draft: true, follows: [{ title: 'Weigh' }, { title: 'gone' }], notNeeded: [{ title: 'Workbook' }] });
    });
    test('needs of the lesson and of each part, in words and for everybody', () => {
        const bean = consumable('bean', measured('g'));
        const figures = only([bean, reusable('cube')], [activity('a', [need('cube', '20', 'group')])], { needs: [need('bean', '150 g', 'pair', { optional: true })] });
        expect(figures.needs).toMatchObject([{ name: 'bean', title: 'Bean', each: '150 g for each pair', amount: { text: '600 g' }, optional: true }]);
        expect(figures.parts[0]?.needs).toMatchObject([{ name: 'cube', each: '20 for each group', amount: { text: '60', trail: [{ words: 'A: 20 x 3 groups of 3, 2 and 2 = 60' }] } }]);
    });
});

describe('games, practice and closing questions', () => {
    const grocer = game('grocer', [need('cube', '20', 'group')], [2, 4], {
        found: { book: mention('table-games'), edition: '3', chapter: 'Weighing', number: '12', at: range() }, steps: [step('do', 'Deal.')]
    });
    test('where the rules stand, who plays and how many tables at once', () => {
        const [played] = only([reusable('cube'), book('table-games'), grocer], [part('game', 'grocer', { title: 'grocer' })]).parts;
        expect(played).toMatchObject({
            title: 'Grocer',
            game: {
                rules: 'Table games, edition 3, chapter “Weighing”, number 12', players: '2 to 4 players', steps: [{ word: 'do' }],
                tables: "3 tables of 3, 2 and 2 play at once (the class's own groups fit 2 to 4 players)"
            },
            needs: [{ name: 'cube', amount: { text: '60' } }, { name: 'table-games', each: '1 for the class' }]
        });
    });
    test('tables of each section', () => {
        const sheets = programme(grocer, lesson('l', [], [part('game', 'grocer')]), course('c', ['l']),
            klass('k', 'c', undefined, { sections: [section('early', 2), section('late', 6)] }));
        expect(planWeek(sheets, { week: 1 }).lessons[0]?.parts[0]?.game?.tables).toBe(
            "Early: 1 table of 2 plays (the class's own groups fit 2 to 4 players); Late: 2 tables of 3 and 3 play at once (the fewest even tables of 2 to 4 players)");
    });
    test('practice in words', () => {
        const practice = [{ words: ['name', 'numbers'], numbers: ['11', '99'], at: range() }];
        expect(only([], [part('practice', 'say-it', { items: 8, practice })]).parts[0]).toMatchObject({ items: 8, practice: ['name numbers 11 to 99'] });
    });
    test.each([
        [{ then: 'repeat', activity: mention('two-bags'), when: 'tomorrow', at: range() }, 'Repeat “Two bags” tomorrow.'],
        [{ then: 'repeat', activity: mention('gone'), when: 'today', at: range() }, 'Repeat “gone” today.'],
        [{ then: 'repeat lesson', at: range() }, 'Repeat the whole lesson.'],
        [{ then: 'repeat lesson', when: 'today', at: range() }, 'Repeat the whole lesson today.'],
        [{ then: 'revisit', lessons: 3, at: range() }, 'Go on and revisit in 3 lessons.']
    ] as const)('if unsure %#', (unsure, words) => {
        const closing = only([], [activity('two-bags'), part('checkpoint', 'wrap-up', { unsure })]).parts[1];
        expect([closing?.unsure, closing?.unsureAs]).toEqual([words, unsure]);
    });
});

describe('cautions', () => {
    const bead = reusable('bead', { cautions: [caution('small-parts', 'Count them.')] });
    test('stand with the part that uses or speaks of the thing, else with the lesson, and once for the week', () => {
        const parts = [activity('a', [], { steps: [step('do', 'Take a {bead}.')] }), activity('b', [need('bead', '1', 'pair')]), activity('c')];
        const brief = week([bead, reusable('lamp', { cautions: [caution('hot')] })], parts, { needs: [need('bead', '1', 'pair'), need('lamp', '1', 'class')] });
        const [own] = brief.lessons;
        expect(own?.parts.map(p => p.cautions.map(c => c.kind))).toEqual([['small-parts'], ['small-parts'], []]);
        expect(own?.cautions).toMatchObject([{ kind: 'hot', thing: 'lamp' }]);
        expect(brief.cautions.map(c => c.kind)).toEqual(['small-parts', 'hot']);
        expect(brief.cautions[0]).toMatchObject({ thing: 'bead', text: cautionKind('small-parts')?.text, prose: { parts: [{ text: 'Count them.' }] } });
        expect(brief.names['bead']).toMatchObject({ title: 'Bead', kind: 'material', fact: 'this week 4' });
    });
    test("a lesson's, a part's and a game's own", () => {
        const throwing = game('throw', [], undefined, { cautions: [caution('small-ball')] });
        const brief = week([throwing], [part('game', 'throw', { cautions: [caution('sharp')] })], { cautions: [caution('chemical')] });
        expect(brief.lessons[0]?.parts[0]?.cautions.map(c => [c.kind, c.thing])).toEqual([['sharp', undefined], ['small-ball', 'throw']]);
        expect(brief.cautions.map(c => c.kind)).toEqual(['chemical', 'sharp', 'small-ball']);
    });
    test('a kind we do not know still warns', () => {
        expect(only([reusable('eel', { cautions: [caution('live-wire')] })], [], { needs: [need('eel', '1', 'class')] }).cautions[0]?.text).toBe('Live wire: take care.');
    });
});

describe('names in braces', () => {
    test('every kind has a title and a place; unknown ones are left to the reader', () => {
        const steps = [step('do', '{cube} {grocer} {weigh} {heavier} {table-games} {gone} {__proto__}')];
        const { names } = week([reusable('cube'), game('grocer', []), book('table-games')], [activity('a', [], { steps })], { words: [mention('heavier')] });
        expect(Object.entries(names).map(([name, n]) => [name, n.kind, n.title])).toEqual([
            ['cube', 'material', 'Cube'], ['grocer', 'game', 'Grocer'], ['weigh', 'lesson', 'Weigh'], ['heavier', 'word', 'heavier'], ['table-games', 'book', 'Table games']
        ]);
        expect(Object.values(names).every(n => n.place?.uri === 'file:///demo/all.course')).toBe(true);
    });
    test('names in what the writer added to a caution, in notes of things, and in where things and games are kept', () => {
        const [beside, on] = [prose('Beside the {tin}.'), prose('On the {shelf}.')];
        const lamp = reusable('lamp', { cautions: [caution('hot', 'Use the {cloth}.')], notes: [prose('See {cube}.')], kept: beside });
        const brief = week([lamp, reusable('cloth'), reusable('cube'), reusable('tin'), reusable('shelf'), { ...game('grocer', []), kept: on }],
            [activity('a', [], { kind: 'game', name: 'grocer' })], { needs: [need('lamp', '1', 'class')] });
        expect(Object.keys(brief.names).sort()).toEqual(['cloth', 'cube', 'lamp', 'shelf', 'tin']);
        expect(brief.fetch[0]!.things[0]!.kept).toEqual(beside);
        expect(brief.lessons[0]!.parts[0]!.game!.kept).toEqual(on);
        expect(week([reusable('lamp', { kept: prose('') })], [], { needs: [need('lamp', '1', 'class')] }).fetch[0]!.things[0]!.kept).toBeUndefined();
    });
});

test('the helper reads amounts', () => expect(amount('1 1/2 cup')).toMatchObject({ value: '1 1/2', unit: 'cup' }));
