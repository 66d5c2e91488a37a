import { describe, expect, test } from 'vitest';
import { compareEditions } from '@haversack/server/planning/editions/compare-editions';
import { base, edited, read, renamed, told } from './edition-texts.js';

const old = read(base);
const compared = (text: string): string[] => told(compareEditions(old, read(text), { class: 'harbour' }));

describe('nothing changed for a teacher', () => {
    const same: [what: string, text: string][] = [
        ['nothing at all', base],
        ['remarks and empty lines', edited(base, ['lesson weigh-3', '# A remark.\n\n\nlesson weigh-3'], ['  activity stall', '  # Another one.\n  activity stall'])],
        ['indentation', base.split('\n').map(line => line.replace(/^ +/, blanks => blanks.repeat(2))).join('\n')],
        ['gaps between words', base.replaceAll('per pair', '  per   pair')],
        ['the order of lines that mean nothing', edited(base, ['    dried-bean 150 g per pair not in kit\n    gram-cube 10 per pair in kit', '    gram-cube 10 per pair in kit\n    dried-bean 150 g per pair not in kit'], ['    introduces order-mass\n    practices compare-mass', '    practices compare-mass\n    introduces order-mass'])],
        ['a text broken over lines', edited(base, ['Put one bag in each pan and wait until it settles.', 'Put one bag in each pan\n      and wait until it settles.'])],
        ['the same amount in another unit', edited(base, ['dried-bean 150 g per pair', 'dried-bean 0.15 kg per pair'])],
        ['where a line stands in its lesson', edited(base, ['  materials\n    gram-cube 30 per group of 3 in kit\n  activity stall "A stall of our own" 25 min', '  activity stall "A stall of our own" 25 min\n    materials\n      gram-cube 30 per group of 3 in kit'])],
        ['a lesson that no course names', `${base}lesson spare "A spare one"\n  activity rest 5 min\n    do: Rest.\n`]
    ];
    test.each(same)('%s', (_, text) => {
        const figures = compareEditions(old, read(text), { class: 'harbour' });
        expect(figures.sections).toEqual([]);
        expect(figures.summary).toBe('Nothing changed for a teacher.');
    });

    test('though it stands in other files', () => {
        const [head = '', ...lessons] = base.split(/^(?=lesson )/m);
        const rest = lessons.pop()!.split(/^(?=course )/m);
        const files = { 'a.kit': head, 'b.lesson': [...lessons, rest[0]].reverse().join(''), 'c.course': rest[1]! };
        expect(told(compareEditions(old, read(files)))).toEqual([]);
    });
});

