/** Each difference leads to the lines that it tells of, in either edition. */
import { describe, expect, test } from 'vitest';
import { compareEditions } from '@haversack/server/planning/editions/compare-editions';
import { base, edited, read, renamed } from './edition-texts.js';
import { toldWithLines } from './edition-lines.js';

const both = (old: string, now: string, id?: string): string[] => toldWithLines(compareEditions(read(old), read(now), { class: 'harbour' }), old, now, id);
const from = (now: string, id?: string): string[] => both(base, now, id);
const stall = '  activity stall "A stall of our own" 25 min\n    do: Weigh out what the customers ask for.\n';

describe('the order of lessons', () => {
    test.each<[what: string, now: string, expected: string[]]>([
        ['new', `${edited(base, ['    weigh-3\n', '    weigh-5\n    weigh-3\n'])}lesson weigh-5 "Sand"\n`, [
            '“Sand” is new, 0 min, after “Three bags in a row” |  | weigh-5', 'In all: 5 lessons instead of 4 | course measure "Measure and Make" edition 1 | course measure "Measure and Make" edition 1'
        ]],
        ['the only one left', edited(base, ['    weigh-1\n    weigh-2\n', ''], ['    weigh-3\n', '']), [
            '“Which is heavier?” is no longer taught; it came at the very start, before “Three bags in a row”; it is still written, but no line of the course names it | weigh-1 | lesson weigh-1 "Which is heavier?"',
            '“Three bags in a row” is no longer taught; it came after “Which is heavier?”; it is still written, but no line of the course names it | weigh-2 | lesson weigh-2 "Three bags in a row"',
            '“Market sums” is no longer taught; it came after “Three bags in a row”; it is still written, but no line of the course names it | weigh-3 | lesson weigh-3 "Market sums"',
            'In all: 1 lesson instead of 4 and 10 min instead of 90 | course measure "Measure and Make" edition 1 | course measure "Measure and Make" edition 1'
        ]],
        ['moved, to another unit', edited(base, ['    weigh-4\n', ''], ['    weigh-1\n', '    weigh-4\n    weigh-1\n']), [
            '“A letter to weigh” is now taught at the very start, before “Which is heavier?”, no longer after “Market sums” | weigh-4 | weigh-4',
            '“A letter to weigh” belongs to the unit “Weighing”, no longer to “Trading” |  | weigh-4'
        ]],
        ['in another unit only', edited(base, ['  unit trading "Trading"\n    weigh-3\n    weigh-4\n', '    weigh-3\n    weigh-4\n']), ['“Market sums” and “A letter to weigh” belong to the unit “Weighing”, no longer to “Trading” |  | weigh-3']],
        ['another title', edited(base, ['"Market sums"', '"Sums at the market"']), ['“Market sums” is now called “Sums at the market” | lesson weigh-3 "Market sums" | lesson weigh-3 "Sums at the market"']],
        ['another name', renamed(base, 'weigh-3', 'market'), ['“Market sums” is now written as market, not weigh-3 | lesson weigh-3 "Market sums" | lesson market "Market sums"']],
        ['another name and title', edited(renamed(base, 'weigh-3', 'market'), ['"Market sums"', '"The market"']), ['“Market sums” (weigh-3) is now “The market” (market) | lesson weigh-3 "Market sums" | lesson market "The market"']],
        ['a unit with another name or title alone', edited(base, ['unit trading "Trading"', 'unit trading "Trade"'], ['unit weighing', 'unit scales']), []],
        ['as many minutes in fewer lessons', edited(base, ['    weigh-4\n', ''], ['"A stall of our own" 25 min', '"A stall of our own" 35 min']), [
            '“A letter to weigh” is no longer taught; it came after “Market sums”; it is still written, but no line of the course names it | weigh-4 | lesson weigh-4 "A letter to weigh"',
            'In all: 3 lessons instead of 4 | course measure "Measure and Make" edition 1 | course measure "Measure and Make" edition 1'
        ]]
    ])('%s', (_, now, expected) => expect(from(now, 'order')).toEqual(expected));

    test('a course that came or went, and a lesson that is gone from the files', () => {
        const tail = base.slice(base.indexOf('course measure'));
        expect(both(base.replace(tail, ''), base, 'order')).toEqual(['A new course: 4 lessons, 90 min |  | course measure "Measure and Make" edition 1']);
        expect(both(base, base.replace(tail, ''), 'order')).toEqual(['The course is gone, with 4 lessons | course measure "Measure and Make" edition 1 | ']);
        const lesson = base.slice(base.indexOf('lesson weigh-4'), base.indexOf('course measure'));
        expect(from(edited(base, [lesson, ''], ['    weigh-4\n', '']), 'order')[0]).toBe('“A letter to weigh” is no longer taught; it came after “Market sums” | weigh-4 | ');
    });

    test('a name that two courses share is told once', () => {
        const two = `${base}course again "Again"\n  unit one "One"\n    weigh-3\n`;
        expect(both(two, renamed(two, 'weigh-3', 'market'), 'order')).toEqual(['“Market sums” is now written as market, not weigh-3 | lesson weigh-3 "Market sums" | lesson market "Market sums"']);
    });

    test('the courses in the order of the new edition, what is gone last', () => {
        const courses = (...names: string[]): string => names.map(name => `course ${name} "Course ${name.toUpperCase()}"\n  unit u-${name} "Unit"\n    on-${name}\n`).join('') + [...names].map(name => `lesson on-${name} "Lesson ${name.repeat(4)}"\n`).join('');
        const figures = compareEditions(read(courses('gold', 'ash', 'birch')), read(courses('birch', 'clay', 'ash')));
        expect(figures.courses.map(({ old, new: now }) => [old?.title, now?.title])).toEqual([['Course BIRCH', 'Course BIRCH'], [undefined, 'Course CLAY'], ['Course ASH', 'Course ASH'], ['Course GOLD', undefined]]);
        expect(figures.courses[0]).toMatchObject({ old: { name: 'birch', place: { uri: 'file:///programme/programme.course' } }, new: { name: 'birch' } });
    });
});

