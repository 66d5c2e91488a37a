import { expect, test } from 'vitest';
import { firstSteps, folder, haversack, startedHaversack } from './run.js';

// The other tests of this folder run the command line in their own process: here it is the built file, as people start it.
test.each([
    ['fine', ['check', firstSteps]],
    ['a page', ['brief', firstSteps, '--week', '1', '--format', 'html']],
    ['help', ['--help']],
    ['no such command', ['chek', firstSteps]],
    ['no such folder', ['check', 'nowhere']]
])('the built command line says the same as its source: %s', async (_, args) => {
    expect(await startedHaversack(args)).toEqual(await haversack(args));
});

test('problems are told by its exit code', async () => {
    const { code, out } = await startedHaversack(['check', '.'], folder({ 'a.lesson': 'lesson a\n  materials\n    drum 1 per pair\n' }));
    expect(code).toBe(1);
    expect(out).toContain("'drum'");
});
