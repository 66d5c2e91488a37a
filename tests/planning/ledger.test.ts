import { describe, expect, test } from 'vitest';
import { newPlanningCache } from '../../server/planning/cache.js';
import type { LedgerFigures } from '../../server/planning/ledger-figures.js';
import { planSchedule } from '../../server/planning/schedule.js';
import { planLedger } from '../../server/planning/ledger.js';
import { changeAlone } from '../../server/planning/ledger/one-change.js';
import { lastView, problemsIn } from '../language/fixture.js';

const programme = (changes: string, more = ''): string => `
material bean "Dried beans"
  consumable
  measured in g
  pack of 100 g costs 2.00 EUR
  stand-in lentil 2 for 1
material lentil "Lentils"
  consumable
  measured in g
  pack of 100 g costs 3.00 USD
material cube "Gram cubes"
  reusable
objective compare-mass "Compare two masses"
lesson weigh-1 "Two bags"
  objectives
    introduces compare-mass
  activity lift 10 min
    materials
      bean 50 g per learner
      cube 2 per learner
    do: Lift.
lesson weigh-2 "Three bags"
  follows weigh-1
  objectives
    practises compare-mass
  activity lift-more 20 min
    materials
      bean 25 g per learner
      cube 5 per learner
    do: Lift.
  activity talk 10 min
    do: Talk.
lesson weigh-3 "The balance"
  objectives
    checks compare-mass
  activity weigh 15 min
    materials
      cube 3 per learner
    do: Weigh.
lesson visit "Market visit"
  activity walk 30 min
    do: Walk.
course measuring "Measuring" edition 2
  unit weighing
    weigh-1
    weigh-2
    weigh-3
class harbour "Harbour co-op"
  teaches measuring
  learners 4
  starts 2026-09-07
  meets mon
${more}${changes}`;

async function ledgerOf(text: string, today?: string): Promise<LedgerFigures | undefined> {
    await problemsIn({ 'one.course': text });
    return planLedger(lastView().programme, { class: 'harbour' }, { today });
}

const forHarbour = (...lines: string[]): string => ['adaptation shorter "Shorter" of measuring edition 2 for harbour', ...lines.map(line => `  ${line}`), ''].join('\n');

