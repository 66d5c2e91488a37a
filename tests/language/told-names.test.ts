/** What is said of names that nothing has and of files that cannot be used, each with its mends; and when a slip elsewhere keeps a message back. */
import { expect, test } from 'vitest';
import { toldOf } from './telling.js';

const course = 'course c\n  unit u\n    l-1\n';
const lesson = (...lines: string[]): string => `lesson l-1\n${lines.map(line => `  ${line}\n`).join('')}`;

test.each<[string, string, string]>([
    ['near a known one: that one first, the inventory after it', `material pan-balance\n  reusable\nmaterial scarf\n  reusable\n${lesson('materials', '  pan-balanse 1')}`, `'pan-balanse' (7): Lesson l-1 needs 'pan-balanse', which is not in any inventory; did you mean 'pan-balance'?
  mend*: Change to 'pan-balance'
    |   materials
    -     pan-balanse 1
    +     pan-balance 1
  mend: Add 'pan-balanse' to the inventory
    |   reusable
    +
    + material pan-balanse "Pan balanse"
    +   reusable`],
    ['near none: into the inventory, with a title', `material scarf\n  reusable\n${lesson('materials', '  spring-scale 1')}`, `'spring-scale' (5): Lesson l-1 needs 'spring-scale', which is not in any inventory.
  mend*: Add 'spring-scale' to the inventory
    |   reusable
    +
    + material spring-scale "Spring scale"
    +   reusable`],
    ['into the inventory of another file, behind its last', `--- a.kit\nmaterial scarf\n  reusable\nmaterial rope\n  reusable\n\n--- b.lesson\n${lesson('not needed spring-scale')}`, `'spring-scale' (b.lesson 2): Lesson l-1 names 'spring-scale', which is not in any inventory.
  mend*: Add 'spring-scale' to the inventory
    |
    + material spring-scale "Spring scale"
    +   reusable
    +`],
    ['where there is no inventory, at the end of this file', lesson('materials', '  spring-scale 1'), `'spring-scale' (3): Lesson l-1 needs 'spring-scale', which is not in any inventory.
  mend*: Add 'spring-scale' to the inventory
    |
    + material spring-scale "Spring scale"
    +   reusable
    +`],
    ['an objective, behind the last or at the end', `objective mass\n  about: Heavy.\n${lesson('objectives', '  checks volume')}`, `'volume' (5): Lesson l-1 names the objective 'volume', which is declared nowhere.
  mend*: Declare the objective 'volume'
    |   about: Heavy.
    +
    + objective volume "Volume"`],
    ['the first objective', `objective mass\n  builds on volume\n${lesson('objectives', '  checks mass')}`, `'volume' (2): This line names the objective 'volume', which is declared nowhere.
  mend*: Declare the objective 'volume'
    |   builds on volume
    +
    + objective volume "Volume"`],
    ['in braces', lesson('about: The {spring-scale}.'), `'spring-scale' (2): '{spring-scale}' names nothing in this programme.
  mend*: Add 'spring-scale' to the inventory
    |
    + material spring-scale "Spring scale"
    +   reusable
    +`],
    ['of another kind', `material rope\n  reusable\nprint card\nbook tales\ngame grocer\nkit box\nobjective mass\n${course}class k\n${lesson('materials', '  grocer 1', '  box 1', '  mass 1', '  c 1', '  k 1', '  l-1 1', 'game card 5 min', 'game rope 5 min', 'game tales 5 min')}`, `'grocer' (14): Lesson l-1 needs 'grocer', which is not in any inventory ('grocer' is a game).
  mend*: Add 'grocer' to the inventory
    |   reusable
    +
    + material grocer "Grocer"
    +   reusable
'box' (15): Lesson l-1 needs 'box', which is not in any inventory ('box' is a kit).
  mend*: Add 'box' to the inventory
    |   reusable
    +
    + material box "Box"
    +   reusable
'mass' (16): Lesson l-1 needs 'mass', which is not in any inventory ('mass' is an objective).
  mend*: Add 'mass' to the inventory
    |   reusable
    +
    + material mass "Mass"
    +   reusable
'c' (17): Lesson l-1 needs 'c', which is not in any inventory ('c' is a course).
  mend*: Add 'c' to the inventory
    |   reusable
    +
    + material c "C"
    +   reusable
'k' (18): Lesson l-1 needs 'k', which is not in any inventory ('k' is a class).
  mend*: Add 'k' to the inventory
    |   reusable
    +
    + material k "K"
    +   reusable
'l-1' (19): Lesson l-1 needs 'l-1', which is not in any inventory ('l-1' is a lesson).
  mend*: Add 'l-1' to the inventory
    |   reusable
    +
    + material l-1 "L 1"
    +   reusable
'card' (20): There is no game 'card' ('card' is a print).
'rope' (21): There is no game 'rope' ('rope' is a material).
'tales' (22): There is no game 'tales' ('tales' is a book).`],
    ['each kind by its name', `game grocer\n  found in zebra\n${course}  uses zebra 1 in all\n    zebra-9\nclass k\n  teaches zebra\n  shares cupboard with zebra\n  kits zebra 2\n  fixed zebra on 2026-09-14\n  on hand\n    zebra 3\nobjective mass\n  aligns to zebra M.1\nlesson l-1\n  follows zebra\n  game zebra 5 min\n  checkpoint end 5 min\n    if unsure: repeat zebra\nadaptation a of zebra for zebra\n`, `'zebra' (2): There is no book 'zebra'.
'zebra' (6): There is no kit 'zebra'.
'zebra' (12): There is no lesson 'zebra'.
'zebra' (11): There is no kit 'zebra'.
'zebra' (14): This line names 'zebra', which is not in any inventory.
  mend*: Add 'zebra' to the inventory
    |
    + material zebra "Zebra"
    +   reusable
    +
'zebra' (10): There is no class 'zebra'.
'zebra' (9): There is no course 'zebra'.
'zebra' (16): There is no framework 'zebra'.
'zebra' (18): There is no lesson 'zebra'.
'zebra' (19): There is no game 'zebra'.
'zebra' (21): There is no part 'zebra' in this lesson.
'zebra' (22): There is no class 'zebra'.
'zebra' (22): There is no course 'zebra'.`],
    ['a part of a thing, and a stand-in', `material coin\n  reusable\n  parts one, two\n  stand-in zebra 1 for 1\n${lesson('materials', '  coin (ones) 3', '  coin (one, zebra) 3')}`, `'zebra' (4): This line names 'zebra', which is not in any inventory.
  mend*: Add 'zebra' to the inventory
    |   stand-in zebra 1 for 1
    +
    + material zebra "Zebra"
    +   reusable
'ones' (7): 'ones' is not among the parts of 'coin'; did you mean 'one'?
  mend*: Change to 'one'
    |   materials
    -     coin (ones) 3
    +     coin (one) 3
'zebra' (8): 'zebra' is not among the parts of 'coin'.`],
    ['in a change: it can go; a part only where its lesson is known', `${course}${lesson('activity lift 5 min', '  do: Lift.')}adaptation a of c\n  skip lesson zebra\n  skip activity l-1.drop\n  skip activity zebra.drop\n  add to l-1\n    materials\n      zebra 1\n`, `'zebra' (8): There is no lesson 'zebra'.
  mend: Remove this change
    | adaptation a of c
    -   skip lesson zebra
'drop' (9): There is no part 'drop' in this lesson.
  mend: Remove this change
    |   skip lesson zebra
    -   skip activity l-1.drop
'zebra' (10): There is no lesson 'zebra'.
  mend: Remove this change
    |   skip activity l-1.drop
    -   skip activity zebra.drop
'zebra' (13): This line needs 'zebra', which is not in any inventory.
  mend*: Add 'zebra' to the inventory
    |
    + material zebra "Zebra"
    +   reusable
    +`],
    ['not one that stands in a line that cannot be read', `materail spring-scale\n  reusable\n${lesson('materials', '  spring-scale 1')}`, '']
])('a name that nothing has: %s', async (_, text, told) => expect(await toldOf('unknown-name', text)).toBe(told));