describe('in a lesson', () => {
    test.each<[what: string, now: string, expected: string[]]>([
        ['length', edited(base, ['"Three bags" 20 min', '"Three bags" 25 min']), ['“Three bags”: 25 min instead of 20 min; the lesson takes 35 min instead of 30 min | activity three-bags "Three bags" 20 min | activity three-bags "Three bags" 25 min']],
        ['lengths', edited(base, ['"Hands as scales" 5 min', '"Hands as scales"'], ['"Two mystery bags" 15 min', '"Two mystery bags" 17 min']), [
            'The lesson takes 22 min instead of 25 min | lesson weigh-1 "Which is heavier?" | lesson weigh-1 "Which is heavier?"',
            '“Hands as scales”: no longer 5 min | warm-up scales "Hands as scales" 5 min | warm-up scales "Hands as scales"',
            '“Two mystery bags”: 17 min instead of 15 min | activity two-bags "Two mystery bags" 15 min | activity two-bags "Two mystery bags" 17 min'
        ]],
        ['a length that was not said', edited(base, ['  practice say-it "Say the mass" 8 items', '  practice say-it "Say the mass" 8 items 5 min']), [
            '“Say the mass”: now 5 min; the lesson takes 35 min instead of 30 min | practice say-it "Say the mass" 8 items | practice say-it "Say the mass" 8 items 5 min'
        ]],
        ['lengths that make up for each other', edited(base, ['"Hands as scales" 5 min', '"Hands as scales" 6 min'], ['"Two mystery bags" 15 min', '"Two mystery bags" 14 min']), [
            '“Hands as scales”: 6 min instead of 5 min | warm-up scales "Hands as scales" 5 min | warm-up scales "Hands as scales" 6 min',
            '“Two mystery bags”: 14 min instead of 15 min | activity two-bags "Two mystery bags" 15 min | activity two-bags "Two mystery bags" 14 min'
        ]],
        ['a part is new', edited(base, ['  warm-up scales', '  activity draw "Draw it" 5 min\n    do: Draw what you saw.\n  warm-up scales']), ['Activity “Draw it” is new (5 min), at the start of the lesson; the lesson takes 30 min instead of 25 min |  | activity draw "Draw it" 5 min']],
        ['a part is new, without a length', edited(base, ['  checkpoint wrap-up', '  practice count-it "Count" 4 items\n    name numbers 1 to 9\n  checkpoint wrap-up']), ['Practice “Count” is new, after “Two mystery bags” |  | practice count-it "Count" 4 items']],
        ['a part is gone', edited(base, ['  game grocer 10 min\n', '']), ['Game “The careful grocer” is gone (10 min); the lesson takes 20 min instead of 30 min | game grocer 10 min | ', 'Gram cubes: no longer needed (was 20 per group) | gram-cube 20 per group | ']],
        ['the only part is gone', edited(base, [stall, '']), ['Activity “A stall of our own” is gone (25 min); the lesson takes 0 min instead of 25 min | activity stall "A stall of our own" 25 min | ']],
        ['a part is another one, of another length', edited(base, [stall, '  warm-up sing "Singing" 20 min\n    say: La.\n']), [
            'The lesson takes 20 min instead of 25 min | lesson weigh-3 "Market sums" | lesson weigh-3 "Market sums"',
            'Activity “A stall of our own” is gone (25 min) | activity stall "A stall of our own" 25 min | ', 'Warm-up “Singing” is new (20 min) |  | warm-up sing "Singing" 20 min'
        ]],
        ['a part moves', edited(base, ['  game grocer 10 min\n', ''], ['  activity three-bags', '  game grocer 10 min\n  activity three-bags']), [
            '“Three bags” now comes after “The careful grocer”, no longer at the start of the lesson | activity three-bags "Three bags" 20 min | activity three-bags "Three bags" 20 min'
        ]],
        ['a part has another title', edited(base, ['"Three bags" 20', '"Some bags" 20']), ['“Three bags” is now called “Some bags” | activity three-bags "Three bags" 20 min | activity three-bags "Some bags" 20 min']],
        ['a part is of another kind', edited(base, ['  activity three-bags', '  warm-up three-bags']), ['“Three bags” is now a warm-up, no longer an activity | activity three-bags "Three bags" 20 min | warm-up three-bags "Three bags" 20 min']],
        ['a part becomes practice', edited(base, ['  activity letters "Letters and parcels" 10 min', '  practice letters "Letters and parcels" 10 min']), ['“Letters and parcels” is now practice, no longer an activity | activity letters "Letters and parcels" 10 min | practice letters "Letters and parcels" 10 min']],
        ['a part becomes closing questions', edited(base, ['  activity letters "Letters and parcels" 10 min', '  checkpoint letters "Letters and parcels" 10 min']), ['“Letters and parcels” is now closing questions, no longer an activity | activity letters "Letters and parcels" 10 min | checkpoint letters "Letters and parcels" 10 min']],
        ['a part stands in another lesson', edited(base, [stall, ''], ['  activity letters', `${stall}  activity letters`]), [
            '“A stall of our own” now stands in the lesson “A letter to weigh”; the lesson takes 0 min instead of 25 min | activity stall "A stall of our own" 25 min | activity stall "A stall of our own" 25 min',
            '“A stall of our own” stood in the lesson “Market sums” before; the lesson takes 35 min instead of 10 min | activity stall "A stall of our own" 25 min | activity stall "A stall of our own" 25 min'
        ]],
        ['prerequisites', edited(base, ['  follows weigh-1\n', '  follows weigh-4\n']), ['Now follows “A letter to weigh” |  | follows weigh-4', 'No longer follows “Which is heavier?” | follows weigh-1 | ']],
        ['words', edited(base, ['  words heavier', '  words lighter']), ['Now teaches the word “lighter” |  | words lighter', 'No longer teaches the word “heavier” | words heavier | ']],
        ['what is not needed', edited(base, ['  words heavier', '  not needed lentil\n  words heavier']), ['“Lentils” is now said not to be needed |  | not needed lentil']],
        ['a draft', edited(base, ['  words heavier', '  draft\n  words heavier']), ['Now a draft | lesson weigh-1 "Which is heavier?" | lesson weigh-1 "Which is heavier?"']],
        ['cautions', edited(base, ['  words heavier', '  caution hot\n  words heavier'], ['    do: Stand with arms out.', '    caution sharp\n    do: Stand with arms out.']), [
            'A new caution: Hot |  | caution hot', '“Hands as scales”: a new caution: Sharp |  | caution sharp'
        ]],
        ['an objective that moved to a lesson', edited(base, ['    introduces order-mass\n', ''], ['    introduces compare-mass', '    introduces compare-mass, order-mass']), [
            'Now introduces “Put masses in order”, which “Three bags in a row” did before | introduces order-mass | introduces compare-mass, order-mass'
        ]],
        ['an objective that no lesson checks', edited(base, ['    checks compare-mass, order-mass', '    checks compare-mass']), ['No longer checks “Put masses in order”; no lesson does any more | checks compare-mass, order-mass | ']],
        ['an objective that one more lesson practises', edited(base, ['    checks compare-mass, order-mass', '    checks compare-mass, order-mass\n    practices compare-mass']), ['Now practises “Compare two masses” |  | practices compare-mass']],
        ['practice', edited(base, ['8 items', '10 items'], ['name numbers 11 to 99', 'name numbers 20 to 99']), [
            '“Say the mass”: 10 items instead of 8 items | practice say-it "Say the mass" 8 items | practice say-it "Say the mass" 10 items',
            '“Say the mass”: no longer “name numbers 11 99” | practice say-it "Say the mass" 8 items | practice say-it "Say the mass" 10 items',
            '“Say the mass”: now “name numbers 20 99” | practice say-it "Say the mass" 8 items | practice say-it "Say the mass" 10 items'
        ]],
        ['practice without a number of items', edited(base, ['"Say the mass" 8 items', '"Say the mass"']), ['“Say the mass”: no longer 8 items | practice say-it "Say the mass" 8 items | practice say-it "Say the mass"']],
        ['if a child is unsure: another part', edited(base, ['repeat two-bags tomorrow', 'repeat scales tomorrow']), [
            'If a child is unsure after “Before you go”: repeat “Hands as scales” tomorrow instead of repeat “Two mystery bags” tomorrow | checkpoint wrap-up "Before you go" 5 min | checkpoint wrap-up "Before you go" 5 min'
        ]],
        ['if a child is unsure: the lesson', edited(base, ['repeat two-bags tomorrow', 'repeat lesson today']), [
            'If a child is unsure after “Before you go”: repeat the lesson today instead of repeat “Two mystery bags” tomorrow | checkpoint wrap-up "Before you go" 5 min | checkpoint wrap-up "Before you go" 5 min'
        ]],
        ['if a child is unsure: go on', edited(base, ['repeat two-bags tomorrow', 'go on and revisit in 1 lesson']), [
            'If a child is unsure after “Before you go”: go on and revisit in 1 lesson instead of repeat “Two mystery bags” tomorrow | checkpoint wrap-up "Before you go" 5 min | checkpoint wrap-up "Before you go" 5 min'
        ]],
        ['if a child is unsure: nothing', edited(base, ['    if unsure: repeat two-bags tomorrow\n', '']), [
            'If a child is unsure after “Before you go”: no longer repeat “Two mystery bags” tomorrow | checkpoint wrap-up "Before you go" 5 min | checkpoint wrap-up "Before you go" 5 min'
        ]]
    ])('%s', (_, now, expected) => expect(from(now, 'lessons')).toEqual(expected));

    test('a draft that is finished', () => {
        expect(both(edited(base, ['  words heavier', '  draft\n  words heavier']), base)).toEqual(['No longer a draft | lesson weigh-1 "Which is heavier?" | lesson weigh-1 "Which is heavier?"']);
    });

    test('how sure it is that a part has another name or stands elsewhere', () => {
        const why = (now: string): (string | undefined)[] => compareEditions(read(base), read(now)).sections.flatMap(({ groups }) => groups).flatMap(({ differences }) => differences).map(one => one.why).filter(one => one !== undefined);
        expect(why(edited(renamed(base, 'three-bags', 'bags'), ['"Three bags" 20', '"Bags" 20']))).toEqual(['Certainly the same: the only step agrees.']);
        expect(why(edited(base, [stall, ''], ['  activity letters', `${stall}  activity letters`]))).toEqual(['Certainly the same: the only step agrees.']);
    });
});

