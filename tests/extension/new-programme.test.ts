import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { startingSoon } from '../../extension/commands/starting-soon.js';

// Weekdays from the calendar: 25 November 2026 is a Wednesday, 28 December 2026 a Monday.
it.each([
    [new Date(2026, 10, 25), '2026-11-30'],
    [new Date(2026, 10, 29), '2026-11-30'],
    [new Date(2026, 11, 28), '2027-01-04']
])('a class begun on %s starts the Monday after', (today, monday) => {
    const course = readFileSync('extension/new-programme/programme.course', 'utf8');
    const begun = startingSoon(course, today);
    expect(begun).toContain(`\n  starts ${monday}\n`);
    expect(begun.replace(/starts .*/, '')).toBe(course.replace(/starts .*/, ''));
});

it('changes nothing in a file without that line', () => {
    const lesson = readFileSync('extension/new-programme/lessons/stones-1.lesson', 'utf8');
    expect(startingSoon(lesson, new Date(2026, 10, 25))).toBe(lesson);
});
