/** How alike two things are, who is who by it, and the words that a comparison has for amounts and certainty. */
import { describe, expect, test } from 'vitest';
import { alikeTexts, common, likeness, pairUp, wordsOf, type Aspect } from '@haversack/server/planning/editions/alike';
import { commonRun, movedItems } from '@haversack/server/planning/editions/order';
import { flatSteps, oneLine, saying } from '@haversack/server/planning/editions/plain';
import { amountKey, amountWritten, comings, instead, insteadOf, needText, perText, sameNumber, sureness } from '@haversack/server/planning/editions/words';
import { amount, lesson, mention, need, prose, range, step } from './sheets.js';

const aspect = (what: string, items: string[], more: Partial<Aspect> = {}): Aspect => ({ what, weight: 1, items, ...more });

describe('likeness', () => {
    test('is the mean of the shares in common, by weight', () => {
        // Of 2 and 4 parts 2 are the same: 4 of 6. Of 3 and 3 steps 1: 2 of 6, three times as heavy. (2/3 + 3 x 1/3) / 4 = 5/12.
        const [old, now] = [[aspect('parts', ['a', 'b']), aspect('steps', ['x', 'y', 'z'], { weight: 3 })], [aspect('steps', ['z', 'v', 'w'], { weight: 3 }), aspect('parts', ['b', 'a', 'c', 'd'])]];
        expect(likeness(old, now).score).toBeCloseTo(5 / 12, 12);
        expect(likeness(old, now).why).toEqual(['2 of 4 parts', '1 of 3 steps']);
        expect(likeness(now, old).score).toBeCloseTo(5 / 12, 12);
    });
    test('passes over what neither side has, and counts nothing where only one has it', () => {
        expect(likeness([aspect('parts', ['a']), aspect('steps', [])], [aspect('parts', ['a']), aspect('steps', [])])).toEqual({ score: 1, why: ['the only part'] });
        expect(likeness([aspect('parts', ['a']), aspect('steps', ['x'])], [aspect('parts', ['a']), aspect('steps', [])])).toEqual({ score: 0.5, why: ['the only part'] });
        expect(likeness([aspect('parts', ['a'])], [])).toEqual({ score: 0, why: [] });
        expect(likeness([], [])).toEqual({ score: 0, why: [] });
        expect(likeness([aspect('parts', [])], [aspect('parts', [])])).toEqual({ score: 0, why: [] });
    });
    test('says all, both and the only', () => {
        const why = (...items: string[]) => likeness([aspect('parts', items)], [aspect('parts', items)]).why;
        expect([why('a'), why('a', 'b'), why('a', 'b', 'c')]).toEqual([['the only part'], ['both parts'], ['all 3 parts']]);
    });
    test('is none where less than must be is in common; silent aspects count and give no reason', () => {
        const titles = (must: number) => likeness([aspect('title', ['a', 'b'], { must, silent: true }), aspect('parts', ['x'])], [aspect('title', ['a', 'c']), aspect('parts', ['x'])]);
        expect([titles(0.51), titles(0.5)]).toEqual([{ score: 0, why: [] }, { score: 0.75, why: ['the only part'] }]);
    });
    test('an item counts as often as both have it', () => {
        expect([common(['a', 'a', 'b'], ['a', 'a', 'a']), common(['a'], []), common(['a', 'b'], ['b', 'a'])]).toEqual([2, 0, 2]);
    });
    test('texts: words in common, whatever their case and signs', () => {
        expect(wordsOf('Put 3 bags, then “Été”!')).toEqual(['put', '3', 'bags', 'then', 'été']);
        expect([alikeTexts('', ''), alikeTexts('One two.', 'TWO, one'), alikeTexts('one two', 'one three'), alikeTexts('one', '')]).toEqual([1, 1, 0.5, 0]);
    });
});

