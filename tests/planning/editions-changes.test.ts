/** Each kind of change of an adaptation against a new edition: what it comes to, how it reads now, what it names, and the lines it leads to. */
import { describe, expect, test } from 'vitest';
import type { Range } from '@haversack/language/sheets/sheet';
import { reapply } from '@haversack/server/planning/editions/reapply';
import { base, edited, read, renamed } from './edition-texts.js';

const start = `${base}lesson visit "A visit"\n  activity shop "The shop" 10 min\n    do: Look at the scales of the shop.\n  activity way-back "The way back" 5 min\n    do: Walk back.\n`;
const second = (text: string): string => edited(text, ['"Measure and Make" edition 1', '"Measure and Make" edition 2']);
const adaptation = (lines: string): string => `adaptation shorter "Shorter" of measure edition 1\n${lines.split('\n').map(line => `  ${line}\n`).join('')}`;

interface Told { outcome: string; newEdition?: string; rewritten?: string; wants: string; renames: string[]; former: string[]; old: string; new: string }

function tell(lines: string, now: string, old = start): Told[] {
    const [before, after] = [old + adaptation(lines), second(now) + adaptation(lines)];
    const row = (text: string, line: number | undefined): string => (line === undefined ? '' : text.split('\n')[line]!.trim());
    const at = ({ start: from, end }: Range): string => after.split('\n')[from.line]!.slice(from.character, end.character);
    return reapply(read(before), read(after))[0]!.changes.map(one => ({
        outcome: one.outcome, newEdition: one.newEdition, rewritten: one.rewritten, wants: one.wants, renames: one.renames.map(rename => `${at(rename.at)} -> ${rename.text}`), former: one.former.map(at),
        old: row(before, one.old?.range.start.line), new: row(after, one.new?.range.start.line)
    }));
}
const outcome = (line: string, now: string, old = start): string => tell(line, now, old).map(one => [one.outcome, one.newEdition].filter(Boolean).join(' | ')).join('\n');

const otherName = renamed(start, 'weigh-1', 'mystery');
const otherPart = edited(renamed(start, 'two-bags', 'bags'), ['"Two mystery bags"', '"Two secret bags"']);
const otherThing = edited(renamed(start, 'dried-bean', 'white-bean'), ['"Dried beans"', '"Dried white beans"']);
const otherGame = renamed(start, 'grocer', 'shopkeeper');
const first = 'of “Which is heavier?”';
const secret = `“Two secret bags” ${first}`;