/** Each: what was done to the text, and all that a teacher is told. The term's lines stand where the course makes a difference to it. */
const changes: [what: string, text: string, told: string[]][] = [
    ['a lesson is new', `${edited(base, ['    weigh-3\n', '    weigh-3\n    weigh-5\n'])}lesson weigh-5 "Sand"\n  activity pour "Pouring sand" 12 min\n    do: Pour sand from cup to cup.\n`, [
        'order / Measure and Make: “Sand” is new, 12 min, after “Market sums”', 'order / Measure and Make: In all: 5 lessons instead of 4 and 102 min instead of 90', 'term / Harbour co-op: With a lesson: 5 meetings instead of 4', 'term / Harbour co-op: Last lesson: Mon 5 Oct (2026-10-05) instead of Mon 28 Sep (2026-09-28)'
    ]],
    ['a lesson is taught no more, and stays in its file', edited(base, ['    weigh-4\n', '']), [
        'order / Measure and Make: “A letter to weigh” is no longer taught; it came after “Market sums”; it is still written, but no line of the course names it',
        'order / Measure and Make: In all: 3 lessons instead of 4 and 80 min instead of 90', 'term / Harbour co-op: With a lesson: 3 meetings instead of 4', 'term / Harbour co-op: Last lesson: Mon 21 Sep (2026-09-21) instead of Mon 28 Sep (2026-09-28)',
        'objectives / Put masses in order: No longer practised: it was in “A letter to weigh”'
    ]],
    ['one lesson is moved', edited(base, ['    weigh-4\n', ''], ['    weigh-1\n', '    weigh-4\n    weigh-1\n']), [
        'order / Measure and Make: “A letter to weigh” is now taught at the very start, before “Which is heavier?”, no longer after “Market sums”', 'order / Measure and Make: “A letter to weigh” belongs to the unit “Weighing”, no longer to “Trading”'
    ]],
    ['a lesson has another title', edited(base, ['"Market sums"', '"Sums at the market"']), ['order / Measure and Make: “Market sums” is now called “Sums at the market”']],
    ['a lesson has another name', renamed(base, 'weigh-3', 'market-1'), ['order / Measure and Make: “Market sums” is now written as market-1, not weigh-3']],
    ['a part takes longer', edited(base, ['"Three bags" 20 min', '"Three bags" 25 min']), [
        'order / Measure and Make: In all: 95 min instead of 90', 'lessons / Three bags in a row: “Three bags”: 25 min instead of 20 min; the lesson takes 35 min instead of 30 min'
    ]],
    ['a part is new', edited(base, ['  checkpoint wrap-up', '  activity draw "Draw it" 5 min\n    do: Draw what you saw.\n  checkpoint wrap-up']), [
        'order / Measure and Make: In all: 95 min instead of 90', 'lessons / Which is heavier?: Activity “Draw it” is new (5 min), after “Two mystery bags”; the lesson takes 30 min instead of 25 min'
    ]],
    ['a part moves', edited(base, ['  game grocer 10 min\n', ''], ['  activity three-bags', '  game grocer 10 min\n  activity three-bags']), [
        'lessons / Three bags in a row: “Three bags” now comes after “The careful grocer”, no longer at the start of the lesson'
    ]],
    ['a part goes to another lesson', edited(base, ['  activity stall "A stall of our own" 25 min\n    do: Weigh out what the customers ask for.\n', ''], ['  activity letters', '  activity stall "A stall of our own" 25 min\n    do: Weigh out what the customers ask for.\n  activity letters']), [
        'lessons / Market sums: “A stall of our own” now stands in the lesson “A letter to weigh”; the lesson takes 0 min instead of 25 min',
        'lessons / A letter to weigh: “A stall of our own” stood in the lesson “Market sums” before; the lesson takes 35 min instead of 10 min'
    ]],
    ['more of a thing', edited(base, ['gram-cube 10 per pair', 'gram-cube 12 per pair']), ['lessons / Which is heavier?: Gram cubes: 12 per pair instead of 10 per pair']],
    ['more of what is used up', edited(base, ['dried-bean 150 g per pair', 'dried-bean 250 g per pair']), [
        'lessons / Which is heavier?: Dried beans: 250 g per pair instead of 150 g per pair', 'term / Harbour co-op: To buy over the term: 6.30 USD instead of 4.20 USD, 2.10 USD more', 'term / Harbour co-op: Dried beans: 1.05 kg instead of 750 g'
    ]],
    ['whether the kit has it', edited(base, ['gram-cube 10 per pair in kit', 'gram-cube 10 per pair not in kit']), ['lessons / Which is heavier?: Gram cubes: 10 per pair, not in the kit instead of 10 per pair, in the kit']],
    ['a thing is needed that was not', edited(base, ['    gram-cube 30 per group of 3 in kit', '    gram-cube 30 per group of 3 in kit\n    lentil 20 g per learner']), [
        'lessons / Market sums: Lentils: now needed, 20 g per learner', 'term / Harbour co-op: Lentils: to be bought, and no price is known', 'term / Harbour co-op: Lentils: 120 g, which was not needed before'
    ]],
    ['an objective is introduced elsewhere', edited(base, ['    introduces order-mass\n', ''], ['    introduces compare-mass', '    introduces compare-mass, order-mass']), [
        'lessons / Which is heavier?: Now introduces “Put masses in order”, which “Three bags in a row” did before'
    ]],
    ['a new lesson checks it instead', `${edited(base, ['    checks compare-mass, order-mass', '    checks compare-mass'], ['    weigh-4\n', '    weigh-4\n    weigh-5\n'])}lesson weigh-5 "Ask"\n  objectives\n    checks order-mass\n`, [
        'order / Measure and Make: “Ask” is new, 0 min, after “A letter to weigh”', 'order / Measure and Make: In all: 5 lessons instead of 4', 'lessons / Market sums: No longer checks “Put masses in order”: “Ask” does now',
        'term / Harbour co-op: With a lesson: 5 meetings instead of 4', 'term / Harbour co-op: Last lesson: Mon 5 Oct (2026-10-05) instead of Mon 28 Sep (2026-09-28)'
    ]],
    ['nobody checks it any more', edited(base, ['    checks compare-mass, order-mass', '    checks compare-mass']), ['lessons / Market sums: No longer checks “Put masses in order”; no lesson does any more']],
    ['two parts take longer', edited(base, ['"Hands as scales" 5 min', '"Hands as scales" 6 min'], ['"Two mystery bags" 15 min', '"Two mystery bags" 17 min']), [
        'order / Measure and Make: In all: 93 min instead of 90', 'lessons / Which is heavier?: The lesson takes 28 min instead of 25 min', 'lessons / Which is heavier?: “Hands as scales”: 6 min instead of 5 min', 'lessons / Which is heavier?: “Two mystery bags”: 17 min instead of 15 min'
    ]],
    ['an objective has another name', renamed(base, 'compare-mass', 'compare-weights'), ['objectives / Compare two masses: Now written as compare-weights, not compare-mass']],
    ['a material has another name and title', edited(renamed(base, 'gram-cube', 'cube'), ['"Gram cubes"', '"Small gram cubes"']), ['things / Small gram cubes: Now called “Small gram cubes”, before “Gram cubes”']],
    ['a question is worded anew', edited(base, ['Which bag is heavier?', 'Which of the bags is heavier?']), ['lessons / Which is heavier?: “Two mystery bags”: a question worded anew']],
    ['an answer is left out, a step is added', edited(base, ['\n      expect: The one whose pan went down.', ''], ['    do: Stand with arms out.', '    do: Stand with arms out.\n    say: Name two things and tip.']), [
        'lessons / Which is heavier?: “Hands as scales”: a step (‘say’) added', 'lessons / Which is heavier?: “Two mystery bags”: an answer left out'
    ]],
    ['what to do if unsure', edited(base, ['repeat two-bags tomorrow', 'repeat two-bags today']), ['lessons / Which is heavier?: If a child is unsure after “Before you go”: repeat “Two mystery bags” today instead of repeat “Two mystery bags” tomorrow']],
    ['other practice', edited(base, ['8 items', '10 items'], ['name numbers 11 to 99', 'name numbers 20 to 99']), [
        'lessons / Three bags in a row: “Say the mass”: 10 items instead of 8 items', 'lessons / Three bags in a row: “Say the mass”: no longer “name numbers 11 99”', 'lessons / Three bags in a row: “Say the mass”: now “name numbers 20 99”'
    ]],
    ['prerequisites and words', edited(base, ['  follows weigh-1\n', ''], ['  words heavier', '  words heavier, balance']), ['lessons / Which is heavier?: Now teaches the word “balance”', 'lessons / Three bags in a row: No longer follows “Which is heavier?”']],
    ['where the rules of a game stand', edited(base, ['number 12', 'number 14']), ['things / The careful grocer: Rules. Number: 14 instead of 12']],
    ['what a game asks for', edited(base, ['gram-cube 20 per group', 'gram-cube 25 per group']), ['lessons / Three bags in a row: Gram cubes: 25 per group instead of 20 per group', 'things / The careful grocer: Gram cubes: 25 per group instead of 20 per group']],
    ['pages of a print', edited(base, ['pages 2', 'pages 3']), ['things / Record sheet: Pages: 3 pages instead of 2 pages']],
    ['a price', edited(base, ['pack of 500 g costs 2.10 USD', 'pack of 500 g costs 2.40 USD']), ['term / Harbour co-op: To buy over the term: 4.80 USD instead of 4.20 USD, 0.60 USD more', 'things / Dried beans: Packs: 500 g for 2.40 USD instead of 500 g for 2.10 USD']],
    ['another currency, never added up', edited(base, ['pack of 500 g costs 2.10 USD', 'pack of 500 g costs 2.10 EUR']), [
        'term / Harbour co-op: To buy over the term: 4.20 EUR instead of nothing in EUR, 4.20 EUR more', 'term / Harbour co-op: To buy over the term: nothing in USD instead of 4.20 USD, 4.20 USD less', 'things / Dried beans: Packs: 500 g for 2.10 EUR instead of 500 g for 2.10 USD'
    ]],
    ['cautions and stand-ins', edited(base, ['stand-in lentil 1 for 1', 'stand-in lentil 2 for 1'], ['Ask families first.', 'Ask families a week before.']), ['things / Dried beans: Caution worded anew', 'things / Dried beans: Stand-in: Lentils, 2 for 1 instead of Lentils, 1 for 1']],
    ['what a kit holds', edited(base, ['    gram-cube 60', '    gram-cube 80']), ['things / Field kit: Gram cubes: 80 instead of 60']],
    ['where a thing is kept', edited(base, ['material gram-cube "Gram cubes"\n', 'material gram-cube "Gram cubes"\n  kept in: hall cupboard\n']), ['things / Gram cubes: Kept in: now hall cupboard']],
    ['the course itself', edited(base, ['edition 1\n  ages 6 to 8', 'edition 2\n  ages 5 to 8']), ['course / Measure and Make: Edition: 2 instead of 1', 'course / Measure and Make: Ages: 5 to 8 instead of 6 to 8']]
];

