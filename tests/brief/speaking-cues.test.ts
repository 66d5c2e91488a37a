/** What the speaking notes say of each thing that a brief may hold, and the line that each sentence leads to. */
import type { LessonFigures, PartFigures, StepFigures, ThingFigures, WeekBrief } from '@haversack/server/planning/figures';
import { speakingNotes } from '@haversack/server/planning/speaking';
import { spokenTime } from '@haversack/server/planning/speaking/spoken-time';
import { describe, expect, it } from 'vitest';
import { week } from './fixture.js';
import { figure, place, prose, step } from './fixture-tools.js';

const inWords = ({ parts }: { parts: readonly ({ text: string } | { name: string })[] }): string => parts.map(part => ('name' in part ? part.name : part.text)).join('');
const empty: WeekBrief = {
    ...week, lessons: [], meetings: [], fetch: [], buy: [], stayOnShelf: [], putAway: [], cautions: [], minutes: 0, remarks: [], next: undefined, unplaced: undefined, adapted: undefined, assumptions: [], week: 2, weeks: 4
};
const notes = (brief: Partial<WeekBrief>) => speakingNotes({ ...empty, ...brief }, { inWords: text => inWords(text as never) });
const cues = (brief: Partial<WeekBrief>, id: string) => notes(brief).sections.find(section => section.id === id)?.cues ?? [];
const said = (brief: Partial<WeekBrief>, id: string): string[] => cues(brief, id).map(({ does, text }) => (does === 'say' ? text : `${does}: ${text}`));
const lines = (brief: Partial<WeekBrief>, id: string): (number | undefined)[] => cues(brief, id).map(cue => cue.place?.range.start.line);

const lesson = (parts: PartFigures[], more: Partial<LessonFigures> = {}): LessonFigures => ({
    name: 'l', title: 'Weighing', place: place('a.lesson', 1), draft: false, meeting: 'Mon 7 Sep', minutes: 30, minutesIncomplete: false, aim: [], steps: [], objectives: [], follows: [], words: [], needs: [],
    notNeeded: [], cautions: [], parts, ...more
});
const part = (kind: PartFigures['kind'], title: string, steps: StepFigures[] = [], more: Partial<PartFigures> = {}): PartFigures => ({ kind, name: 'p', title, steps, cautions: [], needs: [], place: place('a.lesson', 10), ...more });
const told = (...given: Parameters<typeof lesson>): string[] => said({ lessons: [lesson(...given)] }, 'lesson-l');

