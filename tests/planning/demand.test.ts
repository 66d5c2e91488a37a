import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { chooseClass } from '../../server/planning/audience.js';
import { newPlanningCache } from '../../server/planning/cache.js';
import { demandOf } from '../../server/planning/demand.js';
import { exactText } from '../../server/planning/exact.js';
import { Holdings } from '../../server/planning/holdings.js';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import type { file} from './sheets.js';
import {
    activity, book, consumable, counted, game, held, kit, klass, lesson, measured, mention, need, part, print, programme, range, reusable, section
} from './sheets.js';

type Declared = Parameters<typeof file>[number];

/** The lesson is the last of the declarations; the class has seven learners in threes unless it is given. */
function demand(declarations: Declared[], own: ClassSheet = klass('k', undefined, 7, { groupsOf: 3, adults: 2 })) {
    const sheets = programme(...declarations, own);
    const taught = [...sheets.lessons.values()].at(-1);
    if (!taught) throw new Error('no lesson');
    const found = demandOf(taught, new Holdings(sheets, chooseClass(sheets)), newPlanningCache());
    const amounts = Object.fromEntries([...found.things].map(([name, d]) => [name, exactText(d.amount)]));
    const trail = (name: string) => found.things.get(name)?.trail.map(s => s.words);
    return { amounts, trail, found };
}

const cube = reusable('cube');
const none = new Fraction(0);
const bean = consumable('bean', measured('g'));

describe('per whom', () => {
    test.each([
        ['learner', '140', '20 x 7 learners = 140'],
        ['pair', '80', '20 x 4 pairs = 80'],
        ['group', '60', '20 x 3 groups of 3, 2 and 2 = 60'],
        ['group of 4', '40', '20 x 2 groups of 4 and 3 = 40'],
        ['class', '20', '20 x the whole class = 20'],
        ['adult', '40', '20 x 2 adults = 40'],
        [undefined, '20', '20 x the whole class (nothing says per whom) = 20']
    ])('%s', (per, amount, words) => {
        const { amounts, trail, found } = demand([cube, lesson('l', [need('cube', '20', per)])]);
        expect(amounts).toEqual({ cube: amount });
        expect(trail('cube')).toEqual([words]);
        expect(found.things.get('cube')?.trail[0]?.place?.range).toEqual(found.lines[0]?.line.need.at);
    });
    test('a group without a size is the whole class, said', () => {
        expect(demand([cube, lesson('l', [need('cube', '20', 'group')])], klass('k', undefined, 7)).trail('cube'))
            .toEqual(['20 x 1 group (no group size is given) = 20']);
    });
    test('each, as a writer would say it', () => {
        const { found } = demand([cube, bean, lesson('l', [need('cube', '20', 'pair'), need('bean', '150 g', 'group of 3'), need('cube', '1')])]);
        expect(found.lines.map(l => l.each)).toEqual(['20 for each pair', '150 g for each group of 3', '1 for the class']);
    });
});

describe('one lesson', () => {
    test('reusable: the most that any part uses; needs of the lesson are one part', () => {
        const { amounts, trail } = demand([cube, lesson('l', [need('cube', '2', 'learner')], [
            activity('first', [need('cube', '10', 'pair')]), activity('second', [need('cube', '5', 'learner')])
        ])]);
        expect(amounts).toEqual({ cube: '40' });
        expect(trail('cube')).toEqual(['First: 10 x 4 pairs = 40', 'handed back between the 3 parts that use it, so the most that any one uses: 40']);
    });
    test('within one part, reusables add', () => {
        const { amounts, trail } = demand([cube, lesson('l', [], [activity('first', [need('cube', '10', 'pair'), need('cube', '1', 'adult')])])]);
        expect(amounts).toEqual({ cube: '42' });
        expect(trail('cube')).toEqual(['First: 10 x 4 pairs = 40', 'First: 1 x 2 adults = 2', 'in use at the same time: 42']);
    });
    test('consumable: the sum over lesson and parts, converted into one unit', () => {
        const { amounts, trail } = demand([bean, lesson('l', [need('bean', '150 g', 'pair')], [activity('first', [need('bean', '1 kg', 'class')])])]);
        expect(amounts).toEqual({ bean: '1600' });
        expect(trail('bean')).toEqual(['150 g x 4 pairs = 600 g', 'First: 1 kg x the whole class = 1 kg', 'used up, so all together: 1.6 kg']);
    });
    test('copies of a print add, books do not', () => {
        const { amounts } = demand([print('page', 2), book('tales'), lesson('l', [need('page', '1', 'learner'), need('tales', '1', 'class')], [
            activity('first', [need('page', '1', 'pair'), need('tales', '1', 'class')])
        ])]);
        expect(amounts).toEqual({ page: '11', tales: '1' });
    });
    test('parts of a thing are gathered', () => {
        const card = reusable('card', { ...counted('set', 'sets'), parts: [mention('ones'), mention('tens')] });
        const { found } = demand([card, lesson('l', [need('card (ones)', '1 set', 'pair')], [activity('a', [need('card (tens)', '1 set', 'pair')])])]);
        expect(found.things.get('card')).toMatchObject({ parts: ['ones', 'tens'], whole: false });
    });
    test('optional only where every line is', () => {
        const lines = (second: boolean) => demand([cube, lesson('l', [need('cube', '1', 'pair', { optional: true }), need('cube', '1', 'class', { optional: second })])]);
        expect(lines(true).found.things.get('cube')?.optional).toBe(true);
        expect(lines(false).found.things.get('cube')?.optional).toBe(false);
    });
});

