import { describe, expect, test } from 'vitest';
import { adaptCourse } from '@haversack/language/adapting/adapt-course';
import { reapply } from '@haversack/server/planning/editions/reapply';
import type { ReappliedChange } from '@haversack/server/planning/edition-figures';
import { base, edited, read, renamed } from './edition-texts.js';

const visit = 'lesson visit "A visit"\n  activity stall "The stall" 10 min\n    do: Look at the scales of the shop.\n  activity way-back "The way back" 5 min\n    do: Walk back.\n';
const start = base + visit;
const adaptation = (line: string, more = ''): string => `adaptation shorter "Shorter" of measure edition 1\n  ${line}\n${more}`;
const second = (text: string): string => edited(text, ['"Measure and Make" edition 1', '"Measure and Make" edition 2']);

/** One line of an adaptation that is the same text in both editions; what happens to it when the course is edited so. */
function reapplied(line: string, now: string): ReappliedChange {
    const [one] = reapply(read(start + adaptation(line)), read(second(now) + adaptation(line)));
    return one!.changes[0]!;
}

const outcome = ({ outcome: what, newEdition, rewritten }: ReappliedChange): string => [what, newEdition, rewritten && `-> ${rewritten}`].filter(Boolean).join(' | ');

const longer = edited(start, ['"Two mystery bags" 15 min', '"Two mystery bags" 20 min']);
const without = (lesson: string): string => edited(start, [`    ${lesson}\n`, '']);
const reworded = edited(start, ['Put one bag in each pan and wait until it settles.', 'Put one bag in each pan, then wait until it settles.']);
const otherName = renamed(start, 'weigh-1', 'mystery');
const otherPart = edited(renamed(start, 'two-bags', 'bags'), ['"Two mystery bags"', '"Two secret bags"']);
const turned = edited(start, ['    weigh-1\n    weigh-2\n', '    weigh-2\n'], ['    weigh-3\n    weigh-4\n', '    weigh-3\n    weigh-4\n    weigh-1\n']);
const noScales = edited(start, ['  activity two-bags "Two mystery bags" 15 min\n    do: Put one bag in each pan and wait until it settles.\n    ask: Which bag is heavier?\n      expect: The one whose pan went down.\n    watch: A child presses the pan with a finger.\n      help: Hands on laps until the beam stops.\n', '']);
const gameFirst = edited(start, ['  game grocer 10 min\n', ''], ['  activity three-bags', '  game grocer 10 min\n  activity three-bags']);
const weighOne = start.slice(start.indexOf('lesson weigh-1'), start.indexOf('lesson weigh-2'));