describe('the ledger of an adaptation', () => {
    test('is undefined where none applies', async () => {
        expect(await ledgerOf(programme(''))).toBeUndefined();
        expect(await ledgerOf(programme('adaptation other of measuring for millpond\n  skip lesson weigh-1\nclass millpond\n  teaches measuring\n  learners 3\n'))).toBeUndefined();
    });

    test('tells each change with its reason, what it breaks and its minutes', async () => {
        const ledger = (await ledgerOf(programme(forHarbour('skip lesson weigh-1 because: They know it.', 'retime weigh-3 to 20 min'))))!;
        expect(ledger).toMatchObject({
            course: { name: 'measuring', title: 'Measuring' }, class: { name: 'harbour', title: 'Harbour co-op' }, adaptations: [{ name: 'shorter', title: 'Shorter', edition: '2' }], otherConsequences: []
        });
        expect(ledger.changes.map(({ says, idle, minutes }) => ({ says, idle, minutes }))).toEqual([
            { says: '“Two bags” is left out', idle: undefined, minutes: { before: 55, after: 45 } },
            { says: '“The balance” takes 20 min instead of 15', idle: undefined, minutes: { before: 45, after: 50 } }
        ]);
        expect(ledger.changes[0]!.because?.parts).toMatchObject([{ text: 'They know it.' }]);
        expect(ledger.changes.map(({ consequences }) => consequences.map(({ kind, about, lessons }) => `${kind} ${about.kind} ${about.name}: ${lessons.join(', ')}`))).toEqual([
            ['no-longer-introduced objective compare-mass: weigh-2, weigh-3', 'prerequisite-left-out lesson weigh-1: weigh-2'], []
        ]);
    });

    test('counts minutes, meetings, supplies and money before and after', async () => {
        const ledger = (await ledgerOf(programme(forHarbour('skip lesson weigh-2', 'add to weigh-3', '  materials', '    bean 50 g'))))!;
        expect(ledger.minutes).toMatchObject({ before: 55, after: 25, lessons: [{ name: 'weigh-1', before: 10, after: 10 }, { name: 'weigh-2', before: 30 }, { name: 'weigh-3', before: 15, after: 15 }] });
        expect(ledger.minutes.lessons[1]).not.toHaveProperty('after', 30);
        expect(ledger.meetings).toEqual({ before: 3, after: 2, lastBefore: '2026-09-21', lastAfter: '2026-09-14' });
        // Worked out by hand: 4 learners of 50 g and 25 g each are 300 g, without the second lesson and with 50 g more 250 g; 5 cubes each at once become 3.
        expect(ledger.supplies.map(({ name, before, after, difference }) => [name, before?.text, after?.text, difference])).toEqual([
            ['bean', '300 g', '250 g', '50 g less'], ['cube', '20', '12', '8 fewer']
        ]);
        expect(ledger.money).toMatchObject([{ currency: 'EUR', before: { text: '6.00 EUR' }, after: { text: '6.00 EUR' }, difference: 'the same' }]);
    });

    test('a difference fits the amounts that are told', async () => {
        const lossy = programme(forHarbour('skip lesson weigh-1')).replace('  consumable\n', '  consumable\n  loss 5%\n');
        // 300 g and 100 g at a loss of 5% are 315.79 g and 105.26 g, told rounded up.
        expect((await ledgerOf(lossy))!.supplies[0]).toMatchObject({ name: 'bean', before: { text: '320 g' }, after: { text: '106 g' }, difference: '214 g less' });
    });

    test('never adds one currency to another', async () => {
        const ledger = (await ledgerOf(programme(forHarbour('swap bean for lentil'))))!;
        expect(ledger.supplies.map(({ name, before, after, difference }) => [name, before?.text, after?.text, difference])).toEqual([
            ['bean', '300 g', undefined, 'no longer needed'], ['lentil', undefined, '600 g', 'new']
        ]);
        expect(ledger.money).toMatchObject([
            { currency: 'EUR', before: { minor: '600' }, difference: '6.00 EUR less' }, { currency: 'USD', after: { minor: '1800' }, difference: '18.00 USD more' }
        ]);
        expect(ledger.minutes).toMatchObject({ before: 55, after: 55 });
    });

    test('says what happened to each lesson, where it stands or stood', async () => {
        const ledger = (await ledgerOf(programme(forHarbour('move weigh-3 before weigh-1', 'skip lesson weigh-1', 'retime weigh-2 to 20 min', 'insert visit after weigh-2'))))!;
        expect(ledger.lessons.map(({ name, happened, says }) => [name, happened, says.length])).toEqual([
            ['weigh-1', 'left out', 1], ['weigh-3', 'moved', 1], ['weigh-2', 'changed', 1], ['visit', 'new', 1]
        ]);
    });

    test('splits and joins', async () => {
        const split = (await ledgerOf(programme(forHarbour('split weigh-2 after lift-more'))))!;
        expect(split.lessons.map(({ name, happened }) => `${name} ${happened}`)).toEqual(['weigh-1 same', 'weigh-2 changed', 'weigh-2-part-2 changed', 'weigh-3 same']);
        expect(split.minutes).toMatchObject({ before: 55, after: 55 });
        expect(split.changes.flatMap(({ consequences }) => consequences)).toEqual([]);
        const joined = (await ledgerOf(programme(forHarbour('join weigh-1 with weigh-2'))))!;
        expect(joined.lessons.map(({ name, happened }) => `${name} ${happened}`)).toEqual(['weigh-1 changed', 'weigh-3 same']);
        expect(joined).toMatchObject({ minutes: { before: 55, after: 55 }, meetings: { before: 3, after: 2 } });
        expect(joined.changes.flatMap(({ consequences }) => consequences)).toEqual([]);
    });

    test('a later change that deals with a loss silences it; a reason does not', async () => {
        const ledger = (await ledgerOf(programme(forHarbour('skip lesson weigh-1 because: They know it.', 'skip lesson weigh-2', 'add to weigh-3', '  objectives', '    introduces compare-mass'))))!;
        expect(ledger.changes.flatMap(({ consequences }) => consequences)).toEqual([]);
    });

    test('an objective of which nothing is left is a fact', async () => {
        const ledger = (await ledgerOf(programme(forHarbour('skip lesson weigh-1', 'skip lesson weigh-2', 'skip lesson weigh-3', 'insert visit after weigh-3', 'skip lesson weigh-1'))))!;
        expect(ledger.changes.map(({ consequences, idle }) => [consequences.map(({ kind, fact }) => [kind, fact]), idle !== undefined])).toMatchObject([
            [[], false], [[], false], [[['no-longer-introduced', true]], false], [[], true], [[], true]
        ]);
    });

    test('what no change breaks by itself stands apart', async () => {
        const twice = programme(forHarbour('skip lesson weigh-1', 'skip lesson weigh-2')).replace('practises compare-mass', 'introduces compare-mass').replace('  follows weigh-1\n', '');
        const ledger = (await ledgerOf(twice))!;
        expect(ledger.changes.flatMap(({ consequences }) => consequences)).toEqual([]);
        expect(ledger.otherConsequences).toMatchObject([{ kind: 'no-longer-introduced', lessons: ['weigh-3'] }]);
    });

    test('changes for every class come first, and both are counted', async () => {
        const ledger = (await ledgerOf(programme(`${forHarbour('skip activity weigh-2.talk')}adaptation for-all of measuring\n  skip lesson weigh-1\n`)))!;
        expect(ledger.adaptations.map(({ name }) => name)).toEqual(['for-all', 'shorter']);
        expect(ledger.minutes).toMatchObject({ before: 55, after: 35 });
    });

    test('says that it counts what is over as well', async () => {
        const text = programme(forHarbour('skip lesson weigh-1'));
        expect((await ledgerOf(text, '2026-09-15'))!.assumptions.join(' ')).toContain('Meetings before Tue 15 Sep are counted as if the changes had been made in time.');
        expect((await ledgerOf(text, '2026-09-01'))!.assumptions.join(' ')).not.toContain('as if');
    });

    test('of a shared cupboard only the own changes count', async () => {
        const other = 'class millpond "Millpond co-op"\n  teaches measuring\n  learners 2\n  starts 2026-09-08\n  meets tue\n  shares cupboard with harbour\nadaptation theirs of measuring for millpond\n  skip lesson weigh-1\n';
        const ledger = (await ledgerOf(programme(forHarbour('skip lesson weigh-2'), other)))!;
        // Harbour's 200 g and 100 g and Millpond's 50 g become 200 g and 50 g.
        expect(ledger.supplies.find(({ name }) => name === 'bean')).toMatchObject({ before: { text: '350 g' }, after: { text: '250 g' }, difference: '100 g less' });
    });
});

