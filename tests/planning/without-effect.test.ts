import { describe, expect, test } from 'vitest';
import type { AdaptationSheet, ClassSheet } from '@haversack/language/sheets/sheet';
import { planWeek } from '../../server/planning/week.js';
import { adaptation, course, klass, lesson, meets, mention, on, programme, range } from './sheets.js';

/** The assumptions of one lesson of the course "c" for the class "k"; there is a course "d" and a class "m" besides. */
const said = (own: Partial<ClassSheet>, ...adaptations: AdaptationSheet[]) => planWeek(programme(lesson('l'), course('c', ['l']), course('d', ['l']),
    klass('k', 'c', 7, { starts: on('2026-09-07'), meets: meets('mon'), ...own }), klass('m', 'c', 4), ...adaptations), { week: 1, class: 'k' }).assumptions;

describe('what is declared and changes nothing yet is said', () => {
    test("an adaptation for the class, or of its course for all", () => {
        const sentence = ['The changes of “Smaller attic” are not made in these weeks yet.'];
        expect(said({}, adaptation('smaller-attic', { of: mention('c'), forClass: mention('k') }))).toEqual(sentence);
        expect(said({}, adaptation('smaller-attic', { forClass: mention('k') }))).toEqual(sentence);
        expect(said({}, adaptation('smaller-attic', { of: mention('c') }))).toEqual(sentence);
        expect(said({}, adaptation('a', { of: mention('c') }), adaptation('b', { forClass: mention('k') }))).toEqual(['The changes of “A” and “B” are not made in these weeks yet.']);
    });
    test('not one of another class or course, nor one without changes', () => {
        expect(said({}, adaptation('a', { of: mention('c'), forClass: mention('m') }), adaptation('b', { of: mention('d') }),
            adaptation('e'), adaptation('f', { of: mention('c'), changes: [] }))).toEqual([]);
    });
    test('nothing is said of days to catch up and of the log: the dates follow them', () => {
        const catchUp = { days: 1, everyLessons: 20, at: range() };
        expect(said({ catchUp, log: [{ lesson: mention('l'), on: on('2026-09-07'), at: range() }] })).toEqual([]);
    });
});