const cases: [line: string, what: string, now: string, expected: string][] = [
    ['skip lesson weigh-1', 'nothing', start, 'clean'],
    ['skip lesson weigh-1', 'it is lightly reworded', reworded, 'clean'],
    ['skip lesson weigh-1', 'it is taught no more', without('weigh-1'), 'done | it no longer teaches “Which is heavier?”'],
    ['skip lesson weigh-1', 'it teaches more', edited(start, ['    introduces compare-mass', '    introduces compare-mass, order-mass']), 'conflict | “Which is heavier?”: now introduces “Put masses in order”'],
    ['skip lesson weigh-1', 'it has another name', otherName, 'moved | “Which is heavier?” is now written as mystery, not weigh-1 | -> skip lesson mystery'],
    ['skip activity weigh-1.two-bags', 'it is lightly reworded', reworded, 'clean'],
    ['skip activity weigh-1.two-bags', 'it takes longer', longer, 'conflict | “Two mystery bags”: 20 min instead of 15 min'],
    ['skip activity weigh-1.two-bags', 'it is gone', noScales, 'done | it has no “Two mystery bags” in “Which is heavier?”'],
    ['skip activity weigh-1.two-bags', 'it is gone, and another came, which may stand in its place', edited(noScales, ['  checkpoint wrap-up', '  activity clay "Clay" 15 min\n    do: Roll snakes.\n  checkpoint wrap-up']), 'conflict | the new edition has no “Two mystery bags” in “Which is heavier?”'],
    ['skip activity weigh-1.two-bags', 'the whole lesson is gone', `${edited(start, [weighOne, ''], ['    weigh-1\n', ''], ['  follows weigh-1\n', ''])}`, 'conflict | the new edition does not have the lesson “Which is heavier?”'],
    ['skip lesson weigh-1', 'the whole lesson is gone', edited(start, [weighOne, ''], ['    weigh-1\n', ''], ['  follows weigh-1\n', '']), 'done | it does not have the lesson “Which is heavier?”'],
    ['skip activity weigh-1.two-bags', 'another name and title', otherPart, 'moved | “Two mystery bags” (two-bags) is now “Two secret bags” (bags) | -> skip activity weigh-1.bags'],
    ['retime activity weigh-1.two-bags to 10 min', 'its length changed', longer, 'conflict | “Two mystery bags”: 20 min instead of 15 min'],
    ['retime activity weigh-1.two-bags to 10 min', 'its length changed and its lesson has another name', renamed(longer, 'weigh-1', 'mystery'), 'conflict | “Two mystery bags”: 20 min instead of 15 min | -> retime activity mystery.two-bags to 10 min'],
    ['retime activity weigh-1.two-bags to 10 min', 'it is told in other words', edited(start, ['Put one bag in each pan and wait until it settles.', 'A stranger knocks. Whose sack weighs most?']), 'clean'],
    ['retime activity weigh-1.two-bags to 20 min', 'it takes just that long', longer, 'done | “Two mystery bags” takes 20 min in it'],
    ['retime weigh-1 to 30 min', 'it takes just that long', longer, 'done | “Which is heavier?” takes 30 min in it'],
    ['retime weigh-1 to 20 min', 'a part takes longer', longer, 'conflict | “Which is heavier?”: the lesson takes 30 min instead of 25 min; “Two mystery bags”: 20 min instead of 15 min'],
    ['split activity weigh-1.two-bags after 8 min', 'its length changed', longer, 'conflict | “Two mystery bags”: 20 min instead of 15 min'],
    ['split weigh-1 after two-bags', 'that part is gone', noScales, 'conflict | “Which is heavier?”: the lesson takes 10 min instead of 25 min; Activity “Two mystery bags” is gone (15 min); the new edition has no “Two mystery bags” in “Which is heavier?”'],
    ['split weigh-1 after two-bags', 'that part has another name', otherPart, 'moved | “Two mystery bags” (two-bags) is now “Two secret bags” (bags) | -> split weigh-1 after bags'],
    ['join weigh-3 with weigh-4', 'nothing about them', longer, 'clean'],
    ['join weigh-3 with weigh-4', 'one is gone', without('weigh-4'), 'conflict | the new edition no longer teaches “A letter to weigh”'],
    ['move weigh-3 after weigh-1', 'its anchor moves', turned, 'moved | “Which is heavier?” is now taught after “A letter to weigh”'],
    ['move weigh-1 after weigh-3', 'it was moved itself', turned, 'conflict | “Which is heavier?” is now taught after “A letter to weigh”'],
    ['move weigh-1 after weigh-4', 'it was moved there itself', turned, 'done | it teaches “Which is heavier?” after “A letter to weigh”'],
    ['move activity weigh-1.two-bags before weigh-1.scales', 'nothing', start, 'clean'],
    ['move activity weigh-2.grocer before weigh-2.three-bags', 'it was moved there itself', gameFirst, 'done | “The careful grocer” comes before “Three bags” in it'],
    ['move activity weigh-2.grocer after weigh-2.say-it', 'it was moved elsewhere', gameFirst, 'clean'],
    ['insert visit after weigh-2', 'nothing', start, 'clean'],
    ['insert visit after weigh-2', 'its anchor is gone', without('weigh-2'), 'conflict | the new edition no longer teaches “Three bags in a row”'],
    ['insert visit after weigh-2', 'the course teaches it itself', edited(start, ['    weigh-2\n', '    weigh-2\n    visit\n']), 'done | it teaches “A visit” after “Three bags in a row”'],
    ['insert visit after weigh-2', 'the course teaches it elsewhere', edited(start, ['    weigh-1\n', '    visit\n    weigh-1\n']), 'conflict | the new edition teaches “A visit” itself'],
    ['swap lesson weigh-3 for visit', 'the course does so', edited(start, ['    weigh-3\n', '    visit\n']), 'done | it teaches “A visit” instead of “Market sums”'],
    ['insert activity visit.stall after weigh-3.stall', 'nothing', start, 'clean'],
    ['swap lesson weigh-3 for visit', 'what it brings has another name', renamed(start, 'visit', 'shop-visit'), 'moved | “A visit” (visit) is now “A shop-visit” (shop-visit) | -> swap lesson weigh-3 for shop-visit'],
    ['swap dried-bean for lentil', 'more is needed', edited(start, ['dried-bean 150 g', 'dried-bean 200 g']), 'clean'],
    ['swap dried-bean for lentil', 'no lesson uses it any more', start.replaceAll(/\n {4}dried-bean \d+ g per pair not in kit/g, ''), 'conflict | “Dried beans” is no longer used'],
    ['swap dried-bean for lentil', 'all lessons use the other', start.replaceAll(/\n {4}dried-bean (\d+ g per pair)/g, '\n    lentil $1'), 'done | it uses “Lentils” instead of “Dried beans”'],
    ['swap dried-bean for lentil', 'one lesson uses the other', edited(start, ['dried-bean 100 g', 'lentil 100 g']), 'clean'],
    ['swap dried-bean for lentil in weigh-2', 'it uses the other', edited(start, ['dried-bean 100 g', 'lentil 100 g']), 'done | it uses “Lentils” instead of “Dried beans” in “Three bags in a row”'],
    ['swap dried-bean for lentil in weigh-2', 'that lesson does not use it any more', edited(start, ['\n    dried-bean 100 g per pair not in kit', '']), 'conflict | “Dried beans” is no longer used in “Three bags in a row”'],
    ['swap dried-bean for lentil', 'what stands in does so otherwise', edited(start, ['stand-in lentil 1 for 1', 'stand-in lentil 2 for 1']), 'conflict | 2 of “Lentils” now do for 1 of “Dried beans”, before 1 for 1'],
    ['swap dried-bean for lentil 1 for 1', 'it is counted otherwise', edited(start, ['material lentil "Lentils"\n  consumable\n  measured in g', 'material lentil "Lentils"\n  consumable\n  measured in ml']), 'conflict | “Lentils” is now given in ml, no longer in g'],
    ['swap dried-bean for lentil', 'it has another name', edited(renamed(start, 'dried-bean', 'white-bean'), ['"Dried beans"', '"Dried white beans"']), 'moved | -> swap white-bean for lentil'],
    ['swap dried-bean for lentil', 'what takes its place is gone', edited(start, ['material lentil "Lentils"\n  consumable\n  measured in g\n  from shop\n', ''], ['  stand-in lentil 1 for 1\n', '']), 'conflict | the new edition does not have “Lentils”'],
    ['add to weigh-1 after two-bags', 'its anchor is gone', noScales, 'conflict | the new edition has no “Two mystery bags” in “Which is heavier?”'],
    ['add to activity weigh-1.two-bags', 'it takes longer', longer, 'clean'],
    ['skip lesson weigh-9', 'no edition has it', start, 'conflict | neither edition has a lesson weigh-9']
];