describe('the order in which lessons are taught', () => {
    const inOrder = (ledger: LedgerFigures): string[] => ledger.lessons.map(({ name, happened }) => `${name} ${happened}`);

    test('a lesson that is put behind one that follows it is taught where it was, and nothing comes too early', async () => {
        const ledger = (await ledgerOf(programme(forHarbour('move weigh-1 after weigh-2'))))!;
        expect(ledger.changes).toMatchObject([{
            says: '“Two bags” is put after “Three bags”',
            consequences: [{ kind: 'prerequisite-later', says: '“Three bags” follows “Two bags”, which is therefore still taught where it was.', lessons: ['weigh-2'] }]
        }]);
        expect(inOrder(ledger)).toEqual(['weigh-1 same', 'weigh-2 same', 'weigh-3 same']);
        const { weeks } = planSchedule(lastView().programme, { class: 'harbour' });
        expect(weeks.flatMap(({ meetings }) => meetings).flatMap(({ lessons }) => lessons)).toEqual(['weigh-1', 'weigh-2', 'weigh-3']);
    });

    test('where others may be taught meanwhile, it comes later and those behind it wait', async () => {
        const ledger = (await ledgerOf(programme(forHarbour('move weigh-1 after weigh-3'))))!;
        expect(inOrder(ledger)).toEqual(['weigh-3 same', 'weigh-1 moved', 'weigh-2 same']);
        expect(ledger.changes[0]!.consequences.map(({ says }) => says)).toEqual([
            '“The balance” checks “Compare two masses”, which “Two bags” now introduces only later.',
            '“Three bags” follows “Two bags”, which now comes later, so it is taught only after that.'
        ]);
    });

    test('of a split lesson the title is told, not the name of a piece', async () => {
        const text = programme(forHarbour('split weigh-1 after lift', 'move weigh-1 after weigh-2')).replace('    do: Lift.\n', '    do: Lift.\n  activity again 5 min\n    do: Lift again.\n');
        const { changes, otherConsequences } = (await ledgerOf(text))!;
        expect(changes[1]!.consequences).toMatchObject([{ says: '“Three bags” follows “Two bags”, which is therefore still taught where it was.', about: { name: 'weigh-1', title: 'Two bags' } }]);
        expect(otherConsequences).toEqual([]);
    });
});

