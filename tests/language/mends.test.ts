/** What mends of single files write, worked out by hand: the wrong line, the title of each mend and the line after it. */
import { describe, expect, test } from 'vitest';
import { mend, problemsIn } from './fixture.js';

async function mends(text: string, code: string): Promise<{ message: string; related: unknown; fixes: [string, boolean, ...string[]][] }[]> {
    const files = { 'one.course': text };
    return (await problemsIn(files)).filter(problem => problem.code === code).map(({ message, related, fixes = [] }) => ({
        message, related: related?.map(one => [one.message, one.place.range.start.line]),
        fixes: fixes.map(fix => {
            const before = text.split('\n');
            const after = mend(files, fix)['one.course']!.split('\n');
            return [fix.title, fix.preferred ?? false, ...before.filter(line => !after.includes(line)).map(line => `- ${line}`), ...after.filter(line => !before.includes(line)).map(line => `+ ${line}`)];
        })
    }));
}

const things = 'material bean\n  consumable\n  counted in bag / bags\nmaterial rope\n  consumable\n  measured in m\nmaterial cup\n  reusable\nprint card\n';
const asks = (line: string): string => `${things}lesson weigh-1\n  activity lift 10 min\n    materials\n      ${line}\n    do: Use it.\n`;
const perWhom = (line: string, one: string): unknown[] => ['learner', 'pair', 'group', 'class'].map((who, i) => [`Write '${one} per ${who}'`, i === 0, `-       ${line}`, `+       ${line} ${one} per ${who}`]);

describe('a need without an amount', () => {
    test.each([['bean', '1 bag'], ['cup', '1'], ['card', '1'], ['cup or bean', '1']])('%s: one for somebody', async (line, one) => {
        expect((await mends(asks(line), 'missing-amount')).map(({ fixes }) => fixes)).toEqual([perWhom(line, one)]);
    });
    test('where it says for whom, the amount alone', async () => {
        expect((await mends(asks('bean per pair'), 'missing-amount'))[0]!.fixes).toEqual([["Write '1 bag'", true, '-       bean per pair', '+       bean 1 bag per pair']]);
    });
    test.each(['rope', 'gone'])('%s: how much of it only the writer knows', async line => {
        expect((await mends(asks(line), 'missing-amount')).map(({ fixes }) => fixes)).toEqual([[]]);
    });
});

describe('a unit that does not fit', () => {
    test.each<[string, string, [string, boolean, ...string[]][]]>([
        ['bean 5 g', "'bean' is counted in bags. 5 g of it cannot be counted.", [["Write '5 bags'", true, '-       bean 5 g', '+       bean 5 bags']]],
        ['card 5 g', "'card' is counted in copies. 5 g of it cannot be counted.", [["Write '5 copies'", true, '-       card 5 g', '+       card 5 copies']]],
        ['rope 3 kg', "'rope' is measured in m, and 3 kg cannot be turned into that. Give the amount in m or a unit like it.", [["Write '3 m'", true, '-       rope 3 kg', '+       rope 3 m']]],
        ['cup 5 g per pair', "'cup' is counted in pieces, without a unit. 5 g of it cannot be counted.", [
            ["Write '5' without a unit", true, '-       cup 5 g per pair', '+       cup 5 per pair'], ["Add 'measured in g' to 'cup'", false, '+   measured in g']
        ]]
    ])('%s', async (line, message, fixes) => {
        expect(await mends(asks(line), 'wrong-unit')).toMatchObject([{ message, fixes }]);
    });
});

// The Gregorian calendar of ISO 8601: 2028 is a leap year, and there is no year, month or day 0 that anybody could mean.
test.each([
    ['2026-02-30', '2026-02-28'], ['2028-02-30', '2028-02-29'], ['2026-01-32', '2026-01-31'], ['2026-01-00', '2026-01-01'], ['2026-30-09', '2026-09-30'],
    ['2026-31-31', undefined], ['2026-00-10', undefined], ['0000-02-30', undefined]
])('%s is no date: %s may be meant', async (date, meant) => {
    const [problem, ...others] = await mends(`class k\n  teaches c\n  learners 3\n  starts ${date}\n  meets mon\ncourse c\n`, 'no-such-date');
    expect([others, problem!.message.includes('was '), problem!.fixes]).toEqual([[], meant !== undefined, meant === undefined ? [] : [[`Change to '${meant}'`, true, `-   starts ${date}`, `+   starts ${meant}`]]]);
});