describe('three ways: what the adaptation wants, what the old edition was, what the new one is', () => {
    test.each(cases)('%s: %s', (line, _, now, expected) => {
        expect(outcome(reapplied(line, now))).toBe(expected);
    });
});

test('a part that stands in another lesson now is found there', () => {
    const piece = '  activity stall "A stall of our own" 25 min\n    do: Weigh out what the customers ask for.\n';
    const now = edited(start, [piece, ''], ['  activity letters', `${piece}  activity letters`]);
    expect(outcome(reapplied('skip activity weigh-3.stall', now))).toBe('moved | “A stall of our own” now stands in “A letter to weigh” | -> skip activity weigh-4.stall');
});

test('what an addition brings is compared with what the new edition says itself', () => {
    const more = '    objectives\n      practices order-mass\n    materials\n      gram-cube 5 per pair in kit\n';
    const told = (now: string): string => outcome(reapply(read(start + adaptation('add to weigh-3', more)), read(second(now) + adaptation('add to weigh-3', more)))[0]!.changes[0]!);
    expect(told(start)).toBe('clean');
    expect(reapply(read(start + adaptation('add to weigh-3', more)), read(start))[0]!.changes[0]!.wants).toBe('“Market sums” also has 1 more objective and “Gram cubes”');
    expect(told(edited(start, ['    checks compare-mass, order-mass', '    checks compare-mass, order-mass\n    practices order-mass']))).toBe('conflict | “Market sums” itself now practises “Put masses in order”');
    expect(told(edited(start, ['gram-cube 30 per group of 3', 'gram-cube 35 per group of 3']))).toBe('conflict | “Market sums”: Gram cubes: 35 per group of 3 instead of 30 per group of 3');
});

test('objectives and words that the new edition has itself need not be added; a step may say something else', () => {
    const told = (more: string): string => outcome(reapply(read(start + adaptation('add to weigh-3', more)), read(edited(second(start), ['    checks compare-mass, order-mass', '    checks compare-mass, order-mass\n    practices order-mass\n  words balance']) + adaptation('add to weigh-3', more)))[0]!.changes[0]!);
    expect(told('    objectives\n      practices order-mass\n    words balance\n')).toBe('done | in it “Market sums” practises “Put masses in order” and teaches the word “balance”');
    expect(told('    objectives\n      practices order-mass\n    words scales\n')).toContain('conflict');
    expect(told('    words balance\n    note: Say it often.\n')).toBe('clean');
});

