import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { CourseNode, LessonNode, MoveLessonsAnswer, MoveTarget, ProgrammesAnswer, WeekAnswer, WeekParams, WeekRefusal } from '../../server/protocol/programme.js';
import { Client } from './client.js';
import { adaptedPlan, planProgramme } from './plan-programme.js';

const programmes = (client: Client, className?: unknown): Promise<ProgrammesAnswer> => client.connection.sendRequest('haversack/programmes', { class: className });
const week = (client: Client, params: WeekParams = {}): Promise<WeekAnswer & Partial<WeekRefusal>> => client.connection.sendRequest('haversack/week', params);
const lessonsOf = ({ units }: CourseNode): LessonNode[] => units.flatMap(({ lessons }) => lessons);
/** A lesson in a line: name, standing, days. */
const told = ({ name, standing, meetings, draft, problems: { errors, warnings } }: LessonNode): string =>
    [name, standing, ...meetings.map(({ week: number, label }) => `week ${number} ${label}`), draft && 'draft', errors > 0 && `${errors} errors`, warnings > 0 && `${warnings} warnings`].filter(Boolean).join(', ');

let client: Client | undefined;
async function start(programme: Record<string, string>, today = '2026-09-01'): Promise<Client> {
    client = await Client.start({ programme, today });
    return client;
}
afterEach(async () => {
    await client?.stop();
    client = undefined;
});

