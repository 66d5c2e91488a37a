import { describe, expect, test } from 'vitest';
import { adapted, lessonOf, marksOf, needInWords, partOf, saysOf, stepInWords, told } from './adapting-fixture.js';

const swapped = async (line: string, lesson = 'weigh-1') => lessonOf(await adapted(line), lesson).needs.map(needInWords);

describe('which parts a lesson has', () => {
    test('one is left out, with what the lesson needed for it alone', async () => {
        const one = await adapted('  skip activity weigh-1.long-walk\n  skip activity weigh-1.grocer\n');
        expect(told(one)[0]).toBe('weighing/weigh-1: two-bags 15, wrap-up 5');
        expect(lessonOf(one, 'weigh-1').needs.map(needInWords)).toEqual(['pan-balance 1 per pair', 'dried-bean 150 g per pair']);
        expect(marksOf(lessonOf(one, 'weigh-1'))).toEqual(['“Long walk” is left out', '“The careful grocer” is left out']);
    });
    test('one that a checkpoint repeats: then the lesson is repeated', async () => {
        expect(partOf(await adapted('  skip activity weigh-1.two-bags\n'), 'weigh-1', 'wrap-up').unsure?.then).toBe('repeat lesson');
    });
    test('one moves to another lesson and takes along what it speaks of', async () => {
        const one = await adapted('  move activity weigh-2.song after weigh-1.two-bags\n  retime activity weigh-2.song to 7 min\n');
        expect(told(one).slice(0, 2)).toEqual(['weighing/weigh-1: two-bags 15, song 7, long-walk 10, grocer 10, wrap-up 5', 'weighing/weigh-2: wrap-up 5']);
        expect(partOf(one, 'weigh-1', 'song')).toMatchObject({ from: [{ lesson: 'weigh-2', part: 'song' }] });
        expect(partOf(one, 'weigh-1', 'song').needs.map(needInWords)).toEqual(['chalk 2 sticks per pair']);
        expect(lessonOf(one, 'weigh-2').needs.map(needInWords)).toEqual(['pan-balance 1 per learner']);
        expect([marksOf(partOf(one, 'weigh-1', 'song')), marksOf(lessonOf(one, 'weigh-2'))]).toEqual([['from “Two shelves”', '7 min instead of 10'], ['“Song” moves to “Which is heavier?”']]);
    });
    test('one moves within its lesson', async () => {
        expect(told(await adapted('  move activity weigh-1.grocer before weigh-1.two-bags\n'))[0]).toBe('weighing/weigh-1: grocer 10, two-bags 15, long-walk 10, wrap-up 5');
    });
    test('one comes from a lesson that the course does not teach, by itself or in place of another', async () => {
        const inserted = await adapted('  insert activity market-visit.stalls after weigh-3.sums\n');
        expect(told(inserted)[2]).toBe('market/weigh-3: sums 20, stalls 25');
        expect(partOf(inserted, 'weigh-3', 'stalls')).toMatchObject({ uri: 'file:///programme/elsewhere.lesson' });
        expect(partOf(inserted, 'weigh-3', 'stalls').needs.map(needInWords)).toEqual(['dried-bean 40 g per group', 'rope 2']);
        const instead = await adapted('  swap activity weigh-1.long-walk for market-visit.short-walk\n');
        expect(told(instead)[0]).toBe('weighing/weigh-1: two-bags 15, short-walk 5, grocer 10, wrap-up 5');
        expect(saysOf(instead)).toEqual(['“Short walk” instead of “Long walk” of “Which is heavier?”']);
        expect(lessonOf(instead, 'weigh-1').needs.map(needInWords)).not.toContain('rope 1');
    });
    test('a part in two: what is used up is counted once, and later lines mean both', async () => {
        const one = await adapted('  add to activity weigh-1.two-bags\n    materials\n      chalk 1 stick\n      gram-cube 5\n  split activity weigh-1.two-bags after 5 min\n  move activity weigh-1.two-bags after weigh-1.long-walk\n');
        expect(told(one)[0]).toBe('weighing/weigh-1: long-walk 10, two-bags 5, two-bags-part-2 10, grocer 10, wrap-up 5');
        expect(partOf(one, 'weigh-1', 'two-bags-part-2')).toMatchObject({ title: 'Two bags, part 2' });
        expect([partOf(one, 'weigh-1', 'two-bags'), partOf(one, 'weigh-1', 'two-bags-part-2')].map(({ needs }) => needs.map(needInWords))).toEqual([['chalk 1 stick', 'gram-cube 5'], ['gram-cube 5']]);
        expect(partOf(one, 'weigh-1', 'two-bags-part-2').steps.map(stepInWords)).toEqual(['do: Put the {dried-bean} on the {pan-balance}.']);
    });
    test('several in one', async () => {
        const one = await adapted('  join activity weigh-1.two-bags with weigh-1.long-walk, weigh-2.song\n  retime activity weigh-2.song to 30 min\n');
        expect(told(one).slice(0, 2)).toEqual(['weighing/weigh-1: two-bags 30, grocer 10, wrap-up 5', 'weighing/weigh-2: wrap-up 5']);
        expect(partOf(one, 'weigh-1', 'two-bags').steps).toHaveLength(3);
        expect(partOf(one, 'weigh-1', 'two-bags').needs.map(needInWords)).toEqual(['chalk 2 sticks per pair']);
    });
});

