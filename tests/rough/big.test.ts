/** Files far larger than anybody writes, and prose made to take long: no crash, no overflow of the stack, and time that grows as the text does. */
import { describe, expect, test, vi } from 'vitest';
import { bigTexts, pathologicalProse } from './big-texts.js';
import { everything, worked } from './chance.js';
import { small } from './corpus.js';
import { MemoryProgramme, parserErrorsOf, reportOf } from './memory-programme.js';
import { outputsOf } from './outputs.js';

vi.setConfig({ testTimeout: 3_600_000 });

interface Times {
    reading: number;
    checks: number;
    writing: number;
}

/** The sample takes a two hundredth; HAVERSACK_PART sets another part, when a slow one is looked into. */
const part = Number(process.env['HAVERSACK_PART'] ?? (everything ? 1 : 1 / 200));
const patience = 120_000;
/** The sample takes each of some texts. */
const each = everything ? 1 : 27;

const stopwatch = (): (() => number) => {
    let last = worked();
    return () => {
        const before = last;
        last = worked();
        return last - before;
    };
};

/** Reads, checks and writes a programme of which one file is this text. */
async function through(written: string): Promise<Times> {
    // The first lesson of the course, so that the brief shows what it says.
    const text = written.replace('lesson long "Long"', 'lesson listen-1 "Long"');
    const programme = await MemoryProgramme.of([...small.filter(({ file }) => file !== 'lessons/listen-1.lesson'), { file: 'big.lesson', text: '' }]);
    const lap = stopwatch();
    await programme.set('big.lesson', text);
    const reading = lap();
    const document = programme.document('big.lesson');
    expect(document.textDocument.getText().length).toBe(text.length);
    expect(parserErrorsOf(document)).toEqual([]);
    const end = text.length;
    expect(reportOf(document).problems.filter(({ offset, length }) => offset < 0 || offset + length > end)).toEqual([]);
    const problems = programme.problemsIn(document);
    expect(problems.filter(({ code }) => code === 'unread-text')).toEqual([]);
    JSON.stringify(problems);
    const checks = lap();
    const outputs = outputsOf(programme.programme());
    expect(outputs.length).toBeGreaterThan(15);
    return { reading, checks, writing: lap() };
}

const slower = ({ reading, checks, writing }: Times): number => reading + checks + writing;
const seconds = (milliseconds: number): string => (milliseconds / 1000).toFixed(2);

const told: { name: string; size: number; ratio: number; times: Times }[] = [];

describe('large files and pathological prose', () => {
    test.each([...bigTexts, ...pathologicalProse].filter(({ name }, index) => index % each === 0 && name.includes(process.env['HAVERSACK_ONLY'] ?? '')))('$name', async ({ name, full, text }) => {
        const n = Math.max(8, Math.floor(full * part / 2));
        const half = everything ? await through(text(n)) : undefined;
        const whole = text(2 * n);
        const times = await through(whole);
        const ratio = half ? slower(times) / slower(half) : 0;
        told.push({ name, size: whole.length, ratio, times });
        if (everything) console.log(`${name}: ${whole.length} characters, ${seconds(times.reading)} s to read, ${seconds(times.checks)} s to check, ${seconds(times.writing)} s to plan and write${half ? `; ${ratio.toFixed(1)} times as long as for half of it` : ''}`);
        expect(slower(times)).toBeLessThan(patience);
    });
});

test('in all', () => {
    const suspicious = told.filter(({ ratio, times }) => ratio > 3 && slower(times) > 2000);
    console.log(`${told.length} large texts, ${Math.round(told.reduce((sum, { size }) => sum + size, 0) / 1e6)} MB in all; ${suspicious.length} took more than three times as long as half of them and over two seconds: ${suspicious.map(({ name, ratio }) => `${name} (${ratio.toFixed(1)})`).join(', ') || 'none'}.`);
    expect(told.length).toBeGreaterThan(0);
});
