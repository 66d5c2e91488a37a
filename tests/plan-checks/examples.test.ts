import { expect, test } from 'vitest';
import { readProgramme } from '../../server/cli/read-programme.js';
import { foundIn } from './fixture.js';
import { termOf } from '../../server/plan-checks/plan-term.js';

/** Every seventh day of the school year, so that each weekday comes up. */
const days = Array.from({ length: 53 }, (_, index) => new Date(Date.UTC(2026, 7, 1) + index * 6.99 * 86_400_000).toISOString().slice(0, 10));

test.each(['first-steps', 'year'])('the plan of the example %s holds on every day of its term', async name => {
    const { view } = await readProgramme(`examples/${name}`);
    const told = days.flatMap(day => foundIn(view, termOf(view, day)).map(({ uri, at, code, message }) => `${day} ${uri.split('/').pop()}:${at.start.line + 1} ${code}: ${message}`));
    expect(told).toEqual([]);
});
