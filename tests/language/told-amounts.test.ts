/** What is said of amounts, units, numbers, prices and dates, and of what a declaration lacks, each with its mends. */
import { expect, test } from 'vitest';
import { toldOf } from './telling.js';

const things = 'material rope\n  consumable\n  measured in m\nmaterial bean\n  consumable\n  counted in bag / bags\nmaterial cup\n  reusable\nprint card\nbook tales\n';
const needs = (...lines: string[]): string => `lesson l-1\n  materials\n${lines.map(line => `    ${line}\n`).join('')}`;
const klass = (...lines: string[]): string => `course c\nclass k\n  teaches c\n  starts 2026-09-07\n  meets mon\n${lines.map(line => `  ${line}\n`).join('')}`;

test.each<[string, string, string]>([
    ['of a lesson, a game, a kit, on hand and on order', `${things}material sheet\n  consumable\n  measured in sheet\ngame grocer\n  materials\n    cup per pair\nkit box\n  holds\n    bean\n    rope\n${klass('learners 3', 'on hand', '  cup', '  sheet', 'on order', '  card arriving 2026-09-14')}${needs('tales per class', 'rope')}`, `'tales' (34): Lesson l-1 needs 'tales' but does not say how much of it, as in '1 per pair'.
  mend*: Write '1'
    |   materials
    -     tales per class
    +     tales 1 per class
'rope' (35): Lesson l-1 needs 'rope' but does not say how much of it, as in '1 per pair'.
'cup' (16): This game needs 'cup' but does not say how much of it, as in '1 per pair'.
  mend*: Write '1'
    |   materials
    -     cup per pair
    +     cup 1 per pair
'bean' (19): How many 'bean' does box hold?
  mend*: Write '1 bag'
    |   holds
    -     bean
    +     bean 1 bag
'rope' (20): How many 'rope' does box hold?
'cup' (28): How much of 'cup' is it?
  mend*: Write '1'
    |   on hand
    -     cup
    +     cup 1
'sheet' (29): How much of 'sheet' is it?
  mend*: Write '1 sheet'
    |     cup
    -     sheet
    +     sheet 1 sheet
'card arriving 2026-09-14' (31): How much of 'card' is it?
  mend*: Write '1'
    |   on order
    -     card arriving 2026-09-14
    +     card 1 arriving 2026-09-14`]
])('no amount: %s', async (_, text, told) => expect(await toldOf('missing-amount', text)).toBe(told));

test.each<[string, string, string]>([
    ['a slip', 'material rope\n  consumable\n  measured in metr\n', `'metr' (3): 'metr' is not a unit that amounts can be measured in; did you mean 'metre'?
  mend*: Change to 'metre'
    |   consumable
    -   measured in metr
    +   measured in metre`],
    ['a word of its own is what things are counted in', 'material bean\n  consumable\n  measured in bushels\n', `'bushels' (3): 'bushels' is not a unit that amounts can be measured in. Use g, ml, cm, cup, sheet or the like, or leave the line out for things that are counted.
  mend: Write 'counted in bushels'
    |   consumable
    -   measured in bushels
    +   counted in bushels`],
    ['a size in a mass', 'material bean\n  consumable\n  size 3 x 4 kg\n', `'kg' (3): A size is given in mm, cm, m, in, ft or yd, not in 'kg'.
  mend: Change to 'mm'
    |   consumable
    -   size 3 x 4 kg
    +   size 3 x 4 mm`],
    ['a size in a slip of a length', 'material bean\n  consumable\n  size 3 x 4 mmm\n', `'mmm' (3): A size is given in mm, cm, m, in, ft or yd, not in 'mmm'; did you mean 'mm'?
  mend*: Change to 'mm'
    |   consumable
    -   size 3 x 4 mmm
    +   size 3 x 4 mm`],
    ['of counted things the own word, one or many, else how it is given', `${things}${needs('bean 3 bagg', 'bean 1 bagg', 'bean 3 zebras', 'cup 3 zebras', 'rope 3 zebras', 'rope 3 mtr')}`, `'3 bagg' (13): 'bagg' is no unit that 'bean' has; did you mean 'bags'?
  mend*: Change to '3 bags'
    |   materials
    -     bean 3 bagg
    +     bean 3 bags
'1 bagg' (14): 'bagg' is no unit that 'bean' has; did you mean 'bag'?
  mend*: Change to '1 bag'
    |     bean 3 bagg
    -     bean 1 bagg
    +     bean 1 bag
'3 zebras' (15): 'zebras' is no unit that 'bean' has. It is counted in bags.
  mend*: Write '3 bags'
    |     bean 1 bagg
    -     bean 3 zebras
    +     bean 3 bags
'3 zebras' (16): 'zebras' is no unit that 'cup' has. It is counted in pieces, without a unit.
  mend*: Write '3' without a unit
    |     bean 3 zebras
    -     cup 3 zebras
    +     cup 3
'3 zebras' (17): 'zebras' is no unit that 'rope' has. It is measured in m.
  mend*: Write '3 m'
    |     cup 3 zebras
    -     rope 3 zebras
    +     rope 3 m
'3 mtr' (18): 'mtr' is no unit that 'rope' has. It is measured in m.
  mend*: Write '3 m'
    |     rope 3 zebras
    -     rope 3 mtr
    +     rope 3 m`],
    ['pieces with a slip of a unit', `${things}${needs('cup 3 grm per pair')}`, `'3 grm' (13): 'grm' is no unit that 'cup' has; did you mean 'gram'?
  mend*: Change to '3 gram'
    |   materials
    -     cup 3 grm per pair
    +     cup 3 gram per pair`],
    ['a word in another case is its own', `${things}${needs('bean 3 Bags', 'bean 1 BAG')}`, '']
])('an unknown unit: %s', async (_, text, told) => expect(await toldOf('unknown-unit', text)).toBe(told));

