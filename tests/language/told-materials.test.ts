/** What is said of the materials of lessons and games: what is missing, what nobody uses, what is in the kit, each with its mends. */
import { expect, test } from 'vitest';
import { toldOf } from './telling.js';

const things = `material rope
  consumable
  measured in m
material bean
  consumable
  counted in bag / bags
material cup
  reusable
material mug
  reusable
  stand-in cup 1 for 1
print card
book tales
`;
const course = (...lines: string[]): string => `course measuring\n${lines.map(line => `  ${line}\n`).join('')}  unit u\n    l-1\n    l-2\n`;
const lesson = (name: string, ...lines: string[]): string => `lesson ${name}\n${lines.map(line => `  ${line}\n`).join('')}`;
const uses = (...names: string[]): string[] => ['activity lift 5 min', `  do: Take ${names.map(name => `{${name}}`).join(' and ')}.`];

test.each<[string, string, string]>([
    ['a counted thing: one for a group', `${things}${lesson('l-1', ...uses('cup'))}`, `'cup' (16): Lesson 'l-1' uses 'cup' here, but its materials do not list it.
  mend*: Add 'cup' to the materials of lesson 'l-1'
    | lesson l-1
    +   materials
    +     cup 1 per group`],
    ['under the materials that stand there, in their columns', `${things}${lesson('l-1', 'materials', '  bean   1 bag per pair', '  mug    1 per pair', ...uses('bean', 'mug', 'card'))}`, `'card' (19): Lesson 'l-1' uses 'card' here, but its materials do not list it.
  mend*: Add 'card' to the materials of lesson 'l-1'
    |     mug    1 per pair
    +     card   1 per learner`],
    ['where the amounts stand in no column, behind one blank', `${things}${lesson('l-1', 'materials', '  bean 1 bag per pair', '  mug 1 per pair', ...uses('bean', 'mug', 'card'))}`, `'card' (19): Lesson 'l-1' uses 'card' here, but its materials do not list it.
  mend*: Add 'card' to the materials of lesson 'l-1'
    |     mug 1 per pair
    +     card 1 per learner`],
    ['under one line that keeps no column on purpose', `${things}${lesson('l-1', 'materials', '  bean 1 bag per pair', ...uses('bean', 'card'))}`, `'card' (18): Lesson 'l-1' uses 'card' here, but its materials do not list it.
  mend*: Add 'card' to the materials of lesson 'l-1'
    |     bean 1 bag per pair
    +     card 1 per learner`],
    ['under one line with more than one blank', `${things}${lesson('l-1', 'materials', '  bean   1 bag per pair', ...uses('bean', 'card'))}`, `'card' (18): Lesson 'l-1' uses 'card' here, but its materials do not list it.
  mend*: Add 'card' to the materials of lesson 'l-1'
    |     bean   1 bag per pair
    +     card   1 per learner`],
    ['a word of its own, a print, a book, and what only the writer can say', `${things}${lesson('l-1', ...uses('bean', 'card', 'tales', 'rope'))}`, `'bean' (16): Lesson 'l-1' uses 'bean' here, but its materials do not list it.
  mend*: Add 'bean' to the materials of lesson 'l-1'
    | lesson l-1
    +   materials
    +     bean 1 bag per group
'card' (16): Lesson 'l-1' uses 'card' here, but its materials do not list it.
  mend*: Add 'card' to the materials of lesson 'l-1'
    | lesson l-1
    +   materials
    +     card 1 per learner
'tales' (16): Lesson 'l-1' uses 'tales' here, but its materials do not list it.
  mend*: Add 'tales' to the materials of lesson 'l-1'
    | lesson l-1
    +   materials
    +     tales 1 per class
'rope' (16): Lesson 'l-1' uses 'rope' here, but its materials do not list it.
  mend*: Add 'rope' to the materials of lesson 'l-1'
    | lesson l-1
    +   materials
    +     rope`],
    ['as most lessons ask for it', `${things}${lesson('l-2', 'materials', '  rope 50 cm per pair', '  cup 2 per pair', ...uses('rope', 'cup'))}${lesson('l-3', 'materials', '  cup 3 per group of 4', '  rope 1 m', ...uses('cup', 'rope'))}${lesson('l-4', 'materials', '  cup 3 per group of 4', ...uses('cup'))}${lesson('l-1', ...uses('cup', 'rope'))}`, `'cup' (33): Lesson 'l-1' uses 'cup' here, but its materials do not list it.
  mend*: Add 'cup' to the materials of lesson 'l-1'
    | lesson l-1
    +   materials
    +     cup 3 per group of 4
'rope' (33): Lesson 'l-1' uses 'rope' here, but its materials do not list it.
  mend*: Add 'rope' to the materials of lesson 'l-1'
    | lesson l-1
    +   materials
    +     rope 50 cm per pair`],
    ['a stand-in of what is listed is there; the other way round it is not', `${things}${lesson('l-1', 'materials', '  mug 1 per pair', ...uses('cup', 'mug'))}${lesson('l-2', 'materials', '  cup 1 per pair', ...uses('cup', 'mug'))}`, `'mug' (23): Lesson 'l-2' uses 'mug' here, but its materials do not list it.
  mend*: Add 'mug' to the materials of lesson 'l-2'
    |     cup 1 per pair
    +     mug 1 per pair`],
    ['what a game of the lesson brings is there, its book with it', `${things}game grocer\n  found in tales\n  materials\n    cup 1 per pair\n${lesson('l-1', 'game grocer 5 min', ...uses('cup', 'tales'))}`, ''],
    ['in a caution too, behind what the lesson says of itself', `${things}${lesson('l-1', 'about: One.', 'caution glass: Mind the {cup}.')}`, `'cup' (16): Lesson 'l-1' uses 'cup' here, but its materials do not list it.
  mend*: Add 'cup' to the materials of lesson 'l-1'
    |   caution glass: Mind the {cup}.
    +   materials
    +     cup 1 per group`],
    ['with the word for the kit that its course uses', `${things}kit box\n  holds\n    bean 6 bags\n${course('uses box 1 in all')}${lesson('l-1', 'materials', '  mug 1 per pair  not in kit', '  tales 1', ...uses('mug', 'card', 'bean'))}`, `'card' (27): Lesson 'l-1' uses 'card' here, but its materials do not list it.
  mend*: Add 'card' to the materials of lesson 'l-1'
    |     tales 1
    +     card 1 per learner
'bean' (27): Lesson 'l-1' uses 'bean' here, but its materials do not list it.
  mend*: Add 'bean' to the materials of lesson 'l-1'
    |     tales 1
    +     bean 1 bag per group in kit`],
    ['the flags in their column, where a column is kept', `${things}kit box\n  holds\n    bean 6 bags\n${course('uses box 1 in all')}${lesson('l-1', 'materials', '  mug    1 per pair       not in kit', '  rope   3 m per class    not in kit', ...uses('mug', 'rope', 'bean'))}`, `'bean' (27): Lesson 'l-1' uses 'bean' here, but its materials do not list it.
  mend*: Add 'bean' to the materials of lesson 'l-1'
    |     rope   3 m per class    not in kit
    +     bean   1 bag per group  in kit`],
    ['a game: behind where it is found', `${things}game grocer\n  found in tales\n  do: Take the {cup} and {tales}.\n${lesson('l-1', 'game grocer 5 min')}`, `'cup' (16): The game 'grocer' uses 'cup' here, but its materials do not list it.
  mend*: Add 'cup' to the materials of game 'grocer'
    |   found in tales
    +   materials
    +     cup 1 per group`],
    ['a game: right under its name, or behind its last material', `${things}game grocer\n  do: Take the {cup}.\ngame baker\n  materials\n    mug 1 per pair\n    bean 1 bag\n  do: Take {mug}, {bean} and {card}.\n${lesson('l-1', 'game grocer 5 min', 'game baker 5 min')}`, `'cup' (15): The game 'grocer' uses 'cup' here, but its materials do not list it.
  mend*: Add 'cup' to the materials of game 'grocer'
    | game grocer
    +   materials
    +     cup 1 per group
'card' (20): The game 'baker' uses 'card' here, but its materials do not list it.
  mend*: Add 'card' to the materials of game 'baker'
    |     bean 1 bag
    +     card 1 per learner`],
    ['a word that is taught somewhere may be meant', `${things}${lesson('l-1', ...uses('cup'))}${lesson('l-2', 'words cup')}`, ''],
    ['a word that an adaptation adds', `${things}${course()}adaptation a of measuring\n  add to l-1\n    words cup\n${lesson('l-1', ...uses('cup'))}`, ''],
    ['a name that is misspelt in the materials may be this one', `${things}${lesson('l-1', 'materials', '  cupp 1 per pair', ...uses('cup'))}`, ''],
    ['each thing once, where it stands first', `${things}${lesson('l-1', 'activity lift 5 min', '  do: Lift.', '    help: Take the {cup}.', '  ask: Is the {cup} full?')}`, `'cup' (17): Lesson 'l-1' uses 'cup' here, but its materials do not list it.
  mend*: Add 'cup' to the materials of lesson 'l-1'
    | lesson l-1
    +   materials
    +     cup 1 per group`]
])('missing from the materials: %s', async (_, text, told) => expect(await toldOf('not-in-materials', text)).toBe(told));

