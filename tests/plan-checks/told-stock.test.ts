/** What is said of stock and orders, where it leads and how it can be mended. 7 September 2026 is a Monday; 7 learners make 4 pairs. */
import { expect, test } from 'vitest';
import { toldOf as told } from '../language/telling.js';
import { problemsOn } from './fixture.js';

const toldOf = (code: string, text: string, on = '2026-09-03'): Promise<string> => told(code, text, files => problemsOn(files, on));
const cube = (...lines: string[]): string => `material cube "Cubes"\n  reusable\n${lines.map(line => `  ${line}\n`).join('')}material wand\n  reusable\n`;
const lesson = (name: string, ...needs: string[]): string => `lesson ${name}\n  activity lift 15 min\n${needs.length > 0 ? `    materials\n${needs.map(line => `      ${line}\n`).join('')}` : ''}    do: Lift.\n`;
const course = (count: number, ...lines: string[]): string => `course c\n${lines.map(line => `  ${line}\n`).join('')}  unit u\n${Array.from({ length: count }, (_, i) => `    l-${i + 1}\n`).join('')}`;
const klass = (name: string, ...lines: string[]): string => `class ${name}\n  teaches c\n  learners 7\n  starts 2026-09-07\n  meets mon\n${lines.map(line => `  ${line}\n`).join('')}`;
const box = 'kit box\n  holds\n    wand 1\n    cube 20\n';