describe('one thing for another', () => {
    test('in the ratio of the stand-in, of the line, or one for one; exactly, in the unit that was written', async () => {
        expect(await swapped('  swap dried-bean for lentil\n')).toContain('lentil 225 g per pair');
        expect(await swapped('  swap dried-bean for lentil 2 for 1\n')).toContain('lentil 300 g per pair');
        expect(await swapped('  swap dried-bean for lentil 1 for 7\n')).toContain('lentil 21 3/7 g per pair');
        expect(await swapped('  swap dried-bean for chalk 1 for 50\n')).toContain('chalk 3 sticks per pair');
        expect(await swapped('  swap rope for gram-cube\n')).toContain('gram-cube 1');
    });
    test('in needs, prose and games, each with its mark', async () => {
        const one = await adapted('  swap dried-bean for lentil\n');
        expect(saysOf(one)).toEqual(['Lentils instead of dried beans, 3 for 2']);
        expect(partOf(one, 'weigh-1', 'two-bags').steps.map(stepInWords)).toEqual(['do: Put the {lentil} on the {pan-balance}.']);
        expect(marksOf(partOf(one, 'weigh-1', 'two-bags').steps[0]!)).toEqual(['lentils instead of dried beans']);
        expect(one.programme.games.get('grocer')!.needs.map(needInWords)).toEqual(['lentil 30 g per group']);
        expect(marksOf(one.programme.games.get('grocer')!.needs[0]!)).toEqual(['lentils instead of dried beans']);
    });
    test('also in what later lines bring in', async () => {
        const one = await adapted('  swap dried-bean for lentil\n  insert market-visit after weigh-1\n  insert activity market-visit.stalls after weigh-3.sums\n');
        expect(lessonOf(one, 'market-visit').needs.map(needInWords)).toEqual(['lentil 60 g per group', 'rope 2']);
        expect(one.changes[0]!.touched).toEqual(['weigh-1', 'market-visit']);
        const idle = await adapted('  skip lesson weigh-1\n  swap dried-bean for lentil\n  insert market-visit after weigh-2\n');
        expect(saysOf(idle)[1]).toBe('Lentils instead of dried beans, 3 for 2');
    });
    test('in one lesson or one part of it, and not in the games', async () => {
        const one = await adapted('  swap dried-bean for lentil in weigh-1\n');
        expect(one.programme.games.get('grocer')!.needs.map(needInWords)).toEqual(['dried-bean 20 g per group']);
        expect(await swapped('  swap dried-bean for lentil in weigh-1.two-bags\n')).toContain('lentil 225 g per pair');
        // Another part speaks of it too: the lesson keeps its own, and the part gets what it needs.
        const both = await adapted('  add to activity weigh-1.long-walk\n    do: Drop one {dried-bean} after the other.\n  swap dried-bean for lentil in weigh-1.two-bags\n');
        expect(lessonOf(both, 'weigh-1').needs.map(needInWords)).toContain('dried-bean 150 g per pair');
        expect(partOf(both, 'weigh-1', 'two-bags').needs.map(needInWords)).toEqual(['lentil 225 g per pair']);
    });
});

test.each([
    ['skip lesson market-visit', 'Leave out “Market visit”: the course “Measuring” does not teach “Market visit”'],
    ['skip lesson nothing', 'Leave out “Nothing”: no lesson is called “nothing”'],
    ['skip activity weigh-1.nothing', 'Leave out “Nothing” of “Which is heavier?”: “Which is heavier?” has no part “nothing”'],
    ['swap rope for rope', 'Use rope instead of rope: it is the same thing'],
    ['swap gram-cube for rope', 'Use rope instead of gram cubes: no lesson of the course uses gram cubes'],
    ['swap dried-bean for lentil 0 for 1', 'Use lentils instead of dried beans: 0 for 1 is no ratio: both are more than nothing'],
    ['swap rope for chalk in weigh-2', 'Use chalk instead of rope in “Two shelves”: “Two shelves” does not use rope'],
    ['swap dried-bean for lentil in weigh-1.grocer', 'Use lentils instead of dried beans in “The careful grocer” of “Which is heavier?”: the game “The careful grocer” uses dried beans wherever it is played: swap it everywhere'],
    ['swap lesson weigh-1 for weigh-2', 'Teach “Two shelves” instead of “Which is heavier?”: the course teaches “Two shelves” already'],
    ['move weigh-1 before weigh-2', 'Move “Which is heavier?” to before “Two shelves”: it stands there already'],
    ['move activity weigh-1.two-bags after weigh-1.two-bags', 'Move “Two bags” of “Which is heavier?” to after “Two bags”: an activity cannot stand beside itself'],
    ['split weigh-3 after sums', 'Split “Market sums” after “Sums”: “Sums” is the last part: nothing comes after it'],
    ['split activity weigh-3.sums after 0 min', 'Split “Sums” of “Market sums” after 0 min: there is nothing before its first minute'],
    ['join weigh-1 with weigh-1', 'Join “Which is heavier?” with “Which is heavier?”: a lesson cannot be joined with itself'],
    ['join activity weigh-1.grocer with weigh-1.two-bags', 'Join “The careful grocer” of “Which is heavier?” with “Two bags”: “The careful grocer” is a game, which is played by itself'],
    ['retime weigh-1 to 3 min', 'Give “Which is heavier?” 3 min: “Which is heavier?” has 4 parts, and each takes at least a minute'],
    ['retime activity weigh-3.sums to 20 min', 'Give “Sums” of “Market sums” 20 min: “Sums” takes 20 min already'],
    ['add to weigh-1', 'Add to “Which is heavier?”: nothing: it adds nothing']
])('what cannot be done changes nothing and says why: %s', async (line, says) => {
    const one = await adapted(`  ${line}\n`);
    expect(saysOf(one)).toEqual([says]);
    expect(one.course).toBe(one.base);
    expect(one.programme.lessons.get('weigh-1')).toMatchObject({ title: 'Which is heavier?' });
});
