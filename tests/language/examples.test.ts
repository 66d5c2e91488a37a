import { expect, test } from 'vitest';
import { exampleFiles } from './examples.js';
import { nameOf, problemsIn } from './fixture.js';

test.each(['first-steps', 'year'] as const)('the example %s loads without a word', async name => {
    const problems = await problemsIn(exampleFiles(name));
    expect(problems.map(({ uri, at, code, message }) => `${nameOf(uri)}:${at.start.line + 1} ${code}: ${message}`)).toEqual([]);
});
