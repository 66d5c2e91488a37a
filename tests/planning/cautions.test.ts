import { describe, expect, test } from 'vitest';
import { cautionKind } from '@haversack/language/facts/cautions';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import { planWeek } from '../../server/planning/week.js';
import { activity, adaptation, course, game, klass, lesson, material, mention, need, part, programme, prose, range, step } from './sheets.js';

const millimetres = (...sides: string[]) => ({ size: { sides, unit: 'mm', at: range() } });
const declaring = (kind: string, text?: string) => ({ cautions: [{ kind, prose: text === undefined ? undefined : prose(text), at: range() }] });
const ages = (from: number, to?: number) => ({ ages: { from, to, at: range() } });
const underThrees = { present: [{ who: 'under-threes', at: range() }] };
const cube = (more = {}) => material('cube', { ...millimetres('10', '10', '10'), ...more });

type Sheets = Parameters<typeof programme>;
const brief = (things: Sheets, more: Partial<ClassSheet> = {}, parts = [activity('build', [need('cube', '5', 'pair')], { steps: [step('do', 'Take a {cube}.')] })]) =>
    planWeek(programme(...things, lesson('a', [], parts), course('c', ['a']), klass('k', 'c', 4, more)), { week: 1 });

describe('cautions that nobody declared', () => {
    test('stand with the part and in the week, and say from what they were worked out', () => {
        const week = brief([cube()], ages(4));
        expect(week.cautions).toMatchObject([{ kind: 'small-parts', thing: 'cube', text: cautionKind('small-parts')?.text, computed: '10 x 10 x 10 mm; the youngest learners are 4' }]);
        expect(week.cautions[0]?.serious).toBeUndefined();
        expect(week.lessons[0]?.parts[0]?.cautions).toEqual(week.cautions);
        expect(week.fetch.flatMap(group => group.things.flatMap(thing => thing.cautions))).toEqual(week.cautions);
    });

    test('lead to the size', () => {
        const thing = cube();
        expect(brief([thing], ages(4)).cautions[0]?.place.range).toEqual(thing.size?.at);
    });

    test('are serious with younger children in the room, and say so', () => {
        expect(brief([cube()], { ...ages(6), ...underThrees }).cautions).toMatchObject([{ computed: '10 x 10 x 10 mm; children under three are in the room', serious: 'Children under three are in the room: keep all of it out of their reach.' }]);
    });

    test('say how one and two lengths are read', () => {
        expect(brief([cube(millimetres('20'))], ages(4)).cautions).toMatchObject([{ kind: 'small-ball', computed: 'a ball of 20 mm; the youngest learners are 4' }]);
        expect(brief([cube(millimetres('5', '40'))], ages(4)).cautions).toMatchObject([{ kind: 'small-parts', computed: '5 mm square, 40 mm long; the youngest learners are 4' }]);
    });

    test('ask for a real gauge where the size does not tell', () => {
        expect(brief([cube(millimetres('3', '30', '49'))], ages(4)).cautions[0]?.text).toMatch(/check with a real gauge.*Choking hazard/);
    });

    // A ball is written with one length; with three it is a block, and from an edge of 1.25 / sqrt(2) in on a cube does not fit (16 CFR 1501.4).
    test('a block as wide as the opening is none, whoever is there', () => {
        expect(brief([cube(millimetres('31.7', '31.7', '31.7'))], { ...ages(6), ...underThrees }).cautions).toEqual([]);
    });

    test('a ball too large for the cylinder that passes the larger hole is a small ball', () => {
        expect(brief([cube(millimetres('40'))], ages(4)).cautions).toMatchObject([{ kind: 'small-ball', text: cautionKind('small-ball')?.text }]);
    });

    test.each(['small-parts', 'small-ball', 'magnet', 'button-cell', 'balloon'])('do not double a declared caution of choking: %s', kind => {
        const { cautions } = brief([cube(declaring(kind))], ages(4));
        expect(cautions.map(caution => caution.kind)).toEqual([kind]);
    });

    test('stand beside one of another kind', () => {
        expect(brief([cube(declaring('allergen', 'Legume.'))], ages(4)).cautions.map(caution => [caution.kind, caution.computed !== undefined])).toEqual([['allergen', false], ['small-parts', true]]);
    });

    test('are in nobody\'s way: older children, no ages, no size, a size that is none', () => {
        for (const more of [ages(6, 8), {}]) expect(brief([cube()], more).cautions).toEqual([]);
        expect(brief([material('cube')], ages(4)).cautions).toEqual([]);
        for (const size of [{ sides: ['0', '1', '1'], unit: 'mm', at: range() }, { sides: ['1', '1', '1'], unit: 'kg', at: range() }, { sides: [], unit: 'mm', at: range() }]) {
            expect(brief([material('cube', { size })], ages(4)).cautions).toEqual([]);
        }
    });

    test('of an age range turned round the lesser end counts', () => {
        expect(brief([cube()], ages(8, 2)).cautions[0]?.serious).toContain('The youngest learners are 2');
    });

    test('the ages of the course count where the class names none, or where there is no class', () => {
        const young = course('c', ['a'], ages(3, 5));
        const sheets = [cube(), lesson('a', [need('cube', '1', 'pair')]), young] as const;
        expect(planWeek(programme(...sheets), { week: 1 }).cautions).toMatchObject([{ computed: expect.stringContaining('learners are 3') }]);
        expect(planWeek(programme(...sheets, klass('k', 'c', 4)), { week: 1 }).cautions).toHaveLength(1);
        expect(planWeek(programme(...sheets, klass('k', 'c', 4, ages(6))), { week: 1 }).cautions).toEqual([]);
    });

    test('of what a game brings, and of what a step only speaks of', () => {
        const rolling = game('roll', [need('cube', '1', 'group')]);
        expect(brief([cube(), rolling], ages(4), [part('game', 'roll')]).lessons[0]?.parts[0]?.cautions).toMatchObject([{ thing: 'cube', computed: expect.any(String) }]);
        expect(brief([cube()], ages(4), [activity('talk', [], { steps: [step('do', 'Show a {cube}.')] })]).cautions).toMatchObject([{ thing: 'cube' }]);
    });
});