test.each<[string, string, string]>([
    ['faded, the first of its choices named', `${things}${lesson('l-1', 'materials', '  cup or bean 1 per pair', ...uses('mug'))}`, `faded 'cup or bean 1 per pair' (16): Lesson 'l-1' lists 'cup' or 'bean', but no step uses it. Name it in a step as {cup}, or remove the line.
  mend*: Remove 'cup' from the materials
    |   materials
    -     cup or bean 1 per pair`],
    ['any of the choices in braces is enough', `${things}${lesson('l-1', 'materials', '  cup or bean 1 per pair', ...uses('bean'))}`, ''],
    ['a game that uses one of them is enough', `${things}game grocer\n  materials\n    bean 1 bag\n${lesson('l-1', 'materials', '  cup or bean 1 per pair', 'game grocer 5 min', 'activity lift 5 min', '  do: Lift.')}`, ''],
    ...['Fill a cup.', 'Fill the CUPS!', 'A (cup) is full.'].map((text): [string, string, string] => [`said in plain words: ${text}`, `${things}${lesson('l-1', 'materials', '  cup 1 per pair', 'activity lift 5 min', `  do: ${text}`)}`, '']),
    ['said by its title', `material tin "Box of chalk"\n  reusable\n${lesson('l-1', 'materials', '  tin 1', 'activity lift 5 min', '  do: One box of chalk.')}`, ''],
    ['one dish of several dishes, one of a pair of scissors', `material dish\n  reusable\nmaterial scissors\n  reusable\n${lesson('l-1', 'materials', '  dish 1', '  scissors 1', 'activity lift 5 min', '  do: Two dishes, and a scissor.')}`, ''],
    ['not where the name is a part of a word', `${things}${lesson('l-1', 'materials', '  cup 1 per pair', 'activity lift 5 min', '  do: Open the cupboard.')}`, `faded 'cup 1 per pair' (16): Lesson 'l-1' lists 'cup', but no step uses it. Name it in a step as {cup}, or remove the line.
  mend*: Remove 'cup' from the materials
    |   materials
    -     cup 1 per pair`],
    ['in a caution it is named too', `${things}${lesson('l-1', 'materials', '  cup 1', 'caution glass: Mind the cup.', 'activity lift 5 min', '  do: Lift.')}`, ''],
    ['the lesson without parts, or without a step, is not asked', `${things}${lesson('l-1', 'materials', '  cup 1', 'about: One.')}${lesson('l-2', 'materials', '  cup 1', 'activity lift 5 min')}`, ''],
    ['of a part as well', `${things}${lesson('l-1', 'activity lift 5 min', '  materials', '    cup 1', '    mug 1', '  do: Take the {mug}.')}`, `faded 'cup 1' (17): Lesson 'l-1' lists 'cup', but no step uses it. Name it in a step as {cup}, or remove the line.
  mend*: Remove 'cup' from the materials
    |     materials
    -       cup 1`],
    ['a thing that nothing has is another matter', `${things}${lesson('l-1', 'materials', '  zebra 1', ...uses('mug'))}`, '']
])('a thing that no step uses: %s', async (_, text, told) => expect(await toldOf('unused-need', text)).toBe(told));

