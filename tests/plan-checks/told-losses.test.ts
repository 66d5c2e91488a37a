/** What is said of a change that breaks something, where it leads, and how it can be mended. */
import { expect, test } from 'vitest';
import { toldOf as told } from '../language/telling.js';
import { problemsOn } from './fixture.js';

const toldOf = (code: string, text: string, on = '2026-09-07'): Promise<string> => told(code, text, files => problemsOn(files, on));
const lesson = (name: string, ...lines: string[]): string => `lesson ${name}\n${lines.map(line => `  ${line}\n`).join('')}`;
const does = (...lines: string[]): string[] => ['objectives', ...lines.map(line => `  ${line}`)];
const course = (count: number, name = 'c'): string => `course ${name}\n  unit u\n${Array.from({ length: count }, (_, i) => `    l-${i + 1}\n`).join('')}`;
const changes = (...lines: string[]): string => `adaptation a of c\n${lines.map(line => `  ${line}\n`).join('')}`;
const klass = (name: string, ...lines: string[]): string => `class ${name}\n  teaches c\n  learners 3\n  starts 2026-09-14\n  meets mon\n${lines.map(line => `  ${line}\n`).join('')}`;
const rest = (from: number, to: number): string => Array.from({ length: to - from + 1 }, (_, i) => lesson(`l-${from + i}`)).join('');

test.each<[string, string, string]>([
    ['left out: the first that asks introduces it, or all that ask go', `objective mass\n${course(4)}${changes('skip lesson l-1 because: They know it.')}${lesson('l-1', ...does('introduces mass'))}${lesson('l-2', ...does('practises mass'))}${lesson('l-3', ...does('checks mass'))}${lesson('l-4')}`, `'skip lesson l-1' (9): No lesson introduces “Mass” any more, but “L 2” and “L 3” ask for it.
  see 'mass' (15): “L 2” asks for it
  see 'mass' (18): “L 3” asks for it
  mend*: Introduce 'mass' in 'l-2' in this adaptation
    |   skip lesson l-1 because: They know it.
    +   add to l-2
    +     objectives
    +       introduces mass
  mend: Leave out 'l-2' and 'l-3' too
    |   skip lesson l-1 because: They know it.
    +   skip lesson l-2
    +   skip lesson l-3
  mend: Remove this change
    | adaptation a of c
    -   skip lesson l-1 because: They know it.`],
    ['four that ask are too many to leave out; three of them are shown', `objective mass\n${course(5)}${changes('skip lesson l-1')}${lesson('l-1', ...does('introduces mass'))}${['l-2', 'l-3', 'l-4', 'l-5'].map(name => lesson(name, ...does('practises mass'))).join('')}`, `'skip lesson l-1' (10): No lesson introduces “Mass” any more, but “L 2”, “L 3”, “L 4” and “L 5” ask for it.
  see 'mass' (16): “L 2” asks for it
  see 'mass' (19): “L 3” asks for it
  see 'mass' (22): “L 4” asks for it
  mend*: Introduce 'mass' in 'l-2' in this adaptation
    |   skip lesson l-1
    +   add to l-2
    +     objectives
    +       introduces mass
  mend: Remove this change
    | adaptation a of c
    -   skip lesson l-1`],
    ['told once for classes with the same changes, and for each of two adaptations', `objective mass\n${course(3)}${klass('k')}${klass('m')}adaptation a of c for k\n  skip lesson l-1\nadaptation b of c for m\n  skip lesson l-1\n${lesson('l-1', ...does('introduces mass'))}${lesson('l-2', ...does('practises mass'))}${lesson('l-3')}`, `'skip lesson l-1' (18): No lesson introduces “Mass” any more, but “L 2” asks for it.
  see 'mass' (26): “L 2” asks for it
  mend*: Introduce 'mass' in 'l-2' for this class
    |   skip lesson l-1
    +   add to l-2
    +     objectives
    +       introduces mass
  mend: Leave out 'l-2' too
    |   skip lesson l-1
    +   skip lesson l-2
  mend: Remove this change
    | adaptation a of c for k
    -   skip lesson l-1
'skip lesson l-1' (20): No lesson introduces “Mass” any more, but “L 2” asks for it.
  see 'mass' (26): “L 2” asks for it
  mend*: Introduce 'mass' in 'l-2' for this class
    |   skip lesson l-1
    +   add to l-2
    +     objectives
    +       introduces mass
  mend: Leave out 'l-2' too
    |   skip lesson l-1
    +   skip lesson l-2
  mend: Remove this change
    | adaptation b of c for m
    -   skip lesson l-1`],
    ['one for all classes: once', `objective mass\n${course(3)}${klass('k')}${klass('m')}${changes('skip lesson l-1')}${lesson('l-1', ...does('introduces mass'))}${lesson('l-2', ...does('practises mass'))}${lesson('l-3')}`, `'skip lesson l-1' (18): No lesson introduces “Mass” any more, but “L 2” asks for it.
  see 'mass' (24): “L 2” asks for it
  mend*: Introduce 'mass' in 'l-2' in this adaptation
    |   skip lesson l-1
    +   add to l-2
    +     objectives
    +       introduces mass
  mend: Leave out 'l-2' too
    |   skip lesson l-1
    +   skip lesson l-2
  mend: Remove this change
    | adaptation a of c
    -   skip lesson l-1`],
    ['swapped for one that does not introduce it', `objective mass\n${course(3)}${changes('swap lesson l-1 for v')}${lesson('l-1', ...does('introduces mass'))}${lesson('l-2', ...does('practises mass'))}${lesson('l-3')}${lesson('v', 'draft')}`, `'swap lesson l-1 for v' (8): No lesson introduces “Mass” any more, but “L 2” asks for it.
  see 'mass' (14): “L 2” asks for it
  mend*: Introduce 'mass' in 'l-2' in this adaptation
    |   swap lesson l-1 for v
    +   add to l-2
    +     objectives
    +       introduces mass
  mend: Leave out 'l-2' too
    |   swap lesson l-1 for v
    +   skip lesson l-2
  mend: Remove this change
    | adaptation a of c
    -   swap lesson l-1 for v`]
])('nobody introduces it: %s', async (_, text, says) => expect(await toldOf('adapted-not-introduced', text)).toBe(says));

