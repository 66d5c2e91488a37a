/** What is said of the days of a class, where it leads and how it can be mended: days and counts worked out by hand. 7 September 2026 is a Monday. */
import { expect, test } from 'vitest';
import { toldOf as told } from '../language/telling.js';
import { problemsOn } from './fixture.js';

const toldOf = (code: string, text: string, on = '2026-09-07'): Promise<string> => told(code, text, files => problemsOn(files, on));
const lesson = (name: string, more = ''): string => `lesson ${name}\n${more}  activity lift 15 min\n    do: Lift.\n`;
const lessons = lesson('l-1') + lesson('l-2', '  follows l-1\n') + lesson('l-3');
const course = 'course c\n  unit u\n    l-1\n    l-2\n    l-3\n';
const klass = (name: string, ...lines: string[]): string => `class ${name}\n  teaches c\n  learners 3\n${lines.map(line => `  ${line}\n`).join('')}`;
const mondays = (...lines: string[]): string => lessons + course + klass('k', 'starts 2026-09-14', 'meets mon', ...lines);

test.each<[string, string, string, string?]>([
    ['a Tuesday between two Mondays: the nearer first', mondays('fixed l-3 on 2026-09-22'), `'2026-09-22' (21): “L 3” is fixed on Tuesday 22 September 2026, but the class does not meet then: that is a Tuesday, and the class meets on Mondays. It is taught in its turn. Choose another day.
  mend*: Change to Mon 21 Sep
    |   meets mon
    -   fixed l-3 on 2026-09-22
    +   fixed l-3 on 2026-09-21
  mend: Change to Mon 28 Sep
    |   meets mon
    -   fixed l-3 on 2026-09-22
    +   fixed l-3 on 2026-09-28
  mend: Fix no day for 'l-3'
    |   meets mon
    -   fixed l-3 on 2026-09-22`],
    ['a Saturday: the Monday after it first', mondays('fixed l-3 on 2026-09-26'), `'2026-09-26' (21): “L 3” is fixed on Saturday 26 September 2026, but the class does not meet then: that is a Saturday, and the class meets on Mondays. It is taught in its turn. Choose another day.
  mend*: Change to Mon 28 Sep
    |   meets mon
    -   fixed l-3 on 2026-09-26
    +   fixed l-3 on 2026-09-28
  mend: Change to Mon 21 Sep
    |   meets mon
    -   fixed l-3 on 2026-09-26
    +   fixed l-3 on 2026-09-21
  mend: Fix no day for 'l-3'
    |   meets mon
    -   fixed l-3 on 2026-09-26`],
    ['before the term: its first day', mondays('fixed l-1 on 2026-09-08'), `'2026-09-08' (21): “L 1” is fixed on Tuesday 8 September 2026, but the class does not meet then: the class starts only on Monday 14 September 2026. It is taught in its turn. Choose another day.
  mend*: Change to Mon 14 Sep
    |   meets mon
    -   fixed l-1 on 2026-09-08
    +   fixed l-1 on 2026-09-14
  mend: Fix no day for 'l-1'
    |   meets mon
    -   fixed l-1 on 2026-09-08`],
    ['before what it follows is taught: the day of its turn', mondays('fixed l-2 on 2026-09-14'), `'2026-09-14' (21): “L 2” is fixed on Monday 14 September 2026, but “L 1”, which it follows, has not been taught by then (Mon 14 Sep). It is taught on Mon 21 Sep instead. Choose a later day.
  see 'l-1' (1): “L 1” comes first
  mend*: Change to Mon 21 Sep
    |   meets mon
    -   fixed l-2 on 2026-09-14
    +   fixed l-2 on 2026-09-21
  mend: Fix no day for 'l-2'
    |   meets mon
    -   fixed l-2 on 2026-09-14`],
    ['a day that is past is no mend', mondays('fixed l-3 on 2026-09-22'), `'2026-09-22' (21): “L 3” is fixed on Tuesday 22 September 2026, but the class does not meet then: that is a Tuesday, and the class meets on Mondays. It is taught in its turn. Choose another day.
  mend*: Change to Mon 28 Sep
    |   meets mon
    -   fixed l-3 on 2026-09-22
    +   fixed l-3 on 2026-09-28
  mend: Fix no day for 'l-3'
    |   meets mon
    -   fixed l-3 on 2026-09-22`, '2026-09-22'],
    ['a line of a day that is past is left alone', mondays('fixed l-3 on 2026-09-22'), '', '2026-09-23'],
    ['a lesson of another course is marked at its name', `${mondays('fixed l-4 on 2026-09-21')}${lesson('l-4')}`, `'l-4' (21): “l-4” is fixed on 2026-09-21, but the class is not taught this lesson. Add it to the course, or take this line out.
  mend: Fix no day for 'l-4'
    |   meets mon
    -   fixed l-4 on 2026-09-21`],
    ['twice: the second line', mondays('fixed l-3 on 2026-09-21', 'fixed l-3 on 2026-09-28'), `'2026-09-28' (22): “L 3” is fixed on more than one day; the first line counts. Take one of the lines out.
  mend: Fix no day for 'l-3'
    |   fixed l-3 on 2026-09-21
    -   fixed l-3 on 2026-09-28`],
    ['a day that is none, or a lesson that is not there, has its own message', mondays('fixed l-3 on 2026-09-31', 'fixed l-9 on 2026-09-22'), ''],
    ['two classes: each its own line', `${mondays('fixed l-3 on 2026-09-22')}${klass('m', 'starts 2026-09-14', 'meets tue', 'fixed l-3 on 2026-09-23')}`, `'2026-09-22' (21): “L 3” is fixed on Tuesday 22 September 2026, but the class does not meet then: that is a Tuesday, and the class meets on Mondays. It is taught in its turn. Choose another day.
  mend*: Change to Mon 21 Sep
    |   meets mon
    -   fixed l-3 on 2026-09-22
    +   fixed l-3 on 2026-09-21
  mend: Change to Mon 28 Sep
    |   meets mon
    -   fixed l-3 on 2026-09-22
    +   fixed l-3 on 2026-09-28
  mend: Fix no day for 'l-3'
    |   meets mon
    -   fixed l-3 on 2026-09-22
'2026-09-23' (27): “L 3” is fixed on Wednesday 23 September 2026, but the class does not meet then: that is a Wednesday, and the class meets on Tuesdays. It is taught in its turn. Choose another day.
  mend*: Change to Tue 22 Sep
    |   meets tue
    -   fixed l-3 on 2026-09-23
    +   fixed l-3 on 2026-09-22
  mend: Change to Tue 29 Sep
    |   meets tue
    -   fixed l-3 on 2026-09-23
    +   fixed l-3 on 2026-09-29
  mend: Fix no day for 'l-3'
    |   meets tue
    -   fixed l-3 on 2026-09-23`]
])('a fixed date: %s', async (_, text, says, on) => expect(await toldOf('fixed-date', text, on)).toBe(says));

