/** What each mend of a problem of the plan is called, where it writes and what: figures and days are worked out by hand beside the texts. */
import { describe, expect, test } from 'vitest';
import type { Problem } from '@haversack/language/checks/check';
import { mend } from '../language/fixture.js';
import { problemsOn } from './fixture.js';

const problemsOf = async (text: string, on: string, code: string): Promise<Problem[]> => (await problemsOn({ 'one.course': text }, on)).filter(problem => problem.code === code);

/** Each mend of the only problem of a code: its title, the line before what it changes, lines that go and lines that come. */
async function mends(text: string, on: string, code: string): Promise<string[][]> {
    const problems = await problemsOf(text, on, code);
    expect(problems).toHaveLength(1);
    return (problems[0]!.fixes ?? []).map(fix => [fix.title, ...difference(text.split('\n'), mend({ 'one.course': text }, fix)['one.course']!.split('\n'))]);
}

function difference(before: readonly string[], after: readonly string[]): string[] {
    const same = before.findIndex((line, i) => line !== after[i]);
    let left = 0;
    while (left < Math.min(before.length, after.length) - same && before.at(-1 - left) === after.at(-1 - left)) left++;
    return [before[same - 1]!, ...before.slice(same, before.length - left).map(line => `- ${line}`), ...after.slice(same, after.length - left).map(line => `+ ${line}`)];
}

const markedText = (text: string, { at: { start, end } }: Problem): string => text.split('\n')[start.line]!.slice(start.character, end.character);

describe('too few at a meeting: 7 learners make 4 pairs', () => {
    const weigh = (more: string, part = '  activity two-bags 15 min\n    materials\n      gram-cube 20 per pair\n    do: Fill a bag.\n', lesson = ''): string => `material gram-cube "Gram cubes"
  reusable
  stand-in bean-bag 1 for 1
  stand-in pebble 3 for 2
material bean-bag
  reusable
material pebble
  reusable
material wand
  reusable
kit box
  holds
    wand 1
    gram-cube 20
game grocer
  players 2 to 4
  materials
    gram-cube 20 per pair
  do: Fill a bag with {gram-cube}s.
lesson weigh-1
${lesson}  activity lift 10 min
    do: Lift.
${part}course measuring
  unit weighing
    weigh-1
class harbour "Harbour co-op"
  teaches measuring
  learners 7
${more}  starts 2026-09-14
  meets mon
`;
    const told = (text: string): Promise<string[][]> => mends(text, '2026-09-07', 'short-at-meeting');

    test('80 needed, 3 kits of 20: one kit more, or 20 that were found or ordered', async () => {
        expect(await told(weigh('  kits box 3\n'))).toEqual([
            ["There are 4 of the kit 'box', not 3", '  learners 7', '-   kits box 3', '+   kits box 4'],
            ["They are there: note 'gram-cube 20' on hand in class 'harbour'", '  kits box 3', '+   on hand', '+     gram-cube 20'],
            ["It is ordered: note 'gram-cube 20 arriving 2026-09-14' in class 'harbour'", '  kits box 3', '+   on order', '+     gram-cube 20 arriving 2026-09-14']
        ]);
        const [problem] = await problemsOf(weigh('  kits box 3\n'), '2026-09-07', 'short-at-meeting');
        expect(problem!.related?.map(({ message, place }) => [message, place.uri, place.range.start])).toEqual([['What the class has', problem!.uri, { line: 29, character: 6 }]]);
    });
    test('59 lack: 30 and not 29 kits of which each has two; lines go to those that are there', async () => {
        expect(await told(weigh('  on hand\n    wand 2\n    gram-cube 21\n  on order\n    wand 2 arriving 2026-09-10\n'))).toEqual([
            ["They are there: note 80 on hand in class 'harbour'", '    wand 2', '-     gram-cube 21', '+     gram-cube 80'],
            ["It is ordered: note 'gram-cube 59 arriving 2026-09-14' in class 'harbour'", '    wand 2 arriving 2026-09-10', '+     gram-cube 59 arriving 2026-09-14']
        ]);
        expect((await told(weigh('  kits box 1\n  on hand\n    gram-cube 1\n').replace('    gram-cube 20\ngame', '    gram-cube 2\ngame')))[0])
            .toEqual(["There are 40 of the kit 'box', not 1", '  learners 7', '-   kits box 1', '+   kits box 40']);
    });
    test('a stand-in that is there does as well where it counts one for one', async () => {
        const text = weigh('  on hand\n    bean-bag 90\n    pebble 900\n    gram-cube 21\n');
        expect((await told(text))[0]).toEqual(["Let 'bean-bag' do as well", '    materials', '-       gram-cube 20 per pair', '+       gram-cube or bean-bag 20 per pair']);
        expect((await told(text)).map(([title]) => title)).not.toContain("Let 'pebble' do as well");
        expect((await told(text.replace('bean-bag 90', 'bean-bag 58'))).map(([title]) => title)).not.toContain("Let 'bean-bag' do as well");
    });
    test.each([
        ['of the lesson', weigh('  on hand\n    wand 9\n    gram-cube 1\n', '', '  materials\n    wand 2\n    gram-cube 20 per pair\n'), 'gram-cube 20 per pair', 22],
        ['of a game that it plays', weigh('  on hand\n    gram-cube 1\n', '  game grocer 15 min\n'), 'gram-cube 20 per pair', 17]
    ])('the line that asks for it is marked: a line %s', async (_, text, marked, line) => {
        const problems = await problemsOf(text, '2026-09-07', 'short-at-meeting');
        expect(problems.map(problem => [markedText(text, problem), problem.at.start.line])).toEqual([[marked, line]]);
        expect(problems[0]!.message).toBe('Harbour co-op is short of 79 gram cubes on Mon 14 Sep: 80 needed, 1 at hand.');
    });
});