describe('needs', () => {
    const line = '    gram-cube 30 per group of 3 in kit\n';
    const need = (...lines: string[]): string[] => from(edited(base, [line, lines.map(one => `    ${one}\n`).join('')]), 'lessons');
    test.each<[lines: string[], expected: string[]]>([
        [['gram-cube 30 per group of 4 in kit'], ['Gram cubes: 30 per group of 4 instead of 30 per group of 3 | gram-cube 30 per group of 3 in kit | gram-cube 30 per group of 4 in kit']],
        [['gram-cube 30 per learner not in kit'], ['Gram cubes: 30 per learner instead of 30 per group of 3; now not in the kit | gram-cube 30 per group of 3 in kit | gram-cube 30 per learner not in kit']],
        [['gram-cube 30 per learner'], ['Gram cubes: 30 per learner instead of 30 per group of 3; now nothing is said of the kit | gram-cube 30 per group of 3 in kit | gram-cube 30 per learner']],
        [['gram-cube 30 per group of 3'], ['Gram cubes: 30 per group of 3 instead of 30 per group of 3, in the kit | gram-cube 30 per group of 3 in kit | gram-cube 30 per group of 3']],
        [['gram-cube 30 per group of 3 in kit optional'], ['Gram cubes: 30 per group of 3, optional instead of 30 per group of 3 | gram-cube 30 per group of 3 in kit | gram-cube 30 per group of 3 in kit optional']],
        [['gram-cube or lentil 30 per group of 3 in kit'], ['Gram cubes: 30 per group of 3, or Lentils instead of 30 per group of 3 | gram-cube 30 per group of 3 in kit | gram-cube or lentil 30 per group of 3 in kit']],
        [['gram-cube 30 per group of 3 in kit', 'gram-cube 2 per class'], ['Gram cubes: also 2 for the class | gram-cube 30 per group of 3 in kit | gram-cube 2 per class']],
        [['gram-cube 30 per group of 3 in kit', 'gram-cube 30 per group of 3 in kit'], ['Gram cubes: also 30 per group of 3, in the kit | gram-cube 30 per group of 3 in kit | gram-cube 30 per group of 3 in kit']],
        [['gram-cube'], ['Gram cubes: no amount for the class instead of 30 per group of 3; now nothing is said of the kit | gram-cube 30 per group of 3 in kit | gram-cube']],
        [['lentil 5 g per adult'], ['Lentils: now needed, 5 g per adult |  | lentil 5 g per adult', 'Gram cubes: no longer needed (was 30 per group of 3, in the kit) | gram-cube 30 per group of 3 in kit | ']]
    ])('%j', (lines, expected) => expect(need(...lines)).toEqual(expected));

    test('one of two lines for the same thing', () => {
        const two = edited(base, [line, `${line}    gram-cube 2 per class\n`]);
        expect(both(two, base, 'lessons')).toEqual(['Gram cubes: no longer 2 for the class | gram-cube 2 per class | gram-cube 30 per group of 3 in kit']);
    });
});

