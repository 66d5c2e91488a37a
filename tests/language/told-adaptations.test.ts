/** What is said of the lines of an adaptation that change nothing, or leave nothing of a lesson, each with its mends. */
import { expect, test } from 'vitest';
import { toldOf } from './telling.js';

const klass = (name: string, course = 'c'): string => `class ${name}\n  teaches ${course}\n  learners 3\n  starts 2026-09-07\n  meets mon\n`;
const part = (name: string, minutes = 5): string => `  activity ${name} ${minutes} min\n    do: ${name}.\n`;
const base = `course c\n  unit u\n    l-1\n    l-2\ncourse other\n  unit v\n    o-1\nlesson l-1\n${part('lift')}${part('drop')}lesson l-2\n${part('walk')}lesson o-1\n${part('sing')}`;
const changes = (...lines: string[]): string => `adaptation a of c\n${lines.map(line => `  ${line}\n`).join('')}`;

test.each<[string, string, string]>([
    ['a lesson of another course, at its name', `${base}${changes('skip lesson o-1', 'move l-1 after o-1', 'retime o-1 to 5 min')}`, `'o-1' (20): The course “C” does not teach “O 1”, so this changes nothing.
  mend: Remove this change
    | adaptation a of c
    -   skip lesson o-1
'o-1' (21): The course “C” does not teach “O 1”, so this changes nothing.
  mend: Remove this change
    |   skip lesson o-1
    -   move l-1 after o-1
'o-1' (22): The course “C” does not teach “O 1”, so this changes nothing.
  mend: Remove this change
    |   move l-1 after o-1
    -   retime o-1 to 5 min`],
    ['what a line before it has left out', `${base}${changes('skip lesson l-2', 'skip lesson l-2', 'retime activity l-2.walk to 9 min')}`, `'l-2' (21): Another change already leaves out “L 2”, so this changes nothing.
  mend: Remove this change
    |   skip lesson l-2
    -   skip lesson l-2
'l-2' (22): Another change already leaves out “L 2”, so this changes nothing.
  mend: Remove this change
    |   skip lesson l-2
    -   retime activity l-2.walk to 9 min`],
    ['split behind its last part; takes that long anyway', `${base}${changes('split l-1 after drop', 'retime l-2 to 5 min', 'retime activity l-2.walk to 5 min')}`, `'split l-1 after drop' (20): “Drop” is the last part: nothing comes after it, so this changes nothing.
  mend: Remove this change
    | adaptation a of c
    -   split l-1 after drop
'retime l-2 to 5 min' (21): “L 2” takes 5 min already, so this changes nothing.
  mend: Remove this change
    |   split l-1 after drop
    -   retime l-2 to 5 min
'retime activity l-2.walk to 5 min' (22): “Walk” takes 5 min already, so this changes nothing.
  mend: Remove this change
    |   retime l-2 to 5 min
    -   retime activity l-2.walk to 5 min`],
    ['changes for every class are made before those for one, wherever they stand', `${base}${klass('k')}${klass('m')}adaptation b of c for k\n  skip lesson l-2\n${changes('skip lesson l-2')}`, `'l-2' (30): Another change already leaves out “L 2”, so this changes nothing.
  mend: Remove this change
    | adaptation b of c for k
    -   skip lesson l-2`],
    ['idle for every class', `${base}${klass('k')}${klass('m')}adaptation b of c\n  skip lesson l-2\n${changes('skip lesson l-2')}`, `'l-2' (32): Another change already leaves out “L 2”, so this changes nothing.
  mend: Remove this change
    | adaptation a of c
    -   skip lesson l-2`],
    ['for its own class alone', `${base}${klass('k')}${klass('m')}adaptation b of c for k\n  skip lesson l-2\nadaptation d of c for k\n  skip lesson l-2\n`, `'l-2' (32): Another change already leaves out “L 2”, so this changes nothing.
  mend: Remove this change
    | adaptation d of c for k
    -   skip lesson l-2`],
    ['a class of another course is never reached; the line itself is done', `${base}${klass('k', 'other')}adaptation a of c for k\n  skip lesson l-2\n`, `'c' (24): The class 'k' is taught 'other', so changes to 'c' never reach it.
  see 'other' (20): The class 'k'
  mend*: Change to 'other'
    |   meets mon
    - adaptation a of c for k
    + adaptation a of other for k`],
    ['a class that says no course, or one that is not there', `${base}class k\n  learners 3\n${klass('m', 'gone')}adaptation a of c for k\n  skip lesson l-2\nadaptation b of c for m\n  skip lesson l-2\nadaptation d of c for gone\n  skip lesson l-2\n`, ''],
    ['names that nothing has have their own message', `${base}${changes('skip lesson zebra', 'skip activity l-1.zebra', 'insert zebra after l-1')}`, ''],
    ['a lesson that the course may misspell', `${base.replace('    l-2\n', '    lift-tow\n').replaceAll('lesson l-2', 'lesson lift-two')}${changes('skip lesson lift-two')}`, ''],
    ['a course with a line that cannot be read', `${base.replace('    l-2\n', '    l-2\n  untis w\n')}${changes('skip lesson o-1')}`, ''],
    ['a lesson with a line that cannot be read', `${base.replace('lesson o-1\n', 'lesson o-1\n  foolows l-1\n')}${changes('skip lesson o-1')}`, ''],
    ['the second of one name is told at its name alone', `${base}${changes('skip lesson l-2')}${changes('skip lesson o-1')}`, ''],
    ['of a course that is not there', 'adaptation a of gone\n  skip lesson l-1\n', ''],
    ['the first word of the sentence is large', `material cup\n  reusable\nmaterial mug\n  reusable\n${base}${changes('swap cup for mug', 'swap cup for cup')}`, `'swap cup for mug' (24): No lesson of the course uses cup, so this changes nothing.
  mend: Remove this change
    | adaptation a of c
    -   swap cup for mug
'swap cup for cup' (25): It is the same thing, so this changes nothing.
  mend: Remove this change
    |   swap cup for mug
    -   swap cup for cup`]
])('a change that changes nothing: %s', async (_, text, told) => expect(await toldOf('adaptation-misses', text)).toBe(told));