const short = (more: string[], extra = ''): string => `${cube()}${box}${lesson('l-1', 'cube 20 per pair')}${lesson('l-2', 'wand 1')}${lesson('l-3', 'cube 20 per pair')}${course(3)}${klass('k', ...more)}${extra}`;
test.each<[string, string, string, string?]>([
    // 4 pairs of 20 are 80; 3 kits of 20 are 60, and 5 more on hand.
    ['80 needed at the first and the third meeting, 65 there', short(['kits box 3', 'on hand', '  cube 5']), `'cube 20 per pair' (12): K is short of 15 cubes on Mon 7 Sep: 80 needed, 65 at hand. The same at 1 more meeting.
  see 'k' (29): What the class has
  mend: There are 4 of the kit 'box', not 3
    |   meets mon
    -   kits box 3
    +   kits box 4
  mend: They are there: note 20 on hand in class 'k'
    |   on hand
    -     cube 5
    +     cube 20
  mend: It is ordered: note 'cube 15 arriving 2026-09-07' in class 'k'
    |     cube 5
    +   on order
    +     cube 15 arriving 2026-09-07`],
    ['the first meeting is past: the third is told of', short(['kits box 3']), `'cube 20 per pair' (22): K is short of 20 cubes on Mon 21 Sep: 80 needed, 60 at hand.
  see 'k' (29): What the class has
  mend: There are 4 of the kit 'box', not 3
    |   meets mon
    -   kits box 3
    +   kits box 4
  mend: They are there: note 'cube 20' on hand in class 'k'
    |   kits box 3
    +   on hand
    +     cube 20
  mend: It is ordered: note 'cube 20 arriving 2026-09-21' in class 'k'
    |   kits box 3
    +   on order
    +     cube 20 arriving 2026-09-21`, '2026-09-08'],
    ['on the very day', short(['kits box 3']), `'cube 20 per pair' (22): K is short of 20 cubes on Mon 21 Sep: 80 needed, 60 at hand.
  see 'k' (29): What the class has
  mend: There are 4 of the kit 'box', not 3
    |   meets mon
    -   kits box 3
    +   kits box 4
  mend: They are there: note 'cube 20' on hand in class 'k'
    |   kits box 3
    +   on hand
    +     cube 20
  mend: It is ordered: note 'cube 20 arriving 2026-09-21' in class 'k'
    |   kits box 3
    +   on order
    +     cube 20 arriving 2026-09-21`, '2026-09-21'],
    ['after the last', short(['kits box 3']), '', '2026-09-22'],
    ['what is ordered comes in time for the third', short(['kits box 3', 'on order', '  cube 20 arriving 2026-09-20']), `'cube 20 per pair' (12): K is short of 20 cubes on Mon 7 Sep: 80 needed, 60 at hand.
  see 'k' (29): What the class has
  mend: There are 4 of the kit 'box', not 3
    |   meets mon
    -   kits box 3
    +   kits box 4
  mend: They are there: note 'cube 20' on hand in class 'k'
    |   kits box 3
    +   on hand
    +     cube 20
  mend: It is ordered: note 'cube 20 arriving 2026-09-07' in class 'k'
    |     cube 20 arriving 2026-09-20
    +     cube 20 arriving 2026-09-07`],
    ['two classes, each for itself', short(['kits box 3'], klass('m', 'kits box 2')), `'cube 20 per pair' (12): K is short of 20 cubes on Mon 7 Sep: 80 needed, 60 at hand. The same at 1 more meeting.
  see 'k' (29): What the class has
  mend: There are 4 of the kit 'box', not 3
    |   meets mon
    -   kits box 3
    +   kits box 4
  mend: They are there: note 'cube 20' on hand in class 'k'
    |   kits box 3
    +   on hand
    +     cube 20
  mend: It is ordered: note 'cube 20 arriving 2026-09-07' in class 'k'
    |   kits box 3
    +   on order
    +     cube 20 arriving 2026-09-07
'cube 20 per pair' (12): M is short of 40 cubes on Mon 7 Sep: 80 needed, 40 at hand. The same at 1 more meeting.
  see 'm' (35): What the class has
  mend: There are 4 of the kit 'box', not 2
    |   meets mon
    -   kits box 2
    +   kits box 4
  mend: They are there: note 'cube 40' on hand in class 'm'
    |   kits box 2
    +   on hand
    +     cube 40
  mend: It is ordered: note 'cube 40 arriving 2026-09-07' in class 'm'
    |   kits box 2
    +   on order
    +     cube 40 arriving 2026-09-07`],
    ['a kit without an amount of it holds one', short(['kits box 3']).replace('    cube 20\nlesson', '    cube\nlesson'), `'cube 20 per pair' (12): K is short of 77 cubes on Mon 7 Sep: 80 needed, 3 at hand. The same at 1 more meeting.
  see 'k' (29): What the class has
  mend: There are 80 of the kit 'box', not 3
    |   meets mon
    -   kits box 3
    +   kits box 80
  mend: They are there: note 'cube 77' on hand in class 'k'
    |   kits box 3
    +   on hand
    +     cube 77
  mend: It is ordered: note 'cube 77 arriving 2026-09-07' in class 'k'
    |   kits box 3
    +   on order
    +     cube 77 arriving 2026-09-07`],
    ['what is on hand in another unit is not added to', short(['kits box 3', 'on hand', '  cube 5 bags']), `'cube 20 per pair' (12): K is short of 20 cubes on Mon 7 Sep: 80 needed, 60 at hand. The same at 1 more meeting.
  see 'k' (29): What the class has
  mend: There are 4 of the kit 'box', not 3
    |   meets mon
    -   kits box 3
    +   kits box 4
  mend: It is ordered: note 'cube 20 arriving 2026-09-07' in class 'k'
    |     cube 5 bags
    +   on order
    +     cube 20 arriving 2026-09-07`],
    ['with lines that ask for it in the lesson itself', short(['kits box 3']).replace('lesson l-1\n', 'lesson l-1\n  materials\n    cube 70\n'), `'cube 70' (11): K is short of 20 cubes on Mon 7 Sep: 80 needed, 60 at hand. The same at 1 more meeting.
  see 'k' (31): What the class has
  mend: There are 4 of the kit 'box', not 3
    |   meets mon
    -   kits box 3
    +   kits box 4
  mend: They are there: note 'cube 20' on hand in class 'k'
    |   kits box 3
    +   on hand
    +     cube 20
  mend: It is ordered: note 'cube 20 arriving 2026-09-07' in class 'k'
    |   kits box 3
    +   on order
    +     cube 20 arriving 2026-09-07`]
])('too few at a meeting: %s', async (_, text, says, on) => expect(await toldOf('short-at-meeting', text, on)).toBe(says));

test.each<[string, string]>([
    ['a name on hand that is misspelt', short(['kits box 3', 'on hand', '  cubbe 60'])],
    ['a name on hand that is half typed', short(['kits box 3', 'on hand', '  cub 60'])],
    ['a name on order that is misspelt', short(['kits box 3', 'on order', '  cubbe 60 arriving 2026-09-07'])],
    ['a kit that is not known', short(['kits box 3, chest 2'])],
    ['a kit of the course that is not known', short(['kits box 3']).replace('course c\n', 'course c\n  uses chest 1 in all\n')],
    ['a kit with a line that cannot be read', short(['kits box 3']).replace('kit box\n', 'kit box\n  hlods\n')],
    ['a thing with a line that cannot be read', short(['kits box 3']).replace('material cube "Cubes"\n', 'material cube "Cubes"\n  reusbale\n')],
    ['a class with a line that cannot be read', short(['kits box 3', 'on hnad'])],
    ['a need that is misspelt', short(['kits box 3']).replace('wand 1\nlesson', 'cubbe 1\nlesson').replace('      wand 1\n', '      cubbe 1\n')]
])('too few waits: %s', async (_, text) => expect(await toldOf('short-at-meeting', text)).toBe(''));

