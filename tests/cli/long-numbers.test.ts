/** A key that was held down: numbers of four hundred digits wherever a lesson and an adaptation count. */
import { expect, test } from 'vitest';
import { folder, haversack } from './run.js';

const long = '9'.repeat(400);
const text = `lesson a "A"
  activity x "X" ${long} min
    do: Talk.
    show fraction-bar 1/${long}
  activity y "Y" 5 min
    do: Talk.
  practice p "P" ${long} items
    sums 2 to 10
course c "C"
  unit u "U"
    a
class k "K"
  teaches c
  learners 7
  starts 2026-09-07
  meets mon
adaptation s of c for k
  retime activity a.y to ${long} min
  split activity a.x after ${long} min
  retime a to 7 min
`;

test.each([['check'], ['changes', '--class', 'k'], ['notes', '--week', '1'], ['brief', '--week', '1', '--format', 'md'], ['schedule']])('%s tells no sum that is no number', async (command, ...options) => {
    const { code, out, err } = await haversack([command, folder({ 'a.course': text }), ...options, '--today', '2026-09-01']);
    expect(code, err).toBeLessThan(2);
    expect(out).not.toMatch(/NaN|Infinity|undefined/);
});