test.each<[string, string, string]>([
    ['leads to where the thing is declared, but for a pack beside it', `${things.replace('measured in m\n', 'measured in m\n  pack of 3 kg\n  safety stock 2 g\n')}${needs('rope 1 l')}`, `'1 l' (15): 'rope' is measured in m, and 1 l cannot be turned into that. Give the amount in m or a unit like it.
  see 'rope' (1): 'rope' is declared here
  mend*: Write '1 m'
    |   materials
    -     rope 1 l
    +     rope 1 m
'3 kg' (4): 'rope' is measured in m, and 3 kg cannot be turned into that. Give the amount in m or a unit like it.
  mend*: Write '3 m'
    |   measured in m
    -   pack of 3 kg
    +   pack of 3 m
'2 g' (5): 'rope' is measured in m, and 2 g cannot be turned into that. Give the amount in m or a unit like it.
  see 'rope' (1): 'rope' is declared here
  mend*: Write '2 m'
    |   pack of 3 kg
    -   safety stock 2 g
    +   safety stock 2 m`],
    ['one is one', `${things}${needs('rope 1 g', 'bean 1 g', 'bean 1 1/2 g', 'bean 1/2 g')}`, `'1 g' (13): 'rope' is measured in m, and 1 g cannot be turned into that. Give the amount in m or a unit like it.
  see 'rope' (1): 'rope' is declared here
  mend*: Write '1 m'
    |   materials
    -     rope 1 g
    +     rope 1 m
'1 g' (14): 'bean' is counted in bags. 1 g of it cannot be counted.
  see 'bean' (4): 'bean' is declared here
  mend*: Write '1 bag'
    |     rope 1 g
    -     bean 1 g
    +     bean 1 bag
'1 1/2 g' (15): 'bean' is counted in bags. 1 1/2 g of it cannot be counted.
  see 'bean' (4): 'bean' is declared here
  mend*: Write '1 1/2 bags'
    |     bean 1 g
    -     bean 1 1/2 g
    +     bean 1 1/2 bags
'1/2 g' (16): 'bean' is counted in bags. 1/2 g of it cannot be counted.
  see 'bean' (4): 'bean' is declared here
  mend*: Write '1/2 bag'
    |     bean 1 1/2 g
    -     bean 1/2 g
    +     bean 1/2 bag`],
    ['a book is counted in pieces, and nobody measures it', `${things}${needs('tales 2 kg')}`, `'2 kg' (13): 'tales' is counted in pieces, without a unit. 2 kg of it cannot be counted.
  see 'tales' (10): 'tales' is declared here
  mend*: Write '2' without a unit
    |   materials
    -     tales 2 kg
    +     tales 2`],
    ['sold in a unit in which it is not measured', `material rope\n  consumable\n  pack of 3 m\n${needs('rope 1 ft')}`, `'3 m' (3): 'rope' is sold in m; say that it is measured in m, so that lessons can ask for it in that unit.
  mend*: Add 'measured in m' to 'rope'
    | material rope
    +   measured in m`],
    ['sold in two kinds of units: the first counts', `material rope\n  consumable\n  pack of 3\n  pack of 3 m\n  pack of 2 kg\n${needs('rope 1 g')}`, `'1 g' (8): 'rope' is measured in m, and 1 g cannot be turned into that. Give the amount in m or a unit like it.
  see 'rope' (1): 'rope' is declared here
  mend*: Write '1 m'
    |   materials
    -     rope 1 g
    +     rope 1 m
'3 m' (4): 'rope' is sold in m; say that it is measured in m, so that lessons can ask for it in that unit.
  mend*: Add 'measured in m' to 'rope'
    | material rope
    +   measured in m
'2 kg' (5): 'rope' is measured in m, and 2 kg cannot be turned into that. Give the amount in m or a unit like it.
  mend*: Write '2 m'
    |   pack of 3 m
    -   pack of 2 kg
    +   pack of 2 m`],
    ['a thing of which a line cannot be read waits', `material rope\n  consumable\n  measured with m\n${needs('rope 1 g')}`, '']
])('a wrong unit: %s', async (_, text, told) => expect(await toldOf('wrong-unit', text)).toBe(told));