describe('trail', () => {
    // 1 US cup is 236.5882365 ml (NIST Handbook 44, appendix C).
    test('an amount stands as it was written where the own unit would have to round it', () => {
        const water = consumable('water', measured('ml'));
        const { trail, found } = demand([water, lesson('l', [need('water', '1/3 cup', 'learner'), need('water', '1 l', 'pair')])]);
        expect(trail('water')?.slice(0, 2)).toEqual(['1/3 cup x 7 learners = 2 1/3 cups = 552.04 ml', '1 l x 4 pairs = 4 l']);
        expect(found.lines[0]?.each).toBe('1/3 cup for each learner');
        expect(demand([bean, lesson('l', [need('bean', '1/3 g', 'learner')])]).trail('bean')).toEqual(['1/3 g x 7 learners = 2.34 g']);
    });
    test('what is optional says so', () => {
        const { trail, found } = demand([cube, lesson('l', [need('cube', '1', 'learner'), need('cube', '2', 'pair', { optional: true })])]);
        expect(trail('cube')?.slice(0, 2)).toEqual(['1 x 7 learners = 7', '2 x 4 pairs = 8 (optional)']);
        expect(exactText(found.things.get('cube')?.required ?? none)).toBe('7');
    });
});

describe('games', () => {
    const play = part('game', 'grocer');
    const grocer = (players?: [number, number?]) => game('grocer', [need('cube', '20', 'group')], players);
    test("a game brings its own needs, per table: the class's own groups where they fit", () => {
        const { amounts, trail } = demand([cube, grocer([2, 4]), lesson('l', [], [play])]);
        expect(amounts).toEqual({ cube: '60' });
        expect(trail('cube')).toEqual(["Grocer: 20 x 3 tables of 3, 2 and 2 (the class's own groups fit 2 to 4 players) = 60"]);
    });
    test('else the fewest even tables', () => {
        expect(demand([cube, grocer([4, 4]), lesson('l', [], [play])], klass('k', undefined, 8, { groupsOf: 3 })).amounts).toEqual({ cube: '40' });
    });
    test('its needs and those of the part it is played in add; other parts do not', () => {
        const { amounts } = demand([cube, grocer([2, 4]), lesson('l', [need('cube', '65', 'class')], [part('game', 'grocer', { needs: [need('cube', '6', 'class')] })])]);
        expect(amounts).toEqual({ cube: '66' });
    });
    test('the book of its rules comes along', () => {
        const rules = { found: { book: mention('table-games'), at: range() } };
        expect(demand([book('table-games'), game('grocer', [], [2, 4], rules), lesson('l', [], [play])]).amounts).toEqual({ 'table-games': '1' });
    });
    test('a game that no file declares brings nothing', () => expect(demand([cube, lesson('l', [], [play])]).amounts).toEqual({}));
});

describe('sections', () => {
    const sections = (one?: string, other?: string) => klass('k', undefined, undefined, { sections: [section('a', 7, one), section('b', 5, other)] });
    const wants = [cube, bean, lesson('l', [need('cube', '20', 'pair'), need('bean', '100 g', 'pair')])];
    test('the same hour adds reusables', () => {
        expect(demand(wants, sections('9:00', '09:00')).amounts).toEqual({ cube: '140', bean: '700' });
        expect(demand(wants, sections()).amounts).toEqual({ cube: '140', bean: '700' });
    });
    test('different hours share reusables, never consumables', () => {
        const { amounts, trail, found } = demand(wants, sections('9:00', '10:00'));
        expect(amounts).toEqual({ cube: '80', bean: '700' });
        expect(found.lines.map(l => exactText(l.amount))).toEqual(['80', '700']);
        expect(trail('cube')).toEqual(['A: 20 x 4 pairs = 80', 'B: 20 x 3 pairs = 60', 'sections that meet at the same hour add up, others share: 80']);
    });
});