describe('the welcome', () => {
    it('says which week it is, how many lessons and minutes there are, and leads to the course', () => {
        expect(said({ lessons: [lesson([]), lesson([], { name: 'm' })], minutes: 45 }, 'welcome')).toEqual(['Welcome to week 2 of 4 of Measure and Make.', 'We have 2 lessons, 45 minutes in all.']);
        expect(said({ lessons: [lesson([])] }, 'welcome')).toEqual(['Welcome to week 2 of 4 of Measure and Make.', 'We have 1 lesson.']);
        expect(lines({}, 'welcome')).toEqual([10, undefined]);
        expect(said({ week: 4 }, 'welcome')[0]).toBe('Welcome to week 4 of 4 of Measure and Make.');
        expect(said({ week: 5 }, 'welcome')[0]).toBe('Welcome to week 5 of Measure and Make.');
    });
    it('says why there is no lesson', () => {
        expect(said({ assumptions: ['Nobody knows.', 'There are no lessons to plan.'] }, 'welcome')[1]).toBe('There are no lessons to plan.');
        expect(said({ assumptions: ['Nobody knows.'] }, 'welcome')[1]).toBe('There is no lesson this week.');
    });
    it('goes through the meetings: what is taught, in which piece, again or free, by the title where only the name is known', () => {
        const taught = (title: string, more = {}) => ({ lesson: title.toLowerCase(), title, place: place('a.lesson', 1), minutes: 5, ...more });
        const meeting = (label: string, more: Partial<WeekBrief['meetings'][number]>) => ({ label, lessons: [], taught: [], minutes: 0, ...more });
        expect(said({
            lessons: [lesson([], { name: 'sand', title: 'Sand' })], meetings: [
                meeting('Mon', { taught: [taught('Sand', { piece: { number: 1, of: 3 } }), taught('Clay', { why: 'revisit' }), taught('Rope', { why: 'fixed' }), taught('Wood', { why: 'repeat' })] }),
                meeting('Tue', { lessons: ['sand', 'gone'] }), meeting('Wed', {}), meeting('Thu', { free: { why: 'waiting', words: 'Nothing yet.', place: place('b.course', 7) } }),
                meeting('Fri', { taught: [taught('Sand')], free: { why: 'catch-up', words: 'Kept free.' } })
            ]
        }, 'welcome').slice(2)).toEqual(['Mon: “Sand”, part 1 of 3, “Clay”, again, “Rope” and “Wood”, again.', 'Tue: “Sand” and “gone”.', 'Thu: Nothing yet.', 'Fri: “Sand”; Kept free.']);
        expect(lines({ meetings: [meeting('Thu', { free: { why: 'waiting', words: 'Nothing yet.', place: place('b.course', 7) } })] }, 'welcome')[2]).toBe(7);
    });
    it('says who changed the week, only where something of it is changed, and what is left out and why', () => {
        const change = { says: '10 min instead of 15', place: place('c.course', 3), adaptation: 'Shorter' };
        const adaptations = [{ name: 's', title: 'Shorter', place: place('c.course', 2) }, { name: 'c', title: 'Calm', place: place('c.course', 9) }];
        const adapted = { adaptations, leftOut: [] } as unknown as NonNullable<WeekBrief['adapted']>;
        expect(said({ adapted, lessons: [lesson([])] }, 'welcome')).toHaveLength(2);
        expect(said({ adapted, lessons: [lesson([], { changes: [change] })] }, 'welcome')[2]).toBe('Some of this week is changed for this class, by “Shorter” and “Calm”.');
        const leftOut = { ...adapted, leftOut: [{ name: 'x', title: 'Sand', place: place('c.course', 4), change: { ...change, because: prose('They know it') } }, { name: 'y', title: 'Clay', place: place('c.course', 5), change }] };
        expect(said({ adapted: leftOut as never }, 'welcome').slice(2)).toEqual(['Some of this week is changed for this class, by “Shorter” and “Calm”.', '“Sand” is left out. They know it.', '“Clay” is left out.']);
        expect(lines({ adapted: leftOut as never }, 'welcome').slice(2)).toEqual([2, 4, 5]);
        expect(said({ adapted: { adaptations: [], leftOut: [] } as never, lessons: [lesson([], { changes: [change] })] }, 'welcome')).toHaveLength(2);
    });
});

