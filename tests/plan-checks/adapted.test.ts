import { describe, expect, test } from 'vitest';
import type { Problem } from '@haversack/language/checks/check';
import { mend, readFixture } from '../language/fixture.js';
import { adaptedCases } from './adapted-cases.js';
import { problemsOn } from './fixture.js';

const on = '2026-09-07';

/** How often each code is told. */
function tally(problems: readonly Problem[]): Map<string, number> {
    const counts = new Map<string, number>();
    for (const { code } of problems) counts.set(code, (counts.get(code) ?? 0) + 1);
    return counts;
}

describe.each(adaptedCases)('$code', ({ code, fires }) => {
    test.each(fires)('each quick fix mends it and breaks nothing else in $text', async ({ text, on: day }) => {
        const { files } = readFixture(text);
        const before = await problemsOn(files, day);
        const told = before.filter(problem => problem.code === code);
        expect(told).not.toEqual([]);
        for (const { fixes = [] } of told) {
            expect(fixes).not.toEqual([]);
            for (const fix of fixes) {
                const after = tally(await problemsOn(mend(files, fix), day));
                expect(after.get(code) ?? 0, fix.title).toBe(told.length - 1);
                for (const [other, count] of after) expect(count, `${fix.title}: ${other}`).toBeLessThanOrEqual(tally(before).get(other) ?? 0);
            }
        }
    });
});

const course = (changes: string, lessons: string): string => `objective compare-mass "Compare two masses"
course measuring
  unit weighing
    weigh-1
    weigh-2
    weigh-3
    weigh-4
class harbour
  teaches measuring
  learners 7
  starts 2026-09-14
  meets mon
adaptation shorter of measuring for harbour
${changes}
${lessons}`;

/** The mends that are offered for the first problem of a code, with the text that the first of them gives. */
async function mends(text: string, code: string): Promise<{ titles: string[]; first: string }> {
    const files = { 'one.course': text };
    const fixes = (await problemsOn(files, on)).find(problem => problem.code === code)?.fixes ?? [];
    return { titles: fixes.map(({ title }) => title), first: fixes[0] ? mend(files, fixes[0])['one.course']! : '' };
}

test('introduces an objective elsewhere in a line of the adaptation, which leaves the lesson alone', async () => {
    const lessons = 'lesson weigh-1\n  objectives\n    introduces compare-mass\nlesson weigh-2\n  objectives\n    practises compare-mass\nlesson weigh-3\n  objectives\n    checks compare-mass\nlesson weigh-4\n';
    const { titles, first } = await mends(course('  skip lesson weigh-1 because: They know it.\n  note: Ask the families.', lessons), 'adapted-not-introduced');
    expect(titles).toEqual(["Introduce 'compare-mass' in 'weigh-2' for this class", "Leave out 'weigh-2' and 'weigh-3' too", 'Remove this change']);
    expect(first).toContain('  skip lesson weigh-1 because: They know it.\n  add to weigh-2\n    objectives\n      introduces compare-mass\n  note: Ask');
});

test('moves the other lesson too', async () => {
    const lessons = 'lesson weigh-1\nlesson weigh-2\n  follows weigh-1\nlesson weigh-3\nlesson weigh-4\n';
    const later = await mends(course('  move weigh-1 after weigh-4', lessons), 'adapted-follows-later');
    expect(later.titles).toEqual(["Move 'weigh-2' too", 'Remove this change']);
    expect(later.first).toContain('  move weigh-1 after weigh-4\n  move weigh-2 after weigh-1\n');
    const earlier = await mends(course('  move weigh-2 before weigh-1', lessons.replace('lesson weigh-3', 'lesson weigh-3\n  follows weigh-2')), 'adapted-follows-later');
    expect(earlier.titles).toEqual(["Move 'weigh-1' too", 'Remove this change']);
});

test('teaches a word in the first lesson that uses it, or leaves out those that do', async () => {
    const lessons = (third: string): string => `lesson weigh-1\n  words heavier\nlesson weigh-2\nlesson weigh-3\n  activity lift 5 min\n    do: ${third}\nlesson weigh-4\n  activity say 5 min\n    do: Say {heavier}.\n`;
    const { titles, first } = await mends(course('  skip lesson weigh-1', lessons('Which is {heavier}?')), 'adapted-word-untaught');
    expect(titles).toEqual(["Teach 'heavier' in 'weigh-3' for this class", "Leave out 'weigh-3' and 'weigh-4' too", 'Remove this change']);
    expect(first).toContain('  skip lesson weigh-1\n  add to weigh-3\n    words heavier\n');
    const moved = await mends(course('  move weigh-1 after weigh-3', lessons('Which is {heavier}?')), 'adapted-word-untaught');
    expect(moved.titles).toEqual(["Teach 'heavier' in 'weigh-3' for this class", "Move 'weigh-3' too", "Leave out 'weigh-3' too", 'Remove this change']);
});

test('moves what practises too early behind, or introduces it there', async () => {
    const lessons = 'lesson weigh-1\n  objectives\n    introduces compare-mass\nlesson weigh-2\n  objectives\n    practises compare-mass\nlesson weigh-3\n  objectives\n    practises compare-mass\nlesson weigh-4\n  objectives\n    checks compare-mass\n';
    const { titles, first } = await mends(course('  move weigh-1 after weigh-3', lessons), 'adapted-too-early');
    expect(titles).toEqual(["Move 'weigh-2' and 'weigh-3' too", "Introduce 'compare-mass' in 'weigh-2' for this class", 'Remove this change']);
    expect(first).toContain('  move weigh-1 after weigh-3\n  move weigh-2 after weigh-1\n  move weigh-3 after weigh-2\n');
});