describe('who is who', () => {
    interface Thing { name: string; items: string[]; text?: string }
    const pair = (old: Thing[], now: Thing[], least = 0.5) => {
        const { pairs, gone, added } = pairUp(old, now, { name: ({ name }) => name, saying: ({ items, text }) => text ?? items.join(' '), least, aspects: ({ items }) => [aspect('items', items)] });
        return { pairs: pairs.map(one => `${one.old.name}=${one.new.name}${one.recognised ? ` ${one.recognised.score}` : ''}`), gone: gone.map(({ name }) => name), added: added.map(({ name }) => name) };
    };
    const thing = (name: string, ...items: string[]): Thing => ({ name, items });

    test('the same name that says the same, before all others', () => {
        expect(pair([thing('a', 'x'), thing('b', 'x')], [thing('b', 'x'), thing('a', 'x')])).toEqual({ pairs: ['a=a', 'b=b'], gone: [], added: [] });
    });
    test('the most alike first, so that what was numbered anew is recognised', () => {
        expect(pair([thing('1', 'a', 'b'), thing('2', 'c', 'd')], [thing('1', 'n', 'm'), thing('2', 'a', 'b'), thing('3', 'c', 'd')])).toEqual({ pairs: ['1=2 1', '2=3 1'], gone: [], added: ['1'] });
    });
    test('a name is worth three tenths: half alike under its own name before seven tenths under another', () => {
        const old = thing('a', '1', '2', '3', '4');
        expect(pair([old], [thing('b', '1', '2', '3', '9'), thing('a', '1', '2', '8', '9')])).toEqual({ pairs: ['a=a'], gone: [], added: ['b'] });
        expect(pair([old], [thing('b', '1', '2', '3', '4'), thing('a', '1', '2', '8', '9')])).toEqual({ pairs: ['a=b 1'], gone: [], added: ['a'] });
    });
    test('what only a name has in common is still itself where nobody else is like it', () => {
        expect(pair([thing('a', '1')], [thing('a', '2')])).toEqual({ pairs: ['a=a'], gone: [], added: [] });
        expect(pair([thing('a', '1')], [thing('b', '2')])).toEqual({ pairs: [], gone: ['a'], added: ['b'] });
    });
    test('enough alike or not', () => {
        expect(pair([thing('a', '1', '2')], [thing('b', '1', '3')], 0.5).pairs).toEqual(['a=b 0.5']);
        expect(pair([thing('a', '1', '2')], [thing('b', '1', '3')], 0.51).pairs).toEqual([]);
    });
    test('of equally alike ones those that stand nearest; then the first', () => {
        expect(pair([thing('a', 'x'), thing('b', 'x')], [thing('c', 'x'), thing('d', 'x')]).pairs).toEqual(['a=c 1', 'b=d 1']);
        expect(pair([thing('o', 'z'), thing('a', 'x')], [thing('c', 'x'), thing('p', 'y'), thing('d', 'x')]).pairs).toEqual(['a=c 1']);
    });
    test('what forty share tells them apart, what more share does not', () => {
        const many = (count: number) => Array.from({ length: count }, (_, i) => thing(`n${i}`, 'x'));
        expect(pair([thing('a', 'x')], many(40)).pairs).toEqual(['a=n0 1']);
        expect(pair([thing('a', 'x')], many(41)).pairs).toEqual([]);
    });
    test('nothing on one side', () => {
        expect([pair([], [thing('a', 'x')]), pair([thing('a', 'x')], []), pair([], [])]).toEqual([{ pairs: [], gone: [], added: ['a'] }, { pairs: [], gone: ['a'], added: [] }, { pairs: [], gone: [], added: [] }]);
    });
});

describe('order', () => {
    test('what moved, and what two lists have in common', () => {
        expect([...movedItems([2, 0, 1])]).toEqual([0]);
        expect([...movedItems([0, 1, 2])]).toEqual([]);
        expect([...movedItems([])]).toEqual([]);
        expect(commonRun(['h', 'a', 'x', 'b', 't'], ['h', 'b', 'a', 'b', 't'])).toEqual([[0, 0], [1, 2], [3, 3], [4, 4]]);
        expect(commonRun(['a', 'a'], ['a'])).toEqual([[0, 0]]);
        expect(commonRun(['x', 'a'], ['a'])).toEqual([[1, 0]]);
        expect(commonRun([], ['a'])).toEqual([]);
    });
});