describe('things', () => {
    const thing = (title: string, more: Partial<ThingFigures> = {}): ThingFigures => ({ ...week.fetch[0]!.things[1]!, name: title.toLowerCase(), title, amount: figure('5'), missing: undefined, optional: false, or: [], isNew: false, place: place('i.kit', 8), ...more });
    const fetch = (source: ThingFigures['source'], ...things: ThingFigures[]) => [{ source, title: source, things }];
    const first = (source: ThingFigures['source'], things: ThingFigures[], more: Partial<WeekBrief> = {}) => said({ fetch: fetch(source, ...things), ...more }, 'things')[0];
    const six = ['Beads', 'Cups', 'Dice', 'Figs', 'Gems', 'Hats'].map(title => thing(title));
    it('says where each group comes from, what would do instead, and what is only if people like', () => {
        expect(first('home', [thing('Beads', { or: ['Dried peas', 'Cubes'], optional: true }), thing('Cups')])).toBe('From home: beads or dried peas or cubes, 5, if you like; cups, 5.');
        expect(['shop', 'library', 'printed'].map(source => first(source as 'shop', [thing('Cups')]))).toEqual(['From the shop: cups, 5.', 'From the library: cups, 5.', 'To print: cups, 5.']);
        expect(said({ lessons: [lesson([])] }, 'things')).toEqual(['There is nothing to fetch this week.', 'There is nothing to buy or order for this week.']);
        expect(notes({}).sections.map(({ id }) => id)).toEqual(['welcome']);
    });
    it('reads out six things of a kit; of more only how many, and the new ones after the first week', () => {
        expect(first('kit', six)).toBe('From the kit: beads, 5; cups, 5; dice, 5; figs, 5; gems, 5; hats, 5.');
        const seven = [...six, thing('Inks')];
        expect(first('kit', seven)).toBe('From the kit: 7 things on the list, none of them new.');
        expect(first('kit', seven, { week: 1 })).toBe('From the kit: 7 things on the list.');
        expect(first('kit', [...six, thing('Inks', { isNew: true })], { week: 1 })).toBe('From the kit: 7 things on the list.');
        expect(first('kit', [...six, thing('Inks', { isNew: true })])).toBe('From the kit: 7 things on the list. New this week: inks, 5.');
        const isNew = (count: number) => Array.from({ length: 8 }, (_, i) => thing(`T${i}`, { isNew: i < count }));
        expect(first('kit', isNew(6))).toMatch(/New this week: T0, 5; .*T5, 5\.$/);
        expect(first('kit', isNew(7))).toBe('From the kit: 8 things on the list, 7 of them new.');
        expect(first('home', [...seven])).toMatch(/^From home: beads, 5; .* inks, 5\.$/);
    });
    it('tells of what is missing and is not bought, at the thing', () => {
        const short = thing('Cups', { missing: figure('2') });
        expect(said({ fetch: fetch('kit', short) }, 'things')[1]).toBe('There are not enough cups: 2 more.');
        expect(lines({ fetch: fetch('kit', short) }, 'things')[1]).toBe(8);
        const buy = [{ ...week.buy[0]!, name: 'cups', title: 'Cups', missing: figure('2'), packsToBuy: undefined, when: 'needed Mon 7 Sep', place: place('i.kit', 9) }];
        expect(said({ fetch: fetch('kit', short), buy }, 'things')).toEqual(['From the kit: cups, 5.', 'To buy or order: cups, 2: needed Mon 7 Sep.']);
        expect(lines({ fetch: fetch('kit', short), buy }, 'things')).toEqual([undefined, 9]);
        expect(said({ buy: [{ ...buy[0]!, packsToBuy: [] }] }, 'things')[1]).toBe('To buy or order: cups, 2: needed Mon 7 Sep.');
    });
    it('names once what nobody needs though it may be looked for', () => {
        const without = [{ name: 'w', title: 'Workbook' }];
        expect(said({ lessons: [lesson([], { notNeeded: without }), lesson([], { notNeeded: [...without, { name: 'c', title: 'Cards' }] })] }, 'things')[2]).toBe('You may look for these and do not need them: workbook and cards.');
    });
});

