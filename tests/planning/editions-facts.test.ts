/** Every fact of the things, objectives, courses and classes of a programme: told when it changes, comes or goes, with the lines it leads to. */
import { expect, test } from 'vitest';
import { compareEditions } from '@haversack/server/planning/editions/compare-editions';
import { read } from './edition-texts.js';
import { toldWithLines } from './edition-lines.js';

/** What is told from one text to the other and back: says, then the first lines that it leads to. */
const told = (old: string, now: string, id?: string): string[] => toldWithLines(compareEditions(read(old), read(now), { class: 'k' }), old, now, id);
const says = (old: string, now: string, id?: string): string[] => told(old, now, id).map(line => line.split(' | ')[0]!);

const bowl = (...lines: string[]): string => ['material bowl "Bowls"', ...lines.map(line => `  ${line}`), 'material jar "Jars"', 'material cup "Cups"', ''].join('\n');

/** Each: the line before, the line after, what is told, and what is told where the line comes or goes. */
const materials: [before: string, after: string, what: string, was: string, is: string][] = [
    ['reusable', 'consumable', 'Use', 'reusable', 'consumable'],
    ['counted in bowl/bowls', 'counted in dish/dishes', 'Counted in', 'bowls', 'dishes'],
    ['measured in g', 'measured in ml', 'Measured in', 'g', 'ml'],
    ['size 80 x 40 mm', 'size 9 cm', 'Size', '80 x 40 mm', '9 cm'],
    ['ages 5 and up', 'ages 6 to 9', 'Ages', '5 and up', '6 to 9'],
    ['from kit', 'from home', 'Where it comes from', 'from the kit', 'from home'],
    ['from shop', 'from library', 'Where it comes from', 'from a shop', 'from a library'],
    ['printed', 'from shop', 'Where it comes from', 'printed', 'from a shop'],
    ['pack of 4 costs 12.00 USD', 'pack of 500 g', 'Packs', '4 for 12.00 USD', '500 g, no price'],
    ['arrives in 1 working day', 'arrives in 2 weeks', 'Arrives', '1 working day', '14 days'],
    ['arrives in 5 working days', 'arrives in 5 days', 'Arrives', '5 working days', '5 days'],
    ['keeps 1 day', 'keeps 3 weeks', 'Keeps', '1 day', '21 days'],
    ['spare 10%', 'spare 12.5%', 'Spare', '10%', '12.5%'],
    ['loss 5%', 'loss 6%', 'Loss', '5%', '6%'],
    ['safety stock 2', 'safety stock 250 g', 'Always kept', '2', '250 g'],
    ['delivery costs 4.50 USD', 'delivery costs 4.50 EUR', 'Delivery', '4.50 USD', '4.50 EUR'],
    ['parts lid', 'parts rim', 'Parts', 'lid', 'rim'],
    ['stand-in jar 2 for 1', 'stand-in cup 3 for 2', 'Stand-in', 'Jars, 2 for 1', 'Cups, 3 for 2'],
    ['kept in: low shelf', 'kept in: hall', 'Kept in', 'low shelf', 'hall']
];

test.each(materials)('a material: %s, then %s', (before, after, what, was, is) => {
    const at = 'material bowl "Bowls"';
    expect(told(bowl(before), bowl(after), 'things')).toEqual([`${what}: ${is} instead of ${was} | ${at} | ${at}`]);
    expect(says(bowl(), bowl(after), 'things')).toEqual([`${what}: now ${is}`]);
    expect(says(bowl(before), bowl(), 'things')).toEqual([`${what}: no longer ${was}`]);
});

test('of several packs and parts those are told that came or went', () => {
    expect(says(bowl('pack of 4', 'pack of 10', 'parts lid, base'), bowl('pack of 10', 'pack of 6', 'pack of 8', 'parts base'), 'things')).toEqual([
        'Packs: now 6, no price', 'Packs: now 8, no price', 'Packs: no longer 4, no price', 'Parts: no longer lid'
    ]);
});