test.each<[string, string, string]>([
    ['one and more than one', `material sheet\n  consumable\n  measured in sheet\n${needs('sheet 1', 'sheet 1 1/2', 'sheet 3/4', 'sheet 12 per pair')}`, `'1' (6): 'sheet' is measured in sheet: 1 of what?
  mend*: Write '1 sheet'
    |   materials
    -     sheet 1
    +     sheet 1 sheet
'1 1/2' (7): 'sheet' is measured in sheet: 1 1/2 of what?
  mend*: Write '1 1/2 sheets'
    |     sheet 1
    -     sheet 1 1/2
    +     sheet 1 1/2 sheets
'3/4' (8): 'sheet' is measured in sheet: 3/4 of what?
  mend*: Write '3/4 sheet'
    |     sheet 1 1/2
    -     sheet 3/4
    +     sheet 3/4 sheet
'12' (9): 'sheet' is measured in sheet: 12 of what?
  mend*: Write '12 sheets'
    |     sheet 3/4
    -     sheet 12 per pair
    +     sheet 12 sheets per pair`],
    ['a thing that is only sold in a unit', `material rope\n  consumable\n  pack of 3 m\n${needs('rope 1')}`, ''],
    ['on hand, in a kit, in a pack', `${things.replace('measured in m\n', 'measured in m\n  pack of 20\n')}kit box\n  holds\n    rope 2\n${klass('learners 3', 'on hand', '  rope 3')}`, `'2' (14): 'rope' is measured in m: 2 of what?
  mend*: Write '2 m'
    |   holds
    -     rope 2
    +     rope 2 m
'3' (22): 'rope' is measured in m: 3 of what?
  mend*: Write '3 m'
    |   on hand
    -     rope 3
    +     rope 3 m
'20' (4): 'rope' is measured in m: 20 of what?
  mend*: Write '20 m'
    |   measured in m
    -   pack of 20
    +   pack of 20 m`]
])('no unit: %s', async (_, text, told) => expect(await toldOf('missing-unit', text)).toBe(told));