describe('too late to order', () => {
    const sand = (more: string): string => `material sand
  consumable
  measured in g
  pack of 500 g
  arrives in 10 days
  stand-in rice 1 for 1
material rice
  consumable
  measured in g
lesson weigh-1
  activity pour 15 min
    materials
      sand 20 g per pair
      rice 1 g per pair
    do: Pour the {sand} and the {rice}.
course measuring
  unit weighing
    weigh-1
class harbour "Harbour co-op"
  teaches measuring
  learners 7
${more}  starts 2026-09-07
  meets mon
`;
    const told = (text: string): Promise<string[][]> => mends(text, '2026-09-03', 'order-too-late');

    test('a whole pack is noted, in a block of its own or behind the last order; a stand-in that is there is offered', async () => {
        expect(await told(sand('  on hand\n    rice 600 g\n    sand 10 g\n'))).toEqual([
            ["It is ordered: note 'sand 500 g arriving 2026-09-07' in class 'harbour'", '    sand 10 g', '+   on order', '+     sand 500 g arriving 2026-09-07'],
            ["Let 'rice' do as well", '    materials', '-       sand 20 g per pair', '+       sand or rice 20 g per pair']
        ]);
        expect((await told(sand('  on hand\n    rice 4 g\n  on order\n    sand 20 g arriving 2026-09-04\n    sand 500 g arriving 2026-09-20\n')))[0]).toEqual([
            "It is ordered: note 'sand 500 g arriving 2026-09-07' in class 'harbour'", '    sand 500 g arriving 2026-09-20', '+     sand 500 g arriving 2026-09-07'
        ]);
    });
    test('what is at hand or comes in time is taken off: 4 pairs with 20 g each', async () => {
        const says = async (more: string): Promise<string> => (await problemsOf(sand(more), '2026-09-03', 'order-too-late')).find(({ message }) => message.includes('sand'))!.message;
        expect(await says('  on hand\n    rice 4 g\n    sand 10 g\n')).toContain('70 g of sand for Harbour co-op');
        expect(await says('  on hand\n    rice 4 g\n  on order\n    sand 20 g arriving 2026-09-04\n    sand 500 g arriving 2026-09-20\n')).toContain('60 g of sand for Harbour co-op');
    });
});

