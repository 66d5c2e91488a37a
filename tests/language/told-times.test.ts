/** What is said of lessons and their sessions, and of games and their players: the figures worked out by hand beside each case. */
import { expect, test } from 'vitest';
import { toldOf } from './telling.js';

const course = 'course measuring\n  unit weighing\n    weigh-1\n    weigh-2\n';
const klass = (name: string, more: string): string => `class ${name}\n  teaches measuring\n  starts 2026-09-07\n  meets mon\n  learners 6\n${more}`;
const meets = (name: string, minutes: number): string => klass(name, `  session ${minutes} min\n`);
const part = (name: string, minutes?: number): string => `  activity ${name}${minutes === undefined ? '' : ` ${minutes} min`}\n    do: Lift.\n`;

test.each<[string, string, string]>([
    ['the class with the shortest session is named, and what is left of it is shared: (30 - 10) / 2', `${meets('hill', 45)}${meets('harbour', 30)}${meets('shore', 60)}${course}lesson weigh-1
${part('lift', 10)}${part('fill')}${part('drop')}  practice say-it 8 items
    name numbers 11 to 20
`, `'fill' (26): How long does 'fill' take? Class 'harbour' meets for 30 min.
  mend: Give it 10 min
    |     do: Lift.
    -   activity fill
    +   activity fill 10 min
'drop' (28): How long does 'drop' take? Class 'harbour' meets for 30 min.
  mend: Give it 10 min
    |     do: Lift.
    -   activity drop
    +   activity drop 10 min`],
    ['in whole fives: of 14 min 10', `${meets('harbour', 30)}${course}lesson weigh-1\n${part('lift', 16)}${part('fill')}`, `'fill' (14): How long does 'fill' take? Class 'harbour' meets for 30 min.
  mend: Give it 10 min
    |     do: Lift.
    -   activity fill
    +   activity fill 10 min`],
    ['5 min just fit', `${meets('harbour', 30)}${course}lesson weigh-1\n${part('lift', 25)}${part('fill')}`, `'fill' (14): How long does 'fill' take? Class 'harbour' meets for 30 min.
  mend: Give it 5 min
    |     do: Lift.
    -   activity fill
    +   activity fill 5 min`],
    ['at least 5, though fewer are left', `${meets('harbour', 30)}${course}lesson weigh-1\n${part('lift', 40)}${part('fill')}`, `'fill' (14): How long does 'fill' take? Class 'harbour' meets for 30 min.
  mend: Give it 5 min
    |     do: Lift.
    -   activity fill
    +   activity fill 5 min`],
    ['a class that skips the part does not count, nor one that says no length, nor one of another course', `${meets('harbour', 20)}${meets('hill', 40)}${klass('attic', '')}${meets('barn', 10).replace('measuring', 'other')}
course other
  unit more
    weigh-3
lesson weigh-3
  about: Three.
${course}adaptation calm of measuring for harbour
  skip activity weigh-1.fill
lesson weigh-1\n${part('lift', 10)}${part('fill')}`, `'fill' (39): How long does 'fill' take? Class 'hill' meets for 40 min.
  mend: Give it 30 min
    |     do: Lift.
    -   activity fill
    +   activity fill 30 min`],
    ['a class with a line that cannot be read waits', `${meets('harbour', 20)}  lerners 7\n${meets('hill', 40)}${course}lesson weigh-1\n${part('fill')}`, `'fill' (19): How long does 'fill' take? Class 'hill' meets for 40 min.
  mend: Give it 40 min
    | lesson weigh-1
    -   activity fill
    +   activity fill 40 min`],
    ['where no class meets for a length of time nothing is asked', `${meets('harbour', 0)}${klass('attic', '')}${course}lesson weigh-1\n${part('fill')}`, ''],
    ['practice may go without', `${meets('harbour', 20)}${course}lesson weigh-1\n  practice say-it 8 items\n    name numbers 11 to 20\n`, ''],
    ['a lesson that no course teaches may go without', `${meets('harbour', 20)}${course}lesson weigh-1\n  about: One.\nlesson weigh-3\n${part('fill')}`, ''],
    ['one that an adaptation brings in may not', `${meets('harbour', 20)}${course}adaptation more of measuring for harbour\n  insert weigh-3 after weigh-1\nlesson weigh-1\n  about: One.\nlesson weigh-2\n  about: Two.\nlesson weigh-3\n${part('fill')}`, `'fill' (18): How long does 'fill' take? Class 'harbour' meets for 20 min.
  mend: Give it 20 min
    | lesson weigh-3
    -   activity fill
    +   activity fill 20 min`]
])('an activity without a time: %s', async (_, text, told) => expect(await toldOf('activity-without-time', text)).toBe(told));

