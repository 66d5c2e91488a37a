/** An adapted class in the plan: days, brief, stock, coverage, and what is kept between keystrokes. */
import { describe, expect, test } from 'vitest';
import { gatherProgramme } from '@haversack/language/sheets/programme';
import { newPlanningCache } from '../../server/planning/cache.js';
import { planCoverage } from '../../server/planning/coverage.js';
import { planSchedule } from '../../server/planning/schedule.js';
import { planSupplies } from '../../server/planning/supplies/plan-supplies.js';
import { termPlanOf } from '../../server/planning/supplies/term-plan.js';
import { planWeek } from '../../server/planning/week.js';
import { elsewhere, inventory, lessons, programmeOf } from './adapting-fixture.js';
import { told } from './schedule-sheets.js';

const group = (name: string, more = ''): string => `class ${name}\n  teaches measuring\n  learners 7\n  groups of 3\n  starts 2026-09-07\n  meets mon\n${more}`;
const course = 'objective compare-mass\ncourse measuring "Measuring"\n  unit weighing\n    weigh-1\n    weigh-2\n    weigh-3\n';

/** Two classes of the course, of which harbour is adapted by these lines. */
const year = (changes: string, { harbour = '', attic = '', taught = lessons } = {}) => programmeOf({
    'things.kit': inventory, 'weighing.lesson': taught, 'elsewhere.lesson': elsewhere, 'year.course': course,
    'z.course': `${group('harbour', harbour)}${group('attic', attic)}adaptation harbours "For the harbour" of measuring for harbour\n${changes}`
});
const harbour = { class: 'harbour' };
const attic = { class: 'attic' };