describe('cautions that a writer declared', () => {
    test('stand at any age, and are serious where the ages make them so', () => {
        expect(brief([cube(declaring('small-parts'))], ages(12)).cautions).toMatchObject([{ kind: 'small-parts' }]);
        expect(brief([cube(declaring('small-parts'))], ages(12)).cautions[0]?.serious).toBeUndefined();
        expect(brief([cube(declaring('small-parts'))], underThrees).cautions[0]?.serious).toContain('under three');
        expect(brief([cube(declaring('glass'))], underThrees).cautions.find(({ kind }) => kind === 'glass')?.serious).toBeUndefined();
    });

    test('a magnet is called swallowable only by its size, and perhaps where a gauge has to tell', () => {
        const text = (...sides: string[]) => brief([cube({ ...declaring('magnet'), ...millimetres(...sides) })], ages(7)).cautions[0]?.text;
        expect(text('10', '10', '2')).toMatch(/^Small enough to swallow\./);
        expect(text('3', '30', '49')).toMatch(/^Perhaps small enough to swallow: check with a real gauge\./);
        expect(text('75', '15', '10')).toBe(cautionKind('magnet')?.text);
    });

    test('an allergen says what its writer wrote and nothing guessed', () => {
        const bean = material('peanut', { notes: [prose('Wheat, milk, egg.')] });
        expect(brief([bean, material('cube')], ages(7), [activity('cook', [need('peanut', '1', 'pair')])]).cautions).toEqual([]);
    });
});

test('in an adapted course the thing that is there is what is warned of', () => {
    const swap = { does: 'swap thing' as const, thing: mention('cube'), forThing: mention('brick'), head: range(), at: range() };
    const week = brief([cube(), material('brick', millimetres('90', '60', '60')), adaptation('safe', { of: mention('c'), forClass: mention('k'), changes: [swap] })], underThrees);
    expect(week.cautions).toEqual([]);
    const other = brief([cube(millimetres('90', '60', '60')), material('brick', millimetres('9', '9', '9')), adaptation('odd', { of: mention('c'), forClass: mention('k'), changes: [swap] })], underThrees);
    expect(other.cautions).toMatchObject([{ thing: 'brick', serious: expect.any(String) }]);
});
