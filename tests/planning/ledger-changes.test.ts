/** What changes of a course break, in sentences for a teacher, and the term before and after: each case with what a person reads out of its lessons. */
import { describe, expect, test } from 'vitest';
import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import type { Change, WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import type { Programme } from '@haversack/language/sheets/programme';
import type { AdaptationSheet, ClassSheet, LessonSheet, ObjectiveSheet } from '@haversack/language/sheets/sheet';
import { adaptedTerm } from '../../server/planning/adapted-term.js';
import { newPlanningCache } from '../../server/planning/cache.js';
import { planChanges } from '../../server/planning/changes.js';
import { courseMemoOf, planLedger, withoutChanges } from '../../server/planning/ledger.js';
import { changesOf } from '../../server/planning/ledger/consequences.js';
import { CourseMemo } from '../../server/planning/ledger/course-memo.js';
import { changeAlone } from '../../server/planning/ledger/one-change.js';
import { planSchedule } from '../../server/planning/schedule.js';
import { placeOfLeftOut, taughtAs, weekOfTaught } from '../../server/planning/taught-as.js';
import { planWeek } from '../../server/planning/week.js';
import { activity, adaptation, consumable, counted, course, klass, lesson, material, measured, meets, mention, need, on, pack, part, programme, prose, range, reusable, step } from './sheets.js';

const mentions = (text = '') => text.split(' ').filter(Boolean).map(mention);
interface Says { introduces?: string; practises?: string; checks?: string; follows?: string; words?: string; does?: string; minutes?: number }
/** A lesson of one activity. */
const says = (name: string, { introduces, practises, checks, follows, words, does, minutes = 10 }: Says = {}, more: Partial<LessonSheet> = {}) => lesson(name, [], [activity('x', [], { minutes })], {
    introduces: mentions(introduces), practises: mentions(practises), checks: mentions(checks), follows: mentions(follows), words: mentions(words), steps: does === undefined ? [] : [step('do', does)], ...more
});
const objective = (name: string, buildsOn = ''): ObjectiveSheet => ({ kind: 'objective', name, title: name.toUpperCase(), uri: 'file:///demo/o', at: range(), whole: range(), buildsOn: mentions(buildsOn), alignsTo: [] });
const written = (changes: Change[], because?: string): WrittenChange[] => changes.map(one => ({ ...one, ...(because === undefined ? {} : { because: prose(because) }), head: range(), at: range() }));

const skip = (name: string): Change => ({ does: 'skip lesson', lesson: mention(name) });
const move = (name: string, side: 'after' | 'before', anchor: string): Change => ({ does: 'move lesson', lesson: mention(name), side, anchor: mention(anchor) });
const insert = (name: string, side: 'after' | 'before', anchor: string): Change => ({ does: 'insert lesson', lesson: mention(name), side, anchor: mention(anchor) });
const swap = (name: string, other: string): Change => ({ does: 'swap lesson', lesson: mention(name), forLesson: mention(other) });
const split = (name: string, after: string): Change => ({ does: 'split lesson', lesson: mention(name), after: mention(after) });
const join = (name: string, ...others: string[]): Change => ({ does: 'join lessons', lesson: mention(name), others: others.map(mention) });
const retime = (name: string, minutes: number): Change => ({ does: 'retime lesson', lesson: mention(name), minutes });
const add = (name: string, does: 'introduces' | 'checks' | 'words', what: string): Change =>
    ({ does: 'add to lesson', lesson: mention(name), added: { steps: [], introduces: [], practises: [], checks: [], needs: [], cautions: [], words: [], parts: [], [does]: [mention(what)] } });

interface More { taught?: string[]; objectives?: ObjectiveSheet[]; things?: Parameters<typeof programme>; own?: Partial<ClassSheet>; adaptations?: AdaptationSheet[] }
/** The lessons of the course, `taught` of them where given, and changes for the class. */
function sheetsOf(lessons: LessonSheet[], changes: Change[], { taught = lessons.map(({ name }) => name), objectives = [], things = [], own = {}, adaptations = [] }: More = {}): Programme {
    const sheets = programme(
        ...things, ...lessons, course('c', taught), klass('k', 'c', 4, { starts: on('2026-09-07'), meets: meets('mon'), ...own }),
        ...(adaptations.length > 0 ? adaptations : [adaptation('a', { of: mention('c'), forClass: mention('k'), changes: written(changes) })])
    );
    return { ...sheets, objectives: new Map(objectives.map(one => [one.name, one])) };
}
const ledgerOf = (sheets: Programme, today?: string) => planLedger(sheets, { class: 'k' }, { today })!;

describe('what a change breaks, in a sentence', () => {
    const o = [objective('o')];
    const four = [says('l1', { introduces: 'o', words: 'very-heavy' }), says('l2', { practises: 'o', follows: 'l1' }), says('l3', { checks: 'o' }), says('l4', { does: 'Lift the {very-heavy} one.' })];
    test.each<[string, LessonSheet[], Change[], string[][], More?]>([
        ['a lesson that others build on', four, [skip('l1')], [[
            'No lesson introduces “O” any more, but “L2” and “L3” ask for it.', '“L2” follows “L1”, which is left out.', '“L4” uses the word “very heavy”, which no lesson teaches any more.'
        ]]],
        ['the lesson that checks', four, [skip('l3')], [['No lesson checks “O” any more, so nobody finds out whether the children have got it.']]],
        ['the lesson that practises', four, [skip('l2')], [[]]],
        ['one is left that asks', four, [skip('l3'), skip('l1')], [['No lesson checks “O” any more, so nobody finds out whether the children have got it.'], [
            'No lesson introduces “O” any more, but “L2” asks for it.', '“L2” follows “L1”, which is left out.', '“L4” uses the word “very heavy”, which no lesson teaches any more.'
        ]]],
        ['nothing of an objective is left: no word of checking it', four, [skip('l3'), skip('l2'), skip('l1')], [[], [], [
            '“O” is no longer taught: no lesson that is left introduces, practises or checks it.', '“L4” uses the word “very heavy”, which no lesson teaches any more.'
        ]]],
        ['later than one that practises', four.slice(0, 1).concat(says('l2', { practises: 'o' }), says('l3')), [move('l1', 'after', 'l3')], [['“L2” practises “O”, which “L1” now introduces only later.']]],
        ['later than one that checks', [says('l1', { introduces: 'o' }), says('l2', { checks: 'o' })], [move('l1', 'after', 'l2')], [['“L2” checks “O”, which “L1” now introduces only later.']]],
        ['later than two', [says('l1', { introduces: 'o' }), says('l2', { checks: 'o' }), says('l3', { practises: 'o' })], [move('l1', 'after', 'l3')], [['“L3” and “L2” ask for “O”, which “L1” now introduces only later.']]],
        ['later than one of two', [says('l1', { introduces: 'o' }), says('l2', { practises: 'o' }), says('l3', { practises: 'o' })], [move('l1', 'after', 'l2')], [['“L2” practises “O”, which “L1” now introduces only later.']]],
        ['more than four are counted', ['l1', 'l2', 'l3', 'l4', 'l5', 'l6'].map((name, i) => says(name, i === 0 ? { introduces: 'o' } : { checks: 'o' })), [skip('l1')], [['No lesson introduces “O” any more, but “L2”, “L3”, “L4” and 2 more lessons ask for it.']]],
        ['four are named', ['l1', 'l2', 'l3', 'l4', 'l5'].map((name, i) => says(name, i === 0 ? { introduces: 'o' } : { checks: 'o' })), [skip('l1')], [['No lesson introduces “O” any more, but “L2”, “L3”, “L4” and “L5” ask for it.']]],
        ['two that follow', [says('l1'), says('l2', { follows: 'l1' }), says('l3', { follows: 'l1' })], [skip('l1')], [['“L2” and “L3” follow “L1”, which is left out.']]],
        ['two that have to wait', [says('l1'), says('l2', { follows: 'l1' }), says('l3', { follows: 'l1' }), says('l4')], [move('l1', 'after', 'l4')], [['“L2” and “L3” follow “L1”, which now comes later, so they are taught only after that.']]],
        ['two words', [says('l1', { words: 'heavy' }), says('l2', { does: '{heavy}' }), says('l3', { does: '{heavy}' })], [move('l1', 'after', 'l3')], [['“L2” and “L3” use the word “heavy”, which “L1” now teaches only later.']]],
        ['a word in the lesson that teaches it, and in one behind', [says('l1', { words: 'heavy', does: '{heavy}' }), says('l2'), says('l3', { does: '{heavy}' })], [move('l1', 'after', 'l2')], [[]]],
        ['what is brought in and asks for what the course never taught', [says('l1'), says('visit', { practises: 'o', follows: 'other', does: '{heavy}' }), says('other', { words: 'heavy' })], [insert('visit', 'after', 'l1')], [[
            'No lesson introduces “O”, but “Visit” asks for it.', '“Visit” follows “Other”, which is not taught in this course.', '“Visit” uses the word “heavy”, which no lesson teaches any more.'
        ]], { taught: ['l1'] }],
        ['taught in its place: what follows it goes on', [says('l1', { introduces: 'o' }), says('l2', { follows: 'l1' }), says('visit')], [swap('l1', 'visit')], [['“O” is no longer taught: no lesson that is left introduces, practises or checks it.']], { taught: ['l1', 'l2'] }],
        ['what a later change puts right', four, [skip('l1'), add('l2', 'introduces', 'o'), add('l3', 'words', 'very-heavy')], [['“L2” follows “L1”, which is left out.'], [], []]],
        ['what a reading of the course finds without any change', [says('l1', { practises: 'o', follows: 'gone', does: '{heavy}' }), says('l2', { words: 'heavy', introduces: 'o' }), says('l3')], [skip('l3')], [[]]],
        ['what is broken, put right and broken again is the last one’s', [says('l1', { introduces: 'o' }), says('l2', { practises: 'o', checks: 'o' }), says('l3', { introduces: 'o' })], [move('l1', 'after', 'l2'), retime('l2', 20), move('l1', 'before', 'l2'), move('l1', 'after', 'l2')], [
            [], [], [], ['“L2” practises “O”, which “L1” now introduces only later.']
        ]],
        ['a piece of a split lesson is behind its other piece', [lesson('l1', [], [activity('x'), activity('y')]), says('l2', { follows: 'l1' })], [split('l1', 'x')], [[]]],
        ['joined lessons follow nothing of their own', [says('l1'), says('l2', { follows: 'l1' }), says('l3', { follows: 'l2' })], [join('l1', 'l2')], [[]]]
    ])('%s', (_, lessons, changes, sentences, more) => {
        const { changes: found, otherConsequences } = ledgerOf(sheetsOf(lessons, changes, { objectives: o, ...more }));
        expect(found.map(({ consequences }) => consequences.map(one => one.says))).toEqual(sentences);
        expect(otherConsequences).toEqual([]);
    });
    test.each<[string, string, Change[], string[]]>([
        ['gone, and no lesson asks for it', '', [skip('l1')], ['“O” is no longer taught: no lesson that is left introduces, practises or checks it.', '“P” builds on “O”, which is no longer taught.']],
        ['gone, and lessons ask for it', 'o', [skip('l1')], ['No lesson introduces “O” any more, but “L3” asks for it.', '“P” builds on “O”, which no lesson introduces any more.']],
        ['later', '', [move('l1', 'after', 'l2')], ['“P” builds on “O”, which “L1” now introduces only later.']],
        ['at the same time', '', [join('l1', 'l2')], []]
    ])('an objective that another builds on: %s', (_, asked, changes, sentences) => {
        const lessons = [says('l1', { introduces: 'o' }), says('l2', { introduces: 'p' }), says('l3', { practises: asked })];
        expect(ledgerOf(sheetsOf(lessons, changes, { objectives: [objective('o'), objective('p', 'o')] })).changes.flatMap(({ consequences }) => consequences.map(one => one.says))).toEqual(sentences);
    });
    test('what it is about, where that stands, and in which lessons it shows', () => {
        const sheets = sheetsOf(four, [skip('l1'), skip('l3')], { objectives: [objective('o'), objective('p', 'o')] });
        const [first, second] = ledgerOf(sheets).changes;
        const place = (sheet: { uri: string; at: unknown }) => ({ uri: sheet.uri, range: sheet.at });
        const { objectives, lessons } = sheets;
        expect(first!.consequences).toEqual([
            { kind: 'no-longer-introduced', says: 'No lesson introduces “O” any more, but “L2” asks for it.', about: { kind: 'objective', name: 'o', title: 'O', place: place(objectives.get('o')!) }, lessons: ['l2'] },
            { kind: 'prerequisite-left-out', says: '“L2” follows “L1”, which is left out.', about: { kind: 'lesson', name: 'l1', title: 'L1', place: place(lessons.get('l1')!) }, lessons: ['l2'] },
            { kind: 'word-not-taught', says: '“L4” uses the word “very heavy”, which no lesson teaches any more.', about: { kind: 'word', name: 'very-heavy', title: 'very heavy', place: { uri: lessons.get('l1')!.uri, range: lessons.get('l1')!.words[0]!.at } }, lessons: ['l4'] }
        ]);
        expect(second!.consequences.map(({ kind, lessons: shown }) => [kind, shown])).toEqual([['no-longer-checked', []]]);
    });
    test('a word that only a lesson outside of the course teaches leads there; a name that is a thing too is no word', () => {
        const lessons = [says('l1'), says('other', { words: 'heavy cube' }), says('visit', { does: 'A {heavy} {cube}.' })];
        const sheets = sheetsOf(lessons, [insert('visit', 'after', 'l1')], { taught: ['l1'], things: [reusable('cube')] });
        expect(ledgerOf(sheets).changes[0]!.consequences).toMatchObject([{ about: { name: 'heavy', place: { range: lessons[1]!.words[0]!.at } } }]);
        expect(ledgerOf(sheets).changes[0]!.consequences).toHaveLength(1);
    });
    test('a fact is marked as one', () => {
        expect(ledgerOf(sheetsOf([says('l1', { introduces: 'o', checks: 'o' }), says('l2')], [skip('l1')], { objectives: o })).changes[0]!.consequences).toMatchObject([{ fact: true, lessons: [] }]);
        expect(ledgerOf(sheetsOf(four, [skip('l3')], { objectives: o })).changes[0]!.consequences[0]).not.toHaveProperty('fact');
    });
    test('what two changes break only together stands apart', () => {
        const twice = [says('l1', { introduces: 'o', words: 'heavy' }), says('l2', { introduces: 'o', words: 'heavy' }), says('l3', { checks: 'o', does: '{heavy}', follows: 'l2' })];
        const { changes, otherConsequences } = ledgerOf(sheetsOf(twice, [skip('l1'), skip('l2')], { objectives: o }));
        expect(changes.map(({ consequences }) => consequences.map(({ kind }) => kind))).toEqual([[], ['prerequisite-left-out']]);
        expect(otherConsequences.map(({ kind, lessons }) => [kind, lessons])).toEqual([['no-longer-introduced', ['l3']], ['word-not-taught', ['l3']]]);
    });
});

describe('what happened to each lesson', () => {
    const five = ['l1', 'l2', 'l3', 'l4', 'l5'].map((name, i) => lesson(name, [], [activity('x', [], { minutes: 10 + i }), activity('y', [], { minutes: 5 })], name === 'l3' ? { follows: [mention('l2')] } : {}));
    const happened = (changes: Change[], lessons = five, taught = ['l1', 'l2', 'l3', 'l4', 'l5']) => {
        const { lessons: found, minutes } = ledgerOf(sheetsOf([...lessons, says('visit', { minutes: 30 })], changes, { taught }));
        expect(minutes.lessons.map(({ name }) => name)).toEqual(found.map(({ name }) => name));
        return found.map(({ name, happened: how, says: told }) => `${name} ${how}${told.length > 0 ? ` ${told.length}` : ''}`);
    };
    test.each<[string, Change[], string[]]>([
        ['the first is left out', [skip('l1')], ['l1 left out 1', 'l2 same', 'l3 same', 'l4 same', 'l5 same']],
        ['two in the middle and the last', [skip('l2'), skip('l5'), skip('l3')], ['l1 same', 'l2 left out 1', 'l3 left out 1', 'l4 same', 'l5 left out 1']],
        ['one behind another that moves goes where that went', [skip('l3'), move('l2', 'after', 'l4')], ['l1 same', 'l4 same', 'l2 moved 1', 'l3 left out 1', 'l5 same']],
        ['moved and made longer', [move('l4', 'before', 'l1'), retime('l4', 30)], ['l4 moved 2', 'l1 same', 'l2 same', 'l3 same', 'l5 same']],
        ['moved behind the one that it stands before already, so to say', [move('l2', 'before', 'l3')], ['l1 same', 'l2 same', 'l3 same', 'l4 same', 'l5 same']],
        ['put behind one that follows it: taught where it was', [move('l2', 'after', 'l3')], ['l1 same', 'l2 same', 'l3 same', 'l4 same', 'l5 same']],
        ['and changed', [move('l2', 'after', 'l3'), retime('l2', 30)], ['l1 same', 'l2 changed 1', 'l3 same', 'l4 same', 'l5 same']],
        ['another in its place', [swap('l2', 'visit')], ['l1 same', 'l2 left out 1', 'visit new 1', 'l3 same', 'l4 same', 'l5 same']],
        ['brought in and made longer', [insert('visit', 'before', 'l1'), retime('visit', 40)], ['visit new 2', 'l1 same', 'l2 same', 'l3 same', 'l4 same', 'l5 same']],
        ['split', [split('l2', 'x')], ['l1 same', 'l2 changed 1', 'l2-part-2 changed 1', 'l3 same', 'l4 same', 'l5 same']],
        ['three are one', [join('l2', 'l3', 'l4')], ['l1 same', 'l2 changed 1', 'l5 same']],
        ['joined to one behind which another is left out', [join('l1', 'l2'), skip('l3')], ['l1 changed 1', 'l3 left out 1', 'l4 same', 'l5 same']],
        ['what changes nothing is not told', [skip('l2'), skip('l2'), retime('l2', 3), retime('l1', 15)], ['l1 same', 'l2 left out 1', 'l3 same', 'l4 same', 'l5 same']],
        ['all are left out', [skip('l1'), skip('l2'), skip('l3'), skip('l4'), skip('l5')], ['l1 left out 1', 'l2 left out 1', 'l3 left out 1', 'l4 left out 1', 'l5 left out 1']]
    ])('%s', (_, changes, lessons) => {
        expect(happened(changes)).toEqual(lessons);
    });
    test('its minutes then and now: of joined lessons those of all', () => {
        const minutes = (...changes: Change[]) => ledgerOf(sheetsOf([...five, says('visit', { minutes: 30 })], changes, { taught: ['l1', 'l2', 'l3'] })).minutes;
        expect(minutes(join('l1', 'l2', 'l3')).lessons.map(({ name, before, after }) => [name, before, after])).toEqual([['l1', 15 + 16 + 17, 48]]);
        const { before, after, lessons } = minutes(skip('l1'), swap('l2', 'visit'), retime('l3', 20));
        expect([before, after]).toEqual([48, 50]);
        expect(lessons.map(one => [one.name, one.before, one.after])).toEqual([['l1', 15, undefined], ['l2', 16, undefined], ['visit', undefined, 30], ['l3', 17, 20]]);
        const { uri, at } = five[0]!;
        expect(lessons[0]).toMatchObject({ title: 'L1', place: { uri, range: at } });
        expect(minutes(split('l1', 'x')).lessons.map(one => [one.name, one.before, one.after])).toEqual([['l1', 15, 10], ['l1-part-2', undefined, 5], ['l2', 16, 16], ['l3', 17, 17]]);
    });
    test('parts without minutes count as none', () => {
        const silent = [lesson('l1', [], [activity('x', [], { minutes: undefined }), activity('y', [], { minutes: 5 })]), says('l2')];
        expect(ledgerOf(sheetsOf(silent, [skip('l2')])).minutes).toMatchObject({ before: 15, after: 5, lessons: [{ name: 'l1', before: 5, after: 5 }, { name: 'l2', before: 10 }] });
    });
});

describe('several adaptations', () => {
    const three = [says('l1', { minutes: 10 }), says('l2', { minutes: 20 }), says('l3', { minutes: 30 })];
    const own = (name: string, changes: Change[], more: Partial<AdaptationSheet> = {}) => adaptation(name, { of: mention('c'), forClass: mention('k'), changes: written(changes), ...more });
    test('minutes from change to change, through both', () => {
        const adaptations = [own('a', [skip('l1'), retime('l2', 25)]), own('b', [retime('l3', 31), skip('l2'), insert('l1', 'after', 'l3')], { edition: '2', notes: [prose('Well tried.')] })];
        const { changes, adaptations: sheets, minutes, class: group, course: taught } = ledgerOf(sheetsOf(three, [], { adaptations }));
        expect(changes.map(({ adaptation: of, minutes: own }) => [of.name, own?.before, own?.after])).toEqual([['a', 60, 50], ['a', 50, 55], ['b', 55, 56], ['b', 56, 31], ['b', 31, 41]]);
        expect([minutes.before, minutes.after]).toEqual([60, 41]);
        expect(sheets.map(({ name, edition, notes }) => [name, edition, notes?.length])).toEqual([['a', undefined, undefined], ['b', '2', 1]]);
        expect(sheets[0]).not.toHaveProperty('notes');
        expect([group?.name, taught.title]).toEqual(['k', 'C']);
    });
    test('one without a change is told, and changes nothing', () => {
        const found = ledgerOf(sheetsOf(three, [], { adaptations: [own('a', [])] }));
        expect(found).toMatchObject({ changes: [], otherConsequences: [], minutes: { before: 60, after: 60 }, meetings: { before: 3, after: 3 } });
        expect(found.lessons.map(({ happened }) => happened)).toEqual(['same', 'same', 'same']);
    });
    test('the reason, and why a change is idle', () => {
        const adaptations = [own('a', [], { changes: written([skip('l1'), skip('l1')], 'They know it.') })];
        const { changes } = ledgerOf(sheetsOf(three, [], { adaptations }));
        expect(changes.map(({ because, idle }) => [because?.parts, idle !== undefined])).toEqual([[[{ text: 'They know it.' }], false], [[{ text: 'They know it.' }], true]]);
    });
    test('those of other classes and courses are left as they are', () => {
        const [mine, other] = [own('a', [skip('l1')]), own('b', [skip('l2')])];
        const sheets = sheetsOf(three, [], { adaptations: [mine, other] });
        expect([...withoutChanges(sheets, [sheets.adaptations.get('a')!]).adaptations.keys()]).toEqual(['b']);
        expect(planLedger(sheetsOf(three, [], { adaptations: [own('a', [skip('l1')], { forClass: mention('m') })] }), { class: 'k' })).toBeUndefined();
        expect(planLedger(programme(...three), {})).toBeUndefined();
    });
    test('one change alone, of the one that holds it', () => {
        const sheets = sheetsOf([lesson('l1', [need('bean', '10', 'class')]), lesson('l2', [need('bean', '20', 'class')]), lesson('l3')], [], { things: [consumable('bean')], adaptations: [own('a', [skip('l1')]), own('b', [skip('l3'), skip('l2')])] });
        const alone = (name: string, which: number) => {
            const { meetings, supplies } = changeAlone(sheets, { class: 'k', course: 'c' }, sheets.adaptations.get(name)!.changes[which]!, newPlanningCache());
            return [meetings.before, meetings.after, supplies.map(({ difference }) => difference)];
        };
        expect([alone('a', 0), alone('b', 0), alone('b', 1)]).toEqual([[1, 0, ['no longer needed']], [1, 0, []], [1, 0, ['no longer needed']]]);
    });
});

describe('the term before and after', () => {
    const things = [consumable('bean', { ...measured('g'), packs: [pack('100 g', '1.00')] }), reusable('cube'), consumable('chalk', { ...counted('stick', 'sticks'), packs: [{ ...pack('1'), cost: { value: '2.00', currency: 'EUR', at: range() } }] }), material('salt', { use: 'consumable' })];
    const asking = (name: string, ...needs: [string, string][]) => lesson(name, needs.map(([thing, text]) => need(thing, text, 'class')));
    const compared = (lessons: LessonSheet[], changes: Change[], more: More = {}) => ledgerOf(sheetsOf(lessons, changes, { things, ...more }));
    const differences = (...of: Parameters<typeof compared>) => compared(...of).supplies.map(({ name, before, after, difference }) => [name, before?.text, after?.text, difference]);
    test('less, fewer, more, new, no longer; what stays the same is left out', () => {
        const lessons = [asking('l1', ['bean', '300 g'], ['cube', '9'], ['chalk', '3'], ['salt', '5']), asking('l2', ['bean', '200 g'], ['cube', '9'], ['chalk', '1']), asking('l3', ['cube', '4'])];
        expect(differences(lessons, [skip('l1')])).toEqual([['bean', '500 g', '200 g', '300 g less'], ['chalk', '4 sticks', '1 stick', '3 sticks fewer'], ['salt', '5', undefined, 'no longer needed']]);
        expect(differences(lessons, [insert('l1', 'after', 'l3')], { taught: ['l2', 'l3'] })).toEqual([['bean', '200 g', '500 g', '300 g more'], ['chalk', '1 stick', '4 sticks', '3 sticks more'], ['salt', undefined, '5', 'new']]);
        expect(differences(lessons, [skip('l1'), skip('l2')])).toContainEqual(['cube', '9', '4', '5 fewer']);
        expect(differences(lessons, [retime('l1', 5)])).toEqual([]);
        expect(compared(lessons, [skip('l1')]).supplies[0]).toMatchObject({ title: 'Bean', place: { range: things[0]!.at }, before: { trail: [{}, {}, {}] } });
    });
    test('an amount of nothing is none; another kind of unit is another', () => {
        expect(differences([asking('l1', ['bean', '0 g']), asking('l2', ['bean', '5 g'])], [skip('l2')])).toEqual([['bean', '5 g', undefined, 'no longer needed']]);
        expect(differences([asking('l1', ['bean', '0 g']), says('l2')], [skip('l1')])).toEqual([]);
        expect(differences([asking('l1', ['salt', '5 g']), asking('l2', ['salt', '1 cup'])], [skip('l1')])).toEqual([['salt', '5 g', '1 cup', 'in another unit']]);
        expect(differences([asking('l1', ['salt', '5 g']), asking('l2', ['salt', '1 kg'])], [skip('l1')])).toEqual([['salt', '1005 g', '1 kg', '5 g less']]);
    });
    test('amounts that are told rounded differ by what is told: 300/7 g is told as 43, 200/7 as 29', () => {
        expect(differences([asking('l1', ['bean', '100/7 g']), asking('l2', ['bean', '200/7 g'])], [skip('l1')])).toEqual([['bean', '43 g', '29 g', '14 g less']]);
    });
    test('meetings with a lesson, and the last of them', () => {
        expect(compared([says('l1'), says('l2'), says('l3')], [skip('l2')]).meetings).toEqual({ before: 3, after: 2, lastBefore: '2026-09-21', lastAfter: '2026-09-14' });
        const undated = compared([says('l1'), says('l2')], [skip('l2')], { own: { starts: undefined, meets: [] } }).meetings;
        expect(undated).toEqual({ before: 2, after: 1, lastBefore: undefined, lastAfter: undefined });
        expect(compared([says('l1'), says('l2')], [skip('l2'), skip('l1')]).meetings).toMatchObject({ before: 2, after: 0 });
        const waiting = { own: { fixed: [{ lesson: mention('l1'), on: on('2026-09-21'), at: range() }] } };
        expect(compared([says('l1')], [retime('l1', 5)], waiting).meetings).toEqual({ before: 1, after: 1, lastBefore: '2026-09-21', lastAfter: '2026-09-21' });
    });
    test('money, each currency by itself, in the order of their codes', () => {
        const lessons = [asking('l1', ['bean', '300 g']), asking('l2', ['chalk', '3']), asking('l3', ['bean', '100 g'])];
        const money = (changes: Change[], taught = ['l1', 'l2', 'l3']) => compared(lessons, changes, { taught }).money.map(({ currency, before, after, difference }) => [currency, before?.text, after?.text, difference]);
        expect(money([skip('l1')])).toEqual([['EUR', '6.00 EUR', '6.00 EUR', 'the same'], ['USD', '4.00 USD', '1.00 USD', '3.00 USD less']]);
        expect(money([skip('l2')])).toEqual([['EUR', '6.00 EUR', undefined, '6.00 EUR less'], ['USD', '4.00 USD', '4.00 USD', 'the same']]);
        expect(money([insert('l2', 'after', 'l3')], ['l1', 'l3'])).toEqual([['EUR', undefined, '6.00 EUR', '6.00 EUR more'], ['USD', '4.00 USD', '4.00 USD', 'the same']]);
    });
    test('a day before which meetings have been', () => {
        const told = (today: string | undefined, own: Partial<ClassSheet> = {}) => ledgerOf(sheetsOf([says('l1'), says('l2')], [skip('l2')], { own }), today).assumptions.filter(one => one.startsWith('Meetings before'));
        expect([told('2026-09-08'), told('2026-09-07'), told(undefined), told('soon'), told('2026-09-08', { starts: undefined, meets: [] })]).toEqual([
            ['Meetings before Tue 8 Sep are counted as if the changes had been made in time.'], [], [], [], []
        ]);
    });
});

describe('what is kept', () => {
    const lessons = [says('l1', { introduces: 'o' }), says('l2', { checks: 'o' })];
    test('of courses before their changes: as long as their class and course are there', () => {
        const cache = newPlanningCache();
        const sheets = (group: string, of = 'c') => programme(...lessons, course(of, ['l1', 'l2']), klass(group, of, 4), adaptation('a', { of: mention(of), changes: written([skip('l1')]) }));
        const plan = (group: string, of?: string) => [planLedger(sheets(group, of), { class: group }, { cache })?.changes.length, [...cache.unadapted?.keys() ?? []]];
        expect([plan('k'), plan('k'), plan('m'), plan('m', 'd')]).toEqual([[1, ['k c']], [1, ['k c']], [1, ['m c']], [1, ['m d']]]);
        const kept = cache.unadapted!.get('m d');
        plan('m', 'd');
        expect(cache.unadapted!.get('m d')).toBe(kept);
        const alone = programme(...lessons, course('d', ['l1', 'l2']), adaptation('a', { of: mention('d'), changes: written([skip('l1')]) }));
        expect(planLedger(alone, { course: 'd' }, { cache })?.class).toBeUndefined();
        expect([...cache.unadapted!.keys()]).toEqual([' d']);
        planLedger(alone, { course: 'd' }, { cache });
        expect([...cache.unadapted!.keys()]).toEqual([' d']);
    });
    test('the changes of one version of a programme, looked at once', () => {
        const cache = newPlanningCache();
        const memo = courseMemoOf(cache);
        expect(courseMemoOf(cache)).toBe(memo);
        const sheets = sheetsOf(lessons, [skip('l1')]);
        const all = [...sheets.adaptations.values()];
        const found = changesOf(sheets, sheets.courses.get('c')!, all, memo);
        expect(changesOf(sheets, sheets.courses.get('c')!, all, memo)).toBe(found);
        expect(changesOf(sheets, sheets.courses.get('c')!, [], memo)).not.toBe(found);
        expect(changesOf({ ...sheets }, sheets.courses.get('c')!, all, memo)).not.toBe(found);
    });
    test('names in braces, wherever a lesson has prose', () => {
        const prosy = lesson('l', [], [part('activity', 'x', { steps: [step('do', 'A {two}.', [step('say', '{three}')])], cautions: [{ kinds: [], prose: prose('Mind the {four}.'), at: range() } as never] })], {
            steps: [step('about', '{one} and {one}')], cautions: [{ kinds: [], prose: undefined, at: range() } as never]
        });
        const memo = new CourseMemo();
        expect([...memo.namedIn(prosy)]).toEqual(['one', 'two', 'three', 'four']);
        expect(memo.namedIn(prosy)).toBe(memo.namedIn(prosy));
        expect([...memo.namedIn({ ...prosy, steps: [] })]).toEqual(['two', 'three', 'four']);
    });
});

describe('what a class is taught of a lesson', () => {
    const lessons = [lesson('l1', [], [activity('x'), activity('y')]), says('l2'), says('l3'), says('l4')];
    const adapted = (...changes: Change[]) => {
        const sheets = sheetsOf([...lessons, says('visit')], changes, { taught: ['l1', 'l2', 'l3', 'l4'] });
        return { adapted: adaptedFor(sheets, { class: 'k' })!, schedule: planSchedule(sheets, { class: 'k' }), sheets };
    };
    test('itself, its pieces, the lesson that it is joined to, or nothing', () => {
        const { adapted: one, schedule } = adapted(split('l1', 'x'), join('l2', 'l3'), skip('l4'));
        expect(taughtAs('l1', one)).toEqual({ names: ['l1', 'l1-part-2'], joinedWith: [] });
        expect(taughtAs('l3', one)).toEqual({ names: ['l2'], joinedWith: ['l2'] });
        expect(taughtAs('l2', one)).toEqual({ names: ['l2'], joinedWith: ['l3'] });
        expect(taughtAs('l4', one)).toEqual({ names: [], joinedWith: [], leftOut: one.leftOut.get('l4') });
        expect(taughtAs('other', one)).toEqual({ names: ['other'], joinedWith: [] });
        expect(taughtAs('l4', undefined)).toEqual({ names: ['l4'], joinedWith: [] });
        expect([weekOfTaught(schedule, taughtAs('l1', one)), weekOfTaught(schedule, taughtAs('l3', one)), weekOfTaught(schedule, taughtAs('l4', one))]).toEqual([1, 3, undefined]);
        expect(weekOfTaught(schedule, { names: ['l1-part-2', 'l1'], joinedWith: [] })).toBe(1);
    });
    test('where one that is left out would stand: before what comes next, or in the last week', () => {
        const place = (name: string, ...changes: Change[]) => {
            const { adapted: one, schedule } = adapted(...changes);
            return placeOfLeftOut(name, one, schedule);
        };
        expect(place('l1', skip('l1'))).toEqual({ before: 'l2', week: 1 });
        expect(place('l2', skip('l2'), skip('l3'))).toEqual({ before: 'l4', week: 2 });
        expect(place('l4', skip('l4'))).toEqual({ week: 3 });
        expect(place('l2', swap('l2', 'visit'))).toEqual({ before: 'visit', week: 2 });
        expect(place('l2', swap('l2', 'visit'), move('visit', 'after', 'l4'))).toEqual({ before: 'visit', week: 4 });
        expect(place('l2', swap('l2', 'visit'), skip('visit'))).toEqual({ before: 'l3', week: 2 });
        expect(place('l1', skip('l1'), join('l3', 'l2'))).toEqual({ before: 'l3', week: 1 });
    });
    test('told of the whole term: what is left out, in its order, and what is changed as a whole', () => {
        const { adapted: one, sheets } = adapted(skip('l3'), retime('l2', 20), skip('l1'), add('l4', 'words', 'heavy'));
        const term = adaptedTerm(one);
        expect(term.adaptations).toMatchObject([{ name: 'a', title: 'A', place: { range: sheets.adaptations.get('a')!.at } }]);
        expect(term.leftOut.map(({ name, change }) => [name, change.says, change.adaptation])).toEqual([['l1', '“L1” is left out', 'A'], ['l3', '“L3” is left out', 'A']]);
        expect(term.lessons.map(({ name, changes }) => [name, changes.length])).toEqual([['l2', 1], ['l4', 1]]);
        expect(term.names).toEqual({});
    });
    test('and of a week', () => {
        const { sheets } = adapted(skip('l1'), skip('l3'));
        const week = (number: number) => planWeek(sheets, { class: 'k', week: number }).adapted;
        expect([week(1), week(2)].map(found => found?.leftOut.map(({ name, title, before, change }) => [name, title, before, change.says]))).toEqual([[['l1', 'L1', 'l2', '“L1” is left out']], [['l3', 'L3', 'l4', '“L3” is left out']]]);
        expect(week(1)!.adaptations).toEqual([{ name: 'a', title: 'A', place: { uri: sheets.adaptations.get('a')!.uri, range: sheets.adaptations.get('a')!.at } }]);
        expect(week(1)!.leftOut[0]!.place).toEqual({ uri: lessons[0]!.uri, range: lessons[0]!.at });
    });
    test('a lesson that the course names twice is told once', () => {
        const sheets = sheetsOf(lessons, [skip('l1')], { taught: ['l1', 'l2', 'l1'] });
        const one = adaptedFor(sheets, { class: 'k' })!;
        expect(adaptedTerm(one).leftOut.map(({ name }) => name)).toEqual(['l1']);
        expect(planWeek(sheets, { class: 'k', week: 1 }).adapted!.leftOut.map(({ name }) => name)).toEqual(['l1']);
    });
});

describe('the page of changes', () => {
    const lessons = [says('l1'), says('l2')];
    test('has an example of the course, and the titles of what reasons and notes name', () => {
        const adaptations = [adaptation('a', { of: mention('c'), forClass: mention('k'), changes: written([skip('l1')], 'They know {cube} and {gone}.'), notes: [prose('After {l2}.')] })];
        const sheets = sheetsOf(lessons, [], { adaptations, things: [reusable('cube')], taught: ['gone', 'l1', 'l2'] });
        const page = planChanges(sheets, { class: 'k' }, ledgerOf(sheets));
        expect(page).toMatchObject({ course: { name: 'c' }, class: { name: 'k' }, names: { cube: { title: 'Cube' }, l2: { title: 'L2' } } });
        expect(Object.keys(page.names).sort()).toEqual(['cube', 'l2']);
        expect(page.example).toEqual({ name: 'l2', title: 'L2' });
        expect(planChanges(sheets, { class: 'k' }, undefined)).toMatchObject({ ledger: undefined, names: {} });
    });
    test('without a course there is neither example nor course', () => {
        expect(planChanges(programme(...lessons), {}, undefined)).toEqual({ course: undefined, class: undefined, ledger: undefined, example: undefined, names: {} });
        expect(planChanges(programme(course('c', ['gone'])), {}, undefined).example).toBeUndefined();
    });
});
