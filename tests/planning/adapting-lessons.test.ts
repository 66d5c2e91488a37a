import { describe, expect, test } from 'vitest';
import { adaptationsFor } from '@haversack/language/adapting/adaptations-for';
import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import { adapted, course, elsewhere, inventory, lessonOf, lessons, marksOf, needInWords, partOf, programmeOf, saysOf, stepInWords, told } from './adapting-fixture.js';

const first = 'weighing/weigh-1: two-bags 15, long-walk 10, grocer 10, wrap-up 5';
const second = 'weighing/weigh-2: song 10, wrap-up 5';
const third = 'market/weigh-3: sums 20';
const names = (list: readonly { name: string }[]): string[] => list.map(({ name }) => name);

describe('which lessons are taught, and in which order', () => {
    test('a lesson is left out', async () => {
        const one = await adapted('  skip lesson weigh-2 because: Covered elsewhere.\n');
        expect(told(one)).toEqual([first, third]);
        expect(saysOf(one)).toEqual(['“Two shelves” is left out']);
        expect([...one.leftOut].map(([name, change]) => [name, change === one.changes[0]])).toEqual([['weigh-2', true]]);
    });
    test('another is taught in its place, in the same unit', async () => {
        const one = await adapted('  swap lesson weigh-2 for market-visit\n');
        expect(told(one)).toEqual([first, 'weighing/market-visit: stalls 25, short-walk 5', third]);
        expect(saysOf(one)).toEqual(['“Market visit” is taught instead of “Two shelves”']);
        expect(marksOf(lessonOf(one, 'market-visit'))).toEqual(['instead of “Two shelves”']);
        expect([...one.leftOut.keys()]).toEqual(['weigh-2']);
    });
    test('one is moved, to another unit too', async () => {
        const one = await adapted('  move weigh-1 after weigh-3\n  move weigh-3 before weigh-2\n');
        expect(told(one)).toEqual(['weighing/weigh-3: sums 20', second, first.replace('weighing/', 'market/')]);
        expect(marksOf(lessonOf(one, 'weigh-1'))).toEqual(['moved to after “Market sums”']);
        // The line of the course that names it.
        expect(one.course.units[1]!.lessons[0]!.at.start.line).toBe(4);
    });
    test('one is brought in that the course does not have', async () => {
        const one = await adapted('  insert market-visit before weigh-3\n');
        expect(told(one)).toEqual([first, second, 'market/market-visit: stalls 25, short-walk 5', third]);
        expect(one.course.units[1]!.lessons[0]).toMatchObject({ uri: 'file:///programme/z.course' });
        expect(one.madeOf.get('market-visit')).toEqual(['market-visit']);
    });
    test('one that was left out can come back somewhere else', async () => {
        const one = await adapted('  skip lesson weigh-2\n  insert weigh-2 after weigh-3\n');
        expect(told(one)).toEqual([first, third, second.replace('weighing/', 'market/')]);
        expect(one.leftOut.size).toBe(0);
    });
});