test.each<[string, string, string, string?]>([
    ['until the day of its first turn', mondays('fixed l-1 on 2026-09-28'), `'l-1' (5): “L 2” waits for “L 1”, which it follows and which is fixed on Mon 28 Sep. Fix an earlier day if it should not wait.
  see 'fixed l-1 on 2026-09-28' (21): The fixed day
  mend: Fix no day for 'l-1'
    |   meets mon
    -   fixed l-1 on 2026-09-28`, '2026-10-05'],
    ['after it no more', mondays('fixed l-1 on 2026-09-28'), '', '2026-10-06'],
    ['one that waits for another reason', mondays('fixed l-3 on 2026-09-14'), '']
])('a lesson that waits: %s', async (_, text, says, on) => expect(await toldOf('lesson-waits', text, on)).toBe(says));

test.each<[string, string, string]>([
    ['a day on which another lesson is taught', mondays('log', '  unsure l-1 on 2026-09-21'), `'2026-09-21' (22): The log says that “L 1” was taught on Monday 21 September 2026, but in this plan it comes on Mon 14 Sep. Correct the line, or give the lesson a fixed day.
  mend*: Change to Mon 14 Sep
    |   log
    -     unsure l-1 on 2026-09-21
    +     unsure l-1 on 2026-09-14
  mend: Remove this line
    |   log
    -     unsure l-1 on 2026-09-21`],
    ['a lesson that is not taught at all', `${mondays('log', '  unsure l-4 on 2026-09-21')}${lesson('l-4')}`, `'2026-09-21' (22): The log says that “l-4” was taught on Monday 21 September 2026, but the class is not taught this lesson. Correct the line, or give the lesson a fixed day.
  mend: Remove this line
    |   log
    -     unsure l-4 on 2026-09-21`],
    ['a lesson that is not there', mondays('log', '  unsure l-9 on 2026-09-21'), ''],
    ['the day it is taught', mondays('log', '  unsure l-1 on 2026-09-14'), '']
])('a log line: %s', async (_, text, says) => expect(await toldOf('log-not-taught', text, '2026-10-01')).toBe(says));