test('what both editions have always had is not said to be done', () => {
    expect(outcome(reapplied('move weigh-1 before weigh-2', start))).toBe('clean');
    expect(outcome(reapplied('retime activity weigh-1.two-bags to 15 min', start))).toBe('clean');
});

test('of several changes, how many are no longer needed', () => {
    const lines = 'retime activity weigh-1.two-bags to 20 min\n  skip lesson weigh-4\n  skip activity weigh-2.say-it';
    expect(reapply(read(start + adaptation(lines)), read(edited(second(longer), ['    weigh-4\n', '']) + adaptation(lines)))[0]!.summary).toBe('Of 3 changes, 1 applies as before and 2 are no longer needed.');
});

test('names that the new edition does not have are known by their places', () => {
    const text = (line: string): string[] => {
        const now = second(otherName) + adaptation(line);
        return reapply(read(start + adaptation(line)), read(now))[0]!.changes[0]!.former.map(({ start: from, end }) => now.split('\n')[from.line]!.slice(from.character, end.character));
    };
    expect(text('move weigh-1 after weigh-2')).toEqual(['weigh-1']);
    expect(text('skip activity weigh-1.two-bags')).toEqual(['weigh-1']);
    expect(text('skip activity weigh-2.nothing')).toEqual([]);
});

test('names in the reason and in what is added are written anew too, each at its place', () => {
    const line = 'skip activity weigh-1.two-bags because: {weigh-1} is long.';
    const now = second(otherName) + adaptation(line);
    const [change] = reapply(read(start + adaptation(line)), read(now))[0]!.changes;
    const lines = now.split('\n');
    expect(change!.renames.map(({ at, text }) => `${lines[at.start.line]!.slice(at.start.character, at.end.character)} -> ${text}`)).toEqual(['weigh-1 -> mystery', 'weigh-1 -> mystery']);
});

test('a line that somebody has looked at for this edition is settled, and so is one written for it', () => {
    const settled = (line: string, edition: string): boolean[] => reapply(read(start + adaptation(line)), read(second(longer) + adaptation(line).replace('edition 1', `edition ${edition}`)))[0]!.changes.map(change => change.settled && change.outcome === 'clean');
    expect(settled('retime activity weigh-1.two-bags to 10 min', '1')).toEqual([false]);
    expect(settled('retime activity weigh-1.two-bags to 10 min as of edition 2', '1')).toEqual([true]);
    expect(settled('retime activity weigh-1.two-bags to 10 min', '2')).toEqual([true]);
});

test('where the edition of the course stayed the same, a line counts as looked at when it is another one than before', () => {
    const told = (line: string): string[] => reapply(read(start + adaptation('retime activity weigh-1.two-bags to 10 min')), read(longer + adaptation(line)))[0]!.changes.map(change => `${change.outcome}${change.settled ? ', settled' : ''}`);
    expect(told('retime activity weigh-1.two-bags to 10 min')).toEqual(['conflict']);
    expect(told('retime activity weigh-1.two-bags to 12 min')).toEqual(['clean, settled']);
});

test('an adaptation that only the old edition has is told with its side', () => {
    const [one, ...others] = reapply(read(start + adaptation('skip lesson weigh-2')), read(second(without('weigh-2'))));
    expect(others).toEqual([]);
    expect(one).toMatchObject({ side: 'old', name: 'shorter', summary: 'The only change is no longer needed.', changes: [{ outcome: 'done', wants: '“Three bags in a row” is left out' }] });
});

describe('the adaptation as it is made agrees', () => {
    test.each(cases)('%s: %s', (line, _, now, expected) => {
        const written = second(now) + adaptation(line);
        const { outcome: what, renames } = reapplied(line, now);
        const lines = written.split('\n');
        for (const { at, text } of [...renames].sort((a, b) => b.at.start.character - a.at.start.character)) {
            lines[at.start.line] = `${lines[at.start.line]!.slice(0, at.start.character)}${text}${lines[at.start.line]!.slice(at.end.character)}`;
        }
        const programme = read(lines.join('\n'));
        const { changes } = adaptCourse(programme, programme.courses.get('measure')!, [...programme.adaptations.values()]);
        expect(changes).toHaveLength(1);
        // What applies, with its names written anew where there are any, is made; `add to` without anything to add is not.
        if (what !== 'conflict' && what !== 'done' && !line.startsWith('add')) expect(changes[0]!.idle, expected).toBeUndefined();
        // What is gone cannot be changed.
        if (/no longer (?:teaches|used)|does not have|has no|takes \d+ min in it/.test(expected) && !line.startsWith('add')) expect(changes[0]!.idle, expected).toBeDefined();
    });
});
