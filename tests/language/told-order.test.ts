/** What is said of the order of a course: lessons, objectives and words, each with its mends. */
import { expect, test } from 'vitest';
import { toldOf } from './telling.js';

const taught = (...names: string[]): string => names.map(name => `lesson ${name}\n  about: ${name}.\n`).join('');
const course = (name: string, ...lessons: string[]): string => `course ${name}\n  unit one-${name}\n${lessons.map(lesson => `    ${lesson}\n`).join('')}`;

test.each<[string, string, string]>([
    ['after the nearest before it of its family, in the first course that has it', `${course('measuring', 'weigh-1', 'fill-2', 'weigh-2', 'weigh-4')}${course('more', 'weigh-2')}${taught('weigh-1', 'weigh-2', 'weigh-3', 'weigh-4', 'fill-2')}`, `'weigh-3' (14): Lesson 'weigh-3' is in no course, so it is never taught. Add it to a unit.
  mend*: Teach it after 'weigh-2'
    |     weigh-2
    +     weigh-3`],
    ['10 stands after 9, not after 1', `${course('measuring', 'weigh-1', 'weigh-9', 'weigh-2')}${taught('weigh-1', 'weigh-2', 'weigh-9', 'weigh-10')}`, `'weigh-10' (12): Lesson 'weigh-10' is in no course, so it is never taught. Add it to a unit.
  mend*: Teach it after 'weigh-9'
    |     weigh-9
    +     weigh-10`],
    ['the first of a family at the end of the last unit of the first course with units', `course empty\ncourse measuring\n  unit a "First"\n    fill-1\n  unit b "Last"\n    fill-2\n    weigh-2\n${course('more', 'fill-1')}${taught('fill-1', 'fill-2', 'weigh-2', 'weigh-1')}`, `'weigh-1' (17): Lesson 'weigh-1' is in no course, so it is never taught. Add it to a unit.
  mend: Add it to the unit 'Last'
    |     weigh-2
    +     weigh-1`],
    ['one without a number likewise', `${course('measuring', 'fill-1', 'fill-2')}${taught('fill-1', 'fill-2', 'fill', 'visit')}`, `'fill' (9): Lesson 'fill' is in no course, so it is never taught. Add it to a unit.
  mend: Add it to the unit 'One measuring'
    |     fill-2
    +     fill
'visit' (11): Lesson 'visit' is in no course, so it is never taught. Add it to a unit.
  mend: Add it to the unit 'One measuring'
    |     fill-2
    +     visit`],
    ['in a unit without lessons, a step further in than the unit', `course measuring\n   unit a "First"\n      about: None yet.\n${taught('fill-1')}`, `'fill-1' (4): Lesson 'fill-1' is in no course, so it is never taught. Add it to a unit.
  mend: Add it to the unit 'First'
    |       about: None yet.
    +       fill-1`],
    ['where no course has a unit it is told all the same', `course measuring\n${taught('fill-1')}`, `'fill-1' (2): Lesson 'fill-1' is in no course, so it is never taught. Add it to a unit.`],
    ['where there is no course nothing is', taught('fill-1'), ''],
    ['numbers may be joined to the word', `${course('measuring', 'week1', 'week3')}${taught('week1', 'week2', 'week3')}`, `'week2' (7): Lesson 'week2' is in no course, so it is never taught. Add it to a unit.
  mend*: Teach it after 'week1'
    |     week1
    +     week2`],
    ['a name that a line half says, or misspells, may be this one', `${course('measuring', 'weigh-1', 'wiegh-2')}${taught('weigh-1', 'weigh-2')}`, '']
])('a lesson in no course: %s', async (_, text, told) => expect(await toldOf('lesson-not-taught', text)).toBe(told));

test.each<[string, string, string]>([
    ['each time after the first', `${course('measuring', 'weigh-1', 'weigh-2', 'weigh-1', 'weigh-1')}${taught('weigh-1', 'weigh-2')}`, `'weigh-1' (5): Lesson 'weigh-1' is already taught in this course. Keep one of the two lines.
  see 'weigh-1' (3): 'weigh-1' is taught here first
  mend*: Remove this 'weigh-1'
    |     weigh-1
    -     weigh-1
'weigh-1' (6): Lesson 'weigh-1' is already taught in this course. Keep one of the two lines.
  see 'weigh-1' (3): 'weigh-1' is taught here first
  mend*: Remove this 'weigh-1'
    |     weigh-1
    -     weigh-1`],
    ['one that is not there has its own message', `${course('measuring', 'weigh-9', 'weigh-9')}${taught('weigh-1')}`, '']
])('a lesson twice in a course: %s', async (_, text, told) => expect(await toldOf('taught-twice', text)).toBe(told));