test.each<[string, string, string]>([
    ['amounts', `${things.replace('measured in m\n', 'measured in m\n  pack of 0 m\n  safety stock 0 m\n')}kit box\n  holds\n    cup 0\n${klass('learners 3', 'on hand', '  cup 0', '  bean 1/0 bags', 'on order', '  cup 0')}${needs('cup 0 per pair', 'rope 0/5 m', 'bean 0.0 bags', 'bean 1 0/3 bags')}`, `'0' (29): 0 of 'cup' is nothing. Write how much it is, or remove the line.
  mend: Change '0' to '1'
    |   materials
    -     cup 0 per pair
    +     cup 1 per pair
'0/5 m' (30): 0/5 of 'rope' is nothing. Write how much it is, or remove the line.
  mend: Change '0/5' to '1'
    |     cup 0 per pair
    -     rope 0/5 m
    +     rope 1 m
'0.0 bags' (31): 0.0 of 'bean' is nothing. Write how much it is, or remove the line.
  mend: Change '0.0' to '1'
    |     rope 0/5 m
    -     bean 0.0 bags
    +     bean 1 bags
'0' (15): 0 of 'cup' is nothing. Write how much it is.
  mend: Change '0' to '1'
    |   holds
    -     cup 0
    +     cup 1
'1/0 bags' (24): '1/0' is no number: nothing can be divided by 0.
  mend: Change '1/0' to '1'
    |     cup 0
    -     bean 1/0 bags
    +     bean 1 bags
'0 m' (4): 0 of 'rope' is nothing. Write how much it is.
  mend: Change '0' to '1'
    |   measured in m
    -   pack of 0 m
    +   pack of 1 m`],
    ['a loss and a stand-in', `material rope\n  consumable\n  loss 250%\n  stand-in cup 1 for 0\nmaterial cup\n  reusable\n  loss 99%\n  stand-in rope 0 for 2\n`, `'250%' (3): A loss of 250% leaves nothing of 'rope'. Write how much of it is usually spoilt, below 100%.
'stand-in cup 1 for 0' (4): How much 'cup' does for how much 'rope'? Neither number can be 0.
  mend: Change to '1 for 1'
    |   loss 250%
    -   stand-in cup 1 for 0
    +   stand-in cup 1 for 1
'stand-in rope 0 for 2' (8): How much 'rope' does for how much 'cup'? Neither number can be 0.
  mend: Change to '1 for 1'
    |   loss 99%
    -   stand-in rope 0 for 2
    +   stand-in rope 1 for 1`],
    ['pages, players, kits of a course', `print card\n  pages 1.5\nprint form\n  pages 1\ngame grocer\n  players 0\ngame baker\n  players 1.5 to 3\nkit box\n  holds\n    cup 1\nmaterial cup\n  reusable\ncourse c\n  uses box 0 per family\n  uses box 1.5 in all\n  uses box 1 per 2.5 learners\n  uses box 1 per 2 learners\n  uses box 1 in all\n`, `'card' (1): A copy of 'card' has at least one page: write a whole number from 1 up after 'pages'.
'0' (6): The game 'grocer' needs at least one player.
'1.5 to 3' (8): The game 'baker' needs at least one player.
'uses box 0 per family' (15): How many of 'box' does the course use? Write whole numbers from 1 up.
'uses box 1.5 in all' (16): How many of 'box' does the course use? Write whole numbers from 1 up.
'uses box 1 per 2.5 learners' (17): How many of 'box' does the course use? Write whole numbers from 1 up.`],
    ['learners of a class', klass('learners 0'), `'0' (6): A class has at least one learner, and no part of one: write a whole number from 1 up.
  mend: Change to '1'
    |   meets mon
    -   learners 0
    +   learners 1`],
    ['learners of a class, in parts', klass('learners 7.2'), `'7.2' (6): A class has at least one learner, and no part of one: write a whole number from 1 up.
  mend: Change to '8'
    |   meets mon
    -   learners 7.2
    +   learners 8`],
    ['learners of sections: one that has some is enough', klass('section a', '  learners 0', 'section b', '  learners 3'), ''],
    ['learners of sections: none', klass('section a', '  learners 0', 'section b', '  learners 0'), `'k' (2): A class has at least one learner, and no section of 'k' has any: write how many they are.`],
    ['learners of sections: nobody says', klass('section a', '  at 9:00'), ''],
    ['hours from 0:00 to 23:59', klass('section a', '  learners 3', '  at 24:00', 'section b', '  learners 3', '  at 23:60', 'section c', '  learners 3', '  at 23:59', 'section d', '  learners 3', '  at 0:00'), `'a' (6): 'a' meets at 24:00, an hour that no clock shows. Write hours and minutes, as in: at 9:30
'b' (9): 'b' meets at 23:60, an hour that no clock shows. Write hours and minutes, as in: at 9:30`],
    ['session, meetings, catch-up', klass('learners 3', 'session 0 min', 'lessons 0 per meeting', 'catch-up 1.5 days every 8 lessons'), `'0' (7): A session takes at least a minute.
'1.5 days every 8 lessons' (9): Catch-up days come after a whole number of lessons from 1 up, as in: catch-up 1 day every 8 lessons
'0' (8): At least one lesson fits in a meeting: write a whole number from 1 up.`],
    ['catch-up after a part of a lesson; lessons of a meeting in parts', klass('learners 3', 'session 1 min', 'lessons 1.5 per meeting', 'catch-up 1 day every 2.5 lessons'), `'1 day every 2.5 lessons' (9): Catch-up days come after a whole number of lessons from 1 up, as in: catch-up 1 day every 8 lessons
'1.5' (8): At least one lesson fits in a meeting: write a whole number from 1 up.`],
    ['none of these is impossible', klass('learners 1', 'adults 0', 'session 1 min', 'lessons 1 per meeting', 'catch-up 0 days every 1 lesson', 'groups of 1'), ''],
    ['adults, groups and learners of sections', klass('section a', '  learners 2.5', 'section b', '  learners 3', '  adults 0.5', 'section c', '  learners 3', '  groups of 1.5', 'section d', '  learners 3', '  adults 0', '  groups of 1'), `'a' (6): The number of learners of 'a' has to be a whole number.
'b' (8): The number of adults of 'b' has to be a whole number.
'c' (11): The number of children in a group of 'c' has to be a whole number from 1 up.`],
    ['groups in a need, minutes and items', `material cup\n  reusable\n${needs('cup 1 per group of 0', 'cup 1 per group of 2.5', 'cup 1 per group of 2', 'cup 1 per group')}  activity a 0 min\n    do: A.\n  practice b 0 items 5 min\n    name numbers 11 to 20\n  practice d 1.5 items\n    name numbers 11 to 20\n`, `'cup 1 per group of 0' (5): A group has at least one child: write a whole number from 1 up.
'cup 1 per group of 2.5' (6): A group has at least one child: write a whole number from 1 up.
'a' (9): 'a' takes no time at all. Write how long it is, or leave the time out.
'b' (11): 'b' has no items: write a whole number from 1 up.
'd' (13): 'd' has a part of an item: write a whole number from 1 up.`]
])('an impossible number: %s', async (_, text, told) => expect(await toldOf('impossible-number', text)).toBe(told));