test.each<[string, string, string]>([
    ['the only part: the lesson instead, or not at all', `${base}${changes('skip activity l-2.walk because: Too far.')}`, `'skip activity l-2.walk because: Too far.' (20): Nothing is left of “L 2”: it still has its meeting, with nothing to do. Leave out the whole lesson, or keep one of its parts.
  mend: Leave out 'l-2' instead
    | adaptation a of c
    -   skip activity l-2.walk because: Too far.
    +   skip lesson l-2 because: Too far.
  mend: Remove this change
    | adaptation a of c
    -   skip activity l-2.walk because: Too far.`],
    ['two parts by two lines, told at the last, with one line for both', `${base}${changes('skip activity l-1.drop', 'retime l-2 to 4 min', 'skip activity l-1.lift')}`, `'skip activity l-1.lift' (22): Nothing is left of “L 1”: it still has its meeting, with nothing to do. Leave out the whole lesson, or keep one of its parts.
  mend: Leave out 'l-1' instead
    | adaptation a of c
    -   skip activity l-1.drop
    |   retime l-2 to 4 min
    -   skip activity l-1.lift
    +   skip lesson l-1
  mend: Remove this change
    |   retime l-2 to 4 min
    -   skip activity l-1.lift`],
    ['lines about another lesson stay', `${base.replace(part('walk'), part('walk') + part('run'))}${changes('skip activity l-1.drop', 'skip activity l-2.run', 'skip activity l-1.lift')}`, `'skip activity l-1.lift' (24): Nothing is left of “L 1”: it still has its meeting, with nothing to do. Leave out the whole lesson, or keep one of its parts.
  mend: Leave out 'l-1' instead
    | adaptation a of c
    -   skip activity l-1.drop
    |   skip activity l-2.run
    -   skip activity l-1.lift
    +   skip lesson l-1
  mend: Remove this change
    |   skip activity l-2.run
    -   skip activity l-1.lift`],
    ['the lines of another adaptation stay', `${base}adaptation b of c\n  skip activity l-1.drop\n${changes('skip activity l-1.lift')}`, `'skip activity l-1.lift' (22): Nothing is left of “L 1”: it still has its meeting, with nothing to do. Leave out the whole lesson, or keep one of its parts.
  mend: Leave out 'l-1' instead
    | adaptation a of c
    -   skip activity l-1.lift
    +   skip lesson l-1
  mend: Remove this change
    | adaptation a of c
    -   skip activity l-1.lift`],
    ['a part that moves to the next lesson', `${base}${changes('move activity l-2.walk after l-1.lift')}`, `'move activity l-2.walk after l-1.lift' (20): Nothing is left of “L 2”: it still has its meeting, with nothing to do. Leave out the whole lesson, or keep one of its parts.
  mend: Remove this change
    | adaptation a of c
    -   move activity l-2.walk after l-1.lift`],
    ['joined with a part of another lesson', `${base}${changes('join activity l-1.lift with l-2.walk')}`, `'join activity l-1.lift with l-2.walk' (20): Nothing is left of “L 2”: it still has its meeting, with nothing to do. Leave out the whole lesson, or keep one of its parts.
  mend: Remove this change
    | adaptation a of c
    -   join activity l-1.lift with l-2.walk`],
    ['one part of two', `${base}${changes('skip activity l-1.drop')}`, ''],
    ['a lesson that has none as it is written', `${base.replace(part('walk'), '  about: Walk.\n')}${changes('retime l-1 to 8 min')}`, ''],
    ['a joined lesson that keeps one', `${base}${changes('join l-1 with l-2', 'skip activity l-2.walk')}`, ''],
    ['a joined lesson that keeps none', `${base}${changes('join l-1 with l-2', 'skip activity l-2.walk', 'skip activity l-1.lift', 'skip activity l-1.drop')}`, `'skip activity l-1.drop' (23): Nothing is left of “L 1”: it still has its meeting, with nothing to do. Leave out the whole lesson, or keep one of its parts.
  mend: Remove this change
    |   skip activity l-1.lift
    -   skip activity l-1.drop`],
    ['once, for two classes', `${base}${klass('k')}${klass('m')}${changes('skip activity l-2.walk')}`, `'skip activity l-2.walk' (30): Nothing is left of “L 2”: it still has its meeting, with nothing to do. Leave out the whole lesson, or keep one of its parts.
  mend: Leave out 'l-2' instead
    | adaptation a of c
    -   skip activity l-2.walk
    +   skip lesson l-2
  mend: Remove this change
    | adaptation a of c
    -   skip activity l-2.walk`],
    ['for one class of two', `${base}${klass('k')}${klass('m')}adaptation b of c for k\n  skip activity l-1.lift\n${changes('skip activity l-1.drop')}`, `'skip activity l-1.lift' (30): Nothing is left of “L 1”: it still has its meeting, with nothing to do. Leave out the whole lesson, or keep one of its parts.
  mend: Leave out 'l-1' instead
    | adaptation b of c for k
    -   skip activity l-1.lift
    +   skip lesson l-1
  mend: Remove this change
    | adaptation b of c for k
    -   skip activity l-1.lift`],
    ['a lesson with a line that cannot be read waits', `${base.replace('lesson l-2\n', 'lesson l-2\n  foolows l-1\n')}${changes('skip activity l-2.walk')}`, ''],
    ['a course with a line that cannot be read waits', `${base.replace('    l-2\n', '    l-2\n  untis w\n')}${changes('skip activity l-2.walk')}`, ''],
    ['what another change puts in its place is something', `${base}${changes('swap activity l-2.walk for o-1.sing')}`, '']
])('a change after which nothing is left: %s', async (_, text, told) => expect(await toldOf('adaptation-empties', text)).toBe(told));