test('of two of one name the second gets one that is free; nobody is pushed to it', async () => {
    expect(await mends('material cup\n  reusable\nmaterial cup\n  reusable\nmaterial cup-2\n  reusable\n', 'declared-twice')).toMatchObject([
        { related: [["The first 'cup'", 0]], fixes: [["Change to 'cup-3'", false, '+ material cup-3']] }
    ]);
});

test('a word with nothing after it goes; what stands beside it stays', async () => {
    expect(await mends('lesson weigh-1\n  activity lift 10 min\n    do:\n    ask: Which?\n', 'empty-text')).toMatchObject([{ fixes: [["Remove 'do:'", false, '-     do:']] }]);
});

test.each([
    ['  kits box 2.5\n  learners 3\n', "How many of 'box' are there? Write a whole number."],
    ['  learners 3\n  adults 1.5\n', "The number of adults of 'k' has to be a whole number."],
    ['  learners 3\n  groups of 0\n', "The number of children in a group of 'k' has to be a whole number from 1 up."]
])('a class cannot have %j', async (lines, message) => {
    const text = `kit box\n  holds\n    cup 1\nmaterial cup\n  reusable\ncourse c\n  unit a\n    weigh-1\nlesson weigh-1\n  activity lift 10 min\n    do: Lift.\nclass k\n  teaches c\n${lines}  starts 2026-09-07\n  meets mon\n`;
    expect((await mends(text, 'impossible-number')).map(problem => problem.message)).toEqual([message]);
});

describe('a lesson that is longer than the session of 30 min', () => {
    const text = (parts: string, more = ''): string => `game grocer\n  players 2 to 4\n  do: Buy and sell.\nlesson weigh-1\n${parts}course measuring\n  unit weighing\n    weigh-1\nclass harbour\n  teaches measuring\n  learners 6\n  starts 2026-09-07\n  meets mon\n  session 30 min\n${more}`;
    const part = (name: string, minutes: number): string => `  activity ${name} ${minutes} min\n    do: Lift.\n`;
    const told = async (one: string): Promise<unknown[]> => (await mends(one, 'lesson-too-long')).flatMap(({ fixes }) => fixes);
    test.each([
        ['10 and 15 fit, 20 more do not', part('lift', 10) + part('fill', 15) + part('weigh', 20), 'fill'],
        ['10 and 20 just fit', part('lift', 10) + part('fill', 20) + part('weigh', 5), 'fill'],
        ['10 and 21 do not', part('lift', 10) + part('fill', 21) + part('weigh', 5), 'lift'],
        ['behind a game nothing is split', `${part('lift', 10)}  game grocer 10 min\n${part('weigh', 20)}`, 'lift']
    ])('%s', async (_, parts, after) => {
        expect(await told(text(parts))).toContainEqual([`Split it after '${after}' for class 'harbour'`, false, '+ adaptation harbour-sessions of measuring for harbour', `+   split weigh-1 after ${after}`]);
    });
    test('in the adaptation of the class where it has one, and under a name that is free', async () => {
        const parts = part('lift', 10) + part('fill', 15) + part('weigh', 20);
        const title = "Split it after 'fill' for class 'harbour'";
        expect(await told(text(parts, 'adaptation shorter of measuring for harbour\n  retime activity weigh-1.lift to 9 min\n'))).toContainEqual([title, false, '+   split weigh-1 after fill']);
        expect(await told(text(parts, 'adaptation harbour-sessions of measuring\n  retime activity weigh-1.lift to 9 min\n')))
            .toContainEqual([title, false, '+ adaptation harbour-sessions-2 of measuring for harbour', '+   split weigh-1 after fill']);
    });
});