test('notes: both texts stand beside what is worded anew, one beside what came or went', () => {
    const note = (old: string[], now: string[]) => compareEditions(read(bowl(...old)), read(bowl(...now))).sections.flatMap(({ groups }) => groups).flatMap(({ differences }) => differences)
        .map(({ says: text, before, after }) => [text, before, after]);
    expect(note(['note: Count {cup}s.', 'note: Dry them.', 'note: Stack them.'], ['note: Dry them.', 'note: Count twice.'])).toEqual([['The note is worded anew', 'Count Cupss. Stack them.', 'Count twice.']]);
    expect(note([], ['note: Dry them.'])).toEqual([['A note is added', undefined, 'Dry them.']]);
    expect(note(['note: Dry them.'], [])).toEqual([['A note is left out', 'Dry them.', undefined]]);
    expect(note(['note: Dry them.'], ['note: Dry them.', 'spare 1%'])).toEqual([['Spare: now 1%', undefined, undefined]]);
});

test('cautions: new, worded anew and gone, each at its line', () => {
    expect(told(bowl('caution glass: On a firm table.', 'caution hot'), bowl('caution glass: On the floor.', 'caution sharp'), 'things')).toEqual([
        'Caution worded anew | caution glass: On a firm table. | caution glass: On the floor.',
        'A new caution: Sharp |  | caution sharp', 'No longer a caution: Hot | caution hot | '
    ]);
    const [first] = compareEditions(read(bowl('caution glass: On {jar}.')), read(bowl('caution glass: On {cup}.'))).sections[0]!.groups[0]!.differences;
    expect([first?.before, first?.after]).toEqual(['Glass: On Jars.', 'Glass: On Cups.']);
    expect(says(bowl('caution hot', 'caution glass'), bowl('caution glass'), 'things')).toEqual(['No longer a caution: Hot']);
});

test('things that came and went, and what they were', () => {
    expect(told('print sheet "Sheets"\nbook tales "Tales"\n', 'kit box "Boxes"\ngame hop "Hopping"\n', 'things')).toEqual([
        'The print is no longer in the inventory | print sheet "Sheets" | ', 'The book is no longer in the inventory | book tales "Tales" | ',
        'A new game |  | game hop "Hopping"', 'A new kit |  | kit box "Boxes"'
    ]);
});

test('a print', () => {
    const print = (...lines: string[]): string => ['print sheet "Sheets"', ...lines.map(line => `  ${line}`), ''].join('\n');
    expect(told(print(), print('pages 3', 'two-sided', 'caution hot', 'kept in: hall', 'note: Warm.'), 'things').map(line => line.replace(' | print sheet "Sheets" | print sheet "Sheets"', ''))).toEqual([
        'A new caution: Hot |  | caution hot', 'Pages: 3 pages instead of 1 page', 'Printed: on both sides instead of on one side', 'Kept in: now hall', 'A note is added'
    ]);
    expect(says(print('two-sided'), print(), 'things')).toEqual(['Printed: on one side instead of on both sides']);
});

test('a book', () => {
    const book = (head: string, ...lines: string[]): string => [`book tales "Tales"${head}`, ...lines.map(line => `  ${line}`), ''].join('\n');
    expect(told(book(' edition 3', 'from library'), book(' edition 4', 'from shop', 'costs 9.90 EUR', 'kept in: hall', 'note: Worn.'), 'things').map(line => line.split(' | ').slice(0, 2))).toEqual([
        ['Edition: 4 instead of 3', 'book tales "Tales" edition 3'], ['Where it comes from: from a shop instead of from a library', 'book tales "Tales" edition 3'],
        ['Price: now 9.90 EUR', 'book tales "Tales" edition 3'], ['Kept in: now hall', 'book tales "Tales" edition 3'], ['A note is added', 'book tales "Tales" edition 3']
    ]);
    expect(says(book('', 'from home', 'costs 3.00 USD'), book('', 'costs 3.00 USD'), 'things')).toEqual(['Where it comes from: no longer from home']);
});