test.each<[string, string, string]>([
    ['with an end: it may go', lessons + course + klass('k', 'starts 2026-09-14', 'meets wed', 'ends 2026-09-15'), `'2026-09-15' (21): The first and last day and the days off of the class “K” leave too few days to meet: the weeks have no dates.
  mend: Remove 'ends': the class meets until all lessons are taught
    |   meets wed
    -   ends 2026-09-15`],
    ['every day off', lessons + course + klass('k', 'starts 2026-09-14', 'meets mon', 'off 2026-09-14 to 2026-12-18', 'ends 2026-12-18'), `'2026-12-18' (22): The first and last day and the days off of the class “K” leave too few days to meet: the weeks have no dates.
  mend: Remove 'ends': the class meets until all lessons are taught
    |   off 2026-09-14 to 2026-12-18
    -   ends 2026-12-18`]
])('no day to meet: %s', async (_, text, says) => expect(await toldOf('never-meets', text)).toBe(says));

const long = 'lesson l-1\n  activity lift 10 min\n    do: Lift.\n  activity fill 50 min\n    do: Fill.\nlesson l-2\n  activity fill 45 min\n    do: Fill.\ncourse c\n  unit u\n    l-1\n    l-2\n';
test.each<[string, string, string, string?]>([
    ['each part, and once for two classes', `${long}${klass('k', 'starts 2026-09-07', 'meets mon', 'session 30 min')}${klass('m', 'starts 2026-09-07', 'meets tue', 'session 40 min')}`, `'activity fill 50 min' (4): “Fill” in “L 1” takes 50 min, but the class “K” meets for 30 min (Mon 14 Sep). Make two parts of it, shorten it, or make the session longer.
  see '30' (18): The session of “K”
  mend: Let class 'k' meet for 50 min
    |   meets mon
    -   session 30 min
    +   session 50 min
'activity fill 45 min' (7): “Fill” in “L 2” takes 45 min, but the class “K” meets for 30 min (Mon 21 Sep). Make two parts of it, shorten it, or make the session longer.
  see '30' (18): The session of “K”
  mend: Let class 'k' meet for 45 min
    |   meets mon
    -   session 30 min
    +   session 45 min`],
    ['until the last day of the lesson', `${long}${klass('k', 'starts 2026-09-07', 'meets mon', 'session 30 min')}`, `'activity fill 45 min' (7): “Fill” in “L 2” takes 45 min, but the class “K” meets for 30 min (Mon 21 Sep). Make two parts of it, shorten it, or make the session longer.
  see '30' (18): The session of “K”
  mend: Let class 'k' meet for 45 min
    |   meets mon
    -   session 30 min
    +   session 45 min`, '2026-09-21'],
    ['a part that an adaptation brings in stands elsewhere', `${long.replace('    l-2\n', '')}${klass('k', 'starts 2026-09-07', 'meets mon', 'session 55 min')}adaptation a of c\n  add to l-1\n    activity walk 60 min\n      do: Walk.\n`, `'activity walk 60 min' (20): “Walk” in “L 1” takes 60 min, but the class “K” meets for 55 min (Mon 21 Sep). Make two parts of it, shorten it, or make the session longer.
  see '55' (17): The session of “K”
  mend: Let class 'k' meet for 60 min
    |   meets mon
    -   session 55 min
    +   session 60 min`]
])('a part longer than the session: %s', async (_, text, says, on) => expect(await toldOf('session-overrun', text, on)).toBe(says));