describe('the programme as a tree', () => {
    test('holds courses, units and lessons in order with the days of a class, then lessons in no course, classes and adaptations', async () => {
        const own = await start({ ...planProgramme, 'more.lesson': 'lesson weigh-9 "Nine bags"\n  draft\n  activity a 10 min\n' });
        const { programmes: [tree, ...others] } = await programmes(own);
        expect(others).toEqual([]);
        expect(own.folder.endsWith(tree!.title)).toBe(true);
        const [course] = tree!.courses;
        expect(course).toMatchObject({ name: 'weighing', title: 'Weighing', class: { name: 'harbour', title: 'Harbour co-op' } });
        expect(course!.units.map(({ title }) => title)).toEqual(['Bags']);
        expect(lessonsOf(course!).map(told)).toEqual(['weigh-1, taught, week 1 Mon 14 Sep', 'weigh-2, taught, week 2 Mon 21 Sep']);
        expect(lessonsOf(course!)[0]).toMatchObject({
            title: 'Two bags', minutes: 15, at: { uri: own.uri('weigh.lesson'), line: 0, character: 7 }, line: { uri: own.uri('weighing.course'), line: 5, character: 4 }
        });
        expect(tree!.otherLessons).toMatchObject([{ name: 'weigh-9', draft: true, standing: 'not-planned', meetings: [] }]);
        expect(tree!.otherLessons[0]!.line).toBeUndefined();
        expect(tree!.classes.map(({ title, learners, course: of }) => [title, learners, of])).toEqual([['Harbour co-op', 7, 'Weighing'], ['Millpond co-op', 2, 'Weighing']]);
        expect(tree!.adaptations).toEqual([]);
    });

    test('has the days of the class that is asked for; of one that is not there those of the first', async () => {
        const own = await start(planProgramme);
        const daysOf = async (className: unknown): Promise<string[]> => lessonsOf((await programmes(own, className)).programmes[0]!.courses[0]!).map(({ meetings }) => meetings[0]!.label);
        expect(await daysOf('millpond')).toEqual(['Tue 15 Sep', 'Tue 22 Sep']);
        for (const other of ['nobody', 7, null]) expect(await daysOf(other)).toEqual(['Mon 14 Sep', 'Mon 21 Sep']);
    });

    test('tells what an adaptation leaves out, changes and brings in, for the class that is adapted alone', async () => {
        const own = await start(adaptedPlan('', '  skip lesson weigh-2 because: The hall is let.\n  retime activity weigh-1.two-bags to 10 min\n  retime weigh-9 to 5 min\n'));
        const [harbour] = (await programmes(own, 'harbour')).programmes;
        expect(lessonsOf(harbour!.courses[0]!).map(told)).toEqual(['weigh-1, taught, week 1 Mon 14 Sep', 'weigh-2, left-out', 'weigh-3, taught, week 2 Mon 21 Sep']);
        const [first, second, third] = lessonsOf(harbour!.courses[0]!);
        expect(second).toMatchObject({ why: 'The hall is let.', changes: ['“Three bags” is left out'] });
        expect(first!.changes).toEqual([expect.stringContaining('10 min')]);
        expect(third!.changes).toEqual([]);
        expect(harbour!.adaptations).toMatchObject([{ title: 'For the harbour', course: 'Weighing', forClass: 'Harbour co-op' }]);
        expect(harbour!.adaptations[0]!.changes.map(({ says, at, idle }) => [says, at.line, idle !== undefined])).toEqual([
            ['“Three bags” is left out', 1, false], [expect.stringContaining('10 min'), 2, false], [expect.any(String), 3, true]
        ]);
        const [millpond] = (await programmes(own, 'millpond')).programmes;
        expect(lessonsOf(millpond!.courses[0]!).map(({ standing, changes }) => [standing, changes.length])).toEqual([['taught', 0], ['taught', 0], ['taught', 0]]);
        // The adaptation tells what it does for its own class, whichever is shown.
        expect(millpond!.adaptations).toEqual(harbour!.adaptations);
    });

    test('tells which lessons have no day left, which no file has, and which nobody is taught', async () => {
        const own = await start({
            ...planProgramme,
            'weighing.course': `${planProgramme['weighing.course'].replace('    weigh-2\n', '    weigh-2\n    weigh-7\n').replaceAll('  meets mon\n', '  ends 2026-09-14\n  meets mon\n')}\ncourse spare "Spare"\n  unit all\n    weigh-2\n`
        });
        const [{ courses }] = (await programmes(own)).programmes as [ProgrammesAnswer['programmes'][number]];
        const [first, second, third] = lessonsOf(courses[0]!);
        expect([first, second, third].map(one => one!.standing)).toEqual(['taught', 'no-day', 'unknown']);
        expect(second!.why).toMatch(/\S/);
        expect(third).toMatchObject({ title: 'Weigh 7', meetings: [] });
        expect(third!.at).toBeUndefined();
        expect(courses[1]!.class).toBeUndefined();
        expect(lessonsOf(courses[1]!).map(({ name, standing }) => [name, standing])).toEqual([['weigh-2', 'not-planned']]);
    });

    test('has plain weeks where there is no class, and lessons alone where there is no course', async () => {
        const own = await start({ 'a.lesson': 'lesson a-1\nlesson a-2\n', 'a.course': 'course a\n  unit u\n    a-1\n' });
        const [tree] = (await programmes(own)).programmes;
        expect(lessonsOf(tree!.courses[0]!).map(({ name, standing, meetings }) => [name, standing, meetings[0]?.week])).toEqual([['a-1', 'taught', 1]]);
        await own.open('a.course');
        await own.change('a.course', '# Nothing yet.\n');
        const [alone] = (await programmes(own)).programmes;
        expect([alone!.courses, alone!.otherLessons.map(({ name, standing }) => [name, standing])]).toEqual([[], [['a-1', 'taught'], ['a-2', 'taught']]]);
    });

    test('counts problems where they stand: in the lesson, on its line in the course, in unit and course together', async () => {
        const own = await start({ ...planProgramme, 'weigh.lesson': planProgramme['weigh.lesson'].replace('sand 100 g', 'sant 100 g') });
        const [tree] = (await programmes(own)).programmes;
        const [first, second] = lessonsOf(tree!.courses[0]!);
        expect([first!.problems.errors, second!.problems.errors]).toEqual([0, 1]);
        expect([tree!.courses[0]!.units[0]!.problems.errors, tree!.courses[0]!.problems.errors]).toEqual([1, 1]);
        await own.open('weighing.course');
        await own.edit('weighing.course', '    weigh-1\n', '    weigh-1\n    weigh-77\n');
        await own.settled();
        const [after] = (await programmes(own)).programmes;
        expect(lessonsOf(after!.courses[0]!).map(({ name, problems }) => [name, problems.errors])).toEqual([['weigh-1', 0], ['weigh-77', 1], ['weigh-2', 1]]);
        expect([after!.courses[0]!.units[0]!.problems.errors, after!.courses[0]!.problems.errors]).toEqual([2, 2]);
    });

    test('does not travel where the client has it already', async () => {
        const own = await start(planProgramme);
        const ask = (known: unknown, className?: string): Promise<Partial<ProgrammesAnswer>> => own.connection.sendRequest('haversack/programmes', { class: className, known });
        const first = await ask(undefined);
        expect(await ask(first.hash)).toEqual({ unchanged: true });
        expect(await ask('another')).toEqual(first);
        expect(await ask(3)).toEqual(first);
        // Another class has other days.
        expect((await ask(first.hash, 'millpond')).programmes).toHaveLength(1);
        await own.open('weigh.lesson');
        await own.edit('weigh.lesson', 'lesson weigh-2', 'lesson weigh-22');
        const after = await ask(first.hash);
        expect(after.programmes).toHaveLength(1);
        expect(after.hash).not.toBe(first.hash);
        await own.edit('weigh.lesson', 'lesson weigh-22', 'lesson weigh-2');
        await own.settled();
        expect(await ask(first.hash)).toEqual({ unchanged: true });
    });

    test('is one for each folder that is open, with a class of its own', async () => {
        const inFolder = (folder: string): [string, string][] => Object.entries(planProgramme).map(([name, text]) => [`${folder}/${name}`, text]);
        client = await Client.start({ programme: Object.fromEntries([...inFolder('north'), ...inFolder('south')]), folders: ['north', 'south'] });
        await client.open('south/weighing.course');
        await client.edit('south/weighing.course', 'class millpond "Millpond co-op"', 'class hilltop "Hilltop co-op"');
        const { programmes: trees } = await programmes(client, 'hilltop');
        expect(trees.map(({ title, classes }) => [title, classes.map(({ name }) => name)])).toEqual([['north', ['harbour', 'millpond']], ['south', ['harbour', 'hilltop']]]);
        expect(trees.map(({ courses }) => lessonsOf(courses[0]!)[0]!.meetings[0]!.label)).toEqual(['Mon 14 Sep', 'Tue 15 Sep']);
        const south = await week(client, { programme: trees[1]!.key, class: 'hilltop' });
        expect([south.class?.name, south.from]).toEqual(['hilltop', '2026-09-15']);
        expect(south.classes.map(({ name, programmeTitle }) => `${programmeTitle} ${name}`)).toEqual(['north harbour', 'north millpond', 'south harbour', 'south hilltop']);
        expect((await week(client, { uri: client.uri('south/things.kit'), class: 'hilltop' })).programme).toBe(trees[1]!.key);
        expect((await week(client, { class: 'hilltop' })).programme).toBe(trees[1]!.key);
    });

    test('is empty where nothing is, and answers whatever is asked', async () => {
        const own = await start({});
        for (const params of [undefined, null, 3, 'x', [], { class: {} }]) expect(await own.connection.sendRequest('haversack/programmes', params)).toEqual({ hash: expect.any(String) as string, programmes: [] });
        expect(await week(own)).toEqual({ refusal: 'There is no lesson in this folder yet.', empty: true });
    });
});