describe('what has another name now', () => {
    test.each<[line: string, now: string, rewritten: string, wants: string, renames: string[], former?: string[]]>([
        ['skip lesson weigh-1', otherName, 'skip lesson mystery', '“Which is heavier?” is left out', ['weigh-1 -> mystery']],
        ['move weigh-1 after weigh-3', otherName, 'move mystery after weigh-3', '“Which is heavier?” is taught after “Market sums”', ['weigh-1 -> mystery']],
        ['move weigh-3 before weigh-1', otherName, 'move weigh-3 before mystery', '“Market sums” is taught before “Which is heavier?”', ['weigh-1 -> mystery']],
        ['swap lesson weigh-1 for visit', otherName, 'swap lesson mystery for visit', '“A visit” instead of “Which is heavier?”', ['weigh-1 -> mystery']],
        ['insert visit before weigh-1', otherName, 'insert visit before mystery', '“A visit” is taught too, before “Which is heavier?”', ['weigh-1 -> mystery']],
        ['join weigh-2 with weigh-1, weigh-3', otherName, 'join weigh-2 with mystery, weigh-3', '“Three bags in a row” and “Which is heavier?” and “Market sums” are one lesson', ['weigh-1 -> mystery']],
        ['retime weigh-1 to 20 min', otherName, 'retime mystery to 20 min', '“Which is heavier?” takes 20 min', ['weigh-1 -> mystery']],
        ['split weigh-1 after two-bags', otherPart, 'split weigh-1 after bags', `“Which is heavier?” is split after “Two secret bags”`, ['two-bags -> bags']],
        ['split activity weigh-1.two-bags after 8 min', otherPart, 'split activity weigh-1.bags after 8 min', `${secret} is split after 8 min`, ['two-bags -> bags']],
        ['skip activity weigh-1.two-bags', otherPart, 'skip activity weigh-1.bags', `${secret} is left out`, ['two-bags -> bags']],
        ['retime activity weigh-1.two-bags to 10 min', otherPart, 'retime activity weigh-1.bags to 10 min', `${secret} takes 10 min`, ['two-bags -> bags']],
        ['swap activity weigh-1.two-bags for visit.shop', otherPart, 'swap activity weigh-1.bags for visit.shop', `“The shop” of “A visit” instead of ${secret}`, ['two-bags -> bags']],
        ['swap activity visit.shop for weigh-1.two-bags', otherPart, 'swap activity visit.shop for weigh-1.bags', `${secret} instead of “The shop” of “A visit”`, ['two-bags -> bags']],
        ['move activity weigh-1.two-bags before weigh-1.scales', otherPart, 'move activity weigh-1.bags before weigh-1.scales', `${secret} comes before “Hands as scales” ${first}`, ['two-bags -> bags']],
        ['move activity weigh-1.wrap-up before weigh-1.two-bags', otherPart, 'move activity weigh-1.wrap-up before weigh-1.bags', `“Before you go” ${first} comes before ${secret}`, ['two-bags -> bags']],
        ['insert activity visit.shop before weigh-1.two-bags', otherPart, 'insert activity visit.shop before weigh-1.bags', `“The shop” of “A visit” comes too, before ${secret}`, ['two-bags -> bags']],
        ['join activity weigh-1.scales with weigh-1.two-bags', otherPart, 'join activity weigh-1.scales with weigh-1.bags', `“Hands as scales” ${first} and ${secret} are one`, ['two-bags -> bags']],
        ['add to weigh-1 after two-bags\n  note: Sing.', otherPart, 'add to weigh-1 after bags', '“Which is heavier?” also has 1 more step', ['two-bags -> bags']],
        ['add to activity weigh-1.two-bags\n  do: Sing.', otherPart, 'add to activity weigh-1.bags', `${secret} also has 1 more step`, ['two-bags -> bags']],
        ['swap gram-cube for lentil in weigh-1.two-bags', otherPart, 'swap gram-cube for lentil in weigh-1.bags', `“Lentils” instead of “Gram cubes” in ${secret}`, ['two-bags -> bags']],
        ['swap dried-bean for lentil 2 for 1 in weigh-1', otherThing, 'swap white-bean for lentil 2 for 1 in weigh-1', '“Lentils” instead of “Dried white beans” in “Which is heavier?”', ['dried-bean -> white-bean']],
        ['swap gram-cube for dried-bean', otherThing, 'swap gram-cube for white-bean', '“Dried white beans” instead of “Gram cubes”', ['dried-bean -> white-bean']],
        ['swap dried-bean for lentil in weigh-1', otherName, 'swap dried-bean for lentil in mystery', '“Lentils” instead of “Dried beans” in “Which is heavier?”', ['weigh-1 -> mystery']],
        ['skip activity weigh-2.grocer', otherGame, 'skip activity weigh-2.shopkeeper', '“The careful shopkeeper” of “Three bags in a row” is left out', ['grocer -> shopkeeper']]
    ])('%s', (line, now, rewritten, wants, renames, former = renames.map(one => one.split(' ')[0]!)) => {
        const [one] = tell(line, now);
        expect([one?.outcome, one?.rewritten, one?.wants, one?.renames, one?.former]).toEqual(['moved', rewritten, wants, renames, former]);
    });

    test('a game by its own title', () => {
        expect(outcome('skip activity weigh-2.grocer', otherGame)).toBe('moved | “The careful grocer” (grocer) is now “The careful shopkeeper” (shopkeeper)');
    });

    test('in what is added: objectives, things and names in texts, of the lesson and of its new parts', () => {
        const now = renamed(renamed(otherThing, 'order-mass', 'sort-mass'), 'weigh-4', 'letters-1');
        const lines = [
            'add to weigh-3', '  note: After {weigh-4}.', '  objectives', '    practices order-mass', '  materials', '    dried-bean or lentil 5 g per pair', '  activity more "More" 5 min', '    ask: With {dried-bean}?', '      expect: As in {weigh-4}.',
            '    materials', '      lentil or dried-bean 5 g per pair'
        ].join('\n');
        const [one] = tell(lines, now);
        expect([...one!.renames].sort()).toEqual(['dried-bean -> white-bean', 'dried-bean -> white-bean', 'dried-bean -> white-bean', 'order-mass -> sort-mass', 'weigh-4 -> letters-1', 'weigh-4 -> letters-1']);
        expect(one!.former).toEqual(['dried-bean', 'dried-bean']);
        expect(one!.wants).toBe('“Market sums” also has 1 more step, 1 more objective, “Dried white beans” and “More”');
        expect(one!.outcome).toBe('moved');
        const [other] = tell('add to activity weigh-3.stall because: As {weigh-4} is long.\n  do: With {dried-bean}.\n  caution hot\n  materials\n    dried-bean 5 g per pair', now);
        expect([...other!.renames].sort()).toEqual(['dried-bean -> white-bean', 'dried-bean -> white-bean', 'weigh-4 -> letters-1']);
        expect(other!.wants).toBe('“A stall of our own” of “Market sums” also has 1 more step, 1 more caution and “Dried white beans”');
        expect(tell('add to weigh-3', start)[0]!.wants).toBe('“Market sums” also has nothing more yet');
    });

    test('a name that stands nowhere any more is told by the title it had', () => {
        const gone = edited(start, ['material lentil "Lentils"\n  consumable\n  measured in g\n  from shop\n', ''], ['  stand-in lentil 1 for 1\n', '']);
        expect(tell('swap dried-bean for lentil', gone)[0]).toMatchObject({ outcome: 'conflict', newEdition: 'the new edition does not have “Lentils”', wants: '“Lentils” instead of “Dried beans”', former: ['lentil'], renames: [] });
        const none = edited(start, ['    weigh-4\n', ''], [start.slice(start.indexOf('lesson weigh-4'), start.indexOf('course measure')), '']);
        expect(tell('move weigh-1 after weigh-4', none)[0]).toMatchObject({ outcome: 'conflict', newEdition: 'the new edition does not have the lesson “A letter to weigh”', wants: '“Which is heavier?” is taught after “A letter to weigh”', former: ['weigh-4'] });
        expect(tell('skip activity weigh-4.letters', none)[0]).toMatchObject({ outcome: 'conflict', newEdition: 'the new edition does not have the lesson “A letter to weigh”', wants: '“Letters and parcels” of “A letter to weigh” is left out', former: ['weigh-4', 'letters'], new: '' });
    });
});

