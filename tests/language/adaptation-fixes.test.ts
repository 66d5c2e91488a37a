import { expect, test } from 'vitest';
import { mend, problemsIn } from './fixture.js';

const programme = (changes: string): string => `course measuring
  unit a
    weigh-1
    weigh-2
lesson weigh-1
  activity lift 5 min
    do: Lift.
  activity drop 5 min
    do: Drop.
lesson weigh-2
  activity walk 5 min
    do: Walk.
adaptation shorter of measuring
${changes}`;

test('a lesson of which nothing is left is left out instead: one line for those of its parts, with its reason', async () => {
    const files = { 'a.course': programme('  skip activity weigh-1.drop\n  retime weigh-2 to 4 min\n  skip activity weigh-1.lift because: It is too heavy.\n') };
    const [told, ...others] = await problemsIn(files);
    expect([told!.code, others]).toEqual(['adaptation-empties', []]);
    expect(told!.fixes!.map(({ title }) => title)).toEqual(["Leave out 'weigh-1' instead", 'Remove this change']);
    const mended = mend(files, told!.fixes![0]!);
    expect(mended).toEqual({ 'a.course': programme('  retime weigh-2 to 4 min\n  skip lesson weigh-1 because: It is too heavy.\n') });
    expect(await problemsIn(mended)).toEqual([]);
    expect(await problemsIn(mend(files, told!.fixes![1]!))).toEqual([]);
});

test('a lesson whose last part has moved away keeps its line unless the move is taken back', async () => {
    const files = { 'a.course': programme('  move activity weigh-2.walk after weigh-1.lift\n') };
    const [told] = await problemsIn(files);
    expect([told!.code, told!.fixes!.map(({ title }) => title)]).toEqual(['adaptation-empties', ['Remove this change']]);
    expect(await problemsIn(mend(files, told!.fixes![0]!))).toEqual([]);
});
