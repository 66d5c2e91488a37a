import { describe, expect, test } from 'vitest';
import { allCodes } from '@haversack/language/checks/all-checks';
import { parserCode } from '@haversack/language/checks/reading';
import { mend, problemsIn } from './fixture.js';

// The parser's own code has no example: every line passes the lexer first, and none is known that then fails.
const codes = allCodes.filter(code => code !== parserCode);

describe('the examples that the reference shows', () => {
    test('codes are unique and written in lower case', () => {
        expect(new Set(allCodes.map(({ code }) => code)).size).toBe(allCodes.length);
        for (const { code } of allCodes) expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
    });

    test.each(codes)('$code: the wrong one has this problem and no other', async ({ code, wrong, severity, beside }) => {
        const problems = await problemsIn({ 'example.course': wrong, ...beside });
        expect([...new Set(problems.map(problem => `${problem.severity} ${problem.code}`))]).toEqual([`${severity} ${code}`]);
    });

    test.each(codes)('$code: the right one has no problem at all', async ({ right, beside }) => {
        const problems = await problemsIn({ 'example.course': right, ...beside });
        expect(problems.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
    });

    test.each(codes)('$code: after each quick fix the problem is gone', async ({ wrong, beside }) => {
        const files = { 'example.course': wrong, ...beside };
        for (const problem of await problemsIn(files)) {
            for (const fix of problem.fixes ?? []) {
                const left = await problemsIn(mend(files, fix));
                expect(left.filter(({ code, message }) => code === problem.code && message === problem.message), fix.title).toEqual([]);
            }
        }
    });

    // "Wherever a mend can be computed": what four in five codes must offer.
    test('four codes in five have a quick fix', async () => {
        const withFix: string[] = [];
        for (const { code, wrong, beside } of codes) {
            const problems = await problemsIn({ 'example.course': wrong, ...beside });
            if (problems.some(({ fixes }) => fixes && fixes.length > 0)) withFix.push(code);
        }
        expect(withFix.length / codes.length).toBeGreaterThanOrEqual(0.8);
    });
});