// ISO 4217: a dollar has 100 cents, a yen no smaller coin, a Kuwaiti dinar 1000 fils.
test.each([
    ['14.505 USD', '14.51 USD'], ['14.504 USD', '14.50 USD'], ['0.994 USD', '0.99 USD'], ['0.005 USD', '0.01 USD'], ['0.001 USD', '0.00 USD'], ['9.999 USD', '10.00 USD'],
    ['450.5 JPY', '451 JPY'], ['450.4 JPY', '450 JPY'], ['0.9996 KWD', '1.000 KWD'], ['0.0004 KWD', '0.000 KWD'], ['14.500 USD', undefined], ['14 USD', undefined], ['450.00 JPY', undefined]
])('%s are, in whole coins, %s', async (price, coins) => {
    const told = (line: string): string => (coins === undefined ? '' : `'${price}' (${line}): ${price} is not a whole number of the smallest coins: ${price.split(' ')[1]} has ${price.endsWith('JPY') ? 'no decimals' : price.endsWith('KWD') ? '3 decimals' : '2 decimals'}. The price is left out.\n  mend: Change to '${coins}'\n`);
    expect(await toldOf('price-not-in-coins', `material sand\n  consumable\n  pack of 500 costs ${price}\n`)).toBe(coins === undefined ? '' : `${told('3')}    |   consumable\n    -   pack of 500 costs ${price}\n    +   pack of 500 costs ${coins}`);
    expect(await toldOf('price-not-in-coins', `material sand\n  consumable\n  delivery costs ${price}\nbook tales\n  costs ${price}\n`)).toBe(coins === undefined ? ''
        : `${told('3')}    |   consumable\n    -   delivery costs ${price}\n    +   delivery costs ${coins}\n${told('5')}    | book tales\n    -   costs ${price}\n    +   costs ${coins}`);
});

test.each<[string, string, string]>([
    ['ages and players', 'material rope\n  reusable\n  ages 9 to 6\nmaterial cup\n  reusable\n  ages 6 to 6\ngame grocer\n  players 4 to 2\ngame baker\n  players 2 to 2\ncourse c\n  ages 8 to 7\nclass k\n  ages 3 to 2\n', `'9 to 6' (3): These ages are turned round: write '6 to 9'.
  mend*: Change to '6 to 9'
    |   reusable
    -   ages 9 to 6
    +   ages 6 to 9
'8 to 7' (12): These ages are turned round: write '7 to 8'.
  mend*: Change to '7 to 8'
    | course c
    -   ages 8 to 7
    +   ages 7 to 8
'3 to 2' (14): These ages are turned round: write '2 to 3'.
  mend*: Change to '2 to 3'
    | class k
    -   ages 3 to 2
    +   ages 2 to 3
'4 to 2' (8): These numbers of players are turned round: write '2 to 4'.
  mend*: Change to '2 to 4'
    | game grocer
    -   players 4 to 2
    +   players 2 to 4`],
    ['days off, and an end before the start: both dates change places', klass('ends 2026-09-06', 'off 2026-11-27 to 2026-11-23 "Rest"', 'off 2026-11-27 to 2026-11-27', 'off 2026-11-27'), `'2026-09-06' (6): The class ends on 2026-09-06, before it starts on 2026-09-07: swap the two dates, or mend the year.
  mend*: Swap the two dates
    |   teaches c
    -   starts 2026-09-07
    +   starts 2026-09-06
    |   meets mon
    -   ends 2026-09-06
    +   ends 2026-09-07
'2026-11-27 to 2026-11-23' (7): These days off are turned round: write '2026-11-23 to 2026-11-27'.
  mend*: Change to '2026-11-23 to 2026-11-27'
    |   ends 2026-09-06
    -   off 2026-11-27 to 2026-11-23 "Rest"
    +   off 2026-11-23 to 2026-11-27 "Rest"`],
    ['not of dates that are none', klass('ends 2026-02-30', 'off 2026-13-27 to 2026-11-23', 'off 2026-11-27 to 2026-11-00'), ''],
    ['a class that starts on no day', 'course c\nclass k\n  starts 2026-02-30\n  ends 2026-01-01\n', ''],
    ['numbers of a practice, in its lesson or in what is added', 'lesson l-1\n  practice p 3 items\n    sums 20 to 2\n    return to 3 and 2\n    bonds of 5 to 4\n    doubles 3 to 3\ncourse c\n  unit u\n    l-1\nadaptation a of c\n  add to l-1\n    practice q 3 items\n      halves 20 to 4\n', `'sums 20 to 2' (3): These numbers are turned round: write 'sums 2 to 20'.
  mend*: Change to 'sums 2 to 20'
    |   practice p 3 items
    -     sums 20 to 2
    +     sums 2 to 20
'bonds of 5 to 4' (5): These numbers are turned round: write 'bonds of 4 to 5'.
  mend*: Change to 'bonds of 4 to 5'
    |     return to 3 and 2
    -     bonds of 5 to 4
    +     bonds of 4 to 5
'halves 20 to 4' (13): These numbers are turned round: write 'halves 4 to 20'.
  mend*: Change to 'halves 4 to 20'
    |     practice q 3 items
    -       halves 20 to 4
    +       halves 4 to 20`]
])('turned round: %s', async (_, text, told) => expect(await toldOf('turned-round', text)).toBe(told));