describe('each change is told, and nothing else', () => {
    test.each(changes)('%s', (_, text, expected) => {
        expect(compared(text)).toEqual(expected);
    });
});

test('a class that changed is told, and that its term differs for that too', () => {
    const figures = compareEditions(old, read(edited(base, ['  learners 6', '  learners 8'])));
    // Two groups of three become three: 30 cubes more, a pack of 100.
    expect(told(figures)).toEqual(['term / Harbour co-op: To buy over the term: 18.70 USD instead of 4.20 USD, 14.50 USD more', 'term / Harbour co-op: Dried beans: 1 kg instead of 750 g', 'term / Harbour co-op: Gram cubes: 90 instead of 60', 'class / Harbour co-op: Learners: 8 instead of 6']);
    expect(figures.assumptions).toEqual(['What is said of the class changed as well: its term differs for both reasons.']);
});

test('the adaptations that the class’s term is planned with are told', () => {
    const shorter = 'adaptation shorter "Shorter" of measure for harbour\n  skip lesson weigh-4\n';
    const titles = (before: string, after: string): string | undefined => compareEditions(read(before), read(after)).class!.adapted;
    expect(titles(base, base)).toBeUndefined();
    expect(titles(base + shorter, base + shorter)).toBe('its adaptation “Shorter” counted in');
    expect(titles(base + shorter, base)).toBe('its adaptation “Shorter” counted in');
    expect(titles(base + shorter, `${base}${shorter}adaptation calm "Calm" of measure\n  skip lesson weigh-2\n`)).toBe('its adaptations “Calm” and “Shorter” counted in');
    expect(titles(base, `${base}adaptation for-others of measure for others\n  skip lesson weigh-4\n`)).toBeUndefined();
});