describe('steps', () => {
    const says = '    do: Put one bag in each pan and wait until it settles.\n';
    const step = (...lines: string[]): string[] => from(edited(base, [says, lines.map(one => `    ${one}\n`).join('')]), 'lessons');
    test.each<[lines: string[], expected: string[]]>([
        [['say: Put one bag in each pan and wait until it settles.'], ['“Two mystery bags”: what stood under ‘do’ now stands under ‘say’ | do: Put one bag in each pan and wait until it settles. | say: Put one bag in each pan and wait until it settles.']],
        [['do: Sing.'], ['“Two mystery bags”: a step (‘do’) worded anew | do: Put one bag in each pan and wait until it settles. | do: Sing.']],
        [['do: Sing.', 'do: Dance.'], ['“Two mystery bags”: a step (‘do’) added |  | do: Sing.', '“Two mystery bags”: a step (‘do’) added |  | do: Dance.', '“Two mystery bags”: a step (‘do’) left out | do: Put one bag in each pan and wait until it settles. | ']],
        [['do: Sing.', 'do: Put one bag in a pan and wait until it settles.'], ['“Two mystery bags”: a step (‘do’) worded anew | do: Put one bag in each pan and wait until it settles. | do: Put one bag in a pan and wait until it settles.', '“Two mystery bags”: a step (‘do’) added |  | do: Sing.']]
    ])('%j', (lines, expected) => expect(step(...lines)).toEqual(expected));

    test('in another order', () => {
        expect(from(edited(base, [says, ''], ['      help: Hands on laps until the beam stops.\n', `      help: Hands on laps until the beam stops.\n${says}`]), 'lessons')).toEqual([
            '“Two mystery bags”: steps stand in another order | do: Put one bag in each pan and wait until it settles. | do: Put one bag in each pan and wait until it settles.'
        ]);
    });

    test('of the lesson itself', () => {
        expect(from(edited(base, ['  about: Children compare two masses by feel.', '  about: Children compare two masses with their hands.\n  note: Open the window.']), 'lessons')).toEqual([
            'The aim worded anew | about: Children compare two masses by feel. | about: Children compare two masses with their hands.', 'A note added |  | note: Open the window.'
        ]);
    });

    test('each kind by its name', () => {
        const lines = ['why: A.', 'instead: B.', 'more: C.', 'note: D.', 'ready when: E.', 'ask: F?', 'watch: G.', 'show ten-frame 4', 'say: H.'];
        expect(step(says.trim(), ...lines).map(line => line.split(' | ')[0])).toEqual([
            'the reason', 'the gentler choice', 'what more to do', 'a note', 'when a child is ready', 'a question', 'what to watch for', 'a picture', 'a step (‘say’)'
        ].map(what => `“Two mystery bags”: ${what} added`));
    });
});