describe('a lesson', () => {
    it('has a title with its piece, meeting and minutes', () => {
        const titles = notes({ lessons: [lesson([], { draft: true }), lesson([], { draft: true, minutes: 0, piece: { number: 2, of: 3 } }), lesson([], { draft: true })] }).sections.slice(2).map(({ id, title }) => [id, title]);
        expect(titles).toEqual([['lesson-l', '“Weighing”, Mon 7 Sep, 30 min of lesson'], ['lesson-l-2', '“Weighing”, part 2 of 3, Mon 7 Sep'], ['lesson-l-3', '“Weighing”, Mon 7 Sep, 30 min of lesson']]);
    });
    it('begins with its piece, why it is here, that it is a draft, its aim, what is new and its words', () => {
        expect(told([], {
            piece: { number: 2, of: 3 }, remark: 'again: the children were unsure', draft: true, aim: [prose('compare'), prose(' ')], words: ['heavy'],
            objectives: [{ does: 'introduces', name: 'a', title: 'Compare masses' }, { does: 'checks', name: 'b', title: 'Sort' }]
        })).toEqual(['This is part 2 of 3 of the lesson.', 'Again: the children were unsure.', 'The lesson is still a draft.', 'Compare.', 'New in this lesson: compare masses.', 'A word of this lesson: heavy.']);
        expect(told([], { words: ['heavy', 'light'] })).toEqual(['Words of this lesson: heavy and light.']);
    });
    it('a warm-up: what it begins with and the gentler choice', () => {
        expect(told([part('warm-up', 'Scales', [step('note', 'Early.', 1), step('say', 'Arms out', 2), step('do', 'Tip.', 3), step('instead', 'Sit', 4)], { minutes: 1 })])).toEqual(['The warm-up is “Scales”, 1 minute.', 'Arms out.', 'A gentler choice: Sit.']);
        expect(lines({ lessons: [lesson([part('warm-up', 'Scales', [step('ask', 'Which?', 2), step('instead', 'Sit', 4)])])] }, 'lesson-l')).toEqual([10, 2, 4]);
        expect(told([part('warm-up', ' ')])).toEqual(['The warm-up is a part without a name (warm-up).']);
    });
    it('one activity, or the first and then the others: why, how it begins, pictures, where children slip', () => {
        const long = 'Take a bag. Put it down. Now ask everybody at the table which of the two is heavier! This is not said.';
        expect(told([part('activity', 'Bags', [step('why', 'Hands fool us', 3), step('do', long, 4), step('watch', 'Pressing', 5, [step('help', 'Hands on laps', 6)]), step('instead', 'Watch.', 7)], { minutes: 15 })])).toEqual([
            'The activity is “Bags”, 15 minutes.', 'Hands fool us.', 'begin: Take a bag. Put it down. Now ask everybody at the table which of the two is heavier!', 'Where children slip: Pressing.', 'What helps: Hands on laps.', 'A gentler choice: Watch.'
        ]);
        expect(lines({ lessons: [lesson([part('activity', 'Bags', [step('why', 'x', 3), step('do', 'y', 4), step('watch', 'z', 5, [step('help', 'h', 6)]), step('instead', 'w', 7)])])] }, 'lesson-l')).toEqual([10, 3, 4, 5, 6, 7]);
        expect(told([part('activity', 'A'), part('activity', 'B'), part('activity', 'C')])).toEqual(['First comes “A”.', 'Then comes “B”.', 'Then comes “C”.']);
        expect(told([part('activity', 'A', [step('do', 'Go. now. 2 more follow.', 1)])])[1]).toBe('begin: Go. now. 2 more follow.');
    });
    it('a game: for how many, where its rules stand, how it is played', () => {
        const game = { rules: 'Tales, page 4', players: '2 players', place: place('i.kit', 40), steps: [step('watch', 'Cheating', 41, [], 'i.kit')] };
        expect(told([part('game', 'Grocer', [step('more', 'Play again', 12)], { game, minutes: 10 })])).toEqual([
            'There is a game, “Grocer”, 10 minutes, for 2 players. Its rules stand in Tales, page 4.', 'play: “Grocer”', 'Where children slip: Cheating.', 'For those who want more: Play again.'
        ]);
        expect(lines({ lessons: [lesson([part('game', 'Grocer', [], { game })])] }, 'lesson-l')).toEqual([40, 10, 41]);
        expect(told([part('game', 'Grocer')])).toEqual(['There is a game, “Grocer”. How it goes stands in the brief.', 'play: “Grocer”']);
        expect(lines({ lessons: [lesson([part('game', 'Grocer')])] }, 'lesson-l')).toEqual([10, 10]);
    });
    it('pictures that can be drawn are held up, of every kind of part', () => {
        const show = (line: number, title?: string, drawn = true): StepFigures => ({ ...step('show', '', line), picture: { text: 'Ten-frame: 4', title, place: place('a.lesson', line), picture: drawn ? ({ kind: 'ten-frame', count: 4 } as never) : undefined } });
        expect(told([part('warm-up', 'W', [show(1)]), part('activity', 'A', [show(2, 'Four')]), part('game', 'G', [show(3)]), part('practice', 'P', [show(4)]), part('checkpoint', 'C', [show(5), show(6, undefined, false)])]).filter(text => text.startsWith('picture'))).toEqual([
            'picture: Four: Ten-frame: 4', 'picture: Ten-frame: 4', 'picture: Ten-frame: 4', 'picture: Ten-frame: 4', 'picture: Ten-frame: 4'
        ]);
    });
    it('when a child is ready: one sign, several with their parts, or the first closing question', () => {
        const ready = (text: string) => step('ready when', text, 20);
        expect(told([part('checkpoint', 'End', [ready('All four')])])).toEqual(['You can tell that a child is ready: All four.']);
        expect(told([part('checkpoint', 'End', [ready('All four')]), part('checkpoint', 'Last', [ready('All five')])])).toEqual(['Ready after “End”: All four.', 'Ready after “Last”: All five.']);
        expect(told([part('checkpoint', 'End', [step('ask', 'Which?', 21, [step('expect', 'The low one', 22)]), step('ask', 'Why?', 23)])])).toEqual(['To see whether a child is ready, ask: Which?', 'You hope to hear: The low one.']);
        expect(told([part('practice', 'Say', [step('ask', 'Which?', 21)], { items: 1 })])).toEqual(['For more practice: “Say”, 1 item.']);
        expect(told([part('game', 'G', [], { game: { steps: [ready('Wins')] } })]).at(-1)).toBe('You can tell that a child is ready: Wins.');
    });
    it('what to do where a child is unsure, at that line', () => {
        const unsureAs = { then: 'repeat lesson', at: place('a.lesson', 33).range } as const;
        const closing = (more: Partial<PartFigures>) => [lesson([part('checkpoint', 'End', [], { unsure: 'Repeat the whole lesson.', ...more })])];
        expect(said({ lessons: closing({ unsureAs }) }, 'lesson-l')).toEqual(['And where a child is unsure: repeat the whole lesson.']);
        expect([lines({ lessons: closing({ unsureAs }) }, 'lesson-l'), lines({ lessons: closing({}) }, 'lesson-l')]).toEqual([[33], [10]]);
    });
    it('practice: how many items of what, and where the answers stand', () => {
        const item = { ask: '1', answer: '2' };
        expect(told([part('practice', 'Say', [], { items: 8, practice: ['bonds of 5', 'sums 1 to 9'], practiceItems: [item, item] })])).toEqual(['For more practice: “Say”, 2 items: bonds of 5; sums 1 to 9. The answers stand in the brief.']);
        expect(told([part('practice', 'Say', [], { items: 8, practice: ['bonds of 5'], practiceItems: [] })])).toEqual(['For more practice: “Say”, 8 items: bonds of 5.']);
        expect(told([part('practice', 'Say')])).toEqual(['For more practice: “Say”.']);
    });
    it('what adaptations changed, each once, with its reason once; what is added is told where it stands', () => {
        const change = (says: string, line: number, because?: string) => ({ says, place: place('c.course', line), adaptation: 'Shorter', ...(because === undefined ? {} : { because: prose(because) }) });
        const need = (title: string, ...changes: ReturnType<typeof change>[]) => ({ name: title, title, amount: figure('5'), each: '', place: place('a.lesson', 5), optional: false, changes });
        expect(told([part('activity', 'Bags', [{ ...step('do', 'x', 3, [{ ...step('expect', 'y', 4), changes: [change('peas instead of beans', 7)] }]), changes: [change('added', 8), change('songs instead of rhymes', 9)] }],
            { changes: [change('10 min instead of 15', 5, 'Too long')], needs: [need('Gram cubes', change('added', 6))] })],
        { changes: [change('“Walk” is left out', 5, 'Too long')], needs: [need('Dried peas', change('peas instead of beans', 7, 'None left')), need('Cups', change('added', 6))] }).filter(text => text.startsWith('Changed'))).toEqual([
            'Changed for this class: “Walk” is left out. Too long.', 'Changed for this class: peas instead of beans. None left.', 'Changed for this class: cups, added.', 'Changed for this class: “Bags”, 10 min instead of 15.',
            'Changed for this class: gram cubes, added.', 'Changed for this class: songs instead of rhymes.'
        ]);
        expect(lines({ lessons: [lesson([], { changes: [change('x', 5)] })] }, 'lesson-l')).toEqual([5]);
    });
});

