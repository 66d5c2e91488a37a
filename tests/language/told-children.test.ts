/** What is said where a thing can hurt a child: reminders only, for local rules and qualified advice come first. Ages and sizes: 16 CFR 1500.18, 1500.19, 1501.4. */
import { expect, test } from 'vitest';
import { toldOf } from './telling.js';

const course = 'course measuring\n  unit u\n    l-1\n    l-2\n';
const klass = (name: string, ...lines: string[]): string => `class ${name}\n  teaches measuring\n  learners 4\n  starts 2026-09-07\n  meets mon\n${lines.map(line => `  ${line}\n`).join('')}`;
const young = klass('k', 'present under-threes');
const thing = (name: string, ...lines: string[]): string => `material ${name}\n  reusable\n${lines.map(line => `  ${line}\n`).join('')}`;
const lesson = (name: string, things: string[], ...lines: string[]): string => `lesson ${name}\n${things.length > 0 ? `  materials\n${things.map(one => `    ${one} 1 per pair\n`).join('')}` : ''}${lines.map(line => `  ${line}\n`).join('')}`;

test.each<[string, string, string]>([
    ['each lesson gets its line, with all things of the kind, a line for each kind', `${course}${young}${thing('cube', 'caution small-parts')}${thing('bead', 'caution small-parts')}${thing('disc', 'caution magnet')}${lesson('l-1', ['cube', 'bead', 'disc'], 'about: One.')}${lesson('l-2', ['bead'])}`, `'under-threes' (10): Children under three are in the room, and lessons use what is a danger at that age: 'cube' (small parts), 'bead' (small parts), 'disc' (magnets). Keep it out of their reach, and say in the lesson how. Local rules, product labels and qualified advice come first.
  see 'l-1' (20): 'cube' in lesson 'l-1'
  see 'l-1' (20): 'bead' in lesson 'l-1'
  see 'l-2' (26): 'bead' in lesson 'l-2'
  see 'l-1' (20): 'disc' in lesson 'l-1'
  mend: Add the caution to each of these lessons
    |   about: One.
    +   caution small-parts: Out of reach of the youngest: {cube}, {bead}. Count out, count back.
    +   caution magnet: Out of reach of the youngest: {disc}. Count out, count back.
    |     bead 1 per pair
    +   caution small-parts: Out of reach of the youngest: {bead}. Count out, count back.`],
    ['a lesson that speaks of one kind still lacks the other', `${course}${young}${thing('cube', 'caution small-parts', 'caution magnet')}${lesson('l-1', ['cube'], 'caution magnet: Count them.')}`, `'under-threes' (10): Children under three are in the room, and lessons use what is a danger at that age: 'cube' (small parts). Keep it out of their reach, and say in the lesson how. Local rules, product labels and qualified advice come first.
  see 'l-1' (15): 'cube' in lesson 'l-1'
  mend: Add the caution to each of these lessons
    |   caution magnet: Count them.
    +   caution small-parts: Out of reach of the youngest: {cube}. Count out, count back.`],
    ['in a part is as good; without a text it is not', `${course}${young}${thing('cube', 'caution small-parts')}${lesson('l-1', ['cube'], 'activity a 5 min', '  caution small-parts: On the high table.', '  do: Build.')}${lesson('l-2', ['cube'], 'caution small-parts')}`, `'under-threes' (10): Children under three are in the room, and lessons use what is a danger at that age: 'cube' (small parts). Keep it out of their reach, and say in the lesson how. Local rules, product labels and qualified advice come first.
  see 'l-2' (20): 'cube' in lesson 'l-2'
  mend: Add the caution to each of these lessons
    |   caution small-parts
    +   caution small-parts: Out of reach of the youngest: {cube}. Count out, count back.`],
    ['five things: four of them named', `${course}${young}${['a', 'b', 'c', 'd', 'e'].map(name => thing(name, 'caution small-parts')).join('')}${lesson('l-1', ['a', 'b', 'c', 'd', 'e'])}`, `'under-threes' (10): Children under three are in the room, and lessons use what is a danger at that age: 'a' (small parts), 'b' (small parts), 'c' (small parts), 'd' (small parts) and 1 more. Keep it out of their reach, and say in the lesson how. Local rules, product labels and qualified advice come first.
  see 'l-1' (26): 'a' in lesson 'l-1'
  see 'l-1' (26): 'b' in lesson 'l-1'
  see 'l-1' (26): 'c' in lesson 'l-1'
  see 'l-1' (26): 'd' in lesson 'l-1'
  see 'l-1' (26): 'e' in lesson 'l-1'
  mend: Add the caution to each of these lessons
    |     e 1 per pair
    +   caution small-parts: Out of reach of the youngest: {a}, {b}, {c}, {d}, {e}. Count out, count back.`],
    ['four are named', `${course}${young}${['a', 'b', 'c', 'd'].map(name => thing(name, 'caution small-parts')).join('')}${lesson('l-1', ['a', 'b', 'c', 'd'])}`, `'under-threes' (10): Children under three are in the room, and lessons use what is a danger at that age: 'a' (small parts), 'b' (small parts), 'c' (small parts), 'd' (small parts). Keep it out of their reach, and say in the lesson how. Local rules, product labels and qualified advice come first.
  see 'l-1' (23): 'a' in lesson 'l-1'
  see 'l-1' (23): 'b' in lesson 'l-1'
  see 'l-1' (23): 'c' in lesson 'l-1'
  see 'l-1' (23): 'd' in lesson 'l-1'
  mend: Add the caution to each of these lessons
    |     d 1 per pair
    +   caution small-parts: Out of reach of the youngest: {a}, {b}, {c}, {d}. Count out, count back.`],
    ['at the ages of the class; at its name where the course gives the ages', `${course.replace('measuring\n', 'measuring\n  ages 2 to 9\n')}${klass('k', 'ages 7 to 9')}${klass('m')}${thing('balloon', 'caution balloon')}${lesson('l-1', ['balloon'])}`, `'7 to 9' (11): The youngest learners are 7, and lessons use what is a danger at that age: 'balloon' (balloons). Keep it out of their reach, and say in the lesson how. Local rules, product labels and qualified advice come first.
  see 'l-1' (20): 'balloon' in lesson 'l-1'
  mend: Add the caution to each of these lessons
    |     balloon 1 per pair
    +   caution balloon: Out of reach of the youngest: {balloon}. Count out, count back.
'm' (12): The youngest learners are 2, and lessons use what is a danger at that age: 'balloon' (balloons). Keep it out of their reach, and say in the lesson how. Local rules, product labels and qualified advice come first.
  see 'l-1' (20): 'balloon' in lesson 'l-1'
  mend: Add the caution to each of these lessons
    |     balloon 1 per pair
    +   caution balloon: Out of reach of the youngest: {balloon}. Count out, count back.`],
    ['nobody says how old they are', `${course}${klass('k')}${thing('cube', 'caution small-parts')}${lesson('l-1', ['cube'])}`, ''],
    ['a class of no known course', `${course}class k\n  teaches gone\n  present under-threes\n${thing('cube', 'caution small-parts')}${lesson('l-1', ['cube'])}`, ''],
    ['in the lesson as it is written, where the adapted one is told of', `${course}${young}${thing('cube', 'caution small-parts')}${thing('block')}adaptation a of measuring for k\n  join l-2 with l-1\n${lesson('l-1', ['block'], 'activity a 5 min', '  do: A.')}${lesson('l-2', ['cube'], 'activity b 5 min', '  do: B.')}`, `'under-threes' (10): Children under three are in the room, and lessons use what is a danger at that age: 'cube' (small parts). Keep it out of their reach, and say in the lesson how. Local rules, product labels and qualified advice come first.
  see 'l-2' (23): 'cube' in lesson 'l-2'
  mend: Add the caution to each of these lessons
    |     cube 1 per pair
    +   caution small-parts: Out of reach of the youngest: {cube}. Count out, count back.`],
    ['what a game brings', `${course}${young}${thing('cube', 'caution small-parts')}game grocer\n  materials\n    cube 1 per pair\n${lesson('l-1', [], 'game grocer 5 min')}`, `'under-threes' (10): Children under three are in the room, and lessons use what is a danger at that age: 'cube' (small parts). Keep it out of their reach, and say in the lesson how. Local rules, product labels and qualified advice come first.
  see 'l-1' (17): 'cube' in lesson 'l-1'
  mend: Add the caution to each of these lessons
    | lesson l-1
    +   caution small-parts: Out of reach of the youngest: {cube}. Count out, count back.`]
])('a serious caution: %s', async (_, text, told) => expect(await toldOf('serious-caution', text)).toBe(told));