test('texts of both editions stand beside what is worded anew, names as titles', () => {
    const figures = compareEditions(old, read(edited(base, ['Guess first, then weigh each letter.', 'Guess first, then weigh each {letters}.'], ['lesson weigh-4', 'material letters "Sealed letters"\n  reusable\nlesson weigh-4'])));
    expect(figures.sections.flatMap(({ groups }) => groups).flatMap(({ differences }) => differences).find(({ kind }) => kind === 'reworded')).toMatchObject({
        before: 'Guess first, then weigh each letter.', after: 'Guess first, then weigh each Sealed letters.',
        old: { uri: 'file:///programme/programme.course' }, new: { uri: 'file:///programme/programme.course' }
    });
});

describe('who is who', () => {
    const lines = (text: string): (string | undefined)[] => compareEditions(old, read(text)).sections.find(({ id }) => id === 'order')!.groups[0]!.differences.filter(({ kind }) => kind === 'lesson-renamed').map(({ says, why }) => `${says} | ${why}`);

    test('a renamed lesson is recognised, with how sure and why', () => {
        expect(lines(edited(renamed(base, 'weigh-1', 'mystery'), ['"Which is heavier?"', '"Mystery bags"'], ['Stand with arms out.', 'Stand with both arms out.'])))
            .toEqual(['“Which is heavier?” (weigh-1) is now “Mystery bags” (mystery) | Certainly the same: all 3 parts, 7 of 8 steps, both materials and the only objective agree.']);
    });

    test('lessons that were numbered anew after a new one keep who they are', () => {
        const text = edited(renamed(renamed(renamed(base, 'weigh-4', 'weigh-5'), 'weigh-3', 'weigh-4'), 'weigh-2', 'weigh-3'), ['    weigh-1\n', '    weigh-1\n    weigh-2\n'], ['lesson weigh-3', 'lesson weigh-2 "Feathers"\n  activity feathers "Feathers" 10 min\n    do: Blow on a feather.\nlesson weigh-3']);
        expect(told(compareEditions(old, read(text))).filter(line => line.startsWith('order'))).toEqual([
            'order / Measure and Make: “Feathers” is new, 10 min, after “Which is heavier?”',
            'order / Measure and Make: In all: 5 lessons instead of 4 and 100 min instead of 90',
            'order / Measure and Make: “Three bags in a row” is now written as weigh-3, not weigh-2', 'order / Measure and Make: “Market sums” is now written as weigh-4, not weigh-3', 'order / Measure and Make: “A letter to weigh” is now written as weigh-5, not weigh-4'
        ]);
    });

    test('another lesson in its place is not the same', () => {
        const text = edited(renamed(base, 'weigh-4', 'parcel'), ['"A letter to weigh"', '"Parcels"'], ['"Letters and parcels"', '"String and paper"'], ['Guess first, then weigh each letter.', 'Wrap it up and tie a knot.'], ['    practices order-mass\n  activity letters', '    practices compare-mass\n  activity wrapping']);
        expect(lines(text)).toEqual([]);
        expect(told(compareEditions(old, read(text))).slice(0, 2)).toEqual(['order / Measure and Make: “A letter to weigh” is no longer taught; it came after “Market sums”', 'order / Measure and Make: “Parcels” is new, 10 min, after “Market sums”']);
    });

    test('a thing that takes the place of another is not that thing with another name', () => {
        const text = edited(renamed(base, 'record-sheet', 'sticker-page'), ['"Record sheet"', '"Stickers"']);
        expect(told(compareEditions(old, read(text))).filter(line => line.startsWith('things'))).toEqual(['things / Record sheet: The print is no longer in the inventory', 'things / Stickers: A new print']);
    });
});

