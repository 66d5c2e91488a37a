import { describe, expect, test } from 'vitest';
import { practiceItems } from '@haversack/language/practice/sequence';
import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import { adapted, course, inventory, lessonOf, lessons, marksOf, needInWords, partOf, programmeOf, saysOf, stepInWords, told } from './adapting-fixture.js';

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
        expect(saysOf(await adapted('  skip activity weigh-1.two-bags\n'))).toEqual(['“Two bags” of “Which is heavier?” is left out; whoever is unsure at “Wrap up” has the whole lesson again instead']);
        expect(saysOf(await adapted('  skip activity weigh-1.long-walk\n'))).toEqual(['“Long walk” of “Which is heavier?” is left out']);
    });
    test('one moves to another lesson and takes along what it speaks of', async () => {
        const one = await adapted('  move activity weigh-2.song after weigh-1.two-bags\n  retime activity weigh-2.song to 7 min\n');
        expect(told(one).slice(0, 2)).toEqual(['weighing/weigh-1: two-bags 15, song 7, long-walk 10, grocer 10, wrap-up 5', 'weighing/weigh-2: wrap-up 5']);
        expect(partOf(one, 'weigh-1', 'song')).toMatchObject({ from: [{ lesson: 'weigh-2', part: 'song' }] });
        expect(partOf(one, 'weigh-1', 'song').needs.map(needInWords)).toEqual(['chalk 2 sticks per pair']);
        expect(lessonOf(one, 'weigh-2').needs.map(needInWords)).toEqual(['pan-balance 1 per learner']);
        expect([marksOf(partOf(one, 'weigh-1', 'song')), marksOf(lessonOf(one, 'weigh-2'))]).toEqual([['from “Two shelves”', '7 min instead of 10'], ['“Song” moves to “Which is heavier?”']]);
    });
    test('one moves whose lesson speaks of its material elsewhere: what is used up is counted twice only where both use it', async () => {
        const beans = async (changes: string, more = '') => {
            const programme = await programmeOf({
                'things.kit': inventory, 'y.course': course, 'm.lesson': lessons.replace('  words heavier\n', `  words heavier\n${more}`).replace('    do: Walk along the {rope}.\n', '    do: Walk with a {dried-bean} along the {rope}.\n'),
                'z.course': `adaptation a of measuring for harbour\n${changes}`
            });
            const one = adaptedFor(programme, { class: 'harbour' })!;
            return ['weigh-1', 'weigh-2', 'weigh-3'].flatMap(name => {
                const { needs, parts } = lessonOf(one, name);
                const asked = [...needs, ...parts.flatMap(part => part.needs)].map(needInWords).filter(words => words.startsWith('dried-bean'));
                return one.madeOf.has(name) && asked.length > 0 ? [`${name}: ${asked.join(', ')}`] : [];
            });
        };
        const bags = '  move activity weigh-1.two-bags after weigh-2.song\n';
        const walk = '  move activity weigh-1.long-walk after weigh-2.song\n';
        // Nobody has said how much each of the two takes.
        expect(await beans(bags)).toEqual(['weigh-1: dried-bean 150 g per pair', 'weigh-2: dried-bean 150 g per pair']);
        // Both are there now: the line of their old lesson was for the two.
        expect(await beans(bags + walk)).toEqual(['weigh-2: dried-bean 150 g per pair']);
        expect(await beans(bags + walk + '  skip activity weigh-1.two-bags\n')).toEqual(['weigh-2: dried-bean 150 g per pair']);
        expect(await beans(bags + '  move activity weigh-1.two-bags before weigh-1.long-walk\n')).toEqual(['weigh-1: dried-bean 150 g per pair']);
        expect(await beans(bags + '  join weigh-1 with weigh-2\n')).toEqual(['weigh-1: dried-bean 150 g per pair']);
        // What is told of beans uses none, what is done with them does.
        expect(await beans(bags + '  skip activity weigh-1.long-walk\n', '  about: Of a {dried-bean}.\n')).toEqual(['weigh-2: dried-bean 150 g per pair']);
        expect(await beans(bags + '  skip activity weigh-1.long-walk\n', '  note: Show a {dried-bean}.\n')).toEqual(['weigh-1: dried-bean 150 g per pair', 'weigh-2: dried-bean 150 g per pair']);
        // The same activity twice takes twice as much.
        expect(await beans('  insert activity weigh-1.two-bags after weigh-2.song\n' + walk + bags)).toEqual(['weigh-2: dried-bean 150 g per pair, dried-bean 150 g per pair']);
    });
    test('a move says where each lesson counts its own', async () => {
        const more = '  add to activity weigh-1.long-walk\n    do: Carry a {dried-bean}.\n';
        expect(saysOf(await adapted(`${more}  move activity weigh-1.long-walk after weigh-3.sums\n`)).at(-1)).toBe('“Long walk” of “Which is heavier?” now comes after “Sums” of “Market sums”; each of the two lessons counts its own dried beans');
        expect(saysOf(await adapted('  move activity weigh-1.long-walk after weigh-3.sums\n'))).toEqual(['“Long walk” of “Which is heavier?” now comes after “Sums” of “Market sums”']);
    });
    test('a lesson that is left with none teaches and checks nothing', async () => {
        const { checks, parts } = lessonOf(await adapted('  skip activity weigh-3.sums\n'), 'weigh-3');
        expect([checks, parts]).toEqual([[], []]);
        expect(lessonOf(await adapted('  swap activity weigh-3.sums for market-visit.stalls\n'), 'weigh-3').checks).toMatchObject([{ name: 'compare-mass' }]);
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
    test('a split practice that is joined again has its lines once, and the items that it had', async () => {
        const add = '  add to weigh-3\n    practice facts 6 items 6 min\n      sums 3 to 18\n    practice bonds 4 items 4 min\n      bonds of 10\n';
        const itemsIn = (one: Awaited<ReturnType<typeof adapted>>) => lessonOf(one, 'weigh-3').parts.filter(({ kind }) => kind === 'practice').map(part => practiceItems(part, 'weigh-3').map(({ ask }) => ask));
        const plain = itemsIn(await adapted(add));
        expect(plain.map(items => items.length)).toEqual([6, 4]);
        const split = '  split activity weigh-3.facts after 2 min\n';
        expect(itemsIn(await adapted(add + split)).flat()).toEqual(plain.flat());
        const joined = '  join activity weigh-3.facts with weigh-3.bonds\n';
        expect(itemsIn(await adapted(add + split + joined))).toEqual(itemsIn(await adapted(add + joined)));
        expect(partOf(await adapted(add + split + joined), 'weigh-3', 'facts').practice).toHaveLength(2);
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
    test('in every text that names it: steps, what stands under them, and cautions of lessons, parts and games', async () => {
        const taught = lessons
            .replace('  words heavier\n', '  words heavier\n  about: The {dried-bean} are weighed.\n  caution small-parts: No {dried-bean} in the mouth.\n')
            .replace('    do: Put the {dried-bean} on the {pan-balance}.\n', '    caution allergen: Ask who may touch a {dried-bean}.\n    watch: A {dried-bean} falls.\n      help: Look for the {dried-bean}.\n    instead: Weigh one {dried-bean}.\n    more: Weigh ten {dried-bean}.\n    note: Keep each {dried-bean}.\n    ready when: A {dried-bean} is lighter.\n')
            .replace('    ask: Which one?\n', '    ask: Which {dried-bean}?\n      expect: The big {dried-bean}.\n');
        const played = inventory.replace(/$/, '  do: Sell a {dried-bean}.\n  caution small-parts: Count every {dried-bean}.\n');
        const programme = await programmeOf({ 'a.kit': played, 'l.lesson': taught, 'y.course': `${course}adaptation a of measuring for harbour\n  swap dried-bean for lentil\n` });
        const one = adaptedFor(programme, { class: 'harbour' })!;
        const now = JSON.stringify([lessonOf(one, 'weigh-1'), one.programme.games.get('grocer')]);
        expect(JSON.stringify([programme.lessons.get('weigh-1'), programme.games.get('grocer')]).match(/"name":"dried-bean"/g)).toHaveLength(15);
        expect(now).not.toContain('"name":"dried-bean"');
        expect(now.match(/"name":"lentil"/g)).toHaveLength(15);
        for (const { cautions } of [lessonOf(one, 'weigh-1'), partOf(one, 'weigh-1', 'two-bags'), one.programme.games.get('grocer')!]) expect(marksOf(cautions[0]!)).toEqual(['lentils instead of dried beans']);
    });
    test('in one lesson or one part of it, with the game as it is played there', async () => {
        const one = await adapted('  add to weigh-2\n    game grocer 5 min\n  swap dried-bean for lentil in weigh-1\n');
        const gamesIn = ({ programme }: typeof one, lesson: string) => lessonOf({ programme } as typeof one, lesson).parts.filter(({ kind }) => kind === 'game')
            .map(part => [part.from?.[0]?.part ?? part.name, programme.games.get(part.name)!.title, ...programme.games.get(part.name)!.needs.map(needInWords)]);
        expect(gamesIn(one, 'weigh-1')).toEqual([['grocer', 'The careful grocer', 'lentil 30 g per group']]);
        expect(gamesIn(one, 'weigh-2')).toEqual([['grocer', 'The careful grocer', 'dried-bean 20 g per group']]);
        expect(one.programme.games.get('grocer')!.needs.map(needInWords)).toEqual(['dried-bean 20 g per group']);
        // Later lines mean it by the game's name still, and reach it.
        const more = await adapted('  swap dried-bean for lentil in weigh-1.grocer\n  retime activity weigh-1.grocer to 4 min\n  swap lentil for chalk 100 for 1\n');
        expect(gamesIn(more, 'weigh-1')).toEqual([['grocer', 'The careful grocer', 'chalk 3 sticks per group']]);
        expect(saysOf(more)).toEqual(['Lentils instead of dried beans in “The careful grocer” of “Which is heavier?”, 3 for 2', '“The careful grocer” of “Which is heavier?” takes 4 min instead of 10', 'Chalk instead of lentils, 100 for 1']);
        expect(lessonOf(more, 'weigh-1').needs.map(needInWords)).toContain('dried-bean 150 g per pair');
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
    ['swap chalk for lentil in weigh-1.grocer', 'Use lentils instead of chalk in “The careful grocer” of “Which is heavier?”: “The careful grocer” does not use chalk'],
    ['swap lesson weigh-1 for weigh-2', 'Teach “Two shelves” instead of “Which is heavier?”: the course teaches “Two shelves” already'],
    ['move weigh-1 before weigh-2', 'Move “Which is heavier?” to before “Two shelves”: it stands there already'],
    ['move activity weigh-1.two-bags after weigh-1.two-bags', 'Move “Two bags” of “Which is heavier?” to after “Two bags”: an activity cannot stand beside itself'],
    ['split weigh-3 after sums', 'Split “Market sums” after “Sums”: “Sums” is the last part: nothing comes after it'],
    ['split activity weigh-3.sums after 0 min', 'Split “Sums” of “Market sums” after 0 min: there is nothing before its first minute'],
    ['join weigh-1 with weigh-1', 'Join “Which is heavier?” with “Which is heavier?”: a lesson cannot be joined with itself'],
    ['join weigh-1 with weigh-1, weigh-2', 'Join “Which is heavier?” with “Which is heavier?” and “Two shelves”: a lesson cannot be joined with itself'],
    ['join weigh-1 with weigh-2, weigh-2', 'Join “Which is heavier?” with “Two shelves” and “Two shelves”: the line names “Two shelves” twice'],
    ['join activity weigh-1.two-bags with weigh-1.long-walk, weigh-1.long-walk', 'Join “Two bags” of “Which is heavier?” with “Long walk” and “Long walk”: the line names “Long walk” twice'],
    ['swap activity weigh-1.two-bags for weigh-1.long-walk', 'Do “Long walk” instead of “Two bags” of “Which is heavier?”: “Which is heavier?” has “Long walk” already'],
    ['insert activity weigh-1.two-bags after weigh-1.long-walk', 'Bring in “Two bags” after “Long walk” of “Which is heavier?”: “Which is heavier?” has “Two bags” already'],
    ['swap dried-bean for rope', 'Use rope instead of dried beans: “Dried beans” is measured in g and “Rope” is counted, and the line does not say how much does for how much (as in “swap dried-bean for rope 1 for 200”)'],
    ['swap rope for lentil in weigh-1.long-walk', 'Use lentils instead of rope in “Long walk” of “Which is heavier?”: “Rope” is counted and “Lentils” is measured in kg, and the line does not say how much does for how much (as in “swap rope for lentil 200 for 1”)'],
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