test.each<[string, string, string]>([
    ['the prerequisite moves up, or goes from the list', `${course('measuring', 'weigh-1', 'weigh-2', 'weigh-3')}lesson weigh-1\n  follows weigh-3, weigh-2\nlesson weigh-2\n  follows weigh-1\nlesson weigh-3\n  about: Three.\n`, `'weigh-3' (7): Lesson 'weigh-1' follows 'weigh-3', but the course 'measuring' teaches 'weigh-3' later.
  see 'weigh-3' (5): 'weigh-3' is taught here
  mend*: Teach 'weigh-3' before 'weigh-1'
    |   unit one-measuring
    +     weigh-3
    |     weigh-2
    -     weigh-3
  mend: Remove 'weigh-3' from 'follows'
    | lesson weigh-1
    -   follows weigh-3, weigh-2
    +   follows weigh-2`],
    ['told for the first course with that order, once', `${course('good', 'weigh-2', 'weigh-1')}${course('measuring', 'weigh-1', 'weigh-2')}${course('worse', 'weigh-1', 'weigh-2')}lesson weigh-1\n  follows weigh-2\nlesson weigh-2\n  about: Two.\n`, `'weigh-2' (14): Lesson 'weigh-1' follows 'weigh-2', but the course 'measuring' teaches 'weigh-2' later.
  see 'weigh-2' (8): 'weigh-2' is taught here
  mend*: Teach 'weigh-2' before 'weigh-1'
    |   unit one-measuring
    -     weigh-1
    |     weigh-2
    +     weigh-1
  mend: Remove 'weigh-2' from 'follows'
    | lesson weigh-1
    -   follows weigh-2`],
    ['the first time that the course teaches both counts', `${course('measuring', 'weigh-2', 'weigh-1', 'weigh-2')}lesson weigh-1\n  follows weigh-2\nlesson weigh-2\n  about: Two.\n`, '']
])('a prerequisite taught later: %s', async (_, text, told) => expect(await toldOf('follows-later', text)).toBe(told));

test.each<[string, string, string]>([
    ['three in a round, and one that only leads into it', 'lesson a\n  follows c, d\nlesson b\n  follows a\nlesson c\n  follows b\nlesson d\n  about: Four.\nlesson e\n  follows c\n', `'c' (2): These go round in a circle: 'a' follows 'c' follows 'b' follows 'a'. Remove one of them.
  mend: Remove 'c' from 'follows'
    | lesson a
    -   follows c, d
    +   follows d
'a' (4): These go round in a circle: 'b' follows 'a' follows 'c' follows 'b'. Remove one of them.
  mend: Remove 'a' from 'follows'
    | lesson b
    -   follows a
'b' (6): These go round in a circle: 'c' follows 'b' follows 'a' follows 'c'. Remove one of them.
  mend: Remove 'b' from 'follows'
    | lesson c
    -   follows b`],
    ['one by itself', 'lesson a\n  follows a\n', `'a' (2): 'a' follows itself.
  mend: Remove 'a' from 'follows'
    | lesson a
    -   follows a`],
    ['two rounds that share a lesson: each lesson has one', 'lesson a\n  follows b\nlesson b\n  follows a, c\nlesson c\n  follows b\n', `'b' (2): These go round in a circle: 'a' follows 'b' follows 'a'. Remove one of them.
  mend: Remove 'b' from 'follows'
    | lesson a
    -   follows b
'a' (4): These go round in a circle: 'b' follows 'a' follows 'b'. Remove one of them.
  mend: Remove 'a' from 'follows'
    | lesson b
    -   follows a, c
    +   follows c
'b' (6): These go round in a circle: 'c' follows 'b' follows 'c'. Remove one of them.
  mend: Remove 'b' from 'follows'
    | lesson c
    -   follows b`],
    ['objectives', 'objective a\n  builds on b\nobjective b\n  builds on a\nlesson l\n  objectives\n    introduces a, b\n', `'b' (2): These go round in a circle: 'a' builds on 'b' builds on 'a'. Remove one of them.
  mend: Remove 'b' from 'builds on'
    | objective a
    -   builds on b
'a' (4): These go round in a circle: 'b' builds on 'a' builds on 'b'. Remove one of them.
  mend: Remove 'a' from 'builds on'
    | objective b
    -   builds on a`],
    ['none: two ways to one lesson', 'lesson a\n  about: One.\nlesson b\n  follows a\nlesson c\n  follows a\nlesson d\n  follows b, c\n', ''],
    ['none: a name that nothing has', 'lesson a\n  follows zzz\n', '']
])('a circle: %s', async (_, text, told) => expect(await toldOf('circle', text)).toBe(told));