describe('a lesson in pieces', () => {
    test('needs, objectives and words go where they are used', async () => {
        const one = await adapted('  split weigh-1 after two-bags\n');
        expect(told(one)).toEqual(['weighing/weigh-1: two-bags 15', 'weighing/weigh-1-part-2 (weigh-1): long-walk 10, grocer 10, wrap-up 5', second, third]);
        const [early, late] = [lessonOf(one, 'weigh-1'), lessonOf(one, 'weigh-1-part-2')];
        expect([early.title, late.title]).toEqual(['Which is heavier?, part 1', 'Which is heavier?, part 2']);
        expect(early.needs.map(needInWords)).toEqual(['pan-balance 1 per pair', 'dried-bean 150 g per pair', 'rope 1']);
        expect(late.needs.map(needInWords)).toEqual(['pan-balance 1 per pair', 'rope 1']);
        expect([names(early.introduces), names(late.introduces), names(early.words), names(late.words)]).toEqual([['compare-mass'], [], ['heavier'], []]);
        expect(names(late.follows)).toEqual(['weigh-1']);
        // What followed the whole follows its end.
        expect(names(lessonOf(one, 'weigh-2').follows)).toEqual(['weigh-1-part-2']);
    });
    test('what is used up is counted once, and the later piece says that it goes on with it', async () => {
        const programme = (changes: string) => programmeOf({
            'things.kit': inventory, 'y.course': course, 'm.lesson': lessons.replace('    do: Walk along the {rope}.\n', '    do: Walk with a {dried-bean} along the {rope}.\n'),
            'z.course': `adaptation a of measuring for harbour\n${changes}`
        });
        const inPieces = async (changes: string) => {
            const one = adaptedFor(await programme(changes), { class: 'harbour' })!;
            return [...one.madeOf.keys()].filter(name => name.startsWith('weigh-1')).map(name => {
                const { needs, steps } = lessonOf(one, name);
                return [name, ...needs.map(needInWords), ...steps.map(stepInWords)].join('; ');
            });
        };
        const note = 'note: Go on with {dried-bean} from the part before, where it is counted.';
        expect(await inPieces('  split weigh-1 after two-bags\n')).toEqual([
            'weigh-1; pan-balance 1 per pair; dried-bean 150 g per pair; rope 1', `weigh-1-part-2; pan-balance 1 per pair; rope 1; ${note}`
        ]);
        expect(await inPieces('  split weigh-1 after two-bags\n  split weigh-1 after long-walk\n')).toEqual([
            'weigh-1; pan-balance 1 per pair; dried-bean 150 g per pair; rope 1', `weigh-1-part-2; pan-balance 1 per pair; rope 1; ${note}`, 'weigh-1-part-3; pan-balance 1 per pair; rope 1'
        ]);
        // Joined again, everything is asked for as it was.
        expect(await inPieces('  split weigh-1 after two-bags\n  join weigh-1 with weigh-2\n')).toEqual([
            'weigh-1; pan-balance 1 per pair; dried-bean 150 g per pair; rope 1; chalk 2 sticks per pair'
        ]);
    });
    test('a checkpoint goes on repeating what the earlier piece teaches, wherever that is now', async () => {
        const unsureIn = async (changes: string) => {
            const one = await adapted(`  split weigh-1 after two-bags\n${changes}`);
            const checkpoints = [...one.madeOf.keys()].flatMap(name => lessonOf(one, name).parts.flatMap(part => (part.name === 'wrap-up' && part.unsure && name !== 'weigh-2' ? [part.unsure] : [])));
            return [checkpoints.map(unsure => [unsure.then, ...(unsure.then === 'repeat' ? [unsure.activity.name, unsure.of] : [])]), saysOf(one).at(-1)];
        };
        const split = '“Which is heavier?” is split in two after “Two bags”';
        expect(await unsureIn('')).toEqual([[['repeat', 'two-bags', 'weigh-1']], split]);
        expect(await unsureIn('  move activity weigh-1.two-bags after weigh-3.sums\n')).toEqual([[['repeat', 'two-bags', 'weigh-3']], expect.any(String)]);
        expect(await unsureIn('  move activity weigh-1.two-bags before weigh-1.long-walk\n')).toEqual([[['repeat', 'two-bags', undefined]], expect.any(String)]);
        expect(await unsureIn('  join weigh-3 with weigh-1\n')).toEqual([[['repeat', 'two-bags', undefined]], expect.any(String)]);
        expect(await unsureIn('  skip activity weigh-1.two-bags\n')).toEqual([
            [['repeat lesson']], '“Two bags” of “Which is heavier?” is left out; whoever is unsure at “Wrap up” has the whole lesson again instead'
        ]);
    });
    test('later lines mean all pieces, and pieces are split again', async () => {
        const one = await adapted('  split weigh-1 after grocer\n  split weigh-1 after two-bags\n  move weigh-1 after weigh-3\n  retime weigh-1 to 20 min\n  skip activity weigh-1.long-walk\n');
        expect(told(one)).toEqual([second, third, 'market/weigh-1: two-bags 8', 'market/weigh-1-part-3 (weigh-1): grocer 5', 'market/weigh-1-part-2 (weigh-1): wrap-up 2']);
        expect(['weigh-1', 'weigh-1-part-3', 'weigh-1-part-2'].map(name => lessonOf(one, name).title.slice(-6))).toEqual(['part 1', 'part 2', 'part 3']);
        expect(one.changes.at(-1)!.touched).toEqual(['weigh-1-part-3']);
    });
    test('a lesson that is called like a piece is left alone', async () => {
        const programme = await programmeOf({ 'a.kit': inventory, 'l.lesson': `${lessons}lesson weigh-1-part-2\n  about: Another.\n`, 'e.lesson': elsewhere, 'y.course': `${course}adaptation a of measuring\n  split weigh-1 after two-bags\n` });
        expect([...adaptedFor(programme, { class: 'harbour' })!.madeOf.keys()]).toEqual(['weigh-1', 'weigh-1-part-3', 'weigh-2', 'weigh-3']);
    });
});