test.each<[string, string, string]>([
    ['the last that practises it, or the one that introduces it', `objective mass\n${course(4)}${changes('skip lesson l-4')}${lesson('l-1', ...does('introduces mass'))}${lesson('l-2', ...does('practises mass'))}${lesson('l-3', ...does('practises mass'))}${lesson('l-4', ...does('checks mass'))}`, `'skip lesson l-4' (9): No lesson checks “Mass” any more, so nobody finds out whether the children have got it.
  mend*: Check 'mass' in 'l-3' in this adaptation
    |   skip lesson l-4
    +   add to l-3
    +     objectives
    +       checks mass
  mend: Check 'mass' in 'l-1' in this adaptation
    |   skip lesson l-4
    +   add to l-1
    +     objectives
    +       checks mass
  mend: Remove this change
    | adaptation a of c
    -   skip lesson l-4`],
    ['nobody practises it', `objective mass\n${course(3)}${changes('skip lesson l-3')}${lesson('l-1', ...does('introduces mass'))}${lesson('l-2')}${lesson('l-3', ...does('checks mass'))}`, `'skip lesson l-3' (8): No lesson checks “Mass” any more, so nobody finds out whether the children have got it.
  mend*: Check 'mass' in 'l-1' in this adaptation
    |   skip lesson l-3
    +   add to l-1
    +     objectives
    +       checks mass
  mend: Remove this change
    | adaptation a of c
    -   skip lesson l-3`],
    ['one lesson does both', `objective mass\n${course(3)}${changes('skip lesson l-3')}${lesson('l-1', ...does('introduces mass', 'practises mass'))}${lesson('l-2')}${lesson('l-3', ...does('checks mass'))}`, `'skip lesson l-3' (8): No lesson checks “Mass” any more, so nobody finds out whether the children have got it.
  mend*: Check 'mass' in 'l-1' in this adaptation
    |   skip lesson l-3
    +   add to l-1
    +     objectives
    +       checks mass
  mend: Remove this change
    | adaptation a of c
    -   skip lesson l-3`]
])('nobody checks it: %s', async (_, text, says) => expect(await toldOf('adapted-not-checked', text)).toBe(says));