const kit = 'kit box\n  holds\n    cup 6\n    bean 2 bags\n';
test.each<[string, string, string]>([
    ['either way, one line after another', `${things}${kit}${course('uses box 1 in all')}${lesson('l-1', 'materials', '  cup 1 per pair not in kit', '  mug 1 per pair in kit optional', '  bean 1 bag in kit', '  rope 1 m not in kit')}`, `'not in kit' (25): 'cup' is in 'box', which the course 'measuring' uses: write 'in kit'.
  mend*: Change to 'in kit'
    |   materials
    -     cup 1 per pair not in kit
    +     cup 1 per pair in kit
'in kit' (26): 'mug' is not in 'box', which the course 'measuring' uses: write 'not in kit'.
  mend*: Change to 'not in kit'
    |     cup 1 per pair not in kit
    -     mug 1 per pair in kit optional
    +     mug 1 per pair not in kit optional`],
    ['two kits of a course', `${things}${kit}kit chest\n  holds\n    mug 1\n${course('uses box 1 in all', 'uses chest 1 per family')}${lesson('l-1', 'materials', '  mug 1 in kit', '  rope 1 m in kit')}`, `'in kit' (30): 'rope' is not in 'box' or 'chest', which the course 'measuring' uses: write 'not in kit'.
  mend*: Change to 'not in kit'
    |     mug 1 in kit
    -     rope 1 m in kit
    +     rope 1 m not in kit`],
    ['where one of two courses holds it nothing is wrong', `${things}${kit}${course('uses box 1 in all')}course other\n  uses chest 1 in all\n  unit u\n    l-1\nkit chest\n  holds\n    mug 1\n${lesson('l-1', 'materials', '  mug 1 in kit', '  cup 1 not in kit')}`, ''],
    ['where neither does, the first is named', `${things}${kit}${course('uses box 1 in all')}course other\n  uses chest 1 in all\n  unit u\n    l-1\nkit chest\n  holds\n    mug 1\n${lesson('l-1', 'materials', '  rope 1 m in kit')}`, `'in kit' (32): 'rope' is not in 'box', which the course 'measuring' uses: write 'not in kit'.
  mend*: Change to 'not in kit'
    |   materials
    -     rope 1 m in kit
    +     rope 1 m not in kit`],
    ['where one choice is in the kit and the other is not, nobody can tell', `${things}${kit}${course('uses box 1 in all')}${lesson('l-1', 'materials', '  cup or mug 1 in kit', '  mug or cup 1 not in kit')}`, ''],
    ['two choices that both are not in it', `${things}${kit}${course('uses box 1 in all')}${lesson('l-1', 'materials', '  rope or mug 1 in kit')}`, `'in kit' (25): 'rope' is not in 'box', which the course 'measuring' uses: write 'not in kit'.
  mend*: Change to 'not in kit'
    |   materials
    -     rope or mug 1 in kit
    +     rope or mug 1 not in kit`],
    ['a course without a kit, a kit that is not known, a lesson of no course', `${things}${kit}${course()}course other\n  uses zebra 1 in all\n  unit u\n    l-3\n${lesson('l-1', 'materials', '  cup 1 not in kit')}${lesson('l-3', 'materials', '  mug 1 in kit')}${lesson('l-4', 'materials', '  mug 1 in kit')}`, ''],
    ['a game that lessons of two courses play', `${things}${kit}${course('uses box 1 in all')}game grocer\n  materials\n    cup 1 not in kit\n    mug 1\n${lesson('l-1', 'game grocer 5 min')}${lesson('l-2', 'game grocer 5 min')}`, `'not in kit' (25): 'cup' is in 'box', which the course 'measuring' uses: write 'in kit'.
  mend*: Change to 'in kit'
    |   materials
    -     cup 1 not in kit
    +     cup 1 in kit`],
    ['a name in the kit that is misspelt may be this one', `${things}kit box\n  holds\n    mugg 1\n${course('uses box 1 in all')}${lesson('l-1', 'materials', '  mug 1 in kit')}`, '']
])('a wrong word for the kit: %s', async (_, text, told) => expect(await toldOf('kit-flag-wrong', text)).toBe(told));

