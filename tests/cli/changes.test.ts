import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { planProgramme } from '../server/plan-programme.js';
import { folder, haversack } from './run.js';

const programme = folder({
    ...planProgramme,
    'harbour.course': 'adaptation harbour-days "Harbour days" of weighing for harbour\n  skip lesson weigh-1 because: Covered at the market visit.\n  retime activity weigh-2.three-bags to 10 min\n'
});
const changes = (...args: string[]) => haversack(['changes', programme, '--today', '2026-09-01', ...args]);

describe.concurrent('changes', () => {
    test('text, where nothing else is asked for: reason, loss, minutes, things and money before and after', async () => {
        const { code, out, err } = await changes('--class', 'harbour');
        expect({ code, err }).toEqual({ code: 0, err: '' });
        expect(out).toMatch(/^What is changed: Weighing, Harbour co-op\n\nWith the changes of “Harbour days”\n/);
        expect(out).toMatch(/ {2}- “Two bags” is left out\.\n {4}All lessons together take 20 min instead of 35\.\n {4}Because: Covered at the market visit\.\n/);
        expect(out).toMatch(/ {4}Lost: .*“Compare two masses”/);
        // By hand: 7 learners need 50 g + 100 g each, 1050 g, and without the first lesson 700 g; 4 pairs need 20 cubes each.
        expect(out).toContain('  10 minutes of lessons instead of 35.\n');
        expect(out).toContain('  Fine sand: 700 g instead of 1.05 kg (350 g less)\n');
        expect(out).toContain('  Gram cubes: none instead of 80 (no longer needed)\n');
        // By hand: as written, 400 g less 350 g, 500 g more on the 15th, 700 g needed: 150 g short. With the changes 700 g of 400 g on the 14th: 300 g short. One pack of 2.00 EUR either way.
        expect(out).toContain('  To buy: 2.00 EUR, as before.\n');
        expect(out).toContain('  1 meeting with a lesson instead of 2; the last on Mon 14 Sep 2026 instead of Mon 21 Sep 2026.\n');
    });

    test('the first class, where none is named; Markdown, JSON and a page as asked for', async () => {
        expect((await changes('--format', 'md')).out).toMatch(/^# What is changed\n\nWeighing, Harbour co-op\n/);
        expect(JSON.parse((await changes('--format', 'json')).out)).toMatchObject({ format: 'haversack-changes', version: 1, changes: { ledger: { minutes: { before: 35, after: 10 } } } });
        const { out } = await changes('--format', 'html');
        expect(out).toMatch(/^<!doctype html>\n<html lang="en"/);
        expect(out).not.toMatch(/<script|<link|src=|file:\/\//);
    });

    test('to a file, as its ending says', async () => {
        const file = join(folder({}), 'changes.html');
        expect(await changes('--out', file)).toEqual({ code: 0, out: '', err: `Wrote ${file}\n` });
        expect(readFileSync(file, 'utf8')).toBe((await changes('--format', 'html')).out);
    });

    test('a class without an adaptation: one sentence, and what to write', async () => {
        const { code, out } = await changes('--class', 'millpond');
        expect(code).toBe(0);
        expect(out).toContain('No adaptation applies to “Millpond co-op”: it is taught “Weighing” as the course is written.');
        expect(out).toContain('\n  adaptation millpond-changes of weighing for millpond\n    skip lesson weigh-1 because:');
    });

    test('what was written as its own example is a programme without an error', async () => {
        const { out } = await changes('--class', 'millpond');
        const lines = out.split('\n').filter(line => /^ {2}(?:adaptation| )/.test(line)).map(line => line.slice(2)).join('\n');
        const own = folder({ ...planProgramme, 'millpond.course': `${lines}\n` });
        const checked = JSON.parse((await haversack(['check', own, '--today', '2026-09-01', '--format', 'json'])).out) as { problems: { severity: string }[] };
        expect(checked.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
        expect((await haversack(['changes', own, '--class', 'millpond'])).out).toContain('“Two bags” is left out.');
    });

    test('refuses what it does not know', async () => {
        const unknown = await changes('--class', 'nobody');
        expect({ code: unknown.code, err: unknown.err }).toEqual({ code: 2, err: 'haversack: There is no class \'nobody\'. The classes are harbour, millpond.\n' });
        expect((await changes('--format', 'ics')).err).toContain("There is no format 'ics' for changes: use text, md, json or html.");
    });

    test('errors in the text: what could be read, a word about it, exit code 1', async () => {
        const broken = folder({ ...planProgramme, 'harbour.course': 'adaptation a of weighing for harbour\n  skip lesson nowhere\n  skip lesson weigh-1\n' });
        const { code, out, err } = await haversack(['changes', broken]);
        expect(code).toBe(1);
        expect(err).toContain('the page of changes shows what could be read');
        expect(out).toMatch(/- Leave out “Nowhere”\.\n {4}No effect: /);
        expect(out).toContain('1 change has no effect.');
    });
});