test('every date of a class is looked at', async () => {
    const text = `material cup\n  reusable\nlesson l-1\n  about: One.\n${klass('learners 3', 'ends 2027-02-29', 'off 2026-11-31 to 2026-12-32', 'fixed l-1 on 2026-09-31', 'on order', '  cup 3 arriving 2026-10-32', '  cup 3', 'log', '  unsure l-1 on 2026-06-31')}`;
    expect(await toldOf('no-such-date', text)).toBe(`'2027-02-29' (11): There is no 2027-02-29 in the calendar; was 2027-02-28 meant?
  mend*: Change to '2027-02-28'
    |   learners 3
    -   ends 2027-02-29
    +   ends 2027-02-28
'2026-09-31' (13): There is no 2026-09-31 in the calendar; was 2026-09-30 meant?
  mend*: Change to '2026-09-30'
    |   off 2026-11-31 to 2026-12-32
    -   fixed l-1 on 2026-09-31
    +   fixed l-1 on 2026-09-30
'2026-11-31' (12): There is no 2026-11-31 in the calendar; was 2026-11-30 meant?
  mend*: Change to '2026-11-30'
    |   ends 2027-02-29
    -   off 2026-11-31 to 2026-12-32
    +   off 2026-11-30 to 2026-12-32
'2026-12-32' (12): There is no 2026-12-32 in the calendar; was 2026-12-31 meant?
  mend*: Change to '2026-12-31'
    |   ends 2027-02-29
    -   off 2026-11-31 to 2026-12-32
    +   off 2026-11-31 to 2026-12-31
'2026-10-32' (15): There is no 2026-10-32 in the calendar; was 2026-10-31 meant?
  mend*: Change to '2026-10-31'
    |   on order
    -     cup 3 arriving 2026-10-32
    +     cup 3 arriving 2026-10-31
'2026-06-31' (18): There is no 2026-06-31 in the calendar; was 2026-06-30 meant?
  mend*: Change to '2026-06-30'
    |   log
    -     unsure l-1 on 2026-06-31
    +     unsure l-1 on 2026-06-30`);
});

test.each<[string, string, string]>([
    ['what is handed back', 'material cup\n    size 3 cm\n', `'cup' (1): Is 'cup' handed back or used up? Write 'reusable' or 'consumable' under it.
  mend*: Add 'reusable'
    | material cup
    +     reusable
  mend: Add 'consumable'
    | material cup
    +     consumable`],
    ['what is used up: measured, spoilt or kept for a while', 'material rope\n  measured in m\nmaterial clay\n  loss 5%\nmaterial bread\n  keeps 3 days\n', `'rope' (1): Is 'rope' handed back or used up? Write 'reusable' or 'consumable' under it.
  mend: Add 'reusable'
    | material rope
    +   reusable
  mend*: Add 'consumable'
    | material rope
    +   consumable
'clay' (3): Is 'clay' handed back or used up? Write 'reusable' or 'consumable' under it.
  mend: Add 'reusable'
    | material clay
    +   reusable
  mend*: Add 'consumable'
    | material clay
    +   consumable
'bread' (5): Is 'bread' handed back or used up? Write 'reusable' or 'consumable' under it.
  mend: Add 'reusable'
    | material bread
    +   reusable
  mend*: Add 'consumable'
    | material bread
    +   consumable`]
])('neither handed back nor used up: %s', async (_, text, told) => expect(await toldOf('missing-use', text)).toBe(told));

test('a text that is empty: with steps under it the line stays', async () => {
    expect(await toldOf('empty-text', 'material cup\n  reusable\n  kept in:\nprint card\n  kept in:\nbook tales\n  kept in:\ngame grocer\n  kept in:\n  ask:\n    expect: Both hands.\n  show ten-frame 3\nlesson l-1\n  about:\n')).toBe(`'about' (14): Nothing stands after 'about:'. Write what is meant, or remove the line.
  mend: Remove 'about:'
    | lesson l-1
    -   about:
'ask: …' (10): Nothing stands after 'ask:'. Write what is meant, or remove the line.
'kept in' (3): Nothing stands after 'kept in:'. Write where it is kept, or remove the line.
  mend: Remove 'kept in:'
    |   reusable
    -   kept in:
'kept in' (5): Nothing stands after 'kept in:'. Write where it is kept, or remove the line.
  mend: Remove 'kept in:'
    | print card
    -   kept in:
'kept in' (7): Nothing stands after 'kept in:'. Write where it is kept, or remove the line.
  mend: Remove 'kept in:'
    | book tales
    -   kept in:
'kept in' (9): Nothing stands after 'kept in:'. Write where it is kept, or remove the line.
  mend: Remove 'kept in:'
    | game grocer
    -   kept in:`);
});