test('another name on hand that nothing has keeps nothing back', async () => {
    expect((await toldOf('short-at-meeting', short(['kits box 3', 'on hand', '  zebra 60']))).includes('K is short of 20 cubes')).toBe(true);
});

const sand = (more: string[], needs = 'sand 20 g per pair', ...lines: string[]): string => `material sand\n  consumable\n  measured in g\n  pack of 500 g\n  arrives in 10 days\n${lines.map(line => `  ${line}\n`).join('')}material rice\n  consumable\n  measured in g\nmaterial peas\n  consumable\n  measured in g\n${lesson('l-1', needs)}${lesson('l-2', needs)}${course(2)}${klass('k', ...more)}`;
test.each<[string, string, string, string?]>([
    // 4 pairs of 20 g are 80 g at each of two meetings.
    ['nothing there: a pack', sand([]), `'sand 20 g per pair' (15): 160 g of sand for K can no longer be ordered in time: needed Mon 7 Sep; arrives in 10 days, so order by Fri 28 Aug, and today is Thu 3 Sep.
  see '10 days' (5): How long an order takes
  mend: It is ordered: note 'sand 500 g arriving 2026-09-07' in class 'k'
    |   learners 7
    +   on order
    +     sand 500 g arriving 2026-09-07`],
    ['one meeting is past: needed by the second', sand(['on hand', '  sand 80 g']), `'sand 20 g per pair' (20): 80 g of sand for K can no longer be ordered in time: needed Mon 14 Sep; arrives in 10 days, so order by Fri 4 Sep, and today is Tue 8 Sep.
  see '10 days' (5): How long an order takes
  mend: It is ordered: note 'sand 500 g arriving 2026-09-14' in class 'k'
    |     sand 80 g
    +   on order
    +     sand 500 g arriving 2026-09-14`, '2026-09-08'],
    ['in time for the second', sand(['on hand', '  sand 80 g']), ''],
    ['the day itself', sand([]), `'sand 20 g per pair' (15): 160 g of sand for K can no longer be ordered in time: needed Mon 7 Sep; arrives in 10 days, so order by Fri 28 Aug, and today is Mon 7 Sep.
  see '10 days' (5): How long an order takes
  mend: It is ordered: note 'sand 500 g arriving 2026-09-07' in class 'k'
    |   learners 7
    +   on order
    +     sand 500 g arriving 2026-09-07`, '2026-09-07'],
    ['a stand-in of which some is there', sand(['on hand', '  rice 90 g'], undefined, 'stand-in rice 1 for 1', 'stand-in peas 1 for 1'), `'sand 20 g per pair' (17): 160 g of sand for K can no longer be ordered in time: needed Mon 7 Sep; arrives in 10 days, so order by Fri 28 Aug, and today is Thu 3 Sep.
  see '10 days' (5): How long an order takes
  mend: It is ordered: note 'sand 500 g arriving 2026-09-07' in class 'k'
    |     rice 90 g
    +   on order
    +     sand 500 g arriving 2026-09-07
  mend: Let 'rice' do as well
    |     materials
    -       sand 20 g per pair
    +       sand or rice 20 g per pair`],
    ['a stand-in that the line names already', sand(['on hand', '  rice 9 g'], 'sand or rice 20 g per pair', 'stand-in rice 1 for 1'), ''],
    ['a stand-in by another amount', sand(['on hand', '  rice 90 g'], undefined, 'stand-in rice 2 for 1'), `'sand 20 g per pair' (16): 160 g of sand for K can no longer be ordered in time: needed Mon 7 Sep; arrives in 10 days, so order by Fri 28 Aug, and today is Thu 3 Sep.
  see '10 days' (5): How long an order takes
  mend: It is ordered: note 'sand 500 g arriving 2026-09-07' in class 'k'
    |     rice 90 g
    +   on order
    +     sand 500 g arriving 2026-09-07`],
    ['a stand-in of which none is there, though the course uses it', sand(['on hand', '  rice 0 g'], undefined, 'stand-in rice 1 for 1').replace('sand 20 g per pair', 'sand 20 g per pair\n      rice 1 g'), `'sand 20 g per pair' (16): 160 g of sand for K can no longer be ordered in time: needed Mon 7 Sep; arrives in 10 days, so order by Fri 28 Aug, and today is Thu 3 Sep.
  see '10 days' (5): How long an order takes
  mend: It is ordered: note 'sand 500 g arriving 2026-09-07' in class 'k'
    |     rice 0 g
    +   on order
    +     sand 500 g arriving 2026-09-07`],
    ['a name on order that is misspelt in the class that shares waits', `${sand([])}${klass('m', 'shares cupboard with k', 'on order', '  snad 500 g arriving 2026-09-05')}`, ''],
    ['a name on order that is misspelt waits', sand(['on order', '  snad 500 g arriving 2026-09-05']), ''],
    ['told once for two that share a cupboard, at the one that needs it first', `${sand([])}${klass('m', 'shares cupboard with k').replace('2026-09-07', '2026-09-05').replace('meets mon', 'meets sat')}`, `'sand 20 g per pair' (15): 320 g of sand for M can no longer be ordered in time: needed Sat 5 Sep; arrives in 10 days, so order by Wed 26 Aug, and today is Thu 3 Sep.
  see '10 days' (5): How long an order takes
  mend: It is ordered: note 'sand 500 g arriving 2026-09-05' in class 'm'
    |   learners 7
    +   on order
    +     sand 500 g arriving 2026-09-05`],
    ['a part of the lesson that a game brings', sand([]).replace('lesson l-1\n  activity lift 15 min\n    materials\n      sand 20 g per pair\n', 'game grocer\n  materials\n    sand 20 g per pair\nlesson l-1\n  game grocer 5 min\n  activity lift 15 min\n'), `'sand 20 g per pair' (14): 160 g of sand for K can no longer be ordered in time: needed Mon 7 Sep; arrives in 10 days, so order by Fri 28 Aug, and today is Thu 3 Sep.
  see '10 days' (5): How long an order takes
  mend: It is ordered: note 'sand 500 g arriving 2026-09-07' in class 'k'
    |   learners 7
    +   on order
    +     sand 500 g arriving 2026-09-07`]
])('too late to order: %s', async (_, text, says, on) => expect(await toldOf('order-too-late', text, on)).toBe(says));