test.each<[string, string, string, string?]>([
    ['two lessons of three, one day a week', lessons + course + klass('k', 'starts 2026-09-14', 'meets mon', 'ends 2026-09-18'), `'2026-09-18' (21): 2 lessons no longer fit before the class “K” ends on Friday 18 September 2026: “L 2” and “L 3”. Choose a later end, more or longer meetings, or leave lessons out.
  see 'l-2' (4): “L 2” has no day
  see 'l-3' (8): “L 3” has no day
  mend: End on Monday 28 September 2026. Both lessons fit. Gives up: 2 more meetings after Friday 18 September 2026
    |   meets mon
    -   ends 2026-09-18
    +   ends 2026-09-28
  mend: Meet on Tuesdays too. 1 of the 2 lessons fits. Gives up: 1 free day: the Tuesdays, 14 September to 18 September 2026
    |   starts 2026-09-14
    -   meets mon
    +   meets mon, tue
  mend: Teach up to 2 lessons at a meeting. 1 of the 2 lessons fits. Gives up: a meeting for each lesson: 2 share it on 1 day
    |   ends 2026-09-18
    +   lessons 2 per meeting`],
    ['with days to catch up, and a session', lessons + course + klass('k', 'starts 2026-09-14', 'meets mon', 'session 30 min', 'catch-up 1 day every 1 lesson', 'ends 2026-10-02'), `'2026-10-02' (23): 1 lesson no longer fits before the class “K” ends on Friday 2 October 2026: “L 3”. Choose a later end, more or longer meetings, or leave lessons out.
  see 'l-3' (8): “L 3” has no day
  mend: Meet on Tuesdays too. The lesson fits. Gives up: 2 free days: the Tuesdays, 14 September to 2 October 2026
    |   starts 2026-09-14
    -   meets mon
    +   meets mon, tue
  mend: Keep no days to catch up. The lesson fits. Gives up: the 2 days kept free to catch up: what has to be repeated then moves the rest
    |   session 30 min
    -   catch-up 1 day every 1 lesson
  mend: End on Monday 5 October 2026. The lesson fits. Gives up: 1 more meeting after Friday 2 October 2026
    |   catch-up 1 day every 1 lesson
    -   ends 2026-10-02
    +   ends 2026-10-05
  mend: Leave out “L 2”. The lesson fits. Gives up: 1 lesson. No lesson follows it, and it names no objectives
    |
    + adaptation k-changes of c for k
    +   skip lesson l-2
    +`],
    ['on the last day', lessons + course + klass('k', 'starts 2026-09-14', 'meets mon, tue', 'ends 2026-09-18'), `'2026-09-18' (21): 1 lesson no longer fits before the class “K” ends on Friday 18 September 2026: “L 3”. Choose a later end, more or longer meetings, or leave lessons out.
  see 'l-3' (8): “L 3” has no day
  mend: Meet on Wednesdays too. The lesson fits. Gives up: 1 free day: the Wednesdays, 14 September to 18 September 2026
    |   starts 2026-09-14
    -   meets mon, tue
    +   meets mon, tue, wed
  mend: Teach up to 2 lessons at a meeting. The lesson fits. Gives up: a meeting for each lesson: 2 share it on 1 day
    |   ends 2026-09-18
    +   lessons 2 per meeting
  mend: End on Monday 21 September 2026. The lesson fits. Gives up: 1 more meeting after Friday 18 September 2026
    |   meets mon, tue
    -   ends 2026-09-18
    +   ends 2026-09-21
  mend: Leave out “L 2”. The lesson fits. Gives up: 1 lesson. No lesson follows it, and it names no objectives
    |
    + adaptation k-changes of c for k
    +   skip lesson l-2
    +`, '2026-09-18'],
    ['the number of lessons of its own line is written over', lessons + course + klass('k', 'starts 2026-09-14', 'meets mon, tue', 'lessons 1 per meeting', 'ends 2026-09-18'), `'2026-09-18' (22): 1 lesson no longer fits before the class “K” ends on Friday 18 September 2026: “L 3”. Choose a later end, more or longer meetings, or leave lessons out.
  see 'l-3' (8): “L 3” has no day
  mend: Meet on Wednesdays too. The lesson fits. Gives up: 1 free day: the Wednesdays, 14 September to 18 September 2026
    |   starts 2026-09-14
    -   meets mon, tue
    +   meets mon, tue, wed
  mend: Teach up to 2 lessons at a meeting. The lesson fits. Gives up: a meeting for each lesson: 2 share it on 1 day
    |   meets mon, tue
    -   lessons 1 per meeting
    +   lessons 2 per meeting
  mend: End on Monday 21 September 2026. The lesson fits. Gives up: 1 more meeting after Friday 18 September 2026
    |   lessons 1 per meeting
    -   ends 2026-09-18
    +   ends 2026-09-21
  mend: Leave out “L 2”. The lesson fits. Gives up: 1 lesson. No lesson follows it, and it names no objectives
    |
    + adaptation k-changes of c for k
    +   skip lesson l-2
    +`],
    ['the day after', lessons + course + klass('k', 'starts 2026-09-14', 'meets mon, tue', 'ends 2026-09-18'), '', '2026-09-19'],
    ['one that an adaptation brought in goes with its own line', `${lessons}${lesson('l-4')}${course}${klass('k', 'starts 2026-09-14', 'meets mon, tue, wed', 'ends 2026-09-16')}adaptation a of c for k\n  insert l-4 after l-3\n`, `'2026-09-16' (24): 1 lesson no longer fits before the class “K” ends on Wednesday 16 September 2026: “L 4”. Choose a later end, more or longer meetings, or leave lessons out.
  see 'l-4' (11): “L 4” has no day
  mend: Teach up to 2 lessons at a meeting. The lesson fits. Gives up: a meeting for each lesson: 2 share it on 2 days
    |   ends 2026-09-16
    +   lessons 2 per meeting
  mend: End on Monday 21 September 2026. The lesson fits. Gives up: 1 more meeting after Wednesday 16 September 2026
    |   meets mon, tue, wed
    -   ends 2026-09-16
    +   ends 2026-09-21
  mend: Leave out “L 3”. The lesson fits. Gives up: 1 lesson. No lesson follows it, and it names no objectives
    |   insert l-4 after l-3
    +   skip lesson l-3`]
])('more lessons than days: %s', async (_, text, says, on) => expect(await toldOf('term-overrun', text, on)).toBe(says));