describe('lessons joined', () => {
    test('are one, with what all of them need and name', async () => {
        const one = await adapted('  join weigh-1 with weigh-2, weigh-3\n');
        expect(told(one)).toEqual(['weighing/weigh-1 (weigh-1 + weigh-2 + weigh-3): two-bags 15, long-walk 10, grocer 10, wrap-up 5, song 10, wrap-up-2 5, sums 20']);
        const joined = lessonOf(one, 'weigh-1');
        expect(names(joined.follows)).toEqual([]);
        expect([joined.introduces, joined.practises, joined.checks].map(names)).toEqual([['compare-mass'], ['compare-mass'], ['compare-mass']]);
        expect(joined.needs.map(needInWords)).toEqual(['pan-balance 1 per pair', 'dried-bean 150 g per pair', 'rope 1', 'chalk 2 sticks per pair']);
        // In use one after the other: the larger amount counts where that lesson begins, and is not added.
        expect(partOf(one, 'weigh-1', 'song').needs.map(needInWords)).toEqual(['pan-balance 1 per learner']);
        expect(partOf(one, 'weigh-1', 'wrap-up-2').unsure).toMatchObject({ then: 'repeat', activity: { name: 'song' } });
        expect(marksOf(joined)).toEqual(['joined with “Two shelves” and “Market sums”']);
    });
    test('either name means the whole, and what followed one of them follows it', async () => {
        const one = await adapted('  join weigh-1 with weigh-2\n  retime activity weigh-2.wrap-up to 3 min\n  insert market-visit after weigh-2\n');
        expect(told(one)).toEqual(['weighing/weigh-1 (weigh-1 + weigh-2): two-bags 15, long-walk 10, grocer 10, wrap-up 5, song 10, wrap-up-2 3', 'weighing/market-visit: stalls 25, short-walk 5', third]);
        expect(names(lessonOf(one, 'weigh-3').follows)).toEqual(['weigh-1']);
    });
    test('lines lead to their own files', async () => {
        const one = await adapted('  insert market-visit after weigh-1\n  join weigh-1 with market-visit\n');
        const joined = lessonOf(one, 'weigh-1');
        expect(joined.needs.map(({ uri }) => uri)).toEqual([undefined, undefined, undefined, 'file:///programme/elsewhere.lesson']);
        expect(partOf(one, 'weigh-1', 'stalls')).toMatchObject({ uri: 'file:///programme/elsewhere.lesson', needs: [{ options: [{ thing: { name: 'rope' } }] }] });
    });
});

test('a new length is shared among the parts', async () => {
    const one = await adapted('  retime weigh-1 to 30 min\n');
    expect(told(one)[0]).toBe('weighing/weigh-1: two-bags 11, long-walk 8, grocer 7, wrap-up 4');
    expect(saysOf(one)).toEqual(['“Which is heavier?” takes 30 min instead of 40']);
    expect(marksOf(partOf(one, 'weigh-1', 'two-bags'))).toEqual(['11 min instead of 15']);
});

describe('what is added', () => {
    test('stands beside its anchor, with a mark and the file of the adaptation', async () => {
        const one = await adapted('  add to weigh-1 after two-bags\n    note: Use the low table.\n    objectives\n      introduces compare-mass\n      checks compare-mass\n    materials\n      lentil 20 g per pair\n    caution sharp\n    activity sing "Sing" 5 min\n      do: Sing.\n');
        const sheet = lessonOf(one, 'weigh-1');
        expect(told(one)[0]).toBe('weighing/weigh-1: two-bags 15, sing 5, long-walk 10, grocer 10, wrap-up 5');
        expect([names(sheet.introduces), names(sheet.checks)]).toEqual([['compare-mass'], ['compare-mass']]);
        expect([sheet.checks[0]!.uri, sheet.needs.at(-1)!.uri, sheet.steps[0]!.uri, sheet.cautions[0]!.uri, partOf(one, 'weigh-1', 'sing').uri]).toEqual(Array(5).fill('file:///programme/z.course'));
        expect(marksOf(partOf(one, 'weigh-1', 'sing'))).toEqual(['added']);
        expect(saysOf(one)).toEqual(['To “Which is heavier?” is added: “Sing”, introducing “Compare mass”, checking “Compare mass”, lentils, a note and a caution']);
        expect(marksOf(sheet.cautions[0]!)).toEqual(['added']);
    });
    test('comes before the closing checkpoint without an anchor; parts of one name get names of their own', async () => {
        const one = await adapted('  add to weigh-2\n    activity song 4 min\n');
        expect(told(one)[1]).toBe('weighing/weigh-2: song 10, song-2 4, wrap-up 5');
    });
    test('to an activity', async () => {
        const one = await adapted('  add to activity weigh-1.two-bags\n    do: Twice.\n    materials\n      chalk 1 stick\n');
        expect(partOf(one, 'weigh-1', 'two-bags').steps.map(stepInWords)).toEqual(['do: Put the {dried-bean} on the {pan-balance}.', 'do: Twice.']);
        expect(partOf(one, 'weigh-1', 'two-bags').needs.map(needInWords)).toEqual(['chalk 1 stick']);
    });
});

test('several adaptations: those for all first, then those of the class, each in the order of its file', async () => {
    const programme = await programmeOf({ 'a.course': `adaptation own of measuring for harbour\n  skip lesson weigh-1\nadaptation other of measuring for attic\n  skip lesson weigh-2\nadaptation all of measuring\n  skip lesson weigh-3\n`, 'l.lesson': lessons, 'k.kit': inventory, 'y.course': course });
    expect(names(adaptationsFor(programme, { class: 'harbour' }))).toEqual(['all', 'own']);
    expect(names(adaptationsFor(programme, { course: 'measuring' }))).toEqual(['all']);
    expect(names(adaptationsFor(programme, { class: 'nobody' }))).toEqual([]);
});