test.each<[string, string, string]>([
    ['told once, for the class with the shortest session', `${meets('hill', 45)}${meets('harbour', 30)}${meets('shore', 35)}${course}lesson weigh-1\n${part('lift', 20)}${part('fill', 20)}`, `'weigh-1' (23): Lesson 'weigh-1' takes 40 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (12): The session of 'harbour'
  mend: Split it after 'lift' for class 'harbour'
    |   session 30 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-1 after lift`],
    ['for the one class that it is too long for', `${meets('hill', 45)}${meets('harbour', 30)}${course}adaptation calm of measuring for harbour\n  skip activity weigh-1.fill\nlesson weigh-1\n${part('lift', 30)}${part('fill', 20)}`, `'weigh-1' (19): Lesson 'weigh-1' takes 50 min and class 'hill' meets for 45 min, so it goes on at the next meeting.
  see '45' (6): The session of 'hill'
  mend: Split it after 'lift' for class 'hill'
    |   session 45 min
    +
    + adaptation hill-sessions of measuring for hill
    +   split weigh-1 after lift`],
    ['a lesson of just the session fits', `${meets('harbour', 40)}${course}lesson weigh-1\n${part('lift', 20)}${part('fill', 20)}`, ''],
    ['a part that is too long by itself is for the plan to tell', `${meets('harbour', 30)}${course}lesson weigh-1\n${part('lift', 31)}${part('fill', 5)}`, ''],
    ['a part of just the session is none', `${meets('harbour', 30)}${course}lesson weigh-1\n${part('lift', 30)}${part('fill', 5)}`, `'weigh-1' (11): Lesson 'weigh-1' takes 35 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'
  mend: Split it after 'lift' for class 'harbour'
    |   session 30 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-1 after lift`],
    ['a part without a time takes none', `${meets('harbour', 30)}${course}lesson weigh-1\n${part('lift', 20)}${part('drop')}${part('fill', 20)}`, `'weigh-1' (11): Lesson 'weigh-1' takes 40 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'
  mend: Split it after 'drop' for class 'harbour'
    |   session 30 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-1 after drop`],
    ['a piece that is still too long, under the title that the class knows it by, and split in its own adaptation, in the column of its lines', `${meets('harbour', 30)}${course}adaptation all of measuring\n  skip lesson weigh-2
adaptation calm of measuring for harbour\n    split weigh-1 after lift\nadaptation other of measuring for hill\n${meets('hill', 90)}lesson weigh-1\n${part('lift', 20)}${part('fill', 20)}${part('drop', 15)}`, `'weigh-1' (22): Lesson 'weigh-1', for this class “Weigh 1, part 2”, takes 35 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'
  mend: Split it after 'fill' for class 'harbour'
    |     split weigh-1 after lift
    +     split weigh-1 after fill`],
    ['in an adaptation that has no line yet', `${meets('harbour', 30)}${course}lesson weigh-1\n${part('lift', 20)}${part('fill', 20)}adaptation calm of measuring for harbour\n`, `'weigh-1' (11): Lesson 'weigh-1' takes 40 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'
  mend: Split it after 'lift' for class 'harbour'
    | adaptation calm of measuring for harbour
    +   split weigh-1 after lift`],
    ['an adaptation of another course is none of its own', `${meets('harbour', 30)}${course}lesson weigh-1\n${part('lift', 20)}${part('fill', 20)}course other\n  unit u\n    weigh-2\nadaptation calm of other for harbour\n`, `'weigh-1' (11): Lesson 'weigh-1' takes 40 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'
  mend: Split it after 'lift' for class 'harbour'
    |   session 30 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-1 after lift`],
    ['not split behind its last part', `${meets('harbour', 30)}${course}game grocer\n  players 2 to 4\nlesson weigh-1\n  game grocer 10 min\n${part('fill', 25)}`, `'weigh-1' (13): Lesson 'weigh-1' takes 35 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'`],
    ['the line names a part that has moved as it is written', `${meets('harbour', 30)}${course}adaptation calm of measuring for harbour\n  insert activity weigh-3.pour after weigh-1.lift\nlesson weigh-1\n${part('lift', 10)}${part('fill', 25)}lesson weigh-3\n${part('pour', 10)}`, `'weigh-1' (13): Lesson 'weigh-1' takes 45 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'
  mend: Split it after 'pour' for class 'harbour'
    |   insert activity weigh-3.pour after weigh-1.lift
    +   split weigh-3 after pour`]
])('a lesson longer than its session: %s', async (_, text, told) => expect(await toldOf('lesson-too-long', text)).toBe(told));