const goals = 'objective mass\nobjective length\n';
const lesson = (name: string, ...lines: string[]): string => `lesson ${name}\n${lines.map(line => `  ${line}\n`).join('')}`;
test.each<[string, string, string]>([
    ['later: introduced here as well, or that lesson moves up', `${goals}${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'objectives', '  practises mass')}${lesson('l-2', 'objectives', '  introduces mass')}`, `'mass' (9): Lesson 'l-1' practises 'mass', but the course 'measuring' introduces it only later, in 'l-2'.
  see 'l-2' (6): 'l-2' is taught here
  mend*: Introduce 'mass' in this lesson
    |     practises mass
    +     introduces mass
  mend: Teach 'l-2' before 'l-1'
    |   unit one-measuring
    -     l-1
    |     l-2
    +     l-1`],
    ['nowhere: behind what the lesson introduces already', `${goals}${course('measuring', 'l-1')}${lesson('l-1', 'objectives', '  introduces length', '  checks mass')}`, `'mass' (9): Lesson 'l-1' checks 'mass', but no lesson of the course 'measuring' introduces it.
  mend*: Introduce 'mass' in this lesson
    |   objectives
    -     introduces length
    +     introduces length, mass`],
    ['nowhere in this course: behind the last of its objectives', `${goals}${course('measuring', 'l-1')}${course('more', 'l-2')}${lesson('l-1', 'objectives', '  checks mass', 'words heavy')}${lesson('l-2', 'objectives', '  introduces mass')}`, `'mass' (11): Lesson 'l-1' checks 'mass', but no lesson of the course 'measuring' introduces it.
  mend*: Introduce 'mass' in this lesson
    |     checks mass
    +     introduces mass`],
    ['practised first in the very lesson that introduces it', `${goals}${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'objectives', '  practises mass', '  introduces mass')}${lesson('l-2', 'objectives', '  introduces mass')}`, ''],
    ['not where a lesson of the course is not known', `${goals}${course('measuring', 'l-1', 'l-9')}${lesson('l-1', 'objectives', '  checks mass')}`, ''],
    ['the course in which it is late, of two', `${goals}${course('good', 'l-2', 'l-1')}${course('late', 'l-1', 'l-2')}${lesson('l-1', 'objectives', '  practises mass')}${lesson('l-2', 'objectives', '  introduces mass')}`, `'mass' (13): Lesson 'l-1' practises 'mass', but the course 'late' introduces it only later, in 'l-2'.
  see 'l-2' (10): 'l-2' is taught here
  mend*: Introduce 'mass' in this lesson
    |     practises mass
    +     introduces mass
  mend: Teach 'l-2' before 'l-1'
    |   unit one-late
    -     l-1
    |     l-2
    +     l-1`]
])('an objective asked for too early: %s', async (_, text, told) => expect(await toldOf('practised-too-early', text)).toBe(told));

