import { describe, expect, test } from 'vitest';
import { allCodes } from '@haversack/language/checks/all-checks';
import { allPlanChecks } from '../../server/plan-checks/all-plan-checks.js';
import { mend, readFixture } from '../language/fixture.js';
import { adaptedCases } from './adapted-cases.js';
import { planCases as otherCases, type PlanCase } from './cases.js';
import { editionCases } from './edition-cases.js';
import { check, problemsOn } from './fixture.js';

const planCases: PlanCase[] = [...otherCases, ...adaptedCases, ...editionCases];

test('every check has a text in which it fires and one in which it stays silent', () => {
    const covered = planCases.filter(({ fires, silent }) => fires.length > 0 && silent.length > 0).map(({ code }) => code).sort();
    expect(covered).toEqual(allPlanChecks.map(({ code }) => code).sort());
});

describe.each(planCases)('$code', ({ code, fires, silent }) => {
    test.each(fires)('fires on $on in $text', async ({ on, text, former }) => {
        expect(readFixture(text).expected.map(mark => mark.code)).toContain(code);
        await check(text, on, former);
    });

    test.each(silent)('is silent on $on in $text', async ({ on, text, former }) => {
        expect(readFixture(text).expected.map(mark => mark.code)).not.toContain(code);
        await check(text, on, former);
    });

    test.each(fires)('its quick fixes mend it on $on in $text', async ({ on, text, former }) => {
        const { files } = readFixture(text);
        const before = await problemsOn(files, on, former);
        for (const problem of before.filter(one => one.code === code)) {
            for (const fix of problem.fixes ?? []) {
                const after = await problemsOn(mend(files, fix), on, former);
                const messages = after.filter(one => one.uri === problem.uri && one.code === code).map(({ message }) => message);
                expect(messages, fix.title).not.toContain(problem.message);
                // What a mend writes can be read.
                expect(after.filter(({ severity }) => severity === 'error'), fix.title).toEqual([]);
            }
        }
    });
});

describe('the examples that the reference shows', () => {
    test('codes are unique, also among those of the language, and written in lower case', () => {
        const codes = [...allCodes, ...allPlanChecks].map(({ code }) => code);
        expect(new Set(codes).size).toBe(codes.length);
        for (const code of codes) expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
    });

    test.each(allPlanChecks)('$code: the wrong one has this problem and no other', async ({ code, severity, wrong, on, former }) => {
        const problems = await problemsOn({ 'example.course': wrong }, on, former);
        expect(problems.map(problem => `${problem.severity} ${problem.code}`)).toEqual([`${severity} ${code}`]);
    });

    test.each(allPlanChecks)('$code: the right one has no problem at all', async ({ right, on, former }) => {
        expect((await problemsOn({ 'example.course': right }, on, former)).map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
    });

    test.each(allPlanChecks)('$code: has a quick fix, and each of them mends it', async ({ code, wrong, on, former }) => {
        const files = { 'example.course': wrong };
        const fixes = (await problemsOn(files, on, former)).flatMap(problem => problem.fixes ?? []);
        expect(fixes).not.toEqual([]);
        for (const fix of fixes) expect((await problemsOn(mend(files, fix), on, former)).filter(problem => problem.code === code), fix.title).toEqual([]);
    });
});

test('a fixed date is moved only to days after what the lesson follows', async () => {
    const text = (ends: string): string => `lesson weigh-1\n  activity lift 15 min\n    do: Lift.\nlesson weigh-2\n  follows weigh-1\n  activity fill 15 min\n    do: Fill.\ncourse measuring\n  unit weighing\n    weigh-1\n    weigh-2\nclass harbour\n  teaches measuring\n  learners 7\n  starts 2026-09-14\n${ends}  meets mon\n  fixed weigh-2 on 2026-09-15\n`;
    const titles = async (ends = ''): Promise<string[]> => (await problemsOn({ 'example.course': text(ends) }, '2026-09-07')).filter(({ code }) => code === 'fixed-date').flatMap(({ fixes }) => fixes?.map(({ title }) => title) ?? []);
    expect(await titles()).toEqual(['Change to Mon 21 Sep', "Fix no day for 'weigh-2'"]);
    expect(await titles('  ends 2026-09-18\n')).toEqual(["Fix no day for 'weigh-2'"]);
});

test('a stand-in that needs another amount does not take the place of all that a line asks for', async () => {
    const text = (ratio: string): string => `material cube\n  reusable\n  stand-in tile ${ratio}\nmaterial tile\n  reusable\nlesson weigh-1\n  activity lift 15 min\n    materials\n      cube 20 per pair\n    do: Lift {cube}s.\ncourse measuring\n  unit weighing\n    weigh-1\nclass harbour\n  teaches measuring\n  learners 7\n  on hand\n    cube 60\n    tile 50\n  starts 2026-09-14\n  meets mon\n`;
    const titles = async (ratio: string): Promise<string[]> => (await problemsOn({ 'example.course': text(ratio) }, '2026-09-07')).filter(({ code }) => code === 'short-at-meeting').flatMap(({ fixes }) => fixes?.map(({ title }) => title) ?? []);
    // 80 are needed and 60 there: 40 tiles would make up for 20 cubes, but 160 for all 80.
    expect(await titles('2 for 1')).not.toContainEqual(expect.stringContaining('tile'));
    expect(await titles('1 for 1')).toContain("Let 'tile' do as well");
});

test('what is only missing so far is a hint in a draft', async () => {
    const { wrong, on } = allPlanChecks.find(({ code }) => code === 'not-revisited')!;
    const severities = async (text: string): Promise<string[]> => (await problemsOn({ 'example.course': text }, on)).filter(({ code }) => code === 'not-revisited').map(({ severity }) => severity);
    expect(await severities(wrong)).toEqual(['information']);
    expect(await severities(wrong.replace('lesson weigh-1\n', 'lesson weigh-1\n  draft\n'))).toEqual(['hint']);
});

// What a writer has half typed or taken away must neither stop the checks nor let a mend break the text.
test.each([...otherCases, ...adaptedCases.slice(0, 1)].flatMap(({ code, fires }) => fires.slice(0, 1).map(one => ({ code, ...one }))))('$code: any line may be missing', async ({ on, text }) => {
    const { files } = readFixture(text);
    const [name, whole] = Object.entries(files)[0]!;
    const lines = whole.split('\n');
    for (const gone of lines.keys()) {
        const broken = { ...files, [name]: lines.filter((_, index) => index !== gone).join('\n') };
        const before = await problemsOn(broken, on);
        const errors = before.filter(({ severity }) => severity === 'error').length;
        for (const fix of before.filter(problem => allPlanChecks.some(({ code }) => code === problem.code)).flatMap(({ fixes }) => fixes ?? [])) {
            const after = await problemsOn(mend(broken, fix), on);
            expect(after.filter(({ severity }) => severity === 'error').length, `${fix.title} without line ${gone + 1}`).toBeLessThanOrEqual(errors);
        }
    }
});