test('of many lessons twelve are shown, and every one is mended', async () => {
    const names = Array.from({ length: 14 }, (_, index) => `m-${index + 1}`);
    const told = await toldOf('serious-caution', `course measuring\n  unit u\n${names.map(name => `    ${name}\n`).join('')}${young}${thing('cube', 'caution small-parts')}${names.map(name => lesson(name, ['cube'])).join('')}`);
    expect(told.match(/^ {2}see /gm)).toHaveLength(12);
    expect(told.match(/^ {4}\+ {3}caution small-parts: /gm)).toHaveLength(14);
});

test.each<[string, string, string]>([
    // 0.8 in cubes lie wholly inside; a rod of 3 in is longer than the longest chord of 2.574 in.
    ['behind its size, as a small part', `${course}${young}${thing('cube', 'size 0.8 x 0.8 x 0.8 in', 'from kit')}${lesson('l-1', ['cube'])}`, `'0.8 x 0.8 x 0.8 in' (13): 'cube' is small enough to choke on, and class 'k' has children under three in the room. Write 'caution small-parts' under it.
  mend*: Add 'caution small-parts'
    |   size 0.8 x 0.8 x 0.8 in
    +   caution small-parts`],
    ['behind its other cautions', `${course}${young}${thing('cube', 'size 0.8 x 0.8 x 0.8 in', 'caution glass: It breaks.', 'from kit')}${lesson('l-1', ['cube'])}`, `'0.8 x 0.8 x 0.8 in' (13): 'cube' is small enough to choke on, and class 'k' has children under three in the room. Write 'caution small-parts' under it.
  mend*: Add 'caution small-parts'
    |   caution glass: It breaks.
    +   caution small-parts`],
    ['it may be one where only a gauge can tell', `${course}${young}${thing('cube', 'size 1.2 x 1.95 x 0.1 in')}${lesson('l-1', ['cube'])}`, `'1.2 x 1.95 x 0.1 in' (13): 'cube' may be small enough to choke on, and class 'k' has children under three in the room. Write 'caution small-parts' under it.
  mend*: Add 'caution small-parts'
    |   size 1.2 x 1.95 x 0.1 in
    +   caution small-parts`],
    ['a ball of 1.75 in passes the hole, one of 1.76 in does not', `${course}${young}${thing('ball', 'size 1.75 in')}${thing('globe', 'size 1.76 in')}${lesson('l-1', ['ball', 'globe'])}`, `'1.75 in' (13): 'ball' is small enough to choke on, and class 'k' has children under three in the room. Write 'caution small-ball' under it.
  mend*: Add 'caution small-ball'
    |   size 1.75 in
    +   caution small-ball`],
    ['too long for the cylinder', `${course}${young}${thing('rod', 'size 0.25 x 3 in')}${lesson('l-1', ['rod'])}`, ''],
    ['with any caution that is serious at some age it has been thought of', `${course}${young}${thing('cube', 'size 0.8 x 0.8 x 0.8 in', 'caution magnet')}${lesson('l-1', ['cube'])}`, ''],
    ['a thing that these children do not get', `${course}${young}${klass('m')}${thing('cube', 'size 0.8 x 0.8 x 0.8 in')}${thing('block')}${lesson('l-1', ['block'])}`, ''],
    ['the youngest are 2, at 3 the label alone is enough', `${course}${klass('k', 'ages 3 to 5')}${klass('m', 'ages 2 to 5')}${thing('cube', 'size 0.8 x 0.8 x 0.8 in')}${lesson('l-1', ['cube'])}`, `'0.8 x 0.8 x 0.8 in' (19): 'cube' is small enough to choke on, and class 'm' has children under three in the room. Write 'caution small-parts' under it.
  mend*: Add 'caution small-parts'
    |   size 0.8 x 0.8 x 0.8 in
    +   caution small-parts`],
    ['a thing of which a line cannot be read waits', `${course}${young}${thing('cube', 'size 0.8 x 0.8 x 0.8 in', 'cuation small-parts')}${lesson('l-1', ['cube'])}`, ''],
    ['without a size nothing is known', `${course}${young}${thing('cube')}${lesson('l-1', ['cube'])}`, '']
])('a small thing without a caution: %s', async (_, text, told) => expect(await toldOf('undeclared-small-part', text)).toBe(told));