test.each<[string, string, string]>([
    ['checked in the last lesson that practises it', `${goals}${course('measuring', 'l-1', 'l-2', 'l-3')}${lesson('l-1', 'objectives', '  introduces mass')}${lesson('l-2', 'objectives', '  practises mass', '  checks length')}${lesson('l-3', 'objectives', '  practises mass')}`, `'mass' (10): 'mass' is introduced here, but no lesson of the course 'measuring' checks it afterwards.
  mend*: Check 'mass' in lesson 'l-3'
    |     practises mass
    +     checks mass`],
    ['behind what that lesson checks already', `${goals}${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'objectives', '  introduces mass')}${lesson('l-2', 'objectives', '  practises mass', '  checks length')}`, `'mass' (9): 'mass' is introduced here, but no lesson of the course 'measuring' checks it afterwards.
  mend*: Check 'mass' in lesson 'l-2'
    |     practises mass
    -     checks length
    +     checks length, mass`],
    ['in this one where none practises it afterwards', `${goals}${course('measuring', 'l-0', 'l-1')}${lesson('l-0', 'objectives', '  practises mass')}${lesson('l-1', 'objectives', '  introduces mass')}`, `'mass' (12): 'mass' is introduced here, but no lesson of the course 'measuring' checks it afterwards.
  mend*: Check 'mass' in lesson 'l-1'
    |     introduces mass
    +     checks mass`],
    ['a check before it is introduced does not count', `${goals}${course('measuring', 'l-0', 'l-1')}${lesson('l-0', 'objectives', '  checks mass')}${lesson('l-1', 'objectives', '  introduces mass')}`, `'mass' (12): 'mass' is introduced here, but no lesson of the course 'measuring' checks it afterwards.
  mend*: Check 'mass' in lesson 'l-1'
    |     introduces mass
    +     checks mass`],
    ['a check in the same lesson does', `${goals}${course('measuring', 'l-1')}${lesson('l-1', 'objectives', '  introduces mass', '  checks mass')}`, ''],
    ['once, where it is introduced first', `${goals}${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'objectives', '  introduces mass')}${lesson('l-2', 'objectives', '  introduces mass')}`, `'mass' (9): 'mass' is introduced here, but no lesson of the course 'measuring' checks it afterwards.
  mend*: Check 'mass' in lesson 'l-1'
    |     introduces mass
    +     checks mass`],
    ['not where a lesson of the course is not known', `${goals}${course('measuring', 'l-1', 'l-9')}${lesson('l-1', 'objectives', '  introduces mass')}`, ''],
    ['not where a line of the course cannot be read', `${goals}${course('measuring', 'l-1')}  unti b\n${lesson('l-1', 'objectives', '  introduces mass')}`, ''],
    ['nor one of a lesson', `${goals}${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'objectives', '  introduces mass')}${lesson('l-2', 'chekcs length')}`, '']
])('an objective never checked: %s', async (_, text, told) => expect(await toldOf('never-checked', text)).toBe(told));

const onLength = 'objective length\nobjective mass\n  builds on length\n';
test.each<[string, string, string]>([
    ['that lesson moves up', `${onLength}${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'objectives', '  introduces mass')}${lesson('l-2', 'objectives', '  introduces length')}`, `'mass' (10): 'mass' builds on 'length', which the course 'measuring' introduces only later, in 'l-2'.
  see 'length' (3): 'mass' builds on 'length'
  mend*: Teach 'l-2' before 'l-1'
    |   unit one-measuring
    -     l-1
    |     l-2
    +     l-1`],
    ['in the same lesson', `${onLength}${course('measuring', 'l-1')}${lesson('l-1', 'objectives', '  introduces mass, length')}`, ''],
    ['only where it is introduced first', `${onLength}${course('measuring', 'l-1', 'l-2', 'l-3')}${lesson('l-1', 'objectives', '  introduces length')}${lesson('l-2', 'objectives', '  introduces mass')}${lesson('l-3', 'objectives', '  introduces length')}`, ''],
    ['what goes round in a circle has its own message', `objective length\n  builds on mass\nobjective mass\n  builds on length\n${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'objectives', '  introduces mass')}${lesson('l-2', 'objectives', '  introduces length')}`, ''],
    ['one that the course never introduces', `${onLength}${course('measuring', 'l-1')}${lesson('l-1', 'objectives', '  introduces mass')}`, '']
])('an objective that builds on a later one: %s', async (_, text, told) => expect(await toldOf('builds-on-later', text)).toBe(told));

test.each<[string, string, string]>([
    ['in braces: taught here, or that lesson moves up; told once for a lesson', `${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'about: {heavier} and {heavier}.')}${lesson('l-2', 'words lighter, heavier')}`, `'heavier' (6): 'heavier' is taught only later in the course 'measuring', in lesson 'l-2'.
  see 'l-2' (4): 'l-2' is taught here
  mend*: Teach 'heavier' in this lesson
    |   about: {heavier} and {heavier}.
    +   words heavier
  mend: Teach 'l-2' before 'l-1'
    |   unit one-measuring
    -     l-1
    |     l-2
    +     l-1`],
    ['behind the words of this lesson', `${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'words full, empty', 'about: {heavier}.')}${lesson('l-2', 'words heavier')}`, `'heavier' (7): 'heavier' is taught only later in the course 'measuring', in lesson 'l-2'.
  see 'l-2' (4): 'l-2' is taught here
  mend*: Teach 'heavier' in this lesson
    | lesson l-1
    -   words full, empty
    +   words full, empty, heavier
  mend: Teach 'l-2' before 'l-1'
    |   unit one-measuring
    -     l-1
    |     l-2
    +     l-1`],
    ['the first lesson that teaches it counts', `${course('measuring', 'l-2', 'l-1', 'l-3')}${lesson('l-1', 'about: {heavier}.')}${lesson('l-2', 'words heavier')}${lesson('l-3', 'words heavier')}`, ''],
    ['a thing of that name may be meant', `material heavier\n  reusable\n${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'not needed heavier', 'about: {heavier}.')}${lesson('l-2', 'words heavier')}`, ''],
    ['in a caution as well', `${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'caution glass: It is {heavier}.')}${lesson('l-2', 'words heavier')}`, `'heavier' (6): 'heavier' is taught only later in the course 'measuring', in lesson 'l-2'.
  see 'l-2' (4): 'l-2' is taught here
  mend*: Teach 'heavier' in this lesson
    |   caution glass: It is {heavier}.
    +   words heavier
  mend: Teach 'l-2' before 'l-1'
    |   unit one-measuring
    -     l-1
    |     l-2
    +     l-1`]
])('a word before it is taught: %s', async (_, text, told) => expect(await toldOf('word-before-taught', text)).toBe(told));