describe('more lessons than days', () => {
    const term = (more: string, count = 3): string => {
        const names = Array.from({ length: count }, (_, i) => `weigh-${i + 1}`);
        return `course measuring\n  unit weighing\n${names.map(name => `    ${name}\n`).join('')}class harbour "Harbour co-op"\n  teaches measuring\n  learners 7\n  starts 2026-09-14\n${more}${
            names.map(name => `lesson ${name}\n  activity lift 15 min\n    do: Lift.\n`).join('')}`;
    };
    const told = (text: string): Promise<string[][]> => mends(text, '2026-09-07', 'term-overrun');

    test('each way out is written over the class’s own line, or beside it', async () => {
        expect(await told(term('  meets mon, thu\n  ends 2026-09-18\n'))).toEqual([
            ['Meet on Tuesdays too. The lesson fits. Gives up: 1 free day: the Tuesdays, 14 September to 18 September 2026', '  starts 2026-09-14', '-   meets mon, thu', '+   meets mon, tue, thu'],
            ['Teach up to 2 lessons at a meeting. The lesson fits. Gives up: a meeting for each lesson: 2 share it on 1 day', '  ends 2026-09-18', '+   lessons 2 per meeting'],
            ['End on Monday 21 September 2026. The lesson fits. Gives up: 1 more meeting after Friday 18 September 2026', '  meets mon, thu', '-   ends 2026-09-18', '+   ends 2026-09-21'],
            ['Leave out “Weigh 2”. The lesson fits. Gives up: 1 lesson. No lesson follows it, and it names no objectives', '  ends 2026-09-18', '+ ', '+ adaptation harbour-changes of measuring for harbour', '+   skip lesson weigh-2']
        ]);
    });
    test('weekdays on several lines are not written over: a day that is said twice counts once', async () => {
        const text = term('  meets mon\n  meets thu\n  ends 2026-09-18\n');
        const [problem] = await problemsOf(text, '2026-09-07', 'term-overrun');
        expect((await told(text))[0]!.slice(1)).toEqual(['  ends 2026-09-18', '+   meets mon, tue, thu']);
        expect(await problemsOn(mend({ 'one.course': text }, problem!.fixes![0]!), '2026-09-07')).toEqual([]);
    });
    test('an adaptation that begins with a note, or none of its own, under a name that is free', async () => {
        const leaveOut = async (text: string): Promise<string[] | undefined> => (await told(text)).find(([title]) => title!.startsWith('Leave out'))?.slice(1);
        const text = term('  meets mon, thu\n  ends 2026-09-18\n');
        const other = 'course pouring\n  unit one\n    weigh-1\n';
        expect(await leaveOut(`${text}${other}adaptation harbour-changes of pouring\n  skip lesson weigh-1\nadaptation harbour-changes-2 of pouring\n  skip lesson weigh-1\n`))
            .toEqual(['  ends 2026-09-18', '+ ', '+ adaptation harbour-changes-3 of measuring for harbour', '+   skip lesson weigh-2']);
        expect(await leaveOut(`${text}adaptation shorter of measuring for harbour\n  retime activity weigh-1.lift to 10 min\n  note: For us.\n`))
            .toEqual(['  retime activity weigh-1.lift to 10 min', '+   skip lesson weigh-2']);
    });
});

describe('a part longer than the session', () => {
    const long = (session: string): string => `lesson weigh-1\n  activity lift 10 min\n    do: Lift.\n  activity fill 50 min\n    do: Fill.\ncourse measuring\n  unit weighing\n    weigh-1\nclass harbour\n  teaches measuring\n  learners 6\n  starts 2026-09-07\n  meets mon\n${session}`;
    test('the session becomes as long as that part', async () => {
        expect(await mends(long('  session 30 min\n'), '2026-09-01', 'session-overrun')).toEqual([["Let class 'harbour' meet for 50 min", '  meets mon', '-   session 30 min', '+   session 50 min']]);
    });
    test.each([['2026-09-14', 1], ['2026-09-15', 0]])('on %s, a day of the lesson or after it', async (today, count) => {
        expect(await problemsOf(long('  session 30 min\n'), today, 'session-overrun')).toHaveLength(count);
    });
});

describe('a lesson that waits for a fixed day', () => {
    const text = (...order: string[]): string => `course measuring\n  unit weighing\n${order.map(name => `    ${name}\n`).join('')}class harbour\n  teaches measuring\n  learners 7\n  starts 2026-09-14\n  meets mon\n  fixed weigh-1 on 2026-09-28\n${
        ['weigh-1', 'weigh-2', 'weigh-3'].map(name => `lesson ${name}\n${name === 'weigh-2' ? '  follows weigh-1\n' : ''}  activity lift 15 min\n    do: Lift.\n`).join('')}`;
    const backwards = 'course backwards\n  unit weighing\n    weigh-2\n    weigh-1\n';
    test('the day may go', async () => {
        expect(await mends(text('weigh-1', 'weigh-2', 'weigh-3'), '2026-09-07', 'lesson-waits')).toEqual([["Fix no day for 'weigh-1'", '  meets mon', '-   fixed weigh-1 on 2026-09-28']]);
    });
    test('the order of its own course counts, not that of another', async () => {
        expect((await problemsOn({ 'one.course': text('weigh-2', 'weigh-1', 'weigh-3') }, '2026-09-07')).map(({ code }) => code)).toEqual(['follows-later']);
        expect(await problemsOf(backwards + text('weigh-1', 'weigh-2', 'weigh-3'), '2026-09-07', 'lesson-waits')).toHaveLength(1);
    });
});

