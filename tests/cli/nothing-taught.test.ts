import { expect, test } from 'vitest';
import { planProgramme } from '../server/plan-programme.js';
import { folder, haversack } from './run.js';

const programme = folder({ ...planProgramme, 'harbour.course': 'adaptation harbour-days "Harbour days" of weighing for harbour\n  skip lesson weigh-1\n  skip lesson weigh-2\n' });
const says = 'The adaptation “Harbour days” leaves out all 2 lessons';

test.each([['brief', 'write'], ['notes', 'speak']])('%s says who leaves out every lesson', async (command, verb) => {
    expect(await haversack([command, programme, '--class', 'harbour', '--week', '1'])).toEqual({ code: 2, out: '', err: `haversack: ${says}, so there is no week to ${verb} about.\n` });
});

test('check tells it at the last of the lines', async () => {
    expect((await haversack(['check', programme, '--today', '2026-09-01'])).out).toMatch(new RegExp(`harbour\\.course:3:3 warning adapted-nothing-left: ${says}, so nothing is taught\\.`));
});