test.each<[string, string, string]>([
    ['moved back: what asks moves too, or introduces it itself', `objective mass\n${course(4)}${changes('move l-1 after l-3')}${lesson('l-1', ...does('introduces mass'))}${lesson('l-2', ...does('practises mass'))}${lesson('l-3', ...does('checks mass'))}${lesson('l-4')}`, `'move l-1 after l-3' (9): “L 2” and “L 3” ask for “Mass”, which “L 1” now introduces only later.
  see 'mass' (15): “L 2” asks for it
  see 'mass' (18): “L 3” asks for it
  mend*: Move 'l-2' and 'l-3' too
    |   move l-1 after l-3
    +   move l-2 after l-1
    +   move l-3 after l-2
  mend: Introduce 'mass' in 'l-2' in this adaptation
    |   move l-1 after l-3
    +   add to l-2
    +     objectives
    +       introduces mass
  mend: Remove this change
    | adaptation a of c
    -   move l-1 after l-3`],
    ['what asks is moved forward: what introduces it moves too', `objective mass\n${course(4)}${changes('move l-3 before l-1')}${lesson('l-1')}${lesson('l-2', ...does('introduces mass'))}${lesson('l-3', ...does('checks mass'))}${lesson('l-4')}`, `'move l-3 before l-1' (9): “L 3” checks “Mass”, which “L 2” now introduces only later.
  see 'mass' (16): “L 3” asks for it
  mend*: Move 'l-2' too
    |   move l-3 before l-1
    +   move l-2 before l-3
  mend: Introduce 'mass' in 'l-3' in this adaptation
    |   move l-3 before l-1
    +   add to l-3
    +     objectives
    +       introduces mass
  mend: Remove this change
    | adaptation a of c
    -   move l-3 before l-1`],
    ['what asks is brought in: it moves behind, or the other before it', `objective mass\n${course(3)}${changes('insert v before l-1')}${lesson('l-1', ...does('introduces mass', 'checks mass'))}${rest(2, 3)}${lesson('v', 'draft', ...does('practises mass'))}`, `'insert v before l-1' (8): “V” practises “Mass”, which “L 1” now introduces only later.
  see 'mass' (18): “V” asks for it
  mend*: Move 'v' after 'l-1'
    |   insert v before l-1
    +   move v after l-1
  mend: Move 'l-1' before 'v'
    |   insert v before l-1
    +   move l-1 before v
  mend: Introduce 'mass' in 'v' in this adaptation
    |   insert v before l-1
    +   add to v
    +     objectives
    +       introduces mass
  mend: Remove this change
    | adaptation a of c
    -   insert v before l-1`],
    ['four lessons are too many to move', `objective mass\n${course(6)}${changes('move l-1 after l-6')}${lesson('l-1', ...does('introduces mass'))}${['l-2', 'l-3', 'l-4', 'l-5'].map(name => lesson(name, ...does('practises mass'))).join('')}${lesson('l-6')}`, `'move l-1 after l-6' (11): “L 2”, “L 3”, “L 4” and “L 5” ask for “Mass”, which “L 1” now introduces only later.
  see 'mass' (17): “L 2” asks for it
  see 'mass' (20): “L 3” asks for it
  see 'mass' (23): “L 4” asks for it
  mend*: Introduce 'mass' in 'l-2' in this adaptation
    |   move l-1 after l-6
    +   add to l-2
    +     objectives
    +       introduces mass
  mend: Remove this change
    | adaptation a of c
    -   move l-1 after l-6`]
])('asked for too early: %s', async (_, text, says) => expect(await toldOf('adapted-too-early', text)).toBe(says));

test.each<[string, string, string]>([
    ['all that follow it go', `${course(4)}${changes('skip lesson l-1')}${lesson('l-1')}${lesson('l-2', 'follows l-1')}${lesson('l-3', 'follows l-1')}${lesson('l-4')}`, `'skip lesson l-1' (8): “L 2” and “L 3” follow “L 1”, which is left out.
  see 'l-1' (11): “L 2” follows it
  see 'l-1' (13): “L 3” follows it
  mend*: Leave out 'l-2' and 'l-3' too
    |   skip lesson l-1
    +   skip lesson l-2
    +   skip lesson l-3
  mend: Remove this change
    | adaptation a of c
    -   skip lesson l-1`],
    ['where nothing would be left, only the change can go', `${course(2)}${changes('skip lesson l-1')}${lesson('l-1')}${lesson('l-2', 'follows l-1')}`, `'skip lesson l-1' (6): “L 2” follows “L 1”, which is left out.
  see 'l-1' (9): “L 2” follows it
  mend*: Remove this change
    | adaptation a of c
    -   skip lesson l-1`],
    ['what an adaptation brings in goes with its own line', `${course(2)}${changes('insert v after l-1')}${lesson('l-1')}${lesson('l-2')}${lesson('w')}${lesson('v', 'draft', 'follows w')}${course(1, 'other')}    w\n`, `'insert v after l-1' (6): “V” follows “W”, which is not taught in this course.
  see 'w' (12): “V” follows it
  mend*: Remove this change
    | adaptation a of c
    -   insert v after l-1`]
])('what it follows is left out: %s', async (_, text, says) => expect(await toldOf('adapted-follows-left-out', text)).toBe(says));