describe('cautions and what comes next', () => {
    const caution = (kind: string, text: string, line: number, more = {}) => ({ kind, text, place: place('i.kit', line), ...more });
    it('each kind once, what is serious first, what writers added once, with its thing where there are several', () => {
        expect(said({
            cautions: [caution('glass', 'Breaks.', 1), caution('hot', 'Burns.', 2, { thing: 'gram-cube', prose: prose('Wait') }), caution('hot', 'Burns.', 3, { thing: 'dried-bean', prose: prose('Wait.') }), caution('sharp', 'Cuts.', 4, { serious: 'Toddlers are in the room.', thing: 'nobody', prose: prose('Mind') })]
        }, 'cautions')).toEqual(['Nobody. Toddlers are in the room. Cuts. Mind.', 'Breaks.', 'Gram cubes and dried beans. Burns. Gram cubes: Wait. Dried beans: Wait.', 'Local rules, product labels and qualified advice come first.']);
        expect(lines({ cautions: [caution('glass', 'Breaks.', 1), caution('sharp', 'Cuts.', 4, { serious: 'Now.' })] }, 'cautions')).toEqual([4, 1, undefined]);
        expect(said({ cautions: [caution('small', 'Fits.', 1), caution('small', 'Perhaps fits.', 2)] }, 'cautions')).toHaveLength(3);
        expect(said({ cautions: [] }, 'cautions')).toEqual([]);
    });
    it('next week: its days, lessons, new things, orders; the last week says so', () => {
        const next = { week: 3, from: '2026-09-28', lessons: [{ name: 'a', title: 'Sand', place: place('a.lesson', 1) }], newThings: [{ title: 'Gram cubes', amount: figure('5'), source: 'kit' as const }], order: [{ ...week.buy[0]!, title: 'Beans', missing: figure('5'), when: 'order by Fri', place: place('i.kit', 9) }] };
        expect(said({ next }, 'next')).toEqual(['From Mon 28 Sep we have “Sand”.', 'New things to look out for: gram cubes, 5.', 'Order now: beans, 5, 1 pack of 500 g at 2.10 USD: order by Fri.']);
        expect(lines({ next }, 'next')).toEqual([undefined, undefined, 9]);
        expect(said({ next: { ...next, from: undefined, lessons: [], newThings: [], order: [] } }, 'next')).toEqual(['Then come no lessons.']);
        expect(notes({ next }).sections.at(-1)?.title).toBe('Next week, week 3');
        const unplaced = [{ lesson: 'x', title: 'Clay', why: '', place: place('a.lesson', 3) }];
        expect(said({ next: { ...next, newThings: [], order: [] }, unplaced }, 'next')).toEqual(['From Mon 28 Sep we have “Sand”.', 'The term has no day left for “Clay”.']);
        expect(said({ week: 4, unplaced }, 'next')).toEqual(['This is the last week of the plan.', 'The term has no day left for “Clay”.']);
        expect(notes({ week: 4 }).sections.at(-1)?.title).toBe('Next week');
        expect(said({ week: 3, unplaced }, 'next')).toEqual([]);
    });
});