describe('the lines it leads to', () => {
    test.each<[line: string, now: string, old: string, now: string]>([
        ['skip lesson weigh-1', otherName, 'lesson weigh-1 "Which is heavier?"', 'lesson mystery "Which is heavier?"'],
        ['insert visit after weigh-1', start, 'lesson weigh-1 "Which is heavier?"', 'lesson weigh-1 "Which is heavier?"'],
        ['skip activity weigh-1.two-bags', otherPart, 'activity two-bags "Two mystery bags" 15 min', 'activity bags "Two secret bags" 15 min'],
        ['skip lesson weigh-9', start, '', ''],
        ['skip activity weigh-1.none', start, 'lesson weigh-1 "Which is heavier?"', 'lesson weigh-1 "Which is heavier?"'],
        ['skip activity weigh-1.two-bags', edited(start, [start.slice(start.indexOf('  activity two-bags'), start.indexOf('  checkpoint wrap-up')), '']), 'activity two-bags "Two mystery bags" 15 min', 'lesson weigh-1 "Which is heavier?"'],
        ['move activity weigh-1.wrap-up before weigh-1.two-bags', otherPart, 'checkpoint wrap-up "Before you go" 5 min', 'checkpoint wrap-up "Before you go" 5 min'],
        ['split weigh-1 after two-bags', otherPart, 'lesson weigh-1 "Which is heavier?"', 'lesson weigh-1 "Which is heavier?"']
    ])('%s', (line, now, old, after) => {
        const [one] = tell(line, now);
        expect([one?.old, one?.new]).toEqual([old, after]);
    });
});

