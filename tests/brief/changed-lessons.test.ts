import { expect, test } from 'vitest';
import { lessonInWords, minutesInWords } from '../../server/brief/changes/sentences.js';
import { noMeetings } from '../../server/brief/term/sentences.js';
import type { LessonChange, MinutesChange } from '../../server/planning/ledger-figures.js';
import type { TermFigures } from '../../server/planning/term-figures.js';

const place = { uri: 'file:///a.course', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } } };
const lesson = (happened: LessonChange['happened'], ...says: string[]): LessonChange => ({ name: 'long', title: 'Long pour', place, happened, says });
const minutes = (before: number | undefined, after: number | undefined): MinutesChange => ({ name: 'long', title: 'Long pour', place, before, after });

test.each([
    ['left out (40 min less)', lesson('left out', '“Long pour” is left out'), minutes(40, undefined)],
    ['takes 30 min instead of 40', lesson('changed', '“Long pour” takes 30 min instead of 40'), minutes(40, 30)],
    ['“Tidy” takes 5 min (35 instead of 40 min)', lesson('changed', '“Tidy” of “Long pour” takes 5 min'), minutes(40, 35)],
    ['to “Tidy” is added: pouring chart (40 min)', lesson('changed', 'To “Tidy” of “Long pour” is added: pouring chart'), minutes(40, 40)],
    ['added: “Sing” (45 instead of 40 min)', lesson('changed', 'To “Long pour” is added: “Sing”'), minutes(40, 45)],
    ['left out', lesson('left out', '“Long pour” is left out'), undefined]
])('%s', (words, happened, time) => {
    expect(lessonInWords(happened, time)).toBe(words);
});

test('in a column of minutes, those of a lesson that is left out are less', () => {
    expect(minutesInWords(minutes(40, undefined))).toBe('40 less');
});

test('an empty calendar says who leaves out every lesson, else that there is none', () => {
    expect(noMeetings({ nothingTaught: 'The adaptation “Shorter” leaves out all 6 lessons' } as TermFigures)).toBe('The adaptation “Shorter” leaves out all 6 lessons, so there is nothing to put on days.');
    expect(noMeetings({} as TermFigures)).toBe('No lesson of this programme stands in a course yet, so there is nothing to put on days.');
});