describe('the days', () => {
    test('are those of the adapted course, for this class alone', async () => {
        const programme = await year('  skip lesson weigh-2\n  split weigh-1 after two-bags\n  insert market-visit after weigh-1\n');
        expect(told(planSchedule(programme, harbour))).toEqual(['Mon 7 Sep: weigh-1', 'Mon 14 Sep: weigh-1-part-2', 'Mon 21 Sep: market-visit', 'Mon 28 Sep: weigh-3']);
        expect(told(planSchedule(programme, attic))).toEqual(['Mon 7 Sep: weigh-1', 'Mon 14 Sep: weigh-2', 'Mon 21 Sep: weigh-3']);
        expect(planSchedule(programme, harbour).assumptions).toEqual([]);
    });
    test('pieces of a lesson never share a meeting, however short they are and whatever else fits', async () => {
        const split = '  split weigh-1 after two-bags\n';
        expect(told(planSchedule(await year(split, { harbour: '  session 90 min\n' }), harbour))).toEqual(['Mon 7 Sep: weigh-1', 'Mon 14 Sep: weigh-1-part-2, weigh-2, weigh-3']);
        expect(told(planSchedule(await year(split, { harbour: '  lessons 3 per meeting\n' }), harbour))).toEqual(['Mon 7 Sep: weigh-1', 'Mon 14 Sep: weigh-1-part-2, weigh-2, weigh-3']);
        expect(told(planSchedule(await year(`${split}  split weigh-1 after long-walk\n`, { harbour: '  session 90 min\n' }), harbour))).toEqual(['Mon 7 Sep: weigh-1', 'Mon 14 Sep: weigh-1-part-2', 'Mon 21 Sep: weigh-1-part-3, weigh-2, weigh-3']);
        // The first piece goes on at a second meeting, which has room for the other.
        const long = lessons.replace('activity two-bags 15 min', 'activity two-bags 25 min').replace('activity long-walk 10 min', 'activity long-walk 20 min');
        expect(told(planSchedule(await year('  split weigh-1 after long-walk\n', { harbour: '  session 40 min\n', taught: long }), harbour)).slice(0, 3).map(day => day.split(',')[0]))
            .toEqual(['Mon 7 Sep: weigh-1.0', 'Mon 14 Sep: weigh-1.1', 'Mon 21 Sep: weigh-1-part-2']);
        // Joined again they are one lesson.
        expect(told(planSchedule(await year(`${split}  join weigh-1 with weigh-2\n`, { harbour: '  session 90 min\n' }), harbour))).toEqual(['Mon 7 Sep: weigh-1, weigh-3']);
    });
    test('a fixed day of a lesson in pieces is that of its first piece, of a joined lesson that of the whole', async () => {
        const pieces = await year('  split weigh-1 after two-bags\n', { harbour: '  fixed weigh-1 on 2026-09-14\n' });
        expect(told(planSchedule(pieces, harbour))).toEqual(['Mon 7 Sep: free, waiting', 'Mon 14 Sep: weigh-1 (fixed)', 'Mon 21 Sep: weigh-1-part-2', 'Mon 28 Sep: weigh-2', 'Mon 5 Oct: weigh-3']);
        const joined = await year('  join weigh-1 with weigh-2\n', { harbour: '  fixed weigh-2 on 2026-09-14\n' });
        expect(told(planSchedule(joined, harbour))).toEqual(['Mon 7 Sep: free, waiting', 'Mon 14 Sep: weigh-1 (fixed)', 'Mon 21 Sep: weigh-3']);
    });
    test('the log means what was taught of a lesson on that day', async () => {
        const pieces = await year('  split weigh-1 after two-bags\n', { harbour: '  log\n    unsure weigh-1 on 2026-09-14\n' });
        expect(told(planSchedule(pieces, harbour)).slice(0, 3)).toEqual(['Mon 7 Sep: weigh-1', 'Mon 14 Sep: weigh-1-part-2', 'Mon 21 Sep: weigh-1 (repeat), weigh-2']);
        const joined = await year('  join weigh-1 with weigh-2\n', { harbour: '  log\n    unsure weigh-2 on 2026-09-07\n' });
        // The closing question of the second half asks for the song again on the same day.
        expect(told(planSchedule(joined, harbour))[0]).toBe('Mon 7 Sep: weigh-1, weigh-1.4 (repeat)');
    });
    test('a lesson that waits because of a change: told at the line of the change, and of the course only where that is the cause', async () => {
        const waits = async (changes: string) => planSchedule(await year(changes), harbour).problems.map(({ kind, message, place }) => [kind, place.uri.split('/').at(-1), place.range.start.line, message]);
        expect(await waits('  retime weigh-3 to 10 min\n  move weigh-2 after weigh-3\n')).toEqual([
            ['waits', 'z.course', 14, '“Market sums” waits for “Two shelves”, which it follows and which “For the harbour” puts behind it. Move the other one too, or take this change back.']
        ]);
        expect((await waits('  skip lesson weigh-2\n  insert weigh-2 after weigh-3\n')).map(([, file, line]) => [file, line])).toEqual([['z.course', 14]]);
        // The course itself names them the wrong way round, and the change has nothing to do with it.
        const turned = lessons.replace('lesson weigh-1 "Which is heavier?"\n', 'lesson weigh-1 "Which is heavier?"\n  follows weigh-3\n').replace('  follows weigh-2\n', '');
        const own = planSchedule(await year('  move weigh-2 before weigh-1\n', { taught: turned.replace('  follows weigh-1\n', '') }), harbour).problems;
        expect(own.map(({ message }) => message)).toEqual(['“Which is heavier?” waits for “Market sums”, which it follows and which the course names later. Name “Market sums” first in the course.']);
    });
    test('a fixed or logged lesson that is left out: the plan says who leaves it out', async () => {
        const programme = await year('  skip lesson weigh-2\n', { harbour: '  fixed weigh-2 on 2026-09-14\n  log\n    unsure weigh-2 on 2026-09-14\n' });
        expect(planSchedule(programme, harbour).problems.map(({ message }) => message)).toEqual([
            '“weigh-2” is fixed on 2026-09-14, but “For the harbour” leaves this lesson out. Take one of the two lines out.',
            'The log says that “weigh-2” was taught on Monday 14 September 2026, but “For the harbour” leaves this lesson out. Correct the line, or give the lesson a fixed day.'
        ]);
    });
});