const klass = (...lines: string[]): string => `course c\nclass k\n  teaches c\n  learners 3\n  starts 2026-09-07\n  meets mon\n${lines.map(line => `  ${line}\n`).join('')}`;
const events = (...lines: string[]): string => ['BEGIN:VCALENDAR', ...lines, 'END:VCALENDAR', ''].join('\n');
const event = (title: string, from: string, to: string): string => ['BEGIN:VEVENT', `UID:${title}`, `SUMMARY:${title}`, `DTSTART;VALUE=DATE:${from}`, `DTEND;VALUE=DATE:${to}`, 'END:VEVENT'].join('\n');
const holidays = event('Harvest day', '20261005', '20261006');

test.each<[string, string, string]>([
    ['the nearest path', `${klass('off from "cal/twon.ics"')}--- cal/town.ics\n${events(holidays)}--- cal/other.ics\n${events(holidays)}`, `'"cal/twon.ics"' (programme.course 7): The calendar 'cal/twon.ics' cannot be used. There is no such file. Check the names of its folder and of the file itself, seen from this file.
  mend*: Change to '"cal/town.ics"'
    |   meets mon
    -   off from "cal/twon.ics"
    +   off from "cal/town.ics"`],
    ['the only one of that name, in another folder and in another case', `${klass('off from "dates-of-the-year/TOWN.ics"')}--- cal/town.ics\n${events(holidays)}--- cal/other.ics\n${events(holidays)}`, `'"dates-of-the-year/TOWN.ics"' (programme.course 7): The calendar 'dates-of-the-year/TOWN.ics' cannot be used. There is no such file. Check the names of its folder and of the file itself, seen from this file.
  mend*: Change to '"cal/town.ics"'
    |   meets mon
    -   off from "dates-of-the-year/TOWN.ics"
    +   off from "cal/town.ics"`],
    ['of two of that name neither', `${klass('off from "dates-of-the-year/town.ics"')}--- cal/town.ics\n${events(holidays)}--- old/town.ics\n${events(holidays)}`, `'"dates-of-the-year/town.ics"' (programme.course 7): The calendar 'dates-of-the-year/town.ics' cannot be used. There is no such file. Check the names of its folder and of the file itself, seen from this file.`],
    ['the only one there is', `${klass('off from "holidays.ics"')}--- cal/zebra.ics\n${events(holidays)}`, `'"holidays.ics"' (programme.course 7): The calendar 'holidays.ics' cannot be used. There is no such file. Check the names of its folder and of the file itself, seen from this file.
  mend*: Change to '"cal/zebra.ics"'
    |   meets mon
    -   off from "holidays.ics"
    +   off from "cal/zebra.ics"`],
    ['none is there', klass('off from "holidays.ics"'), `'"holidays.ics"' (7): The calendar 'holidays.ics' cannot be used. There is no such file. Check the names of its folder and of the file itself, seen from this file.`],
    ['a framework', `framework f from "none.json"\n`, `'"none.json"' (1): The framework 'none.json' cannot be used. There is no such file. Check the names of its folder and of the file itself, seen from this file.`],
    ['a calendar that is no framework', `framework f from "town.ics"\n--- town.ics\n${events(holidays)}`, `'"town.ics"' (programme.course 1): The framework 'town.ics' cannot be used. The file of a framework ends in .json. Save it as CASE JSON and name that file.`]
])('a file that cannot be used: %s', async (_, text, told) => expect(await toldOf('file-not-usable', text)).toBe(told));