test('classes that clash: what each of them needs, and one count for both', async () => {
    const text = `material gram-cube "Gram cubes"\n  reusable\nlesson weigh-1\n  activity two-bags 15 min\n    materials\n      gram-cube 20 per pair\n    do: Fill a bag with {gram-cube}s.\ncourse measuring\n  unit weighing\n    weigh-1
class harbour "Harbour co-op"\n  teaches measuring\n  learners 2\n  on hand\n    gram-cube 50\n  starts 2026-09-14\n  meets mon\n  shares cupboard with millpond\nclass millpond "Millpond co-op"\n  teaches measuring\n  learners 3\n  starts 2026-09-14\n  meets mon\n`;
    const [problem] = await problemsOf(text, '2026-09-07', 'cupboard-clash');
    expect(problem!.related?.map(({ message, place }) => [message, place.range.start.line])).toEqual([['Harbour co-op needs 20', 10], ['Millpond co-op needs 40', 18]]);
    expect(await mends(text, '2026-09-07', 'cupboard-clash')).toEqual([["They are there: note 60 on hand in class 'harbour'", '  on hand', '-     gram-cube 50', '+     gram-cube 60']]);
});

test('what is met at the 2nd of 18 meetings can be come back to in time up to the 17th', async () => {
    const names = Array.from({ length: 18 }, (_, i) => `day-${i + 1}`);
    const says: Record<string, string> = { 'day-2': 'introduces', 'day-18': 'checks' };
    const text = `objective compare-mass\ncourse measuring\n  unit weighing\n${names.map(name => `    ${name}`).join('\n')}\nclass harbour\n  teaches measuring\n  learners 7\n  starts 2026-09-07\n  meets mon, tue\n${
        names.map(name => `lesson ${name}\n${says[name] ? `  objectives\n    ${says[name]} compare-mass\n` : ''}  activity talk 10 min\n    do: Talk.`).join('\n')}\n`;
    expect(await mends(text, '2026-09-01', 'not-revisited')).toEqual([["Practise it in 'day-17'", 'lesson day-17', '+   objectives', '+     practises compare-mass']]);
    // The 17th meeting is on Monday 2 November.
    expect(await problemsOf(text, '2026-11-02', 'not-revisited')).toHaveLength(1);
    expect(await problemsOf(text, '2026-11-03', 'not-revisited')).toEqual([]);
});

describe('a new edition of the course', () => {
    const part = (name: string): string => `  activity ${name} "${name === 'sweeping' ? 'Crumbs' : 'Loaves'}" 5 min\n    do: ${name === 'loaves' ? 'Weigh two loaves.' : 'Sweep the crumbs together.'}\n`;
    const programme = (edition: string, crumbs: string, order: readonly string[], line: string): string => `lesson weigh-1\n  activity bags 10 min\n    do: Lift two bags.\nlesson weigh-2\n${part('loaves')}${part('sweeping').replace('activity sweeping', `activity ${crumbs}`)}${
        ['market', 'weigh-3'].map(name => `lesson ${name}\n  activity ${name}-talk 10 min\n    do: Talk of the ${name}.\n`).join('')}course measuring edition ${edition}\n  unit weighing\n${order.map(name => `    ${name}\n`).join('')}adaptation shorter of measuring edition 1\n  ${line}\n`;
    const told = async (line: string, crumbs: string, after: readonly string[]): Promise<unknown[]> => {
        const former = programme('1', 'sweeping', ['weigh-1', 'weigh-2', 'weigh-3'], line);
        const files = { 'one.course': programme('2', crumbs, after, line) };
        return (await problemsOn(files, '2026-09-01', former)).filter(({ code }) => code === 'change-moved')
            .map(({ severity, message, fixes = [] }) => [severity, message.split('. ').at(-1), fixes.map(fix => [fix.title, fix.preferred, mend(files, fix)['one.course']!.trimEnd().split('\n').at(-1)])]);
    };
    test('a name that has changed is written anew; until then the change is not made', async () => {
        expect(await told('skip activity weigh-2.sweeping', 'crumbs', ['weigh-1', 'weigh-2', 'weigh-3'])).toEqual([
            ['warning', 'Write: skip activity weigh-2.crumbs', [['Write the new names', true, '  skip activity weigh-2.crumbs as of edition 2']]]
        ]);
    });
    test('where only a place has changed the line is kept', async () => {
        expect(await told('insert market after weigh-1', 'sweeping', ['weigh-2', 'weigh-3', 'weigh-1'])).toEqual([
            ['information', 'Does the line still do what you want?', [['Keep this change', true, '  insert market after weigh-1 as of edition 2']]]
        ]);
    });
});
