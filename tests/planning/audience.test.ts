import { describe, expect, test } from 'vitest';
import { chooseClass } from '../../server/planning/audience.js';
import { course, klass, lesson, programme } from './sheets.js';

const two = programme(lesson('a'), lesson('b'), course('first', ['a']), course('second', ['b']), klass('one', 'first', 3), klass('other', 'second', 5));
const names = (audience: ReturnType<typeof chooseClass>) => [audience.class?.name, audience.course?.name, audience.lessons.map(l => l.name)];

describe('which class and course', () => {
    test.each([
        ['nothing named: the first class', two, undefined, ['one', 'first', ['a']]],
        ['a class', two, 'other', ['other', 'second', ['b']]],
        ['a course: the first class that is taught it', two, 'second', ['other', 'second', ['b']]],
        ['both', two, { class: 'one', course: 'second' }, ['one', 'second', ['b']]],
        ['no class: the first course', programme(lesson('a'), course('first', ['a'])), undefined, [undefined, 'first', ['a']]],
        ['a course that nobody is taught', programme(lesson('a'), course('first', ['a']), klass('one', 'x', 3)), 'first', [undefined, 'first', ['a']]],
        ['no course: all lessons', programme(lesson('b'), lesson('a')), undefined, [undefined, undefined, ['b', 'a']]]
    ] as const)('%s', (_, sheets, wanted, expected) => {
        const audience = chooseClass(sheets, wanted);
        expect(names(audience)).toEqual(expected);
    });
    test('unknown names are said and passed over', () => {
        expect(chooseClass(two, 'nobody').assumptions).toEqual(['No class is called “nobody”: “One” is planned.']);
        expect(chooseClass(two, { course: 'nothing' }).assumptions).toEqual(['No course is called “nothing”: “First” is planned.']);
        expect(chooseClass(programme(), { class: 'x', course: 'y' }).assumptions.slice(0, 2)).toEqual([
            'No class is called “x”: no class is counted.', 'No course is called “y”: all lessons are planned.'
        ]);
    });
    test('a class that teaches nothing, or nothing known', () => {
        const sheets = (teaches?: string) => programme(lesson('a'), course('first', ['a']), klass('one', teaches, 3));
        expect(chooseClass(sheets()).assumptions).toEqual(['The class “One” does not say what it is taught: “First” is planned.']);
        expect(chooseClass(sheets('gone')).assumptions).toEqual(['The class “One” teaches “gone”, which no file declares: “First” is planned.']);
    });
    test('lessons that no file declares are left out, said; a lesson listed twice is taught twice', () => {
        const audience = chooseClass(programme(lesson('a'), course('first', ['a', 'gone', 'a'])));
        expect(audience.lessons.map(l => l.name)).toEqual(['a', 'a']);
        expect(audience.assumptions).toEqual(['The course “First” names lessons that no file declares; they are left out: “gone”.']);
        expect(chooseClass(programme(course('first', ['a', 'b', 'c', 'd', 'e']))).assumptions.join()).toContain('left out: “a”, “b”, “c” and 2 more.');
    });
});