test.each<[string, string, string]>([
    ['every word of the name in its order, whatever stands between', `${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'activity lift 5 min', '  say: The value, place: one PLACE - Value, place value.')}${lesson('l-2', 'words place-value')}`, `'PLACE - Value' (7): 'place-value' is taught only later in the course 'measuring', in lesson 'l-2'.
  see 'l-2' (4): 'l-2' is taught here
  mend*: Teach 'place-value' in this lesson
    | lesson l-1
    +   words place-value
  mend: Teach 'l-2' before 'l-1'
    |   unit one-measuring
    -     l-1
    |     l-2
    +     l-1`],
    ['two that begin alike', `${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'activity lift 5 min', '  ask: Which place, which place value?')}${lesson('l-2', 'words place, place-value')}`, `'place' (7): 'place' is taught only later in the course 'measuring', in lesson 'l-2'.
  see 'l-2' (4): 'l-2' is taught here
  mend*: Teach 'place' in this lesson
    | lesson l-1
    +   words place
  mend: Teach 'l-2' before 'l-1'
    |   unit one-measuring
    -     l-1
    |     l-2
    +     l-1
'place value' (7): 'place-value' is taught only later in the course 'measuring', in lesson 'l-2'.
  see 'l-2' (4): 'l-2' is taught here
  mend*: Teach 'place-value' in this lesson
    | lesson l-1
    +   words place-value
  mend: Teach 'l-2' before 'l-1'
    |   unit one-measuring
    -     l-1
    |     l-2
    +     l-1`],
    ['on a line further down', `${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'activity lift 5 min', '  ask: Which', '    is it: heavier or', '    not?')}${lesson('l-2', 'words heavier')}`, `'heavier' (8): 'heavier' is taught only later in the course 'measuring', in lesson 'l-2'.
  see 'l-2' (4): 'l-2' is taught here
  mend*: Teach 'heavier' in this lesson
    | lesson l-1
    +   words heavier
  mend: Teach 'l-2' before 'l-1'
    |   unit one-measuring
    -     l-1
    |     l-2
    +     l-1`],
    ['not what is done, nor a part of a word, nor what is taught by then', `${course('measuring', 'l-0', 'l-1', 'l-2')}${lesson('l-0', 'words full')}${lesson('l-1', 'words empty', 'activity lift 5 min', '  do: Take the heavier one.', '  ask: Is it full, empty or heavierish?')}${lesson('l-2', 'words heavier, full')}`, ''],
    ['once for a lesson, in what is asked or said first', `${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'activity lift 5 min', '  do: Heavier.', '  ask: Heavier?', '  say: Heavier!')}${lesson('l-2', 'words heavier')}`, `'Heavier' (8): 'heavier' is taught only later in the course 'measuring', in lesson 'l-2'.
  see 'l-2' (4): 'l-2' is taught here
  mend*: Teach 'heavier' in this lesson
    | lesson l-1
    +   words heavier
  mend: Teach 'l-2' before 'l-1'
    |   unit one-measuring
    -     l-1
    |     l-2
    +     l-1`],
    ['letters with accents', `${course('measuring', 'l-1', 'l-2')}${lesson('l-1', 'activity lift 5 min', '  ask: Where is the école, the côté-là?')}${lesson('l-2', 'words cole, cot')}`, '']
])('a plain word before it is taught: %s', async (_, text, told) => expect(await toldOf('plain-word-before-taught', text)).toBe(told));