test.each<[string, string, string]>([
    ['moved back: those that follow move too, one behind the other', `${course(4)}${changes('move l-1 after l-4')}${lesson('l-1')}${lesson('l-2', 'follows l-1')}${lesson('l-3', 'follows l-1')}${lesson('l-4')}`, `'move l-1 after l-4' (8): “L 2” and “L 3” follow “L 1”, which now comes later, so they are taught only after that.
  see 'l-1' (11): “L 2” follows it
  see 'l-1' (13): “L 3” follows it
  mend*: Move 'l-2' and 'l-3' too
    |   move l-1 after l-4
    +   move l-2 after l-1
    +   move l-3 after l-2
  mend: Remove this change
    | adaptation a of c
    -   move l-1 after l-4`],
    ['moved forward: what it follows moves too', `${course(4)}${changes('move l-3 before l-1')}${lesson('l-1')}${lesson('l-2')}${lesson('l-3', 'follows l-2')}${lesson('l-4')}`, `'move l-3 before l-1' (8): “L 3” follows “L 2”, which is therefore still taught where it was.
  see 'l-2' (12): “L 3” follows it
  mend*: Move 'l-2' too
    |   move l-3 before l-1
    +   move l-2 before l-3
  mend: Remove this change
    | adaptation a of c
    -   move l-3 before l-1`]
])('before what it follows: %s', async (_, text, says) => expect(await toldOf('adapted-follows-later', text)).toBe(says));

const sayIn = (text: string): string[] => ['activity s 5 min', `  do: ${text}`];
test.each<[string, string, string]>([
    ['left out: the first that uses it teaches it, or all that use it go', `${course(4)}${klass('k')}adaptation a of c for k\n  skip lesson l-1\n${lesson('l-1', 'words heavier')}${lesson('l-2', ...sayIn('{heavier}'))}${lesson('l-3', ...sayIn('{heavier}'))}${lesson('l-4')}`, `'skip lesson l-1' (13): “L 2” and “L 3” use the word “heavier”, which no lesson teaches any more.
  mend*: Teach 'heavier' in 'l-2' for this class
    |   skip lesson l-1
    +   add to l-2
    +     words heavier
  mend: Leave out 'l-2' and 'l-3' too
    |   skip lesson l-1
    +   skip lesson l-2
    +   skip lesson l-3
  mend: Remove this change
    | adaptation a of c for k
    -   skip lesson l-1`],
    ['moved back', `${course(3)}${changes('move l-1 after l-2')}${lesson('l-1', 'words heavier')}${lesson('l-2', ...sayIn('{heavier}'))}${lesson('l-3')}`, `'move l-1 after l-2' (7): “L 2” uses the word “heavier”, which “L 1” now teaches only later.
  mend*: Teach 'heavier' in 'l-2' in this adaptation
    |   move l-1 after l-2
    +   add to l-2
    +     words heavier
  mend: Move 'l-2' too
    |   move l-1 after l-2
    +   move l-2 after l-1
  mend: Leave out 'l-2' too
    |   move l-1 after l-2
    +   skip lesson l-2
  mend: Remove this change
    | adaptation a of c
    -   move l-1 after l-2`]
])('a word before it is taught: %s', async (_, text, told) => expect(await toldOf('adapted-word-untaught', text)).toBe(told));