describe('a or b', () => {
    const either = lesson('l', [need('cube or button', '20', 'pair')]);
    const things = [cube, reusable('button'), either];
    const cupboard = (...have: [string, string][]) => klass('k', undefined, 7, { onHand: have.map(([n, a]) => held(n, a)) });
    test('what is at hand in full comes first, said', () => {
        const { amounts, trail } = demand(things, cupboard(['cube', '5'], ['button', '500']));
        expect(amounts).toEqual({ button: '80' });
        expect(trail('button')?.[0]).toBe('Cube or Button: Button, because it is at hand');
    });
    test('else what is at hand in part', () => expect(demand(things, cupboard(['button', '5'])).amounts).toEqual({ button: '80' }));
    test('else the first', () => {
        const { found, trail } = demand(things);
        expect(trail('cube')?.[0]).toBe('Cube or Button: Cube, the first named, because none is at hand');
        expect(found.things.get('cube')?.or).toEqual(['button']);
    });
    test('where none is enough, the one that is short of least, the first where two are alike', () => {
        const found = demand(things, cupboard(['cube', '5'], ['button', '70']));
        expect(found.amounts).toEqual({ button: '80' });
        expect(found.trail('button')?.[0]).toBe('Cube or Button: Button, because least of it is missing');
        expect(demand(things, cupboard(['cube', '70'], ['button', '70'])).amounts).toEqual({ cube: '80' });
    });
    test('what a need of the same lesson took is not at hand for the next', () => {
        const [bell, cup] = [reusable('bell'), reusable('cup')];
        const own = cupboard(['bell', '4'], ['cup', '8']);
        const both = [need('bell or cup', '7', 'class'), need('cup or bell', '4', 'class')];
        expect(demand([bell, cup, lesson('l', both)], own).amounts).toEqual({ cup: '7', bell: '4' });
        // One after the other, each part has all of them.
        expect(demand([bell, cup, lesson('l', [], both.map((n, i) => activity(`a${i}`, [n])))], own).amounts).toEqual({ cup: '7' });
        // What has no alternative comes first, wherever it stands.
        expect(demand([bell, cup, lesson('l', [need('bell or cup', '4', 'class'), need('bell', '4', 'class')])], own).amounts).toEqual({ cup: '4', bell: '4' });
        const gone = demand([bell, cup, lesson('l', [need('cup', '8', 'class'), need('bell', '4', 'class'), need('bell or cup', '1', 'class')])], own);
        expect(gone.trail('bell')?.[0]).toBe('Bell or Cup: Bell, the first named, because none is left');
    });
    test('an option that no file declares is passed over', () => {
        expect(demand([reusable('button'), either]).amounts).toEqual({ button: '80' });
    });
    test('kits count as at hand', () => {
        const sheets = [...things, kit('box', ['button', '90'])];
        expect(demand(sheets, klass('k', undefined, 7, { kits: [{ kit: mention('box'), count: 1, at: range() }] })).amounts).toEqual({ button: '80' });
    });
});

describe('what cannot be counted is left out and said', () => {
    const said = (declarations: Declared[]) => demand(declarations).found.assumptions;
    test('a mass is never made a volume', () => {
        const { amounts, found } = demand([bean, lesson('l', [need('bean', '150 g', 'pair')], [activity('a', [need('bean', '2 cup', 'class')])])]);
        expect(amounts).toEqual({ bean: '600' });
        expect(found.assumptions).toEqual(['In “L”, 2 cup of “Bean” is left out: it is counted in g, and “cup” cannot be made into that.']);
    });
    test('a thing that no inventory declares', () => {
        expect(said([lesson('l', [need('spring-scale', '1', 'pair')])])).toEqual(['In “L”, “spring-scale” is not counted: no inventory declares it.']);
    });
    test('a measured thing without an amount', () => {
        expect(said([bean, lesson('l', [need('bean')])])).toEqual(['In “L”, “Bean” is not counted: no amount is written.']);
    });
    test('pieces without an amount count once', () => {
        expect(demand([cube, lesson('l', [need('cube', undefined, 'pair')])]).trail('cube')).toEqual(['1 (no amount is written) x 4 pairs = 4']);
    });
    test('undeclared units that do not fit together', () => {
        const { amounts, found } = demand([consumable('sand'), lesson('l', [need('sand', '1 kg', 'class'), need('sand', '1 l', 'class')])]);
        expect(amounts).toEqual({ sand: '1' });
        expect(found.assumptions).toHaveLength(1);
    });
    test('a name the file could not read is not spoken of again', () => expect(said([lesson('l', [need('x', '1')].map(n => ({ ...n, options: [{ thing: mention(''), parts: [] }] })))])).toEqual([]));
});