test('what builds on an objective that none introduces any more is told, though lessons still ask for it', async () => {
    const text = programme(forHarbour('skip lesson weigh-1')).replace('lesson weigh-1', 'objective order-mass "Put masses in order"\n  builds on compare-mass\nlesson weigh-1').replace('    checks compare-mass', '    checks compare-mass\n    introduces order-mass');
    expect((await ledgerOf(text))!.changes[0]!.consequences.map(({ says }) => says)).toContain('“Put masses in order” builds on “Compare two masses”, which no lesson introduces any more.');
});

test('of very many changes, what they break is told of all together', async () => {
    const many = (count: number): string => programme(forHarbour('skip lesson weigh-1', ...Array.from({ length: count - 1 }, (_, index) => `retime weigh-3 to ${16 + index % 2} min`)));
    const few = (await ledgerOf(many(100)))!;
    expect(few.changes[0]!.consequences.map(({ kind }) => kind)).toContain('no-longer-introduced');
    expect(few.changes[0]!.minutes).toEqual({ before: 55, after: 45 });
    const ledger = (await ledgerOf(many(101)))!;
    expect(ledger.changes).toHaveLength(101);
    expect(ledger.changes.every(({ consequences, minutes }) => consequences.length === 0 && minutes === undefined)).toBe(true);
    expect(ledger.otherConsequences).toEqual(few.changes[0]!.consequences);
    expect(ledger.minutes).toMatchObject({ before: 55, after: 47 });
    expect(ledger.assumptions).toContain('These are 101 changes, too many to look at one by one: what they break is told of all together, and the minutes of each are not counted.');
});

test('one change alone: the term with all changes and with all but that one', async () => {
    await problemsIn({ 'one.course': programme(forHarbour('skip lesson weigh-1', 'swap bean for lentil')) });
    const { programme: read } = lastView();
    const [skip, swap] = read.adaptations.get('shorter')!.changes;
    const cache = newPlanningCache();
    // Beans are swapped for twice as many lentils, so without the first lesson it is 200 g of those, and not of beans.
    expect(changeAlone(read, { class: 'harbour' }, skip!, cache)).toMatchObject({ meetings: { before: 3, after: 2 }, supplies: [{ name: 'lentil', difference: '400 g less' }] });
    expect(changeAlone(read, { class: 'harbour' }, swap!, cache)).toMatchObject({ meetings: { before: 2, after: 2 }, supplies: [{ name: 'bean', difference: 'no longer needed' }, { name: 'lentil', difference: 'new' }] });
});

test('the same after a keystroke as from the start', async () => {
    const cache = newPlanningCache();
    const text = programme(forHarbour('skip lesson weigh-2', 'swap bean for lentil in weigh-1'));
    for (const changed of [text, text.replace('learners 4', 'learners 6'), text.replace('bean 50 g', 'bean 70 g'), text.replace('skip lesson weigh-2', 'skip lesson weigh-3'), text]) {
        await problemsIn({ 'one.course': changed });
        const wanted = { class: 'harbour' };
        expect(planLedger(lastView().programme, wanted, { cache })).toEqual(planLedger(lastView().programme, wanted));
    }
});