test('checks an objective in the last lesson that practises it, or in the one that introduces it', async () => {
    const lessons = 'lesson weigh-1\n  objectives\n    introduces compare-mass\nlesson weigh-2\n  objectives\n    practises compare-mass\nlesson weigh-3\n  objectives\n    practises compare-mass\nlesson weigh-4\n  objectives\n    checks compare-mass\n';
    const { titles, first } = await mends(course('  skip lesson weigh-4', lessons), 'adapted-not-checked');
    expect(titles).toEqual(["Check 'compare-mass' in 'weigh-3' for this class", "Check 'compare-mass' in 'weigh-1' for this class", 'Remove this change']);
    expect(first).toContain('  skip lesson weigh-4\n  add to weigh-3\n    objectives\n      checks compare-mass\n');
});

test('what builds on something later is moved behind it, or what it builds on is introduced there', async () => {
    const lessons = 'objective order-mass\n  builds on compare-mass\nlesson weigh-1\n  objectives\n    introduces compare-mass\nlesson weigh-2\n  objectives\n    introduces order-mass\nlesson weigh-3\n  objectives\n    checks order-mass\nlesson weigh-4\n  objectives\n    checks compare-mass\n';
    const { titles, first } = await mends(course('  move weigh-1 after weigh-2', lessons), 'adapted-builds-on-later');
    expect(titles).toEqual(["Move 'weigh-2' too", "Introduce 'compare-mass' in 'weigh-2' for this class", 'Remove this change']);
    expect(first).toContain('  move weigh-1 after weigh-2\n  move weigh-2 after weigh-1\n');
});

test.each([[3, ["Leave out 'weigh-2', 'weigh-3' and 'weigh-4' too", 'Remove this change']], [4, ['Remove this change']]])('%d lessons that follow: no more than three go with one mend', async (count, expected) => {
    const names = ['weigh-2', 'weigh-3', 'weigh-4', 'weigh-5', 'weigh-6'];
    const lessons = `lesson weigh-1\n${names.map((name, i) => `lesson ${name}\n${i < count ? '  follows weigh-1\n' : ''}`).join('')}`;
    const text = course('  skip lesson weigh-1', lessons).replace('    weigh-4\n', '    weigh-4\n    weigh-5\n    weigh-6\n');
    expect((await mends(text, 'adapted-follows-left-out')).titles).toEqual(expected);
});

test('a reason is no mend, and it is not underlined', async () => {
    const lessons = 'lesson weigh-1\nlesson weigh-2\n  follows weigh-1\nlesson weigh-3\nlesson weigh-4\n';
    const problems = await problemsOn({ 'one.course': course('  skip lesson weigh-1 because: Two bags\n    are at the market.', lessons) }, on);
    const problem = problems.find(({ code }) => code === 'adapted-follows-left-out');
    expect(problem).toMatchObject({ severity: 'warning', at: { start: { line: 13, character: 2 }, end: { line: 13, character: 21 } } });
    expect(problem?.related).toMatchObject([{ message: '“Weigh 2” follows it' }]);
});

test('a mend that would break something else is not offered', async () => {
    // Without weigh-2, weigh-3 would follow what is left out.
    const lessons = 'lesson weigh-1\nlesson weigh-2\n  follows weigh-1\nlesson weigh-3\n  follows weigh-2\nlesson weigh-4\n';
    expect((await mends(course('  skip lesson weigh-1', lessons), 'adapted-follows-left-out')).titles).toEqual(['Remove this change']);
});

test('a term with too few days offers to leave lessons out, in a line of the class’s own', async () => {
    const lessons = 'lesson weigh-1\nlesson weigh-2\nlesson weigh-3\nlesson weigh-4\n';
    const text = course('  skip lesson weigh-2', lessons).replace('  meets mon\n', '  meets mon\n  ends 2026-09-22\n').replace('objective compare-mass "Compare two masses"\n', '');
    const leaveOut = async (files: Record<string, string>): Promise<string> => {
        const fix = (await problemsOn(files, on)).flatMap(({ fixes = [] }) => fixes).find(({ title }) => title.startsWith('Leave out'));
        return mend(files, fix!)['one.course']!;
    };
    const mended = await leaveOut({ 'one.course': text });
    expect(mended).toMatch(/ {2}skip lesson weigh-2\n {2}skip lesson weigh-3\n/);
    expect(await problemsOn({ 'one.course': mended }, on)).toEqual([]);
    const begun = await leaveOut({ 'one.course': text.replace(/adaptation[^]*?weigh-2\n/, '') });
    expect(begun).toMatch(/ends 2026-09-22\n\nadaptation harbour-changes of measuring for harbour\n {2}skip lesson weigh-1\n {2}skip lesson weigh-2\n/);
    expect(await problemsOn({ 'one.course': begun }, on)).toEqual([]);
});

test('of a large programme that is turned upside down every loss is told, and mends are worked out for the first', async () => {
    const names = Array.from({ length: 400 }, (_, i) => `weigh-${i + 1}`);
    const chain = names.map((name, i) => `lesson ${name}\n${i === 0 ? '' : `  follows ${names[i - 1]}\n`}`).join('');
    const odd = names.filter((_, i) => i % 2 === 0).slice(0, 60);
    const text = `course measuring\n  unit weighing\n${names.map(name => `    ${name}\n`).join('')}adaptation half of measuring\n${odd.map(name => `  skip lesson ${name}\n`).join('')}${chain}`;
    const told = (await problemsOn({ 'one.course': text }, on)).filter(({ code }) => code === 'adapted-follows-left-out');
    expect(told).toHaveLength(60);
    expect(told[0]!.fixes?.map(({ title }) => title)).toEqual(["Leave out 'weigh-2' too", 'Remove this change']);
    expect(told.at(-1)!.fixes).toEqual([]);
});