const standIn = (to: string): string => edited(start, ['  stand-in lentil 1 for 1\n', to]);
const without = (lesson: string): string => edited(start, [`    ${lesson}\n`, '']);
const beans = /\n {4}dried-bean (\d+ g per pair) not in kit/g;
const gameFirst = edited(start, ['  game grocer 10 min\n', ''], ['  activity three-bags', '  game grocer 10 min\n  activity three-bags']);
const bagsPart = start.slice(start.indexOf('  activity two-bags'), start.indexOf('  checkpoint wrap-up'));
const shop = '  activity shop "The shop" 10 min\n    do: Look at the scales of the shop.\n';

describe('what the new edition does itself', () => {
    test.each<[line: string, now: string, expected: string]>([
        ['insert visit before weigh-3', edited(start, ['    weigh-3\n', '    visit\n    weigh-3\n']), 'done | it teaches “A visit” before “Market sums”'],
        ['insert visit before weigh-3', edited(start, ['    weigh-3\n', '    weigh-3\n    visit\n']), 'conflict | the new edition teaches “A visit” itself'],
        ['insert visit after weigh-3', edited(start, ['    weigh-2\n', '    weigh-2\n    visit\n']), 'conflict | the new edition teaches “A visit” itself'],
        ['insert weigh-4 after weigh-3', start, 'clean'],
        ['move weigh-4 before weigh-3', edited(start, ['    weigh-3\n    weigh-4\n', '    weigh-4\n    weigh-3\n']), 'done | it teaches “A letter to weigh” before “Market sums”'],
        ['move weigh-4 after weigh-2', edited(start, ['    weigh-3\n    weigh-4\n', '    weigh-4\n    weigh-3\n']), 'done | it teaches “A letter to weigh” after “Three bags in a row”'],
        ['move weigh-2 after weigh-1', start, 'clean'],
        ['swap lesson weigh-3 for visit', without('weigh-3'), 'conflict | the new edition no longer teaches “Market sums”'],
        ['swap lesson weigh-3 for visit', edited(start, ['    weigh-3\n', '    weigh-3\n    visit\n']), 'conflict | the new edition teaches “A visit” itself'],
        ['swap lesson weigh-3 for weigh-4', without('weigh-3'), 'conflict | the new edition no longer teaches “Market sums”'],
        ['skip lesson visit', start, 'clean'],
        ['skip lesson visit', edited(start, ['    weigh-3\n', '    visit\n    weigh-3\n']), 'clean'],
        ['retime weigh-1 to 25 min', start, 'clean'],
        ['retime activity weigh-1.two-bags to 15 min', edited(start, ['"Hands as scales" 5', '"Hands as scales" 6']), 'clean'],
        ['skip activity weigh-1.nothing', start, 'conflict | the new edition has no “nothing” in “Which is heavier?”'],
        ['move activity weigh-1.wrap-up before weigh-1.two-bags', edited(start, [bagsPart, ''], ['lesson weigh-2', `${bagsPart}lesson weigh-2`]), 'done | “Before you go” comes before “Two mystery bags” in it'],
        ['move activity weigh-1.wrap-up after weigh-1.scales', edited(start, [bagsPart, ''], ['lesson weigh-2', `${bagsPart}lesson weigh-2`]), 'done | “Before you go” comes after “Hands as scales” in it'],
        ['swap dried-bean for lentil', edited(start.replaceAll(beans, ''), ['    record-sheet 1 per learner', '    record-sheet 1 per learner\n    lentil 100 g per pair']), 'done | it uses “Lentils” instead of “Dried beans”'],
        ['swap dried-bean for gram-cube', start.replaceAll(beans, ''), 'conflict | “Dried beans” is no longer used'],
        ['swap dried-bean for lentil in weigh-2.three-bags', start.replaceAll(beans, '\n    lentil $1'), 'conflict | “Dried beans” is no longer used in “Three bags in a row”'],
        ['add to weigh-3\n  words heavy', edited(start, ['    checks compare-mass, order-mass', '    checks compare-mass, order-mass\n  words heavy']), 'done | in it “Market sums” teaches the word “heavy”'],
        ['add to weigh-3\n  objectives\n    introduces order-mass', edited(start, ['    checks compare-mass, order-mass', '    checks compare-mass, order-mass\n    introduces order-mass']), 'done | in it “Market sums” introduces “Put masses in order”'],
        ['add to weigh-3\n  objectives\n    checks order-mass', start, 'clean'],
        ['add to weigh-3\n  objectives\n    checks order-mass\n    introduces order-mass', edited(start, ['    checks compare-mass, order-mass', '    checks compare-mass, order-mass\n    introduces order-mass']), 'done | in it “Market sums” introduces “Put masses in order” and checks “Put masses in order”'],
        ['add to weigh-3\n  words heavy\n  caution hot', edited(start, ['    checks compare-mass, order-mass', '    checks compare-mass, order-mass\n  words heavy']), 'clean'],
        ['add to weigh-3\n  words heavy\n  materials\n    lentil 5 g', edited(start, ['    checks compare-mass, order-mass', '    checks compare-mass, order-mass\n  words heavy']), 'clean'],
        ['add to weigh-3\n  words heavy\n  activity more 5 min', edited(start, ['    checks compare-mass, order-mass', '    checks compare-mass, order-mass\n  words heavy']), 'clean']
    ])('%s', (line, now, expected) => expect(outcome(line, now)).toBe(expected));
});