describe('scope', () => {
    const two = `${base}course other "Other things"\n  unit one "One"\n    weigh-4\n`;

    test('one course of several', () => {
        const text = edited(two, ['  unit one "One"\n    weigh-4', '  unit one "One"\n    weigh-4\n    weigh-3']);
        expect(told(compareEditions(read(two), read(text), { course: 'measure' }))).toEqual([]);
        expect(told(compareEditions(read(two), read(text), { course: 'other' })).filter(line => line.startsWith('order'))).toEqual(['order / Other things: “Market sums” is new, 25 min, after “A letter to weigh”', 'order / Other things: In all: 2 lessons instead of 1 and 35 min instead of 10']);
    });

    test('a class that only one edition has is planned with both', () => {
        const without = base.slice(0, base.indexOf('class harbour'));
        const figures = compareEditions(read(without), read(edited(base, ['dried-bean 150 g', 'dried-bean 250 g'])));
        expect(told(figures)).toContain('term / Harbour co-op: Dried beans: 1.05 kg instead of 750 g');
        expect(figures.assumptions).toEqual(['The old edition does not have the class “Harbour co-op”: its term is planned with that of the new edition.']);
    });

    test('an empty programme beside a full one, either way', () => {
        const empty = read('');
        expect(told(compareEditions(empty, empty))).toEqual([]);
        expect(told(compareEditions(empty, old))[0]).toBe('order / Measure and Make: A new course: 4 lessons, 90 min');
        expect(told(compareEditions(old, empty))[0]).toBe('order / Measure and Make: The course is gone, with 4 lessons');
    });
});