describe('words', () => {
    test('what is instead of what', () => {
        expect([instead('a', 'a'), instead(undefined, 'a'), instead('a', undefined), instead('a', 'b'), instead(undefined, undefined)]).toEqual([undefined, 'now a', 'no longer a', 'b instead of a', undefined]);
        expect([insteadOf(1, 1, 'day', 'days'), insteadOf(2, 1, 'day', 'days'), insteadOf(1, 2, 'day', 'days')]).toEqual([undefined, '1 day instead of 2', '2 days instead of 1']);
        expect(comings(['a', 'b', 'b'], ['b', 'c'], one => one, one => one)).toEqual({ gone: ['a'], added: ['c'] });
    });
    test.each<[score: number, why: string[], says: string]>([
        [0.85, ['all 3 parts', '1 of 2 steps'], 'Certainly the same: all 3 parts and 1 of 2 steps agree.'], [0.84, ['the only step'], 'Very likely the same: the only step agrees.'], [0.65, ['1 of 4 steps'], 'Very likely the same: 1 of 4 steps agrees.'],
        [0.64, ['both parts'], 'Perhaps the same: both parts agree.'], [0.5, [], 'Perhaps the same: most words agree.'], [0.5, ['1 of 4 steps', 'the only part'], 'Perhaps the same: 1 of 4 steps and the only part agree.']
    ])('%f for %j', (score, why, says) => expect(sureness({ score, why })).toBe(says));
    test('amounts as they are written', () => {
        expect([amountWritten(undefined), amountWritten(amount('20')), amountWritten(amount('1/2 kg'))]).toEqual(['no amount', '20', '1/2 kg']);
        expect([perText(undefined), perText({ who: 'class' }), perText({ who: 'group' }), perText({ who: 'group', size: 3 }), perText({ who: 'pair' })]).toEqual(['for the class', 'for the class', 'per group', 'per group of 3', 'per pair']);
        expect(needText(need('card (ones, tens)', '2', 'pair', { optional: true }), name => name.toUpperCase())).toBe('2 per pair (only ONES and TENS), optional');
        expect(needText(need('card'), name => name)).toBe('no amount for the class');
    });
    test.each([
        ['1/2 kg', '500 g', true], ['0.5', '1/2', true], ['1 in', '25.4 mm', true], ['1 l', '1000 ml', true], ['1 kg', '1000 ml', false], ['2 boxes', '2 Box', false], ['2 sets', '2 set', true], ['2 sets', '2 SET', true], ['2', '2 set', false], ['20', '21', false], ['x', 'x', true], ['x', 'y', false]
    ])('%s and %s are the same amount: %s', (one, other, same) => {
        expect(amountKey(amount(one)) === amountKey(amount(other))).toBe(same);
        expect(amountKey(undefined)).toBe('');
    });
    test('numbers are the same however they are written', () => {
        expect([sameNumber('1', '1.0'), sameNumber('1/2', '0.5'), sameNumber('1', '2'), sameNumber(undefined, '1'), sameNumber(undefined, undefined), sameNumber('x', 'x'), sameNumber('x', '1')]).toEqual([true, true, false, false, true, true, false]);
    });
});

describe('what a sheet says, whatever lines it stands in', () => {
    test('places count for nothing, texts and names do', () => {
        expect(saying(lesson('a', [], [], { words: [mention('x')] }))).toBe(saying(lesson('a', [], [], { words: [mention('x')] })));
        expect(saying(lesson('a', [], [], { words: [mention('x')] }))).not.toBe(saying(lesson('a', [], [], { words: [mention('y')] })));
        const about = (text: string) => saying(lesson('a', [], [], { steps: [{ ...step('about', ''), prose: prose(text) }] }));
        expect(about('Put  one\n bag {cube}.')).toBe(about('Put one bag {cube}.'));
        expect(about('Put one bag {cube}.')).not.toBe(about('Put one bag {peg}.'));
        expect(oneLine('  a \n\t b ')).toBe('a b');
        expect(saying({ parts: [1], at: range(), more: 2 })).toContain('"more":2');
    });
    test('steps in reading order', () => {
        expect(flatSteps([step('ask', 'a', [step('expect', 'b', [step('note', 'c')])]), step('do', 'd')]).map(({ word }) => word)).toEqual(['ask', 'expect', 'note', 'do']);
    });
});