const onLength = 'objective length\nobjective mass\n  builds on length\n';
test.each<[string, string, string]>([
    ['moved back', `${onLength}${course(3)}${changes('move l-1 after l-2')}${lesson('l-1', ...does('introduces length', 'checks length'))}${lesson('l-2', ...does('introduces mass', 'checks mass'))}${lesson('l-3')}`, `'move l-1 after l-2' (10): “Mass” builds on “Length”, which “L 1” now introduces only later.
  mend*: Move 'l-2' too
    |   move l-1 after l-2
    +   move l-2 after l-1
  mend: Introduce 'length' in 'l-2' in this adaptation
    |   move l-1 after l-2
    +   add to l-2
    +     objectives
    +       introduces length
  mend: Remove this change
    | adaptation a of c
    -   move l-1 after l-2`],
    ['left out, and nobody checks it then: introduced and checked elsewhere', `${onLength}${course(3)}${changes('skip lesson l-1')}${lesson('l-1', ...does('introduces length', 'checks length'))}${lesson('l-2', ...does('introduces mass', 'checks mass'))}${lesson('l-3')}`, `'skip lesson l-1' (10): “Mass” builds on “Length”, which is no longer taught.
  mend*: Introduce and check 'length' in 'l-2' in this adaptation
    |   skip lesson l-1
    +   add to l-2
    +     objectives
    +       introduces length
    +       checks length
  mend: Remove this change
    | adaptation a of c
    -   skip lesson l-1`],
    ['left out, and somebody checks it still: introduced elsewhere', `${onLength}${course(3)}${changes('skip lesson l-1')}${lesson('l-1', ...does('introduces length'))}${lesson('l-2', ...does('introduces mass', 'checks mass'))}${lesson('l-3', ...does('checks length'))}`, `'skip lesson l-1' (10): “Mass” builds on “Length”, which no lesson introduces any more.
  mend*: Introduce 'length' in 'l-2' in this adaptation
    |   skip lesson l-1
    +   add to l-2
    +     objectives
    +       introduces length
  mend: Remove this change
    | adaptation a of c
    -   skip lesson l-1`],
    ['what goes round in a circle has its own message', `objective length\n  builds on mass\nobjective mass\n  builds on length\n${course(3)}${changes('move l-1 after l-2')}${lesson('l-1', ...does('introduces length', 'checks length'))}${lesson('l-2', ...does('introduces mass', 'checks mass'))}${lesson('l-3')}`, '']
])('builds on a later one: %s', async (_, text, told) => expect(await toldOf('adapted-builds-on-later', text)).toBe(told));

test.each<[string, string, string, string?]>([
    ['told at the last line, once for two classes', `${course(2)}${klass('k')}${klass('m')}${changes('skip lesson l-2', 'skip lesson l-1')}${rest(1, 2)}`, `'skip lesson l-1' (17): The adaptation “A” leaves out all 2 lessons, so nothing is taught.
  mend: Remove this change
    |   skip lesson l-2
    -   skip lesson l-1`],
    ['not for a class whose term is over', `${course(1)}${klass('k', 'ends 2026-10-01')}${changes('skip lesson l-1')}${rest(1, 1)}`, '', '2026-10-02'],
    ['on its last day it is', `${course(1)}${klass('k', 'ends 2026-10-01')}${changes('skip lesson l-1')}${rest(1, 1)}`, `'skip lesson l-1' (11): The adaptation “A” leaves out the only lesson, so nothing is taught.
  mend: Remove this change
    | adaptation a of c
    -   skip lesson l-1`, '2026-10-01'],
    ['a course without lessons', `course c\n${changes('note: None.')}`, '']
])('nothing left: %s', async (_, text, told, on) => expect(await toldOf('adapted-nothing-left', text, on)).toBe(told));

test.each<[string, string, string]>([
    ['adapted-not-introduced', 'a name that a line half says or misspells', `objective mass-of-bags\n${course(3)}${changes('skip lesson l-1')}${lesson('l-1', ...does('introduces mass-of-bags'))}${lesson('l-2', ...does('practises mass-of-bags'))}${lesson('l-3', ...does('introduces mass-of-bgas'))}`],
    ['adapted-not-checked', 'a lesson of the course with a line that cannot be read', `objective mass\n${course(3)}${changes('skip lesson l-3')}${lesson('l-1', ...does('introduces mass'))}${lesson('l-2', 'cheks mass')}${lesson('l-3', ...does('checks mass'))}`],
    ['adapted-not-checked', 'an adaptation with a line that cannot be read', `objective mass\n${course(3)}${changes('skip lesson l-3', 'ad to l-1')}${lesson('l-1', ...does('introduces mass'))}${lesson('l-2')}${lesson('l-3', ...does('checks mass'))}`],
    ['adapted-not-checked', 'a course with a line that cannot be read', `objective mass\n${course(3)}  untis v\n${changes('skip lesson l-3')}${lesson('l-1', ...does('introduces mass'))}${lesson('l-2')}${lesson('l-3', ...does('checks mass'))}`],
    ['adapted-follows-left-out', 'a lesson that the course may misspell', `course c\n  unit u\n    first-lesson\n    l-2\n    first-lesosn\n${changes('skip lesson first-lesson')}${lesson('first-lesson')}${lesson('l-2', 'follows first-lesson')}`],
    ['adapted-follows-later', 'lessons that follow each other in a circle', `${course(3)}${changes('move l-1 after l-3')}${lesson('l-1', 'follows l-2')}${lesson('l-2', 'follows l-1')}${lesson('l-3')}`]
])('%s waits: %s', async (code, _, text) => expect(await toldOf(code, text)).toBe(''));