test.each<[string, string, string]>([
    ['nothing at all, and one course', 'course c\nclass k\n', `'k' (2): Class 'k' does not say which course it 'teaches', how many 'learners' it has, when it 'starts' and on which days it 'meets'.
  mend*: Teach 'c'
    | class k
    +   teaches c`],
    ['nothing at all, and two courses', 'course c\ncourse d\nclass k\n', `'k' (3): Class 'k' does not say which course it 'teaches', how many 'learners' it has, when it 'starts' and on which days it 'meets'.`],
    ['one thing only', 'course c\nclass k\n  teaches c\n  learners 3\n  starts 2026-09-07\n', `'k' (2): Class 'k' does not say on which days it 'meets'.`],
    ['two', 'course c\nclass k\n  teaches c\n  learners 3\n', `'k' (2): Class 'k' does not say when it 'starts' and on which days it 'meets'.`],
    ['learners of a section are learners', 'course c\nclass k\n  teaches c\n  section a\n    at 9:00\n  section b\n    learners 3\n  starts 2026-09-07\n  meets mon\n', ''],
    ['of sections that say nothing they are not', 'course c\nclass k\n  teaches c\n  section a\n    at 9:00\n  starts 2026-09-07\n  meets mon\n', `'k' (2): Class 'k' does not say how many 'learners' it has.`]
])('a class without what a plan needs: %s', async (_, text, told) => expect(await toldOf('class-not-ready', text)).toBe(told));

test.each<[string, string, string]>([
    ['materials: the third as well, each told of the first', 'material cup\n  reusable\nmaterial cup\n  reusable\nmaterial cup\n  reusable\n', `'cup' (3): There is another material 'cup'. Give one of the two another name, or remove it.
  see 'cup' (1): The first 'cup'
  mend: Change to 'cup-2'
    |   reusable
    - material cup
    + material cup-2
'cup' (5): There is another material 'cup'. Give one of the two another name, or remove it.
  see 'cup' (1): The first 'cup'
  mend: Change to 'cup-2'
    |   reusable
    - material cup
    + material cup-2`],
    ['a name with a number counts on from it', 'lesson l-7\nlesson l-8\nlesson l-7\n', `'l-7' (3): There is another lesson 'l-7'. Give one of the two another name, or remove it.
  see 'l-7' (1): The first 'l-7'
  mend: Change to 'l-9'
    | lesson l-8
    - lesson l-7
    + lesson l-9`],
    ['games of one lesson may, other parts not', 'game grocer\nlesson l-1\n  game grocer 5 min\n  activity grocer 5 min\n    do: A.\n  game grocer 5 min\n  warm-up grocer 5 min\n    do: B.\n  activity grocer-2 5 min\n    do: A.\n', `'grocer' (7): There is another part 'grocer'. Give one of the two another name, or remove it.
  see 'grocer' (4): The first 'grocer'
  mend: Change to 'grocer-3'
    |   game grocer 5 min
    -   warm-up grocer 5 min
    +   warm-up grocer-3 5 min`],
    ['parts of a material: the third too', 'material coin\n  reusable\n  parts one, two, one, one\n', `'one' (3): 'coin' has named the part 'one' before.
  see 'one' (3): The first 'one'
  mend*: Remove this 'one'
    |   reusable
    -   parts one, two, one, one
    +   parts one, two, one
'one' (3): 'coin' has named the part 'one' before.
  see 'one' (3): The first 'one'
  mend*: Remove this 'one'
    |   reusable
    -   parts one, two, one, one
    +   parts one, two, one`],
    ...['print', 'book', 'game', 'kit', 'objective', 'framework', 'course', 'class'].map((kind): [string, string, string] => [`a ${kind}`, `${kind} it\n${kind} it-2\n${kind} it\n`, `'it' (3): There is another ${kind} 'it'. Give one of the two another name, or remove it.\n  see 'it' (1): The first 'it'\n  mend: Change to 'it-3'\n    | ${kind} it-2\n    - ${kind} it\n    + ${kind} it-3`]),
    ['an adaptation', 'course c\nadaptation it of c\nadaptation it-2 of c\nadaptation it of c\n', `'it' (4): There is another adaptation 'it'. Give one of the two another name, or remove it.
  see 'it' (2): The first 'it'
  mend: Change to 'it-3'
    | adaptation it-2 of c
    - adaptation it of c
    + adaptation it-3 of c`],
    ['in another file', '--- a.kit\nmaterial cup\n  reusable\n--- b.kit\nmaterial cup\n  reusable\n', `'cup' (b.kit 1): There is another material 'cup'. Give one of the two another name, or remove it.
  see 'cup' (a.kit 1): The first 'cup'
  mend: Change to 'cup-2'
    |
    - material cup
    + material cup-2`]
])('declared twice: %s', async (_, text, told) => expect(await toldOf('declared-twice', text)).toBe(told));