test.each<[string, string, string]>([
    ['at the end of the line, before optional', `${things}${kit}${course('uses box 1 in all')}${lesson('l-1', 'materials', '  cup 1 per pair', '  mug 1 per pair optional')}`, `'cup' (25): 'cup' is in 'box': say so with 'in kit'.
  mend*: Add 'in kit'
    |   materials
    -     cup 1 per pair
    +     cup 1 per pair in kit
'mug' (26): 'mug' is not in 'box': say so with 'not in kit'.
  mend*: Add 'not in kit'
    |     cup 1 per pair
    -     mug 1 per pair optional
    +     mug 1 per pair not in kit optional`],
    ['a print and a book need none', `${things}${kit}${course('uses box 1 in all')}${lesson('l-1', 'materials', '  card 1', '  tales 1')}`, ''],
    ['where courses differ nobody can tell', `${things}${kit}${course('uses box 1 in all')}course other\n  uses chest 1 in all\n  unit u\n    l-1\nkit chest\n  holds\n    mug 1\n${lesson('l-1', 'materials', '  mug 1', '  rope 1 m')}`, `'rope' (33): 'rope' is not in 'box': say so with 'not in kit'.
  mend*: Add 'not in kit'
    |     mug 1
    -     rope 1 m
    +     rope 1 m not in kit`],
    ['of a game', `${things}${kit}${course('uses box 1 in all')}game grocer\n  materials\n    mug 1\n${lesson('l-2', 'game grocer 5 min')}`, `'mug' (25): 'mug' is not in 'box': say so with 'not in kit'.
  mend*: Add 'not in kit'
    |   materials
    -     mug 1
    +     mug 1 not in kit`]
])('no word for the kit: %s', async (_, text, told) => expect(await toldOf('kit-flag-missing', text)).toBe(told));