const game = (...lines: string[]): string => ['book tales "Tales"', 'book songs "Songs"', 'material cube "Cubes"', 'game hop "Hopping"', ...lines.map(line => `  ${line}`), ''].join('\n');

test('a game', () => {
    expect(says(game('found in tales edition 3, chapter "Steps", number 12, page 40', 'players 2 to 4'), game('found in songs edition 4, chapter "Hops", number 13, page 41', 'players 3 to 3'), 'things')).toEqual([
        'Rules. Book: Songs instead of Tales', 'Rules. Edition of the book: 4 instead of 3', 'Rules. Chapter: “Hops” instead of “Steps”', 'Rules. Number: 13 instead of 12', 'Rules. Page: 41 instead of 40',
        'Players: 3 instead of 2 to 4'
    ]);
    expect(says(game(), game('found in tales edition 3, chapter "Steps"', 'players 2', 'kept in: hall', 'caution hot', 'do: Hop.', 'materials', '  cube 5 per pair'), 'things')).toEqual([
        'A new caution: Hot', 'Rules: now Tales, 3 and “Steps”', 'Players: now 2', 'Kept in: now hall', 'Cubes: now needed, 5 per pair', 'A step (‘do’) added'
    ]);
    expect(says(game('found in tales', 'materials', '  cube 5 per pair'), game(), 'things')).toEqual(['Rules: no longer Tales', 'Cubes: no longer needed (was 5 per pair)']);
    expect(says(game('players 2'), game('players 2 to 2'), 'things')).toEqual([]);
    // A game without rules, steps and things says nothing that could change.
    expect(says(game(), game(), 'things')).toEqual([]);
});

const kit = (...lines: string[]): string => ['material cube "Cubes"', 'material bean "Beans"', 'material peg "Pegs"', 'kit box "Boxes"', ...lines.map(line => `  ${line}`), ''].join('\n');

test('a kit', () => {
    expect(told(kit('holds', '  cube 20', '  bean 1 kg', '  peg 4'), kit('note: Heavy.', 'holds', '  cube 25', '  bean 1000 g'), 'things')).toEqual([
        'Cubes: 25 instead of 20 | kit box "Boxes" | kit box "Boxes"', 'Pegs: no longer 4 | kit box "Boxes" | kit box "Boxes"', 'A note is added | kit box "Boxes" | kit box "Boxes"'
    ]);
    expect(says(kit('holds', '  cube 20'), kit('holds', '  cube 20', '  peg'), 'things')).toEqual(['Pegs: now no amount']);
});

const course = (head: string, ...lines: string[]): string => ['kit box "Boxes"', 'lesson one "One"', 'lesson two "Two"', `course c ${head}`, ...lines.map(line => `  ${line}`), ''].join('\n');