test('objectives: in which lessons they are worked on, at the lines that say so', () => {
    const sand = (does: string, more = ''): string => `lesson weigh-5 "Sand"\n  objectives\n    ${does}\n${more}`;
    const withSand = (text: string, does: string): string => edited(text, ['    weigh-4\n', '    weigh-4\n    weigh-5\n']) + sand(does);
    const none = edited(base, ['    checks compare-mass, order-mass', '    checks compare-mass']);
    const silent = edited(base, ['    practices order-mass\n  activity letters', '    checks compare-mass\n  activity letters']);
    expect(both(none, withSand(none, 'checks order-mass'), 'objectives')).toEqual(['Checked: now in “Sand” |  | checks order-mass']);
    expect(both(base, withSand(base, 'checks order-mass'), 'objectives')).toEqual(['Checked: also in “Sand” |  | checks order-mass']);
    expect(both(withSand(base, 'checks order-mass'), base, 'objectives')).toEqual(['Checked: no longer in “Sand”, still in “Market sums” | checks order-mass | ']);
    expect(both(withSand(none, 'checks order-mass'), none, 'objectives')).toEqual(['No longer checked: it was in “Sand” | checks order-mass | ']);
    const clay = `${edited(silent, ['    weigh-4\n', '    weigh-6\n'])}lesson weigh-6 "Clay"\n  objectives\n    practices order-mass\n  activity roll "Rolling" 8 min\n    do: Roll long snakes and short snakes.\n    say: Which one is longest?\n  activity dry "Drying" 3 min\n    do: Lay them out.\n`;
    expect(both(withSand(silent, 'practices order-mass'), clay, 'objectives')).toContain('Practised: in “Clay” instead of “Sand” | practices order-mass | practices order-mass');
});

