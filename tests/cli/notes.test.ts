import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { firstSteps, folder, haversack } from './run.js';

const notes = (...args: string[]) => haversack(['notes', firstSteps, ...args]);

describe.concurrent('notes', () => {
    test('Markdown, where nothing else is asked for, at 170 words a minute', async () => {
        const { code, out, err } = await notes('--week', '1');
        expect({ code, err }).toEqual({ code: 0, err: '' });
        expect(out).toMatch(/^# Speaking notes: week 1 of 9\n\nThe Cupboard Orchestra, /);
        expect(out).toMatch(/About [\d.]+ min\. Counted so: \d+ words at 170 a minute/);
        expect(out).toContain('## Welcome and the week at a glance (');
    });

    test('at another rate: the same words, more minutes', async () => {
        const read = async (rate: string) => (JSON.parse((await notes('--week', '1', '--rate', rate, '--format', 'json')).out) as { notes: { rate: number; words: number; shown: number; time: { exact: string } } }).notes;
        const [slow, quick] = [await read('100'), await read('183')];
        expect(slow).toMatchObject({ rate: 100, words: quick.words, shown: quick.shown });
        expect(quick.words).toBeGreaterThan(100);
        expect(slow.time.exact).not.toBe(quick.time.exact);
    });

    test('as text, and to a file as its ending says', async () => {
        const { out } = await notes('--week', '2', '--format', 'text');
        expect(out).toMatch(/^Speaking notes: week 2 of 9\n/);
        for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
        const file = join(folder({}), 'week-2.txt');
        expect(await notes('--week', '2', '--out', file)).toEqual({ code: 0, out: '', err: `Wrote ${file}\n` });
        expect(readFileSync(file, 'utf8')).toBe(out);
    });

    test('for a class of the year', async () => {
        const { code, out } = await haversack(['notes', 'examples/year', '--week', '3', '--class', 'friday-table', '--today', '2026-09-01']);
        expect(code).toBe(0);
        expect(out).toContain('The Friday table');
    });

    test('errors in the text: notes of what could be read, a word about it, exit code 1', async () => {
        const path = folder();
        const file = join(path, 'lessons/listen-1.lesson');
        writeFileSync(file, readFileSync(file, 'utf8').replace('hand-bell     1', 'hand-bel     1'));
        const { code, out, err } = await haversack(['notes', path, '--week', '1']);
        expect(code).toBe(1);
        expect(out).toMatch(/^# Speaking notes/);
        expect(err).toContain('1 error in the text: the outline shows what could be read.');
    });

    test.each([
        [['--week', '99'], 'There is no week 99'],
        [['--week', '1', '--rate', '0'], "'0' is no rate: give words a minute, a whole number from 40 to 400."],
        [['--week', '1', '--rate', 'quick'], "'quick' is no rate"],
        [['--week', '1', '--format', 'html'], "There is no format 'html' for speaking notes: use md, text or json."],
        [['--week', '1', '--class', 'nobody'], "There is no class 'nobody'."],
        [[], '--week']
    ])('%j: exit code 2 and one sentence', async (args, says) => {
        const { code, out, err } = await notes(...args);
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(err).toContain(says);
    });
});