test('a course', () => {
    expect(told(
        course('"Count" edition 1', 'ages 5 and up', 'uses box 1 per family', 'about: We count {one}.', 'unit first "First"', '  about: Begin.', '  one'),
        course('"Counting"', 'ages 6 to 9', 'uses box 2 in all', 'uses box 1 per 4 learners', 'about: We count.', 'unit first "First"', '  about: Begin here.', '  one', 'unit then "Then"', '  about: Go on.'), 'course'
    ).map(line => line.replace(' | course c "Count" edition 1 | course c "Counting"', ''))).toEqual([
        'Title: Counting instead of Count', 'Edition: no longer 1', 'Ages: 6 to 9 instead of 5 and up', 'Kits: now 2 Boxes in all', 'Kits: now 1 Boxes per 4 learners', 'Kits: no longer 1 Boxes per family',
        'What is said of the course is worded anew', 'Units: “First” and “Then” instead of “First”', 'What is said of the unit “First” is worded anew | unit first "First" | unit first "First"'
    ]);
    expect(says(course('"Count"', 'ages 5 to 6', 'about: We count.'), course('"Count"', 'about: We count.', 'unit first "First"'), 'course')).toEqual(['Ages: no longer 5 to 6', 'Units: now “First”']);
    const texts = (old: string[], now: string[]) => compareEditions(read(course('"C"', ...old)), read(course('"C"', ...now))).sections.find(({ id }) => id === 'course')?.groups[0]?.differences.map(({ before, after }) => [before, after]);
    expect(texts(['about: We count {one}.'], ['about: We count {two}.'])).toEqual([['We count One.', 'We count Two.']]);
    expect(texts(['unit u "U"', '  about: On {one}.', '  one'], ['unit u "U"', '  about: On {two}.', '  one'])).toEqual([['On One.', 'On Two.']]);
});

test('the title of a comparison names up to three courses, with their editions where they differ', () => {
    const courses = (count: number, edition: string): string => Array.from({ length: count }, (_, i) => `course c${i} "C${i}"${edition}\n`).join('');
    const title = (old: string, now: string): string => compareEditions(read(old), read(now)).title;
    expect(title(courses(1, ' edition 1'), courses(1, ' edition 2'))).toBe('C0, edition 2 beside edition 1');
    expect(title(courses(1, ''), courses(1, ' edition 2'))).toBe('C0, edition 2 beside one without');
    expect(title(courses(1, ' edition 1'), courses(1, ''))).toBe('C0, without an edition beside edition 1');
    expect(title(courses(1, ' edition 1'), courses(1, ' edition 1'))).toBe('C0');
    expect(title('', courses(1, ' edition 1'))).toBe('C0');
    expect(title(courses(3, ''), courses(3, ''))).toBe('C0, C1 and C2');
    expect(title(courses(4, ''), courses(4, ''))).toBe('Two editions of a programme');
    expect(title('', '')).toBe('Two editions of a programme');
});

const klass = (...lines: string[]): string => ['material bean "Beans"', 'kit box "Boxes"', 'lesson one "One"', 'course c "C"', '  unit u "U"', '    one', 'course d "Drums"', 'class k "Kites"', ...lines.map(line => `  ${line}`), 'class l "Larks"', ''].join('\n');

const classes: [before: string[], after: string[], told: string[]][] = [
    [['teaches c'], ['teaches d'], ['Taught: Drums instead of C']],
    [['learners 6', 'adults 1', 'groups of 3'], ['learners 8', 'adults 2', 'groups of 4'], ['Learners: 8 instead of 6', 'Adults: 2 instead of 1', 'Groups of: 4 instead of 3']],
    [['ages 5 and up'], ['ages 6 to 9'], ['Ages: 6 to 9 instead of 5 and up']],
    [['section a "A"', '  learners 3', '  at 9:30'], ['section a "A"', '  learners 4', 'section b "B"', '  at 9:30'], ['Sections: A, 4 learners and B, 9:30 instead of A, 3 learners, 9:30']],
    [['kits box 1'], ['kits box 2'], ['Kits: 2 Boxes instead of 1 Boxes']],
    [['on hand', '  bean 1 kg'], ['on hand', '  bean 2 kg', 'on order', '  bean 3 kg arriving 2026-10-01'], ['On hand: Beans 2 kg instead of Beans 1 kg', 'On order: now Beans 3 kg on 2026-10-01']],
    [['starts 2026-09-07', 'ends 2026-12-18', 'meets mon, tue'], ['starts 2026-09-08', 'ends 2026-12-17', 'meets tue, thu'], ['First day: 2026-09-08 instead of 2026-09-07', 'Last day: 2026-12-17 instead of 2026-12-18', 'Meets on: thu instead of mon']],
    [['session 45 min', 'lessons 2 per meeting'], ['session 50 min', 'lessons 3 per meeting'], ['Session: 50 min instead of 45 min', 'Lessons a meeting: 3 instead of 2']],
    [['fixed one on 2026-09-14'], ['fixed one on 2026-09-21'], ['Fixed days: One on 2026-09-21 instead of One on 2026-09-14']],
    [['off 2026-10-01', 'off from "town.ics"'], ['off 2026-10-01 to 2026-10-02', 'off from "land.ics"'], ['Days off: 2026-10-01 to 2026-10-02 and land.ics instead of 2026-10-01 and town.ics']],
    [['catch-up 1 day every 8 lessons'], ['catch-up 2 days every 8 lessons'], ['Catch-up days: 2 every 8 lessons instead of 1 every 8 lessons']],
    [['present under-threes'], ['shares cupboard with l'], ['Also in the room: no longer under-threes', 'Shares a cupboard with: now Larks']],
    [['learners 6'], [], ['Learners: no longer 6']],
    [['log', '  unsure one on 2026-09-07'], ['note: Early.'], []]
];