describe('the brief', () => {
    test('shows each change beside what it changed, and leads to its line', async () => {
        const programme = await year('  swap dried-bean for lentil 2 for 1 because: An allergy.\n  retime activity weigh-1.two-bags to 10 min\n  skip activity weigh-1.long-walk\n');
        const [lesson] = planWeek(programme, { ...harbour, week: 1 }).lessons;
        const line = (n: number) => ({ uri: 'file:///programme/z.course', range: { start: { line: n } } });
        expect(lesson!.changes).toMatchObject([{ says: '“Long walk” is left out', adaptation: 'For the harbour', place: line(15) }]);
        expect(lesson!.needs.map(({ title, amount, changes }) => [title, amount.text, changes?.[0]?.says])).toEqual([['Pan balance', '4', undefined], ['Lentils', '1.2 kg', 'lentils instead of dried beans']]);
        expect(lesson!.needs[1]).toMatchObject({ place: { uri: 'file:///programme/weighing.lesson' }, changes: [{ because: { parts: [{ text: 'An allergy.' }] }, place: line(13) }] });
        const [bags, grocer] = lesson!.parts;
        expect([bags!.minutes, bags!.changes?.[0]?.says, bags!.steps[0]!.changes?.[0]?.says]).toEqual([10, '10 min instead of 15', 'lentils instead of dried beans']);
        expect(grocer!.needs.map(({ title, amount, changes }) => [title, amount.text, changes?.[0]?.says])).toEqual([['Lentils', '0.12 kg', 'lentils instead of dried beans']]);
        const [other] = planWeek(programme, { ...attic, week: 1 }).lessons;
        expect(JSON.stringify(other)).not.toContain('changes');
    });
    test('the later piece of a lesson repeats what the earlier one teaches', async () => {
        const [late] = planWeek(await year('  split weigh-1 after two-bags\n'), { ...harbour, week: 2 }).lessons;
        expect(late!.parts.at(-1)!.unsure).toBe('Repeat “Two bags” of “Which is heavier?, part 1” tomorrow.');
    });
    test('what is brought in leads to its own file', async () => {
        const programme = await year('  insert activity market-visit.stalls after weigh-1.two-bags\n  add to weigh-1\n    materials\n      chalk 2 sticks\n');
        const [lesson] = planWeek(programme, { ...harbour, week: 1 }).lessons;
        expect(lesson!.parts[1]).toMatchObject({ name: 'stalls', place: { uri: 'file:///programme/elsewhere.lesson' }, steps: [{ place: { uri: 'file:///programme/elsewhere.lesson' } }], needs: [{ name: 'dried-bean', place: { uri: 'file:///programme/elsewhere.lesson' } }, { name: 'rope' }] });
        expect(lesson!.needs.at(-1)).toMatchObject({ name: 'chalk', place: { uri: 'file:///programme/z.course' }, changes: [{ says: 'added' }] });
    });
    test('tells of lessons that are left out in the week of what stands in their place, at the end in the last week', async () => {
        const programme = await year('  skip lesson weigh-1 because: They know it.\n  skip lesson weigh-3\n');
        const brief = planWeek(programme, { ...harbour, week: 1 });
        expect(brief.weeks).toBe(1);
        expect(brief.adapted).toMatchObject({
            adaptations: [{ name: 'harbours', title: 'For the harbour' }],
            leftOut: [{ name: 'weigh-1', change: { says: '“Which is heavier?” is left out', because: { parts: [{ text: 'They know it.' }] } } }, { name: 'weigh-3' }]
        });
        const instead = await year('  swap lesson weigh-2 for market-visit\n');
        const leftOut = (week: number) => planWeek(instead, { ...harbour, week }).adapted?.leftOut.map(({ name }) => name);
        expect([leftOut(1), leftOut(2), leftOut(3)]).toEqual([[], ['weigh-2'], []]);
        expect(planWeek(instead, { ...attic, week: 1 }).adapted).toBeUndefined();
    });
    test('what is skipped stops being needed', async () => {
        const kit = '  kits chest 1\n';
        const of = async (changes: string) => planWeek(await programmeOf({
            'things.kit': `${inventory}kit chest\n  holds\n    rope 1\n    pan-balance 9\n`, 'weighing.lesson': lessons, 'elsewhere.lesson': elsewhere, 'year.course': course,
            'z.course': `${group('harbour', kit)}adaptation harbours of measuring for harbour\n${changes}`
        }), { ...harbour, week: 1 });
        const fetched = (brief: Awaited<ReturnType<typeof of>>) => brief.fetch.flatMap(({ things }) => things.map(({ name }) => name));
        const before = await of('  skip lesson weigh-3\n');
        expect(fetched(before)).toContain('rope');
        const after = await of('  skip activity weigh-1.long-walk\n');
        expect(fetched(after)).not.toContain('rope');
        expect(after.stayOnShelf.map(({ name, why }) => `${name}: ${why}`)).toEqual(['rope: In the kit “Chest”; no lesson of this plan uses it.']);
    });
});