test('objectives that came and went, with the lessons that work on them', () => {
    const pour = edited(base, ['objective order-mass', 'objective pour "Pour without spilling"\nobjective order-mass'], ['    checks compare-mass, order-mass', '    checks compare-mass, order-mass\n    introduces pour'], ['    practices compare-mass', '    practices compare-mass, pour'], ['    practices order-mass\n  activity letters', '    practices order-mass, pour\n  activity letters']);
    expect(both(base, pour, 'objectives')).toEqual(['A new objective: introduced in “Market sums”; practised in “Three bags in a row” and “A letter to weigh” |  | objective pour "Pour without spilling"']);
    expect(both(pour, base, 'objectives')).toEqual(['No longer an objective; it was worked on in “Three bags in a row”, “Market sums” and “A letter to weigh” | objective pour "Pour without spilling" | ']);
    expect(from(edited(base, ['"Put masses in order"', '"Order three masses"']), 'objectives')).toEqual(['Now called “Order three masses”, before “Put masses in order” | objective order-mass "Put masses in order" | objective order-mass "Order three masses"']);
    const figures = compareEditions(read(base), read(renamed(base, 'order-mass', 'sort-mass')));
    expect(figures.sections.flatMap(({ groups }) => groups).flatMap(({ differences }) => differences).map(({ says, why }) => [says, why])).toEqual([['Now written as sort-mass, not order-mass', 'Certainly the same: all 3 lessons and the only strand agree.']]);
});