test.each(classes)('a class: %j, then %j', (before, after, expected) => {
    const all = told(klass(...before), klass(...after), 'class');
    expect(all).toEqual(expected.map(line => `${line} | class k "Kites" | class k "Kites"`));
});

test('a class under another title; names of another edition do not count as another fact', () => {
    expect(says('class k "Kites"\n', 'class k "Larks"\n', 'class')).toEqual(['Called: “Larks” instead of “Kites”']);
    const named = (lesson: string): string => `lesson ${lesson} "One"\n  activity a "A" 5 min\n    do: Count the pegs on the line.\ncourse c "C"\n  unit u "U"\n    ${lesson}\nclass k "Kites"\n  teaches c\n  starts 2026-09-07\n  meets mon\n  fixed ${lesson} on 2026-09-14\n`;
    expect(says(named('one'), named('first'))).toEqual(['“One” is now written as first, not one']);
    const kits = (name: string, c: string): string => `material cube "Cubes"\nkit ${name} "Boxes"\n  holds\n    cube 4\nlesson one "One"\ncourse ${c} "Count"\n  uses ${name} 1 in all\n  unit u "U"\n    one\nclass k "Kites"\n  teaches ${c}\n  kits ${name} 1\n`;
    expect(says(kits('box', 'c'), kits('crate', 'd'))).toEqual(['Now written as crate, not box']);
});

const objective = (...lines: string[]): string => ['framework f "F"', 'objective o "Order masses"', ...lines.map(line => `  ${line}`), 'objective p "Pour"', 'objective q "Quilt"', ''].join('\n');

test('an objective', () => {
    const at = ' | objective o "Order masses" | objective o "Order masses"';
    expect(told(objective('in measuring', 'builds on p', 'aligns to f 1.2', 'about: As with {p}.'), objective('in weighing', 'builds on q', 'aligns to f 1.3', 'about: As with {q}.'), 'objectives')).toEqual([
        'Strand: weighing instead of measuring', 'Now builds on “Quilt”', 'No longer builds on “Pour”', 'Now aligned to 1.3 of f', 'No longer aligned to 1.2 of f', 'What is said of it is worded anew'
    ].map(line => line + at));
    expect(says(objective('in measuring'), objective(), 'objectives')).toEqual(['Strand: no longer measuring']);
    const [said] = compareEditions(read(objective('about: As with {p}.')), read(objective('about: As with {q}.'))).sections[0]!.groups[0]!.differences;
    expect([said?.before, said?.after]).toEqual(['As with Pour.', 'As with Quilt.']);
    // Nobody works on them: whether they are declared changes nothing for a teacher.
    expect(says(objective(), 'framework f "F"\n')).toEqual([]);
    expect(says('framework f "F"\n', objective())).toEqual([]);
});
