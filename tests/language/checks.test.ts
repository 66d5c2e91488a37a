import { describe, expect, test } from 'vitest';
import { allCodes } from '@haversack/language/checks/all-checks';
import { parserCode } from '@haversack/language/checks/reading';
import { lessonCases } from './cases/lessons.js';
import { namedFileCases } from './cases/named-files.js';
import { pictureCases } from './cases/pictures.js';
import { practiceCases } from './cases/practice.js';
import { readingCases } from './cases/reading.js';
import { safetyCases } from './cases/safety.js';
import { thingCases } from './cases/things.js';
import { check, mend, problemsIn, readFixture } from './fixture.js';

const cases = [...readingCases, ...thingCases, ...lessonCases, ...safetyCases, ...namedFileCases, ...pictureCases, ...practiceCases];

test('every code has a text in which it fires and one in which it stays silent', () => {
    const covered = cases.filter(({ fires, silent }) => fires.length > 0 && silent.length > 0).map(({ code }) => code).sort();
    expect(covered).toEqual(allCodes.filter(code => code !== parserCode).map(({ code }) => code).sort());
});

describe.each(cases)('$code', ({ code, fires, silent }) => {
    test.each(fires)('fires in %s', async text => {
        expect(readFixture(text).expected.map(mark => mark.code)).toContain(code);
        await check(text);
    });

    test.each(silent)('is silent in %s', async text => {
        expect(readFixture(text).expected.map(mark => mark.code)).not.toContain(code);
        await check(text);
    });

    test.each(fires)('its quick fixes mend %s', async text => {
        const { files } = readFixture(text);
        const before = await problemsIn(files);
        for (const problem of before.filter(one => one.code === code)) {
            expect(problem.fixes?.filter(fix => fix.preferred).length ?? 0).toBeLessThanOrEqual(1);
            for (const fix of problem.fixes ?? []) {
                const after = await problemsIn(mend(files, fix));
                const same = after.filter(one => one.code === code && one.message === problem.message && one.uri === problem.uri);
                expect(same.length, `${fix.title}: ${problem.message}`).toBeLessThan(before.filter(one => one.code === code && one.message === problem.message && one.uri === problem.uri).length);
                // A mend does not break what could be read.
                const unread = (problems: typeof before): number => problems.filter(one => readingCases.some(reading => reading.code === one.code && one.code !== 'unknown-name')).length;
                expect(unread(after), fix.title).toBeLessThanOrEqual(unread(before));
            }
        }
    });
});