const clash = (held: number, harbour: string[], hill: string[]): string => `${cube()}${lesson('l-1', 'cube 20 per pair')}${lesson('l-2', 'cube 20 per pair')}${course(2)}${klass('k', 'on hand', `  cube ${held}`, ...harbour)}${klass('m', ...hill)}`;
test.each<[string, string, string, string?]>([
    // 80 for each, 160 for both.
    ['on both days, told once at the line that shares', clash(100, [], ['shares cupboard with k']), `'k' (31): K and M share a cupboard and both meet on Mon 7 Sep: together they need 160 cubes, and it holds 100. The same at 1 more meeting.
  see 'k' (19): K needs 80
  see 'm' (26): M needs 80
  mend: They are there: note 'cube 60' on hand in class 'm'
    |   learners 7
    +   on hand
    +     cube 60`],
    ['one day is past', clash(100, ['shares cupboard with m'], []), `'m' (26): K and M share a cupboard and both meet on Mon 14 Sep: together they need 160 cubes, and it holds 100.
  see 'k' (19): K needs 80
  see 'm' (27): M needs 80
  mend: They are there: note 160 on hand in class 'k'
    |   on hand
    -     cube 100
    +     cube 160`, '2026-09-08'],
    ['both are past', clash(100, ['shares cupboard with m'], []), '', '2026-09-15'],
    ['on the last day', clash(100, ['shares cupboard with m'], []), `'m' (26): K and M share a cupboard and both meet on Mon 14 Sep: together they need 160 cubes, and it holds 100.
  see 'k' (19): K needs 80
  see 'm' (27): M needs 80
  mend: They are there: note 160 on hand in class 'k'
    |   on hand
    -     cube 100
    +     cube 160`, '2026-09-14'],
    ['enough for both', clash(160, ['shares cupboard with m'], []), ''],
    ['who does not share has their own', clash(100, [], []).replace('class m\n', 'class m\n  on hand\n    cube 80\n'), ''],
    ['a name on hand that is misspelt waits', clash(100, ['shares cupboard with m'], []).replace('cube 100\n', 'cube 100\n    cubbe 60\n'), '']
])('a clash: %s', async (_, text, says, on) => expect(await toldOf('cupboard-clash', text, on)).toBe(says));
