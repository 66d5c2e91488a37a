import { expect, test } from 'vitest';
import { weekOn } from '../../server/planning/week-on.js';

const week = (number: number, from?: string, to?: string) => ({ number, from, to, meetings: [], remarks: [] });
// Monday to Thursday, a week off, Monday to Thursday, and a week with one meeting.
const weeks = [week(1, '2026-09-07', '2026-09-10'), week(3, '2026-09-21', '2026-09-24'), week(4, '2026-09-28')];

test.each([
    ['before the term', '2026-08-01', 1], ['on its first day', '2026-09-07', 1], ['on the last day of a week', '2026-09-10', 1], ['after the last meeting of a week, the next that has one', '2026-09-11', 3],
    ['in the week off', '2026-09-16', 3], ['on the only day of a week', '2026-09-28', 4], ['after the term, its last week', '2027-01-01', 4]
])('%s', (_, today, number) => {
    expect(weekOn({ weeks }, today)).toBe(number);
});

test('weeks without dates: the first; what has dates counts alone', () => {
    expect(weekOn({ weeks: [week(1), week(2)] }, '2026-09-07')).toBe(1);
    expect(weekOn({ weeks: [] }, '2026-09-07')).toBe(1);
    expect(weekOn({ weeks: [week(1), ...weeks.slice(1)] }, '2026-09-07')).toBe(3);
});