test.each<[string, string, string]>([
    ['an event that ends before it begins', `${klass('off from "town.ics"')}--- town.ics\n${events(holidays, event('Winter rest', '20261010', '20261001'))}`, `'"town.ics"' (programme.course 7): The calendar 'town.ics' was read, but: 'Winter rest' on 2026-10-10 ends before it begins and is left out.`],
    ['names that no event has; a part of a title in any case is enough', `${klass('off from "town.ics" named " harvest ", "Zebra", "rest"')}--- town.ics\n${events(holidays)}`, `'"town.ics"' (programme.course 7): The calendar 'town.ics' was read, but no event of whole days in it is called 'Zebra' or 'rest': that takes no day away. Look how the calendar writes it.`],
    ['all is well', `${klass('off from "town.ics" named "HARVEST"')}--- town.ics\n${events(holidays)}`, ''],
    ['a file that cannot be used has its own message', klass('off from "none.ics" named "harvest"'), '']
])('a file of which something was left out: %s', async (_, text, told) => expect(await toldOf('file-partly-read', text)).toBe(told));

const frame = (...codes: string[]): string => JSON.stringify({
    CFDocument: { identifier: 'state', title: 'State' },
    CFItems: [...codes.map(code => ({ identifier: code, humanCodingScheme: code, fullStatement: `About ${code}.` })), { identifier: 'none', fullStatement: 'Without a code.' }],
    CFAssociations: codes.map(code => ({ associationType: 'isChildOf', originNodeURI: { identifier: code }, destinationNodeURI: { identifier: 'state' } }))
});
const aligned = (...codes: string[]): string => `--- a.course\nframework f "The frame" from "f.json"\nobjective mass\n${codes.map(code => `  aligns to f ${code}\n`).join('')}`;
test.each<[string, string, string]>([
    ['the nearest code is offered, one far from all is not', `${aligned('M.1.1', 'M.1.3', 'zebra')}--- f.json\n${frame('M.1.1', 'M.1.2')}\n`, `'aligns to f M.1.3' (a.course 4): 'The frame' has no item 'M.1.3'; did you mean 'M.1.2'?
  mend*: Change to 'M.1.2'
    |   aligns to f M.1.1
    -   aligns to f M.1.3
    +   aligns to f M.1.2
'aligns to f zebra' (a.course 5): 'The frame' has no item 'zebra'. Compare the code with the framework's file.`],
    ['a code with blanks is written without them', `${aligned('MA.10.11')}--- f.json\n${frame('MA. 10. 12')}\n`, `'aligns to f MA.10.11' (a.course 3): 'The frame' has no item 'MA.10.11'; did you mean 'MA.10.12'?
  mend*: Change to 'MA.10.12'
    | objective mass
    -   aligns to f MA.10.11
    +   aligns to f MA.10.12`],
    ['a code that cannot be written is not offered', `${aligned('MA.10.11')}--- f.json\n${frame('MA.10.1(', '(MA.10.11')}\n`, `'aligns to f MA.10.11' (a.course 3): 'The frame' has no item 'MA.10.11'. Compare the code with the framework's file.`],
    ['where the framework cannot be read, nothing is', `${aligned('M.1.1')}`, ''],
    ['nor where it names no file', 'framework f\nobjective mass\n  aligns to f M.1.1\n', ''],
    ['nor of a framework that is not there', 'objective mass\n  aligns to g M.1.1\n', '']
])('a code of a framework: %s', async (_, text, told) => expect(await toldOf('unknown-framework-code', text)).toBe(told));