test.each<[string, string, string]>([
    ['each kind in its words; the whole block goes', `material rope\n  consumable\n  measured in m\nprint card\nbook tales\n  costs 3 USD\ngame grocer\n  players 2\n  do: Sell.\nkit box\n  holds\n    rope 1 m\n${course()}${lesson('l-1', 'about: One.')}`, `faded 'rope' (1): No lesson or game uses the material 'rope'.
  mend: Remove 'rope'
    |
    - material rope
    -   consumable
    -   measured in m
faded 'card' (4): No lesson or game uses the print 'card'.
  mend: Remove 'card'
    |   measured in m
    - print card
faded 'tales' (5): No lesson or game uses the book 'tales'.
  mend: Remove 'tales'
    | print card
    - book tales
    -   costs 3 USD
faded 'grocer' (7): No lesson plays the game 'grocer'.
  mend: Remove 'grocer'
    |   costs 3 USD
    - game grocer
    -   players 2
    -   do: Sell.
faded 'box' (10): No course and no class uses the kit 'box'.
  mend: Remove 'box'
    |   do: Sell.
    - kit box
    -   holds
    -     rope 1 m`],
    ['a class may use the kit', `${things}${kit}course measuring\nclass k\n  kits box 2\n${lesson('l-1', 'not needed rope, bean, cup, mug, card, tales')}`, ''],
    ['where no course is, no kit is asked after', `${kit}${lesson('l-1', 'not needed rope')}`, ''],
    ['where no lesson is, nothing is', `${things}game grocer\n`, ''],
    ['named in a text, by a game, by a stand-in, as what is swapped in', `${things}game grocer\n  found in tales\n  do: A {card}.\n${course()}adaptation a of measuring\n  swap mug for rope 1 for 1\n${lesson('l-1', 'materials', '  mug 1', 'game grocer 5 min', 'about: The {bean}.')}`, ''],
    ['what an adaptation adds names things in steps, cautions, needs and games', `${things}game grocer\n${course()}adaptation a of measuring\n  add to l-1\n    materials\n      bean or mug 1 per pair\n    caution glass: Mind the {cup}.\n    caution hot\n    note: The {rope}.\n    activity a 5 min\n      ask: A {card}?\n        expect: The {tales}.\n    game grocer 5 min\n${lesson('l-1', 'about: One.')}`, ''],
    ['an activity of the name of a game is no game', `game grocer\ngame baker\n${course()}adaptation a of measuring\n  add to l-1\n    activity grocer 5 min\n      do: Sell.\n${lesson('l-1', 'activity baker 5 min', '  do: Bake.')}`, `faded 'grocer' (1): No lesson plays the game 'grocer'.
  mend: Remove 'grocer'
    |
    - game grocer
faded 'baker' (2): No lesson plays the game 'baker'.
  mend: Remove 'baker'
    | game grocer
    - game baker`],
    ['in a line that cannot be read', `${things}${lesson('l-1', 'not needed bean, cup, mug, card, tales', 'bring a rope')}`, ''],
    ['misspelt in a line', `${things}${lesson('l-1', 'not needed bean, cup, mug, card, tales', 'about: The {roep}.')}`, '']
])('a thing that no lesson uses: %s', async (_, text, told) => expect(await toldOf('unused-thing', text)).toBe(told));

test.each<[string, string, string]>([
    ['faded, with its lines', `objective mass\n  about: How heavy.\nobjective length\n${lesson('l-1', 'objectives', '  checks length')}`, `faded 'mass' (1): No lesson introduces, practises or checks the objective 'mass'.
  mend: Remove 'mass'
    |
    - objective mass
    -   about: How heavy.`],
    ['named in a text, practised, checked, or in what an adaptation adds', `objective mass\nobjective length\nobjective time\nobjective size\nobjective age\n${course()}adaptation a of measuring\n  add to l-1\n    objectives\n      introduces time\n      practises size\n    note: For {age}.\n${lesson('l-1', 'about: {mass}', 'objectives', '  practises length')}`, ''],
    ['where no lesson is nothing is', 'objective mass\n', '']
])('an objective that no lesson teaches: %s', async (_, text, told) => expect(await toldOf('unused-objective', text)).toBe(told));
