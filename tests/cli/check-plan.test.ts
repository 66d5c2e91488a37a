import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { planProgramme } from '../server/plan-programme.js';
import { folder, haversack } from './run.js';

const tooFewKits = { ...planProgramme, 'weighing.course': planProgramme['weighing.course'].replace('weighing-box 4', 'weighing-box 3') };

describe.concurrent('check looks at the plan', () => {
    test('as of a day: a thing that is short is told until the meeting is over', async () => {
        const path = folder(tooFewKits);
        const before = await haversack(['check', '.', '--today', '2026-09-07'], path);
        expect(before.code).toBe(1);
        expect(before.out).toContain('weigh.lesson:6:7 warning short-at-meeting: Harbour co-op is short of 20 gram cubes on Mon 14 Sep: 80 needed, 60 at hand.');
        expect(await haversack(['check', '.', '--today', '2026-09-22'], path)).toMatchObject({ code: 0, out: '3 files with 2 lessons: no problems.\n' });
    });

    test('of one file: only what is in it', async () => {
        const path = folder(tooFewKits);
        expect((await haversack(['check', join(path, 'weigh.lesson'), '--today', '2026-09-07'])).out).toContain('short-at-meeting');
        expect((await haversack(['check', join(path, 'weighing.course'), '--today', '2026-09-07'])).code).toBe(0);
    });

    test('with the titles of the quick fixes for machines', async () => {
        const { out } = await haversack(['check', folder(tooFewKits), '--today', '2026-09-07', '--format', 'json']);
        expect((JSON.parse(out) as { problems: object[] }).problems).toMatchObject([{ code: 'short-at-meeting', line: 6, fixes: expect.arrayContaining(["There are 4 of the kit 'weighing-box', not 3"]) as string[] }]);
    });

    test.each([['soon', "'soon' is no day"], ['2026-02-30', 'There is no 2026-02-30 in the calendar']])('--today %s is refused in one sentence', async (day, says) => {
        const { code, out, err } = await haversack(['check', folder(planProgramme), '--today', day]);
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(err).toContain(says);
    });
});