describe('the time', () => {
    const cue = (does: 'begin' | 'play' | 'picture') => ({ does, text: 'not counted as words' });
    it('adds words and what is shown, each kind with its minutes', () => {
        // 85 words at 170 a minute are half a minute; two activities a minute each; three pictures 20 seconds each.
        const time = spokenTime([{ does: 'say', text: Array.from({ length: 85 }, () => 'word').join(' ') }, cue('begin'), cue('begin'), cue('picture'), cue('picture'), cue('picture'), cue('play')], 170);
        expect([time.words, time.shown, time.time.exact, time.time.text]).toEqual([85, 6, '4.5', '5 min']);
        expect(time.time.trail.map(({ words }) => words)).toEqual(['85 words at 170 a minute: 0.5 min', '2 activities begun at 1 min each: 2 min', '1 game shown at 1 min', '3 pictures held up at 20 s each: 1 min']);
        expect(spokenTime([cue('picture')], 170).time.trail.map(({ words }) => words)).toEqual(['0 words at 170 a minute: 0 min', '1 picture held up at 20 s']);
        expect([spokenTime([cue('begin')], 170).time.text, spokenTime([cue('picture'), cue('picture')], 170).time.text]).toEqual(['1 min', 'less than 1 min']);
    });
    it.each([[40, 40], [400, 400], [39, 170], [401, 170], [100.5, 170]])('at %d words a minute: %d are counted', (rate, counted) => {
        const { rate: used, assumptions } = speakingNotes(empty, { rate, inWords: () => '' });
        expect([used, assumptions.length]).toEqual([counted, rate === counted ? 0 : 1]);
    });
});