test.each<[string, string, string, string]>([
    ['wrong-edition', 'with the book it is on', 'book tales edition 3\ngame grocer\n  found in tales edition 2, number 12\n', `'2' (3): The game 'grocer' is found in edition 2 of 'tales', but edition 3 is on the shelf. Look it up there: chapter and number may differ.
  see 'tales' (1): The book 'tales'
  mend*: Change to edition 3
    | game grocer
    -   found in tales edition 2, number 12
    +   found in tales edition 3, number 12`],
    ['wrong-edition', 'a book without an edition, a game without one, a book that is not there', 'book tales\ngame a\n  found in tales edition 2\nbook stories edition 3\ngame b\n  found in stories\ngame d\n  found in gone edition 3\ngame e\n', ''],
    ['unknown-caution', 'on a material, a print, a game, a lesson and a part, near or not', 'material cup\n  reusable\n  caution glas: Mind.\nprint card\n  caution zebra\ngame grocer\n  caution magnets\nlesson l-1\n  caution hott\n  activity a\n    caution smallparts: Mind.\n    do: A.\n', `'glas' (3): 'glas' is no kind of caution; did you mean 'glass'?
  mend*: Change to 'glass'
    |   reusable
    -   caution glas: Mind.
    +   caution glass: Mind.
'zebra' (5): 'zebra' is no kind of caution. Write one of small-parts, small-ball, magnet, button-cell, balloon, sharp, hot, glass, allergen, chemical, or a note.
'magnets' (7): 'magnets' is no kind of caution; did you mean 'magnet'?
  mend*: Change to 'magnet'
    | game grocer
    -   caution magnets
    +   caution magnet
'hott' (9): 'hott' is no kind of caution; did you mean 'hot'?
  mend*: Change to 'hot'
    | lesson l-1
    -   caution hott
    +   caution hot
'smallparts' (11): 'smallparts' is no kind of caution; did you mean 'small-parts'?
  mend*: Change to 'small-parts'
    |   activity a
    -     caution smallparts: Mind.
    +     caution small-parts: Mind.`],
    ['unknown-present', 'near or not', klass('learners 3', 'present under-threes, toddlers, under-three, grandparents, baby'), `'toddlers' (7): 'toddlers' changes nothing; write 'under-threes' when children under three are in the room.
  mend*: Change to 'under-threes'
    |   learners 3
    -   present under-threes, toddlers, under-three, grandparents, baby
    +   present under-threes, under-threes, under-three, grandparents, baby
'under-three' (7): 'under-three' changes nothing; write 'under-threes' when children under three are in the room.
  mend*: Change to 'under-threes'
    |   learners 3
    -   present under-threes, toddlers, under-three, grandparents, baby
    +   present under-threes, toddlers, under-threes, grandparents, baby
'grandparents' (7): 'grandparents' changes nothing: only 'under-threes' is known here.
  mend: Change to 'under-threes'
    |   learners 3
    -   present under-threes, toddlers, under-three, grandparents, baby
    +   present under-threes, toddlers, under-three, under-threes, baby
'baby' (7): 'baby' changes nothing: only 'under-threes' is known here.
  mend: Change to 'under-threes'
    |   learners 3
    -   present under-threes, toddlers, under-three, grandparents, baby
    +   present under-threes, toddlers, under-three, grandparents, under-threes`],
    ['own-cupboard', 'first, last or alone in the line', 'class a\n  shares cupboard with a, b\nclass b\n  shares cupboard with a, b\nclass d\n  shares cupboard with d\nclass e\n  shares cupboard with a, e, b\n', `'a' (2): Class 'a' need not be told that it shares its own cupboard. Name the other classes only.
  mend*: Take 'a' away
    | class a
    -   shares cupboard with a, b
    +   shares cupboard with b
'b' (4): Class 'b' need not be told that it shares its own cupboard. Name the other classes only.
  mend*: Take 'b' away
    | class b
    -   shares cupboard with a, b
    +   shares cupboard with a
'd' (6): Class 'd' need not be told that it shares its own cupboard. Name the other classes only.
  mend*: Take 'd' away
    | class d
    -   shares cupboard with d
'e' (8): Class 'e' need not be told that it shares its own cupboard. Name the other classes only.
  mend*: Take 'e' away
    | class e
    -   shares cupboard with a, e, b
    +   shares cupboard with a, b`]
])('%s: %s', async (code, _, text, told) => expect(await toldOf(code, text)).toBe(told));