describe('what has itself changed', () => {
    test.each<[line: string, now: string, expected: string]>([
        ['insert visit after weigh-4', edited(start, ['    weigh-4\n', ''], ['    weigh-1\n', '    weigh-4\n    weigh-1\n']), 'moved | “A letter to weigh” is now taught first of all'],
        ['insert visit after weigh-9', start, 'conflict | neither edition has a lesson weigh-9'],
        ['insert weigh-9 after weigh-1', start, 'conflict | neither edition has a lesson weigh-9'],
        ['insert visit after weigh-1', base, 'conflict | the new edition does not have the lesson “A visit”'],
        ['swap lesson weigh-1 for visit', base, 'conflict | the new edition does not have the lesson “A visit”'],
        ['skip activity weigh-9.x', start, 'conflict | neither edition has a lesson weigh-9'],
        ['swap activity weigh-1.two-bags for visit.shop', edited(start, [shop, '']), 'conflict | the new edition has no “The shop” in “A visit”'],
        ['swap activity weigh-1.two-bags for visit.shop', edited(start, ['Put one bag in each pan and wait until it settles.', 'Put one bag in each pan, then wait until it settles.']), 'clean'],
        ['swap activity weigh-1.two-bags for visit.shop', edited(start, ['Put one bag in each pan and wait until it settles.', 'A stranger knocks.']), 'conflict | “Two mystery bags”: a step (‘do’) worded anew'],
        ['skip activity weigh-1.two-bags', edited(start, ['    ask: Which bag is heavier?', '    say: Now we look.\n    ask: Which bag is heavier?']), 'conflict | “Two mystery bags”: a step (‘say’) added'],
        ['skip lesson weigh-1', edited(start, ['  words heavier', '  caution hot\n  words heavier']), 'clean'],
        ['skip activity weigh-2.grocer', edited(start, ['  game grocer 10 min\n', '  activity sing "Singing" 10 min\n    say: La.\n']), 'conflict | the new edition has no “The careful grocer” in “Three bags in a row”'],
        ['move activity weigh-2.three-bags after weigh-2.say-it', gameFirst, 'conflict | “Three bags” now comes after “The careful grocer”'],
        ['move activity weigh-2.say-it before weigh-2.three-bags', gameFirst, 'moved | “Three bags” now comes after “The careful grocer”'],
        ['insert activity visit.shop after weigh-2.three-bags', gameFirst, 'moved | “Three bags” now comes after “The careful grocer”'],
        ['insert activity visit.shop after weigh-1.wrap-up', edited(start, ['  checkpoint wrap-up "Before you go" 5 min\n    ask: What does the balance tell you?\n    if unsure: repeat two-bags tomorrow\n', ''], ['  warm-up scales', '  checkpoint wrap-up "Before you go" 5 min\n    ask: What does the balance tell you?\n    if unsure: repeat two-bags tomorrow\n  warm-up scales']), 'moved | “Before you go” now comes first in its lesson'],
        ['insert activity visit.shop after weigh-1.scales', edited(start, [shop, '']), 'conflict | the new edition has no “The shop” in “A visit”'],
        ['insert activity visit.shop after weigh-1.two-bags', edited(start, [bagsPart, '']), 'conflict | the new edition has no “Two mystery bags” in “Which is heavier?”'],
        ['move activity weigh-1.two-bags after weigh-1.wrap-up', edited(start, [bagsPart, '']), 'conflict | the new edition has no “Two mystery bags” in “Which is heavier?”'],
        ['join activity weigh-1.scales with weigh-1.two-bags', edited(start, ['"Two mystery bags" 15', '"Two mystery bags" 20']), 'conflict | “Two mystery bags”: 20 min instead of 15 min'],
        ['join activity weigh-1.scales with weigh-1.wrap-up', edited(start, ['"Two mystery bags" 15', '"Two mystery bags" 20']), 'clean'],
        ['join weigh-3 with weigh-4', edited(start, ['"Letters and parcels" 10', '"Letters and parcels" 12']), 'conflict | “A letter to weigh”: the lesson takes 12 min instead of 10 min; “Letters and parcels”: 12 min instead of 10 min'],
        ['retime weigh-2 to 20 min', gameFirst, 'conflict | “Three bags” now comes after “The careful grocer”, no longer at the start of the lesson'],
        ['swap dried-bean for lentil', standIn(''), 'conflict | “Lentils” no longer stands in for “Dried beans”'],
        ['swap dried-bean for lentil', standIn('  stand-in lentil 1.0 for 1\n'), 'clean'],
        ['swap dried-bean for lentil', standIn('  stand-in lentil 1 for 2\n'), 'conflict | 1 of “Lentils” now do for 2 of “Dried beans”, before 1 for 1'],
        ['swap dried-bean for lentil 1 for 1', standIn(''), 'clean'],
        ['swap dried-bean for lentil 1 for 1', edited(start, ['  measured in g\n  from shop\n  pack', '  counted in bean/beans\n  from shop\n  pack']), 'conflict | “Dried beans” is now given in beans, no longer in g'],
        ['swap gram-cube for lentil 1 for 1', edited(start, ['material gram-cube "Gram cubes"\n', 'material gram-cube "Gram cubes"\n  measured in kg\n']), 'conflict | “Gram cubes” is now given in kg, no longer in pieces'],
        ['swap dried-bean for lentil in weigh-1.two-bags', edited(start, [bagsPart, '']), 'conflict | the new edition has no “Two mystery bags” in “Which is heavier?”'],
        ['swap dried-bean for lentil in weigh-2', without('weigh-2'), 'conflict | the new edition no longer teaches “Three bags in a row”'],
        ['add to weigh-3\n  objectives\n    practices order-mass\n    introduces order-mass', edited(start, ['    checks compare-mass, order-mass', '    checks compare-mass, order-mass\n    practices order-mass']), 'conflict | “Market sums” itself now practises “Put masses in order”'],
        ['add to weigh-3\n  materials\n    lentil or gram-cube 5', edited(start, ['gram-cube 30 per group of 3', 'gram-cube 35 per group of 3']), 'clean']
    ])('%s', (line, now, expected) => expect(outcome(line, now)).toBe(expected));
});

