/** Practice items of the week and the sheet to write on: which practices, which items, where they stand. */
import { describe, expect, test } from 'vitest';
import type { Adapted } from '@haversack/language/adapting/adapted';
import type { LessonSheet, PartSheet } from '@haversack/language/sheets/sheet';
import { lessonAsTaught, planPracticeSheet, practiceItemFigures, practiceLines, practicesOf } from '../../server/planning/practice.js';
import { activity, lesson, part, programme, range, step } from './sheets.js';

const line = (words: string, ...numbers: string[]) => ({ words: words.split(' '), numbers, at: range() });
const practice = (name: string, lines: ReturnType<typeof line>[], more: Partial<PartSheet> = {}): PartSheet => part('practice', name, { practice: lines, ...more });
const bonds = practice('bonds', [line('bonds', '5', '9')], { items: 4 });
const names = practice('names', [line('name numbers', '11', '99')]);
const home = lesson('l', [], [activity('a'), bonds, names, practice('idle', [])]);

describe('a sheet', () => {
    test('has all practices with items, with what is asked and answered as in the brief', () => {
        const { lesson: of, further, practices } = planPracticeSheet(home);
        expect([of, further]).toEqual([{ name: 'l', title: 'L', place: { uri: home.uri, range: home.at } }, false]);
        expect(practices.map(({ name, title, first, lines, items }) => [name, title, first, lines, items.length])).toEqual([
            ['bonds', 'Bonds', 1, ['bonds of 5 to 9'], 4], ['names', 'Names', 1, ['name numbers 11 to 99'], 10]
        ]);
        expect(practices[0]?.items).toEqual(practiceItemFigures(bonds, home));
        expect(practices[0]?.place).toEqual({ uri: home.uri, range: bonds.at });
        expect(practices[1]?.possible).toBe(89);
        expect(practicesOf(home).map(({ name }) => name)).toEqual(['bonds', 'names']);
    });
    test('has the practice that is asked for, and none that is not there', () => {
        expect(planPracticeSheet(home, { practice: 'names' }).practices.map(({ name }) => name)).toEqual(['names']);
        expect(planPracticeSheet(home, { practice: 'gone' }).practices).toEqual([]);
    });
    test('of further items goes on where the brief ends', () => {
        const { further, practices: [more] } = planPracticeSheet(home, { practice: 'names', more: 5 });
        expect([further, more?.first, more?.items.length]).toEqual([true, 11, 5]);
        expect([...planPracticeSheet(home, { practice: 'names' }).practices[0]!.items, ...more!.items]).toEqual(practiceItemFigures(names, home, { count: 15 }));
        expect(new Set(practiceItemFigures(names, home, { count: 89 }).map(({ ask }) => ask)).size).toBe(89);
        expect(planPracticeSheet(home, { practice: 'bonds', more: 2 }).practices[0]?.first).toBe(5);
    });
    test('the pieces of a split practice have the same further items, told once', () => {
        const split = (before: number, items: number, from: string): PartSheet => ({ ...names, name: `names-${before}`, items, piece: { before, of: 10 }, from: [{ lesson: 'l', part: from }] });
        const both = (from: string) => lesson('l', [], [split(0, 6, 'names'), split(6, 4, from)]);
        const named = (sheet: LessonSheet, more?: number) => planPracticeSheet(sheet, { more }).practices.map(({ name, first }) => `${name} from ${first}`);
        expect(named(both('names'))).toEqual(['names-0 from 1', 'names-6 from 1']);
        expect(named(both('names'), 3)).toEqual(['names-0 from 11']);
        // A piece of another practice is no second piece of this one.
        expect(named(both('others'), 3)).toEqual(['names-0 from 11', 'names-6 from 5']);
        const alone = lesson('l', [], [split(6, 4, 'names')]);
        expect(named(alone, 3)).toEqual(['names-6 from 5']);
        const first = planPracticeSheet(both('names')).practices;
        expect([...first[0]!.items, ...first[1]!.items]).toEqual(practiceItemFigures(names, home));
    });
    test('shows the pictures of its steps that can be drawn, each at its line', () => {
        const frame = { ...step('show', ''), show: { picture: { name: 'ten-frame', at: range() }, settings: [{ text: '4', at: range() }], at: range() } } as unknown as PartSheet['steps'][number];
        const broken = { ...step('show', ''), show: { picture: { name: 'no-such', at: range() }, settings: [], at: range() } } as unknown as PartSheet['steps'][number];
        const shown = practice('shown', [line('bonds', '5')], { steps: [step('do', 'Sing.'), frame, broken], uri: 'file:///demo/elsewhere.lesson' });
        const [only] = planPracticeSheet(lesson('l', [], [shown])).practices;
        expect(only?.pictures.map(({ picture, place }) => [picture?.kind, place])).toEqual([['ten-frame', { uri: 'file:///demo/elsewhere.lesson', range: frame.at }]]);
        expect(only?.place).toEqual({ uri: 'file:///demo/elsewhere.lesson', range: shown.at });
    });
});