test('stock of a shared cupboard counts each class as it is taught', async () => {
    const shared = { attic: '  shares cupboard with harbour\n' };
    const needed = async (changes: string, wanted: { class: string }) =>
        planSupplies(await year(changes, shared), wanted).things.map(({ name, need }) => `${name} ${need.text}`);
    // 150 g for 4 pairs and 20 g for 3 tables (groups of 3, 2 and 2): 660 g a class.
    expect(await needed('  skip lesson weigh-3\n', attic)).toContain('dried-bean 1.32 kg');
    for (const wanted of [harbour, attic]) {
        const things = await needed('  swap dried-bean for lentil 2 for 1\n', wanted);
        expect(things).toContain('dried-bean 660 g');
        expect(things).toContain('lentil 1.32 kg');
    }
});

test('coverage is that of the adapted course, and says what is left out', async () => {
    const programme = await year('  skip lesson weigh-3\n');
    const gaps = (wanted: { class: string }) => planCoverage(programme, wanted).gaps.map(({ kind, message }) => `${kind}: ${message}`);
    expect(gaps(attic)).toEqual([]);
    expect(gaps(harbour)).toEqual(['never-checked: “Compare mass” is introduced in “Which is heavier?” (week 1), but no lesson from there on checks it. “Market sums” would, but it is left out for this class. Write `checks compare-mass` in a lesson whose closing questions ask for it.']);
    // What is joined is taught.
    expect(planCoverage(await year('  join weigh-1 with weigh-2, weigh-3\n'), harbour).gaps).toEqual([]);
});

describe('one keystroke', () => {
    const changes = '  swap dried-bean for lentil 2 for 1\n  join weigh-1 with weigh-2\n';
    const amounts = (programme: Awaited<ReturnType<typeof year>>, cache: ReturnType<typeof newPlanningCache>, wanted: { class: string }) =>
        planWeek(programme, { ...wanted, week: 1 }, { cache, schedule: termPlanOf(cache, programme).schedule(wanted) }).lessons[0]!.needs.map(({ name, amount }) => `${name} ${amount.text}`);

    test('in a lesson counts it anew for each class as it is taught it, and keeps the days', async () => {
        const cache = newPlanningCache();
        const before = await year(changes);
        expect(amounts(before, cache, harbour)).toEqual(['pan-balance 4', 'lentil 1.2 kg', 'rope 1', 'chalk 8 sticks']);
        expect(amounts(before, cache, attic)).toEqual(['pan-balance 4', 'dried-bean 600 g', 'rope 1']);
        const days = termPlanOf(cache, before).schedule(harbour);
        const typed = (await year(changes, { taught: lessons.replace('dried-bean 150 g', 'dried-bean 200 g').replace('chalk 2', 'chalk 3') })).files.get('file:///programme/weighing.lesson')!;
        const after = gatherProgramme([...before.files.values()].map(file => (file.uri === typed.uri ? typed : file)));
        expect(amounts(after, cache, harbour)).toEqual(['pan-balance 4', 'lentil 1.6 kg', 'rope 1', 'chalk 12 sticks']);
        expect(amounts(after, cache, attic)).toEqual(['pan-balance 4', 'dried-bean 800 g', 'rope 1']);
        expect(termPlanOf(cache, after).schedule(harbour)).toBe(days);
    });
    test('in the adaptation plans anew', async () => {
        const cache = newPlanningCache();
        amounts(await year(changes), cache, harbour);
        expect(amounts(await year(changes.replace('2 for 1', '3 for 1')), cache, harbour)[1]).toBe('lentil 1.8 kg');
        expect(amounts(await year('  skip lesson weigh-1\n'), cache, harbour)).toEqual(['pan-balance 7', 'chalk 8 sticks']);
    });
});

test('only whole lessons are offered to be left out of an adapted course that is too long', async () => {
    const tooLong = { harbour: '  ends 2026-09-15\n' };
    const offered = async (changes: string) => planSchedule(await year(changes, { ...tooLong, taught: lessons.replace(/ {2}(?:follows .*|objectives\n.*)\n/g, '') }), harbour).proposals.flatMap(({ leavesOut }) => leavesOut ?? []);
    expect(await offered('  move weigh-2 after weigh-3\n')).toEqual(['weigh-3']);
    expect(await offered('  split weigh-1 after two-bags\n  move weigh-1 after weigh-3\n  join weigh-2 with weigh-3\n')).toEqual([]);
});