describe('the things of a week', () => {
    test('stand by where they come from, with amounts and days as the brief has them', async () => {
        const own = await start(planProgramme);
        const answer = await week(own);
        expect(answer).toMatchObject({ class: { name: 'harbour' }, course: 'Weighing', week: 1, weeks: 2, from: '2026-09-14', dates: 'Mon 14 Sep 2026', minutes: 15 });
        // 7 learners are 4 pairs with 20 cubes each, and 50 g of sand each.
        expect(answer.groups.map(({ source, title, things }) => [source, title, things.map(({ title: thing, amount, days }) => [thing, amount, days])])).toEqual([
            ['kit', 'From the kit', [['Gram cubes', '80', ['Mon 14 Sep']]]], ['shop', 'From the shop', [['Fine sand', '350 g', ['Mon 14 Sep']]]]
        ]);
        expect(answer.groups[0]!.things[0]).toMatchObject({ at: { uri: own.uri('things.kit'), line: 0 }, lessons: ['Two bags'], optional: false });
        expect(answer.classes.map(({ name }) => name)).toEqual(['harbour', 'millpond']);
    });

    test('are those of the class and week asked for; a number beyond the term is its last week', async () => {
        const own = await start(planProgramme);
        const second = await week(own, { class: 'millpond', week: 2 });
        expect(second).toMatchObject({ class: { name: 'millpond' }, week: 2, from: '2026-09-22' });
        expect(second.groups.flatMap(({ things }) => things.map(({ name, amount }) => [name, amount]))).toEqual([['sand', '200 g']]);
        for (const [asked, given] of [[99, 2], [0, 1], [-3, 1], [1.5, 1]] as const) expect((await week(own, { week: asked })).week).toBe(given);
        expect((await week(own, { class: 'nobody', programme: 'none' })).class?.name).toBe('harbour');
    });

    test.each([['2026-09-01', 1], ['2026-09-14', 1], ['2026-09-15', 2], ['2026-09-21', 2], ['2027-01-01', 2]])('are on %s those of week %i, where no week is asked for', async (today, given) => {
        expect((await week(await start(planProgramme, today))).week).toBe(given);
    });

    test('are those of the lesson at the line, else of the week that is shown already', async () => {
        const own = await start(planProgramme);
        const line = own.at('weigh.lesson', 'lesson |weigh-2').line;
        expect((await week(own, { uri: own.uri('weigh.lesson'), line, otherwise: 1 })).week).toBe(2);
        expect((await week(own, { uri: own.uri('things.kit'), line: 0, otherwise: 2 })).week).toBe(2);
        expect((await week(own, { uri: own.uri('weigh.lesson') })).week).toBe(1);
        expect((await week(own, { uri: own.uri('weighing.course'), line: own.at('weighing.course', 'class |millpond').line })).class?.name).toBe('millpond');
    });

    test('say what to buy or order, with its day, and what is late', async () => {
        const short = { ...planProgramme, 'weighing.course': planProgramme['weighing.course'].replace('    sand 400 g\n    bean 100\n', '    sand 100 g\n').replace('  on order\n    sand 500 g arriving 2026-09-15\n', '') };
        const { buy } = await week(await start(short));
        expect(buy.map(({ name, what, when, ahead }) => [name, what, when, ahead])).toEqual([
            ['sand', '1 pack of 500 g at 2.00 EUR', 'needed Mon 14 Sep; arrives in 10 days, so order by Fri 4 Sep', false],
            ['sand', '1 pack of 500 g at 2.00 EUR', 'needed Mon 21 Sep; arrives in 10 days, so order by Fri 11 Sep', true]
        ]);
        expect(buy.map(({ late }) => late)).toEqual([undefined, undefined]);
        await client!.stop();
        expect((await week(await start(short, '2026-09-12'))).buy[0]!.late).toMatch(/8 days too late/);
    });

    test('are left out where week and minutes alone are asked for', async () => {
        expect(await week(await start(planProgramme), { brief: true })).toMatchObject({ week: 1, minutes: 15, groups: [], buy: [] });
    });

    test('follow an adaptation', async () => {
        const own = await start(adaptedPlan('', '  swap gram-cube for bean in weigh-1\n'));
        expect((await week(own)).groups.flatMap(({ things }) => things.map(({ name }) => name))).toContain('bean');
        expect((await week(own, { class: 'millpond' })).groups.flatMap(({ things }) => things.map(({ name }) => name))).not.toContain('bean');
    });

    test('say why there are none, where every lesson is left out', async () => {
        const own = await start({ 'a.lesson': 'lesson a-1\n', 'a.course': 'course a\n  unit u\n    a-1\nclass c\n  teaches a\n  learners 2\nadaptation none "None" of a\n  skip lesson a-1\n' });
        expect(await week(own)).toMatchObject({ refusal: expect.stringContaining('leaves out'), empty: false });
    });
});