// Days 1 to 18 on Mondays and Tuesdays from 7 September: what day 2 introduces can be come back to in time up to the 17th meeting, which is on 2 November.
const days = (says: Record<number, string>, more = '', name = 'c', klassName = 'k'): string => `course ${name}\n  unit u\n${Array.from({ length: 18 }, (_, i) => `    day-${i + 1}\n`).join('')}${klass(klassName, 'starts 2026-09-07', 'meets mon, tue').replace('teaches c', `teaches ${name}`)}${more}`
    + (name === 'c' ? Array.from({ length: 18 }, (_, i) => `lesson day-${i + 1}\n${says[i + 1] === undefined ? '' : `  objectives\n    ${says[i + 1]}\n`}  activity talk 10 min\n    do: Talk.\n`).join('') : '');
const goals = 'objective mass\nobjective length\n';
test.each<[string, string, string, string?]>([
    ['practised in the last lesson that is in time', `${goals}${days({ 2: 'introduces mass', 5: 'practises length', 17: 'practises length', 18: 'checks mass, length', 1: 'introduces length' })}`, `'mass' (35): After “Day 2” (week 1), “Mass” is not met again for 16 meetings, until “Day 18” (week 9), and it has not been checked yet. Let a lesson in between practise it: \`practices mass\`.
  mend: Practise it in 'day-17'
    |   objectives
    -     practises length
    +     practises length, mass`],
    ['what no lesson checks has its own message', `${goals}${days({ 2: 'introduces mass', 1: 'introduces length', 3: 'checks length' })}`, ''],
    ['two objectives, two courses: each once', `${goals}${days({ 2: 'introduces mass, length', 18: 'checks mass, length' }, klass('m', 'starts 2026-09-07', 'meets mon, tue') + days({}, '', 'd', 'n'))}`, `'mass' (63): After “Day 2” (week 1), “Mass” is not met again for 16 meetings, until “Day 18” (week 9), and it has not been checked yet. Let a lesson in between practise it: \`practices mass\`.
  mend: Practise it in 'day-17'
    | lesson day-17
    +   objectives
    +     practises mass
'length' (63): After “Day 2” (week 1), “Length” is not met again for 16 meetings, until “Day 18” (week 9), and it has not been checked yet. Let a lesson in between practise it: \`practices length\`.
  mend: Practise it in 'day-17'
    | lesson day-17
    +   objectives
    +     practises length
'mass' (63): After “Day 2” (week 1), “Mass” is not met again for 16 meetings, until “Day 18” (week 9), and it has not been checked yet. Let a lesson in between practise it: \`practices mass\`.
  mend: Practise it in 'day-17'
    | lesson day-17
    +   objectives
    +     practises mass
'length' (63): After “Day 2” (week 1), “Length” is not met again for 16 meetings, until “Day 18” (week 9), and it has not been checked yet. Let a lesson in between practise it: \`practices length\`.
  mend: Practise it in 'day-17'
    | lesson day-17
    +   objectives
    +     practises length`],
    ['a course with a lesson that cannot be read waits', `${goals}${days({ 2: 'introduces mass', 18: 'checks mass', 7: 'practices mass or length', 3: 'introduces length', 4: 'checks length' })}`, ''],
    ['nothing in between is left to teach: the last meeting of all', `${goals}${days({ 1: 'introduces length', 2: 'introduces mass, length', 3: 'checks length', 18: 'checks mass' })}`, '', '2026-11-03']
])('not come back to: %s', async (_, text, says, on) => expect(await toldOf('not-revisited', text, on ?? '2026-09-01')).toBe(says));
