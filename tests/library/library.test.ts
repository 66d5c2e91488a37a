import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { briefHtml, briefJson, briefMarkdown, planTerm, planWeek, readProgramme, shoppingList, termCalendar, termHtml, termJson, termMarkdown, type Texts } from '@haversack/server/library';
import { firstSteps, folder, haversack } from '../cli/run.js';
import { writeFileSync } from 'node:fs';

const today = '2026-01-01';

/** The files of a folder by their paths in it. */
function textsIn(path: string): Texts {
    const files = readdirSync(path, { recursive: true, withFileTypes: true }).filter(entry => entry.isFile()).map(entry => join(entry.parentPath, entry.name));
    return Object.fromEntries(files.map(file => [file.slice(path.length + 1).replaceAll('\\', '/'), readFileSync(file, 'utf8')]));
}

describe('reading', () => {
    test('finds what the command line finds, at the same places', async () => {
        const copy = folder();
        writeFileSync(join(copy, 'lessons/more.lesson'), 'lesson more\n  follows nowhere\n  materials\n    hand-bel 1 per pair in kit\n  activity a 9999 min\n');
        const listed = JSON.parse((await haversack(['check', '.', '--format', 'json', '--today', today], copy)).out) as { problems: { file: string; line: number; column: number; severity: string; code: string; message: string; fixes: string[] }[] };
        const { problems } = await readProgramme(textsIn(copy), { today });
        expect(listed.problems.length).toBeGreaterThan(2);
        expect(problems.map(({ path, range, severity, code, message, mends }) => ({
            file: path, line: range.start.line + 1, column: range.start.character + 1, severity, code, message, fixes: mends.map(({ title }) => title)
        }))).toEqual(listed.problems);
    });

    test('gives mends as changes of the texts that were given', async () => {
        const texts: Record<string, string> = { 'a.kit': 'material drum\r\n  reusable\r\n', 'deep/a.lesson': 'lesson a\r\n  materials\r\n    drumm 1 per pair\r\n' };
        const { problems } = await readProgramme(texts, { today });
        const [{ mends }] = problems.filter(({ message }) => message.includes("'drumm'")) as [typeof problems[number]];
        expect(mends.filter(({ preferred }) => preferred)).toHaveLength(1);
        const { changes } = mends.find(({ preferred }) => preferred)!;
        for (const { path, range, text } of changes) texts[path] = TextDocument.applyEdits(TextDocument.create('', '', 0, texts[path]!), [{ range, newText: text }]);
        expect(texts['deep/a.lesson']).toBe('lesson a\r\n  materials\r\n    drum 1 per pair\r\n');
        expect((await readProgramme(texts, { today })).problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    });

    test('reads calendars that a class names, by their paths', async () => {
        const course = 'class a\n  learners 4\n  starts 2026-09-07\n  ends 2026-09-18\n  meets mon\n  off from "town/days.ics"\n';
        const day = 'BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Town//Days//EN\r\nBEGIN:VEVENT\r\nUID:1@town.example\r\nDTSTAMP:20260101T000000Z\r\nDTSTART;VALUE=DATE:20260907\r\nSUMMARY:Town day\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n';
        const lesson = 'lesson a\n  activity b 10 min\n    do: Sing.\n';
        const { programme } = await readProgramme({ 'c/a.course': course, 'c/town/days.ics': day, 'a.lesson': lesson }, { today });
        expect(planTerm(programme, { class: 'a', today }).schedule.weeks.flatMap(week => week.meetings.map(({ date }) => date))).toContain('2026-09-14');
        expect(planTerm(programme, { class: 'a', today }).schedule.daysOff).toMatchObject([{ from: '2026-09-07', title: 'Town day' }]);
    });

    test('takes nothing, and texts that are no programme', async () => {
        const { programme, problems } = await readProgramme({}, { today });
        expect(problems).toEqual([]);
        expect(planWeek(programme, { week: 1, today }).lessons).toEqual([]);
        for (const text of ['', '\0\u202e{', 'lesson', '# '.repeat(999)]) {
            const read = await readProgramme({ '../../odd name?.lesson': text }, { today });
            expect(read.problems.every(({ path }) => path === '../../odd name?.lesson')).toBe(true);
            expect(briefMarkdown(planWeek(read.programme, { week: 1, today }))).not.toBe('');
        }
    });

    test.each(['', '2026-02-30', '1 May', '2026-9-1'])("refuses the day '%s'", async day => {
        await expect(readProgramme({}, { today: day })).rejects.toThrow(RangeError);
        const { programme } = await readProgramme({}, { today });
        expect(() => planWeek(programme, { week: 1, today: day })).toThrow(RangeError);
        expect(() => planTerm(programme, { today: day })).toThrow(RangeError);
    });
});

describe('what is made of a programme is what the command line writes', () => {
    const read = readProgramme(textsIn(firstSteps), { today });
    const from = async (...args: string[]): Promise<string> => (await haversack([...args, '--today', today], firstSteps)).out;
    const brief = async (): Promise<ReturnType<typeof planWeek>> => planWeek((await read).programme, { week: 1, today });
    const term = async (): Promise<ReturnType<typeof planTerm>> => planTerm((await read).programme, { today });

    test('the brief as Markdown and as a page', async () => {
        expect(briefMarkdown(await brief())).toBe(await from('brief', '.', '--week', '1', '--format', 'md'));
        expect(briefHtml(await brief())).toBe(await from('brief', '.', '--week', '1', '--format', 'html'));
        expect(briefHtml(await brief(), { paper: 'letter' })).toBe(await from('brief', '.', '--week', '1', '--format', 'html', '--paper', 'letter'));
        expect(briefHtml(await brief(), { theme: 'dark' })).not.toBe(briefHtml(await brief()));
    });

    test('the term', async () => {
        expect(termHtml(await term())).toBe(await from('schedule', '.', '--format', 'html'));
        expect(termMarkdown(await term())).toContain('# ');
        expect(shoppingList((await term()).supplies)).toBe(await from('supplies', '.', '--format', 'csv'));
        expect(termCalendar((await read).programme, await term(), { now: `${today}T00:00:00Z` })).toBe(await from('schedule', '.', '--format', 'ics'));
    });

    test('figures for programs are JSON with their format', async () => {
        expect(JSON.parse(briefJson(await brief()))).toMatchObject({ format: 'haversack-brief', version: 1, brief: { week: 1 } });
        expect(JSON.parse(termJson(await term()))).toMatchObject({ format: 'haversack-term', version: 1, term: { today } });
    });
});