const written = `lesson weigh-1\n${part('lift', 20)}${part('fill', 5)}lesson weigh-2\n${part('pour', 15)}${part('drop', 5)}`;
test.each<[string, string, string]>([
    ['joined: 25 and 20 min', `${meets('harbour', 30)}${course}adaptation fewer of measuring\n  join weigh-1 with weigh-2\n${written}`, `'join weigh-1 with weigh-2' (12): With this change “Weigh 1” takes 45 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'
  see 'weigh-1' (13): The lesson as it is written
  mend: Split it after 'fill' for class 'harbour'
    |   session 30 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-1 after fill`],
    ['the last change that gave it minutes, not one that took some or did nothing', `${meets('harbour', 30)}${course}adaptation fewer of measuring
  retime weigh-1 to 36 min
  retime activity weigh-1.fill to 12 min
  skip activity weigh-1.end
  retime activity weigh-1.fill to 12 min
${written.replace('lesson weigh-2', `${part('end', 1)}lesson weigh-2`)}`, `'retime activity weigh-1.fill to 12 min' (13): With this change “Weigh 1” takes 40 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'
  see 'weigh-1' (16): The lesson as it is written
  mend: Split it after 'lift' for class 'harbour'
    |   session 30 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-1 after lift`],
    ['once for a change, for the class with the shortest session, whatever the order of the classes', `${meets('hill', 33)}${meets('harbour', 30)}${meets('shore', 60)}${course}adaptation fewer of measuring\n  join weigh-1 with weigh-2\n${written}`, `'join weigh-1 with weigh-2' (24): With this change “Weigh 1” takes 45 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (12): The session of 'harbour'
  see 'weigh-1' (25): The lesson as it is written
  mend: Split it after 'fill' for class 'harbour'
    |   session 30 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-1 after fill`],
    ['each of two lessons by its own line', `${meets('harbour', 30)}${course}adaptation more of measuring\n  retime weigh-1 to 36 min\n  retime weigh-2 to 36 min\n${written}`, `'retime weigh-1 to 36 min' (12): With this change “Weigh 1” takes 36 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'
  see 'weigh-1' (14): The lesson as it is written
  mend: Split it after 'lift' for class 'harbour'
    |   session 30 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-1 after lift
'retime weigh-2 to 36 min' (13): With this change “Weigh 2” takes 36 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'
  see 'weigh-2' (19): The lesson as it is written
  mend: Split it after 'pour' for class 'harbour'
    |   session 30 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-2 after pour`],
    ['just the session fits', `${meets('harbour', 45)}${course}adaptation fewer of measuring\n  join weigh-1 with weigh-2\n${written}`, ''],
    ['what was too long as it is written is told at the lesson', `${meets('harbour', 24)}${course}adaptation fewer of measuring\n  join weigh-1 with weigh-2\n${written}`, `'weigh-1' (13): Lesson 'weigh-1' takes 45 min and class 'harbour' meets for 24 min, so it goes on at the next meeting.
  see '24' (6): The session of 'harbour'
  mend: Split it after 'lift' for class 'harbour'
    |   session 24 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-1 after lift`],
    ['an activity brought in', `${meets('harbour', 30)}${course}adaptation more of measuring\n  insert activity weigh-3.walk before weigh-1.lift\n${written}lesson weigh-3\n${part('walk', 10)}`, `'insert activity weigh-3.walk before weigh-1.lift' (12): With this change “Weigh 1” takes 35 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'
  see 'weigh-1' (13): The lesson as it is written
  mend: Split it after 'lift' for class 'harbour'
    |   session 30 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-1 after lift`],
    ['an activity moved in', `${meets('harbour', 30)}${course}adaptation more of measuring\n  move activity weigh-2.pour after weigh-1.lift\n${written}`, `'move activity weigh-2.pour after weigh-1.lift' (12): With this change “Weigh 1” takes 40 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'
  see 'weigh-1' (13): The lesson as it is written
  mend: Split it after 'lift' for class 'harbour'
    |   session 30 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-1 after lift`],
    ['an activity swapped', `${meets('harbour', 30)}${course}adaptation more of measuring\n  swap activity weigh-1.fill for weigh-3.walk\n${written}lesson weigh-3\n${part('walk', 15)}`, `'swap activity weigh-1.fill for weigh-3.walk' (12): With this change “Weigh 1” takes 35 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (6): The session of 'harbour'
  see 'weigh-1' (13): The lesson as it is written
  mend: Split it after 'lift' for class 'harbour'
    |   session 30 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-1 after lift`],
    ['with a part that is too long by itself: for the plan to tell', `${meets('harbour', 30)}${course}adaptation more of measuring\n  retime activity weigh-1.lift to 40 min\n${written}`, ''],
    ['a class with a line that cannot be read waits', `${meets('harbour', 30)}  lerners 7\n${course}adaptation fewer of measuring\n  join weigh-1 with weigh-2\n${written}`, '']
])('a lesson made too long: %s', async (_, text, told) => expect(await toldOf('lesson-too-long', text)).toBe(told));