describe('a number that is also said with “and”', () => {
    const items = (...lines: ReturnType<typeof line>[]) => practiceItemFigures(practice('p', lines, { items: 9 }), home);
    /** Where words and digits are compared, there is an item for the name and one for the places, “8-hundred 1”, which has no other name. */
    const said = (words: string, ...numbers: string[]) => items(line(words, ...numbers)).flatMap(({ alsoSaid }) => alsoSaid ?? []);
    // Both forms are ordinary English; "and" after the hundreds is usual outside North America (common practice, no source).
    test('is told with it, and with its words where words are counted', () => {
        expect(said('name numbers', '418', '418')).toEqual([{ name: 'four hundred and eighteen' }]);
        expect(said('digits and words', '418', '418')).toEqual([{ name: 'four hundred and eighteen', words: 4 }]);
        expect(said('digits and words', '1001', '1001')).toEqual([{ name: 'one thousand and one', words: 4 }]);
    });
    test('others have one name', () => {
        expect(said('name numbers', '67', '67')).toEqual([]);
        expect(said('name numbers', '400', '400')).toEqual([]);
        expect(said('sums', '5', '5')).toEqual([]);
    });
    test('of several lines by the line of the item', () => {
        const both = items(line('name numbers', '418', '418'), line('digits and words', '419', '419'));
        expect(both.flatMap(({ alsoSaid }) => alsoSaid ?? []).sort((a, b) => (a.name < b.name ? -1 : 1))).toEqual([{ name: 'four hundred and eighteen' }, { name: 'four hundred and nineteen', words: 4 }]);
    });
});

test('what items are made from, and pictures of items at the practice', () => {
    expect(practiceLines(activity('a'))).toEqual([]);
    const fives = practice('p', [line('fives and tens', '6', '10')]);
    expect(practiceItemFigures(fives, home).flatMap(({ picture }) => picture?.place ?? []).every(({ uri, range: at }) => uri === home.uri && at === fives.at)).toBe(true);
    expect(practiceItemFigures(fives, home).filter(({ picture }) => picture).length).toBeGreaterThan(0);
    expect(practiceItemFigures(names, home, { count: 0 })).toEqual([]);
});

describe('a lesson as a class is taught it', () => {
    const base = programme(home, lesson('m'));
    const adapted = (lessons: LessonSheet[], madeOf: [string, string[]][]) => ({ programme: programme(...lessons), madeOf: new Map(madeOf) }) as unknown as Adapted;
    test('is the lesson of the course where nothing is adapted', () => {
        expect(lessonAsTaught('l', base, undefined)).toBe(home);
        expect(lessonAsTaught('gone', base, undefined)).toBeUndefined();
    });
    test('joined to another, the joined one; left out, none', () => {
        const joined = lesson('l', [], [...home.parts, activity('z')]);
        const plan = adapted([joined], [['l', ['l', 'm']]]);
        expect([lessonAsTaught('l', base, plan), lessonAsTaught('m', base, plan)]).toEqual([joined, joined]);
        expect(lessonAsTaught('gone', base, plan)).toBeUndefined();
    });
    test('split, has the parts of every piece, each with where it was written, under its own name', () => {
        const [one, two] = [{ ...lesson('l', [], [bonds]), title: 'L, part 1' }, { ...lesson('l-part-2', [], [{ ...names, from: [{ lesson: 'l', part: 'names' }] }]), uri: 'file:///demo/two.lesson' }];
        const whole = lessonAsTaught('l', base, adapted([one, two], [['l', ['l']], ['l-part-2', ['l']]]));
        expect([whole?.name, whole?.title]).toEqual(['l', 'L']);
        expect(whole?.parts.map(({ name, uri, from }) => [name, uri, from])).toEqual([
            ['bonds', 'file:///demo/all.course', [{ lesson: 'l', part: 'bonds' }]], ['names', 'file:///demo/two.lesson', [{ lesson: 'l', part: 'names' }]]
        ]);
        // A piece has a name of its own.
        expect(lessonAsTaught('l-part-2', base, adapted([one, two], [['l', ['l']], ['l-part-2', ['l']]]))).toBe(two);
    });
});