describe('another order of the lessons', () => {
    let own: Client;
    const course = 'programme.course';
    beforeAll(async () => { own = await Client.start(); });
    afterAll(() => own.stop());
    afterEach(() => own.reset());

    const lines = async (): Promise<Map<string, { name: string; line: NonNullable<LessonNode['line']> }>> => {
        const [tree] = (await programmes(own)).programmes;
        return new Map(lessonsOf(tree!.courses[0]!).map(({ name, line }) => [name, { name, line: line! }]));
    };
    const move = (lessons: unknown, to: MoveTarget | unknown): Promise<MoveLessonsAnswer & { refusal?: string }> => own.connection.sendRequest('haversack/moveLessons', { lessons, to });
    const order = async (): Promise<string[]> => [...(await lines()).keys()];

    test('is one edit of the course’s text, and nothing is written by asking', async () => {
        const [before, at] = [own.text(course), await lines()];
        const answer = await move([at.get('shake-2')], { lesson: at.get('listen-2') });
        expect(own.text(course)).toBe(before);
        expect(answer).toMatchObject({ uri: own.uri(course), lines: [at.get('listen-2')!.line.line] });
        // What the file reads there, for a client to compare.
        const [from, to] = [at.get('listen-2')!.line.line, at.get('shake-2')!.line.line + 1];
        expect(answer.held).toEqual({ from, lines: before.split('\n').slice(from, to + 1) });
        await own.apply({ changes: { [answer.uri]: answer.edits } });
        expect(await order()).toEqual(['listen-1', 'shake-2', 'listen-2', 'shake-1', 'pitch-1', 'travel-1', 'travel-2', 'concert-1']);
        expect(own.text(course).split('\n').sort()).toEqual(before.split('\n').sort());
        // Nobody stops it; the check tells what stands before what it follows.
        await own.open(course);
        await own.until('the problem', () => [course, 'lessons/shake-2.lesson'].some(file => own.codes(file).includes('follows-later')));
    });

    test('goes by steps, and to the end of a unit', async () => {
        let at = await lines();
        await own.apply({ changes: { [own.uri(course)]: (await move([at.get('listen-2')], { by: 'down' })).edits } });
        expect((await programmes(own)).programmes[0]!.courses[0]!.units.map(({ lessons }) => lessons.length)).toEqual([1, 4, 3]);
        at = await lines();
        const [{ units }] = (await programmes(own)).programmes[0]!.courses as [CourseNode];
        await own.apply({ changes: { [own.uri(course)]: (await move([at.get('listen-1'), at.get('shake-1')], { unit: { name: 'sending', line: units[2]!.at } })).edits } });
        expect(await order()).toEqual(['listen-2', 'shake-2', 'pitch-1', 'travel-1', 'travel-2', 'concert-1', 'listen-1', 'shake-1']);
        at = await lines();
        expect(await move([at.get('listen-2')], { by: 'up' })).toMatchObject({ edits: expect.any(Array) });
        expect(await move([at.get('listen-2')], { lesson: at.get('listen-2') })).toMatchObject({ edits: [], held: { lines: [] } });
    });

    test('is refused in words for a lesson of another course, and where the text is another by now', async () => {
        await own.open(course);
        await own.change(course, `${own.text(course)}\ncourse spare "Spare"\n  unit all\n    pitch-1\n`);
        const [tree] = (await programmes(own)).programmes;
        const spare = lessonsOf(tree!.courses[1]!)[0]!;
        const at = await lines();
        expect((await move([{ name: spare.name, line: spare.line }], { lesson: at.get('listen-1') })).refusal).toMatch(/stands in another course than “The Cupboard Orchestra”\. Write its name/);
        const { name, line } = at.get('listen-2')!;
        expect((await move([{ name, line: { ...line, line: line.line + 1 } }], { by: 'up' })).refusal).toMatch(/changed meanwhile/);
        expect((await move([at.get('listen-1')], { lesson: { name: 'nobody', line } })).refusal).toMatch(/changed meanwhile/);
        for (const to of [undefined, null, {}, { by: 'sideways' }, { lesson: 3 }, { unit: { name: 'x' } }]) expect((await move([at.get('listen-1')], to)).refusal).toMatch(/\S/);
        for (const lessons of [undefined, [], [3], [{}], 'x']) expect((await move(lessons, { by: 'up' })).refusal).toMatch(/\S/);
        expect((await move([{ name: 'listen-1' }], { by: 'up' })).refusal).toMatch(/a lesson that stands in no course can be put into a unit/);
    });
});