test('a change is told of in its own file', async () => {
    expect(await toldOf('lesson-too-long', `--- a.course\n${meets('harbour', 30)}${course}${written}--- b.course\nadaptation fewer of measuring\n  join weigh-1 with weigh-2\n`)).toBe(`'join weigh-1 with weigh-2' (b.course 2): With this change “Weigh 1” takes 45 min and class 'harbour' meets for 30 min, so it goes on at the next meeting.
  see '30' (a.course 6): The session of 'harbour'
  see 'weigh-1' (a.course 11): The lesson as it is written
  mend: Split it after 'fill' for class 'harbour'
    |   session 30 min
    +
    + adaptation harbour-sessions of measuring for harbour
    +   split weigh-1 after fill`);
});

const plays = (game: string, ...classes: string[]): string => `${classes.map(lines => `class ${lines}\n  starts 2026-09-07\n  meets mon\n`).join('')}${course}game grocer\n  players ${game}\nlesson weigh-1\n  game grocer 10 min\nlesson weigh-2\n  about: Two.\n`;
test.each<[string, string, string]>([
    // 10 learners at ceil(10 / 5) = 2 tables of at least 5: none is empty. 11 at 3 tables: 15 - 11 = 4.
    ['11 at three tables for 5: 4 places, 13 people, so 4 at a table', plays('5', 'harbour\n  teaches measuring\n  learners 11\n  adults 2'), `'grocer' (14): 'grocer' is for 5 players. Class 'harbour' has 11 learners, so 4 places at its 3 tables stay empty, and only 2 adults are there to play along.
  see '5' (12): How many play it
  see 'harbour' (1): The class
  mend: Let 4 to 5 play 'grocer'
    | game grocer
    -   players 5
    +   players 4 to 5`],
    ['10 at two tables for 5 come out even', plays('5', 'harbour\n  teaches measuring\n  learners 10\n  adults 0'), ''],
    ['as many adults as empty places play along', plays('5', 'harbour\n  teaches measuring\n  learners 11\n  adults 4'), ''],
    ['where no number of adults is given, one is there: 3 places of 4', plays('4', 'harbour\n  teaches measuring\n  learners 9'), `'grocer' (13): 'grocer' is for 4 players. Class 'harbour' has 9 learners, so 3 places at its 3 tables stay empty, and only 1 adult is there to play along.
  see '4' (11): How many play it
  see 'harbour' (1): The class
  mend: Let 3 to 4 play 'grocer'
    | game grocer
    -   players 4
    +   players 3 to 4`],
    ['4 to 6 play: 7 at two tables leave 1 place', plays('4 to 6', 'harbour\n  teaches measuring\n  learners 7\n  adults 0'), `'grocer' (14): 'grocer' is for 4 to 6 players. Class 'harbour' has 7 learners, so 1 place at its 2 tables stays empty, and no adult is there to play along.
  see '4 to 6' (12): How many play it
  see 'harbour' (1): The class
  mend: Let 3 to 6 play 'grocer'
    | game grocer
    -   players 4 to 6
    +   players 3 to 6`],
    ['3 to 6 play: 7 at two tables, none empty', plays('3 to 6', 'harbour\n  teaches measuring\n  learners 7\n  adults 0'), ''],
    ['the crowd that lacks most: 3 without adults rather than 4 with three', plays('6', 'hill\n  teaches measuring\n  learners 8\n  adults 3', 'harbour\n  teaches measuring\n  learners 9\n  adults 0', 'shore\n  teaches measuring\n  learners 11\n  adults 0'), `'grocer' (26): 'grocer' is for 6 players. Class 'harbour' has 9 learners, so 3 places at its 2 tables stay empty, and no adult is there to play along.
  see '6' (24): How many play it
  see 'harbour' (7): The class
  mend: Let 4 to 6 play 'grocer'
    | game grocer
    -   players 6
    +   players 4 to 6`],
    ['the same, told of the first: 3 without adults rather than 4 with two', plays('6', 'harbour\n  teaches measuring\n  learners 9\n  adults 0', 'hill\n  teaches measuring\n  learners 8\n  adults 2'), `'grocer' (20): 'grocer' is for 6 players. Class 'harbour' has 9 learners, so 3 places at its 2 tables stay empty, and no adult is there to play along.
  see '6' (18): How many play it
  see 'harbour' (1): The class
  mend: Let 4 to 6 play 'grocer'
    | game grocer
    -   players 6
    +   players 4 to 6`],
    ['beside other parts and games', plays('4', 'harbour\n  teaches measuring\n  learners 3\n  adults 0').replace('  game grocer 10 min\n', '  activity lift 5 min\n    do: Lift.\n  game grocer 10 min\n  game baker 5 min\n').replace('lesson', 'game baker\nlesson'), `'grocer' (17): 'grocer' is for 4 players. Class 'harbour' has 3 learners, so 1 place at its 1 table stays empty, and no adult is there to play along.
  see '4' (12): How many play it
  see 'harbour' (1): The class
  mend: Let 3 to 4 play 'grocer'
    | game grocer
    -   players 4
    +   players 3 to 4`],
    ['in one of two pieces', `${plays('4', 'harbour\n  teaches measuring\n  learners 3\n  adults 0').replace('  game grocer 10 min\n', '  activity lift 5 min\n    do: Lift.\n  game grocer 10 min\n')}adaptation a of measuring\n  split weigh-1 after lift\n`, `'grocer' (16): 'grocer' is for 4 players. Class 'harbour' has 3 learners, so 1 place at its 1 table stays empty, and no adult is there to play along.
  see '4' (12): How many play it
  see 'harbour' (1): The class
  mend: Let 3 to 4 play 'grocer'
    | game grocer
    -   players 4
    +   players 3 to 4`],
    ['a class that plays another game instead, or does what has the name of the game', `${plays('4', 'harbour\n  teaches measuring\n  learners 3\n  adults 0').replace('  game grocer 10 min\n', '  game grocer 10 min\n  game baker 5 min\n  activity grocer 5 min\n    do: Sell.\n').replace('lesson', 'game baker\nlesson')}adaptation a of measuring\n  skip activity weigh-1.grocer\n`, ''],
    ['a section with its own adults, and one with those of the class', plays('3', 'harbour\n  teaches measuring\n  adults 0\n  section early\n    learners 4\n    adults 2\n  section late\n    learners 5'), `'grocer' (18): 'grocer' is for 3 players. Section 'late' of class 'harbour' has 5 learners, so 1 place at its 2 tables stays empty, and no adult is there to play along.
  see '3' (16): How many play it
  see 'harbour' (1): The class
  mend: Let 2 to 3 play 'grocer'
    | game grocer
    -   players 3
    +   players 2 to 3`],
    ['one learner for a game of 4', plays('4', 'harbour\n  teaches measuring\n  learners 1\n  adults 0'), `'grocer' (14): 'grocer' is for 4 players. Class 'harbour' has 1 learner, so 3 places at its 1 table stay empty, and no adult is there to play along.
  see '4' (12): How many play it
  see 'harbour' (1): The class
  mend: Let 1 to 4 play 'grocer'
    | game grocer
    -   players 4
    +   players 1 to 4`],
    ['a class of whom nobody says how many', plays('4', 'harbour\n  teaches measuring'), ''],
    ['a class of 0 has its own message', plays('4', 'harbour\n  teaches measuring\n  learners 0'), ''],
    ['a game for nobody, and one turned round, have their own messages', plays('0 to 4', 'harbour\n  teaches measuring\n  learners 1\n  adults 0') + plays('5 to 4', 'hill\n  teaches measuring\n  learners 1\n  adults 0').replaceAll('measuring', 'other'), ''],
    ['4 to 4 is 4', plays('4 to 4', 'harbour\n  teaches measuring\n  learners 3\n  adults 0'), `'grocer' (14): 'grocer' is for 4 players. Class 'harbour' has 3 learners, so 1 place at its 1 table stays empty, and no adult is there to play along.
  see '4 to 4' (12): How many play it
  see 'harbour' (1): The class
  mend: Let 3 to 4 play 'grocer'
    | game grocer
    -   players 4 to 4
    +   players 3 to 4`],
    ['a game of which a line cannot be read waits', plays('4\n  plyers 3', 'harbour\n  teaches measuring\n  learners 3\n  adults 0'), ''],
    ['a game that says nothing of players', plays('4', 'harbour\n  teaches measuring\n  learners 3\n  adults 0').replace('  players 4\n', ''), '']
])('too few players: %s', async (_, text, told) => expect(await toldOf('too-few-players', text)).toBe(told));
