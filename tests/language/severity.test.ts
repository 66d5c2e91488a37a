import { describe, expect, test } from 'vitest';
import { allChecks } from '@haversack/language/checks/all-checks';
import { checkProblems } from '@haversack/language/checks/problems-of';
import { ProgrammeView } from '@haversack/language/checks/programme-view';
import { gatherProgramme } from '@haversack/language/sheets/programme';
import type { FileSheet } from '@haversack/language/sheets/sheet';
import { problemsIn } from './fixture.js';

const drafted = (text: string): string => text.replace(/^lesson .*$/gm, '$&\n  draft');
const inLessons = allChecks.filter(({ wrong }) => wrong.includes('lesson '));

describe('a lesson marked draft', () => {
    test.each(inLessons.filter(({ missing }) => missing))('has a hint instead of $code', async ({ code, wrong, severity, beside }) => {
        const problems = (await problemsIn({ 'a.course': drafted(wrong), ...beside })).filter(problem => problem.code === code);
        const lessons = drafted(wrong).split('\n').findIndex(line => line.startsWith('lesson '));
        expect(problems.length).toBeGreaterThan(0);
        for (const problem of problems) expect(problem.severity).toBe(problem.at.start.line >= lessons ? 'hint' : severity);
    });

    test.each(inLessons.filter(({ missing }) => !missing))('keeps $code as it is', async ({ code, wrong, severity, beside }) => {
        const problems = (await problemsIn({ 'a.course': drafted(wrong), ...beside })).filter(problem => problem.code === code);
        expect(problems.map(problem => problem.severity)).toEqual(problems.map(() => severity));
        expect(problems.length).toBeGreaterThan(0);
    });
});

describe('severities that a person has set', () => {
    const at = { start: { line: 0, character: 9 }, end: { line: 0, character: 18 } };
    const declared = { name: 'gram-cube', title: 'Gram cube', uri: 'file:///a.kit', at, whole: at };
    const sheet: FileSheet = {
        uri: 'file:///a.kit', materials: [{ ...declared, kind: 'material', parts: [], packs: [], standIns: [], cautions: [], notes: [] }],
        prints: [], books: [], games: [], kits: [], lessons: [], objectives: [], frameworks: [], courses: [], classes: [], adaptations: [], unreadable: []
    };
    const view = new ProgrammeView(gatherProgramme([sheet]));

    test('change a code or switch it off', () => {
        expect(checkProblems(sheet, view).map(({ code, severity }) => [code, severity])).toEqual([['missing-use', 'warning']]);
        expect(checkProblems(sheet, view, { 'missing-use': 'error' }).map(({ severity }) => severity)).toEqual(['error']);
        expect(checkProblems(sheet, view, { 'missing-use': 'off' })).toEqual([]);
    });

    test('a line that is wrong in itself has no second message', () => {
        expect(checkProblems({ ...sheet, brokenLines: [0] }, view)).toEqual([]);
    });
});