describe('the term', () => {
    const dated = edited(base, ['  starts 2026-09-07', '  starts 2026-09-07\n  ends 2026-09-22']);
    test('a lesson that finds no day any more, and one that finds one again', () => {
        // Mondays 7, 14 and 21 September: three of four lessons have a day.
        const fewer = edited(dated, ['    weigh-2\n', '']);
        expect(both(fewer, dated, 'term').filter(line => line.includes('day'))).toEqual(['The term has no day left for “A letter to weigh” |  | lesson weigh-4 "A letter to weigh"']);
        expect(both(dated, fewer, 'term').filter(line => line.includes('day'))).toEqual(['There is now a day for “A letter to weigh” | lesson weigh-4 "A letter to weigh" | ']);
        expect(both(dated, edited(dated, ['    weigh-4\n', '']), 'term').filter(line => line.includes('day'))).toEqual(['There is now a day for “A letter to weigh” | lesson weigh-4 "A letter to weigh" | ']);
    });
    test('weeks without dates: how many meetings, and no last day', () => {
        const plain = edited(base, ['  starts 2026-09-07\n  meets mon\n', '']);
        expect(both(plain, edited(plain, ['    weigh-4\n', '']), 'term')).toEqual(['With a lesson: 3 meetings instead of 4 |  | ']);
        expect(both(plain, edited(plain, ['    weigh-2\n', ''], ['    weigh-3\n    weigh-4\n', '']), 'term')[0]).toBe('With a lesson: 1 meeting instead of 4 |  | ');
    });
    test('amounts, at the things', () => {
        // 250 g for each of 3 pairs; with 100 g more of each in the first lesson 1.05 kg.
        const at = 'material dried-bean "Dried beans"';
        expect(from(edited(base, ['dried-bean 150 g per pair', 'dried-bean 250 g per pair']), 'term')).toContain(`Dried beans: 1.05 kg instead of 750 g | ${at} | ${at}`);
        const none = base.replaceAll(/\n {4}dried-bean \d+ g per pair not in kit/g, '');
        expect(from(none, 'term')).toContain(`Dried beans: no longer needed (was 750 g) | ${at} | `);
        expect(both(none, base, 'term')).toContain(`Dried beans: 750 g, which was not needed before |  | ${at}`);
    });
});