test.each<[string, string, string]>([
    ['its first stand-in can be swapped in, in a new adaptation behind the class', `${course}${klass('k', 'ages 6 to 9')}${thing('glue', 'ages 8 and up', 'stand-in paste 1 for 2', 'stand-in tape 1 for 1')}${thing('paste')}${thing('tape')}${lesson('l-1', [])}${lesson('l-2', ['glue'])}`, `'6 to 9' (10): 'glue' is for ages from 8, and class 'k' has learners of 6. It is used in lesson 'l-2'.
  see '8 and up' (13): The ages of 'glue'
  mend: Swap it for 'paste' in this class
    |   ages 6 to 9
    +
    + adaptation k-glue of measuring for k
    +   swap glue for paste`],
    ['without a stand-in only told, at the name of the class where the course gives the ages', `${course.replace('measuring\n', 'measuring\n  ages 7 to 9\n')}${klass('k')}${thing('glue', 'ages 8 and up')}${lesson('l-1', ['glue'])}${lesson('l-2', ['glue'])}`, `'k' (6): 'glue' is for ages from 8, and class 'k' has learners of 7. It is used in lesson 'l-1'.
  see '8 and up' (13): The ages of 'glue'`],
    ['8 are 8; the ages of the class come before those of the course', `${course.replace('measuring\n', 'measuring\n  ages 7 to 9\n')}${klass('k', 'ages 8 to 9')}${thing('glue', 'ages 8 and up')}${thing('tape')}${lesson('l-1', ['glue', 'tape'])}`, ''],
    ['a class that has it swapped', `${course}${klass('k', 'ages 6 to 9')}${thing('glue', 'ages 8 and up', 'stand-in paste 1 for 2')}${thing('paste')}adaptation a of measuring for k\n  swap glue for paste\n${lesson('l-1', ['glue'])}`, ''],
    ['nobody says how old they are', `${course}${klass('k')}${thing('glue', 'ages 8 and up')}${lesson('l-1', ['glue'])}`, ''],
    ['a class of no known course', `${course}class k\n  teaches gone\n  ages 6 to 9\nclass m\n  ages 6 to 9\n${thing('glue', 'ages 8 and up')}${lesson('l-1', ['glue'])}`, '']
])('too young for it: %s', async (_, text, told) => expect(await toldOf('too-young', text)).toBe(told));
