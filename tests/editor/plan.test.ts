import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { planProgramme } from '../server/plan-programme.js';
import { session } from './session.js';
import { until } from './until.js';

/** The editor looks at the plan as of today: the class with too few kits starts on the Monday after next. */
function startingSoon(): string {
    const folder = mkdtempSync(join(tmpdir(), 'haversack-plan-'));
    const today = new Date();
    const day = (after: number): string => new Date(Date.UTC(today.getFullYear(), today.getMonth(), today.getDate() + (8 - today.getDay()) % 7 + 7 + after)).toISOString().slice(0, 10);
    const course = planProgramme['weighing.course'].replace('weighing-box 4', 'weighing-box 3').replace('starts 2026-09-14', `starts ${day(0)}`)
        .replace('arriving 2026-09-15', `arriving ${day(1)}`).replace('starts 2026-09-15', `starts ${day(1)}`).replace('sand 400 g', 'sand 2 kg');
    for (const [name, text] of Object.entries({ ...planProgramme, 'weighing.course': course })) writeFileSync(join(folder, name), text);
    return folder;
}

describe('a lead looks at the plan', () => {
    const folder = startingSoon();
    const editor = session({ folder });
    afterAll(() => rmSync(folder, { recursive: true, force: true }));

    it('is told which meeting is short of what', async () => {
        await editor().openFile('weigh.lesson');
        const list = await editor().problems.list(found => found.length > 0);
        expect(list).toMatchObject([{ file: 'weigh.lesson', line: 6, severity: 'warning' }]);
        expect(list[0]!.message).toMatch(/^Harbour co-op is short of 20 gram cubes on Mon \d+ \w+: 80 needed, 60 at hand\.$/);
    });

    it('sees week, minutes and amounts beside the text', async () => {
        expect(await editor().code.codeLenses(titles => titles.length === 2)).toEqual(['week 1 · 15 min', 'week 2 · 20 min']);
        await until('the amount at the end of the line', () => editor().code.lineText(6), text => /20 per pair {2}in kit\s*80 in all, 60 at hand$/.test(text.replace(/\u00a0/g, ' ')));
        await editor().screenshot('plan');
    });

    it('lets a stand-in do as well', async () => {
        await editor().code.goToLine(6, 10);
        expect(await editor().help.quickFixes()).toContain("Let 'bean' do as well");
        await editor().help.quickFix("Let 'bean' do as well");
        await until('the shortage to be gone', () => editor().problems.counts(), ({ warnings }) => warnings === 0);
        await editor().screenshot('plan-mended');
    });

    it('opens the brief at the lesson from its lens', async () => {
        await (await editor().code.codeLens('week 2 · 20 min')).click();
        await editor().webview().locator('#brief h1').waitFor();
        expect(await editor().webview().locator('#brief h1').innerText()).toBe('Week 2 of 2');
    });
});