test('a change of what another change brings in is no change of what the course leaves out', () => {
    expect(outcome('insert visit after weigh-2\nretime visit to 10 min', start)).toBe('clean\nclean');
    expect(outcome('retime visit to 10 min', edited(start, ['    weigh-3\n', '    visit\n']))).toBe('clean');
});

describe('in short', () => {
    const summary = (lines: string, now: string): string => reapply(read(start + adaptation(lines)), read(second(now) + adaptation(lines)))[0]!.summary;
    const both = edited(otherName, ['"Three bags" 20 min', '"Three bags" 21 min'], ['    weigh-4\n', ''], ['"A stall of our own" 25 min', '"A stall of our own" 30 min']);
    test.each<[lines: string[], expected: string]>([
        [['skip activity weigh-2.say-it'], 'The only change applies as before.'],
        [['skip lesson weigh-1'], 'The only change applies to what has moved.'],
        [['skip lesson weigh-4'], 'The only change is no longer needed.'],
        [['retime activity weigh-2.three-bags to 10 min'], 'The only change is in conflict.'],
        [['skip activity weigh-2.say-it', 'skip activity weigh-2.grocer'], 'All 2 changes apply as before.'],
        [['skip activity weigh-2.say-it', 'skip lesson weigh-1', 'skip lesson weigh-4', 'retime activity weigh-2.three-bags to 10 min'],
            'Of 4 changes, 1 applies as before, 1 applies to what has moved, 1 is no longer needed and 1 is in conflict.'],
        [['skip activity weigh-2.say-it', 'skip activity weigh-2.grocer', 'skip lesson weigh-1', 'skip activity weigh-1.scales', 'skip lesson weigh-4', 'retime activity weigh-3.stall to 30 min', 'retime activity weigh-2.three-bags to 10 min', 'retime weigh-2 to 10 min'],
            'Of 8 changes, 2 apply as before, 2 apply to what has moved, 2 are no longer needed and 2 are in conflict.'],
        [[], 'All 0 changes apply as before.']
    ])('%j', (lines, expected) => expect(summary(lines.join('\n'), both)).toBe(expected));

    test('what has been looked at', () => {
        const settled = 'Written against the new edition already, or looked at again for it.';
        expect(summary('skip lesson weigh-1 as of edition 2\nskip lesson weigh-2 as of edition 2', both)).toBe(settled);
        expect(summary('skip lesson weigh-1 as of edition 2\nskip lesson weigh-4', both)).toBe('Of 2 changes, 1 applies as before and 1 is no longer needed.');
        expect(tell('skip lesson weigh-1 as of edition 2', otherName)[0]).toMatchObject({ outcome: 'clean', rewritten: undefined, renames: [], former: ['weigh-1'] });
    });
});

test('adaptations of courses that are not compared, or of none, are left aside; those of the old edition alone come last', () => {
    const two = `${start}course other "Other"\n  unit u "U"\n    visit\n`;
    const of = (name: string, course: string): string => `adaptation ${name} of ${course}\n  skip lesson weigh-2\n`;
    const told = (old: string, now: string, course?: string): string[] => reapply(read(old), read(now), { course }).map(({ name, side, edition }) => [name, side, edition].filter(Boolean).join(' '));
    expect(told(two + of('a', 'measure') + of('b', 'other'), two + of('c', 'measure') + of('b', 'other') + of('d', 'nothing'))).toEqual(['c new', 'b new', 'a old']);
    expect(told(two + of('a', 'measure') + of('b', 'other'), two + of('c', 'measure') + of('b', 'other'), 'other')).toEqual(['b new']);
    expect(told(start + adaptation('skip lesson weigh-2'), start + adaptation('skip lesson weigh-2'))).toEqual(['shorter new 1']);
});
