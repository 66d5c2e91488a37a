import type { Prose, WeekBrief } from '@haversack/server/planning/figures';
import { speakingNotes } from '@haversack/server/planning/speaking';
import type { SpeakingNotes } from '@haversack/server/planning/speaking-figures';
import { notesMarkdown } from '@haversack/server/brief/speaking/markdown';
import { proseOf } from '@haversack/server/brief/prose-in-words';
import { notesText } from '@haversack/server/brief/speaking/text';
import Fraction from 'fraction.js';
import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import { adaptedWeek } from './adapted-fixture.js';
import { week } from './fixture.js';
import { prose } from './fixture-tools.js';
import { everyTextAs, hostileTexts } from './hostile.js';

const notesOf = (brief: WeekBrief, rate?: number): SpeakingNotes => speakingNotes(brief, { rate, inWords: proseOf(brief) });
const said = ({ sections }: SpeakingNotes, id: string): string[] => sections.find(section => section.id === id)?.cues.map(({ does, text }) => (does === 'say' ? text : `${does}: ${text}`)) ?? [];
const empty: WeekBrief = { ...week, lessons: [], meetings: [], fetch: [], buy: [], stayOnShelf: [], putAway: [], cautions: [], minutes: 0, remarks: [], next: undefined, unplaced: undefined, assumptions: ['The plan has 12 weeks: there is no week 30.'], week: 30 };

describe('speaking notes', () => {
    it('go through the week in order', () => {
        expect(notesOf(week).sections.map(({ id }) => id)).toEqual(['welcome', 'things', ...week.lessons.map(({ name }) => `lesson-${name}`), 'cautions', 'next']);
    });

    it('begin with the week at a glance', () => {
        expect(said(notesOf(week), 'welcome')).toEqual(expect.arrayContaining([
            'Welcome to week 3 of 12 of Measure and Make.',
            'Mon 21 Sep: “How long is a stride?”, again and “Which is heavier?”, part 1 of 2.',
            'Tue 22 Sep: Kept free to catch up, after 6 lessons.',
            'Harbour day: no meeting on Fri 25 Sep.'
        ]));
    });

    it('say what to fetch, print and buy with the amounts of the brief', () => {
        const things = said(notesOf(week), 'things');
        expect(things).toContain('From the kit: pan balance, 4; gram cubes, 80; place-value cards or number strips, 4 sets, if you like; Table games for measuring, 1.');
        expect(things).toContain('To print: weighing record sheet, 7 copies.');
        expect(things).toContain('To buy or order: dried beans, 260 g, 1 pack of 500 g at 2.10 USD: needed Mon 21 Sep; buy by Sat 19 Sep.');
    });

    it('say after which day a thing can be put away', () => {
        const line = (title: string, after?: string) => ({ name: title, title, place: week.putAway[0]!.place, why: '', ...(after !== undefined && { after }) });
        const told = said(notesOf({ ...week, putAway: [line('Beads', 'Mon 21 Sep'), line('Ropes', 'Tue 22 Sep'), line('Straws', 'Mon 21 Sep'), line('Cups')] }), 'things');
        expect(told.filter(text => text.includes('put away'))).toEqual(['After Mon 21 Sep you can put away for good: beads and straws.', 'After Tue 22 Sep you can put away for good: ropes.', 'After this week you can put away for good: cups.']);
    });

    it('call the first of several activities the first', () => {
        const [lesson] = week.lessons;
        const activity = lesson!.parts.find(({ kind }) => kind === 'activity')!;
        const told = said(notesOf({ ...week, lessons: [{ ...lesson!, parts: [activity, { ...activity, title: 'Song' }] }] }), `lesson-${lesson!.name}`);
        expect(told.filter(text => /^(First|Then|The activity)/.test(text))).toEqual(['First comes “Two mystery bags”, 15 minutes.', 'Then comes “Song”, 15 minutes.']);
    });

    it('take whole minutes, and less than one is said so', () => {
        const notes = notesOf({ ...empty, week: empty.weeks });
        const next = notes.sections.find(({ id }) => id === 'next')!;
        expect(next.time.text).toBe('less than 1 min');
        expect(next.time.trail[0]!.words).toMatch(/^\d+ words at 170 a minute: [\d.]+ min$/);
        expect(notesText(notes)).toContain('Less than 1 min. Counted so:');
        expect(notesText(notesOf(week))).toMatch(/^About \d+ min\. Counted so: \d+ words at 170 a minute: \d+\.\d min/m);
    });

    it('walk through a lesson: aim, warm-up, where children slip and what helps, the game, when a child is ready, when not, practice', () => {
        expect(said(notesOf(week), 'lesson-weigh-1')).toEqual([
            'This is part 1 of 2 of the lesson.',
            'Children compare two masses by feel and then let the balance decide.',
            'New in this lesson: compare the masses of two objects.',
            'Words of this lesson: heavier, lighter and balance.',
            'The warm-up is “Hands as scales”, 5 minutes.',
            'Stand with arms out. Name two things; tip toward the heavier.',
            'A gentler choice: Short of room? Tip two pencils on the table.',
            'The activity is “Two mystery bags”, 15 minutes.',
            'Children who press on the pan are weighing their own hand.',
            'begin: Put one bag of dried beans in each pan of the pan balance.',
            'Where children slip: A child presses the pan with a finger.',
            'What helps: Hands on laps until the beam stops, then look again.',
            'There is a game, “The careful grocer”, 15 minutes, for 2 to 4 players. Its rules stand in Table games for measuring, edition 3, chapter “Weighing”, number 12.',
            'play: “The careful grocer”',
            'You can tell that a child is ready: Four comparisons out of five are right without touching.',
            'And where a child is unsure: repeat “Two mystery bags” tomorrow.',
            'For more practice: “Say the mass two ways”, 3 items: name numbers 11 to 99; fives and tens 6 to 20. The answers stand in the brief.',
            'For those who want more: Let the pair make a third bag that lies between the two.'
        ]);
    });

    it('end with cautions and what comes next; local rules come first', () => {
        const cautions = said(notesOf(week), 'cautions');
        expect(cautions.length).toBeGreaterThan(1);
        expect(cautions[cautions.length - 1]).toBe('Local rules, product labels and qualified advice come first.');
        expect(said(notesOf(week), 'next')[0]).toMatch(/^From |^Then come /);
        expect(notesOf({ ...week, cautions: [] }).sections.some(({ id }) => id === 'cautions')).toBe(false);
    });

    it('name what is serious in this room first, and each kind once', () => {
        const { place } = week.cautions[0]!;
        const calm = { kind: 'glass', text: 'Breaks.', thing: 'glass-jar', place };
        const serious = (thing: string) => ({ kind: 'small-parts', text: 'Choking hazard.', serious: 'Children under three are in the room: keep all of it out of their reach.', thing, place, prose: prose(`Count the {${thing}}s.`) });
        const [first, second] = said(notesOf({ ...week, cautions: [calm, serious('gram-cube'), serious('dried-bean')] }), 'cautions');
        expect(first).toMatch(/^Gram cubes and dried beans\. Children under three are in the room: keep all of it out of their reach\. Choking hazard\. Gram cubes: Count the .*\. Dried beans: Count/);
        expect(second).toMatch(/Breaks\.$/);
    });

    it('say what is changed for an adapted class, with the reason once', () => {
        const notes = notesOf(adaptedWeek);
        expect(said(notes, 'welcome')).toEqual(expect.arrayContaining([
            'Some of this week is changed for this class, by “Shorter autumn” and “Harbour days”.',
            expect.stringMatching(/^“Market sums” is left out\. Covered at the .* visit, says <b>nobody<\/b>\.$/),
            '“What we can measure now” is left out.'
        ]));
        expect(said(notesOf({ ...week, adapted: { ...adaptedWeek.adapted!, leftOut: [] } }), 'welcome').some(text => text.includes('changed'))).toBe(false);
        const changed = said(notes, 'lesson-weigh-1').filter(text => text.startsWith('Changed'));
        expect(changed[0]).toMatch(/^Changed for this class: lentils instead of dried beans\. The shop has no dried beans\. Ask again in spring\.$/);
        expect(changed).toContain('Changed for this class: “Two mystery bags”, 10 min instead of 15. Covered at the market visit.');
        expect(changed.filter(text => text.includes('lentils'))).toHaveLength(1);
    });

    it('of an empty week, or one that the plan does not have, say just that', () => {
        const notes = notesOf(empty);
        expect(notes.sections.map(({ id, cues }) => [id, cues.map(({ text }) => text)])).toEqual([['welcome', ['Welcome to week 30 of Measure and Make.', 'The plan has 12 weeks: there is no week 30.']]]);
        expect(said(notesOf({ ...empty, week: 5, assumptions: [] }), 'welcome')).toContain('There is no lesson this week.');
    });

    it('take a lesson that comes twice in the week as two sections', () => {
        const [first] = week.lessons;
        const ids = notesOf({ ...week, lessons: [first!, { ...first!, piece: { number: 2, of: 2 } }] }).sections.map(({ id }) => id);
        expect(ids).toEqual(expect.arrayContaining([`lesson-${first!.name}`, `lesson-${first!.name}-2`]));
        expect(said(notesOf({ ...week, lessons: [first!, { ...first!, piece: { number: 2, of: 2 } }] }), 'welcome')[1]).toMatch(/^We have 1 lesson,/);
    });
});

describe('the minutes', () => {
    it('of the whole are those of its sections, exactly', () => {
        const notes = notesOf(week);
        const total = notes.sections.reduce((sum, { time }) => sum.add(new Fraction(time.exact)), new Fraction(0));
        expect(new Fraction(notes.time.exact).equals(total)).toBe(true);
        expect(notes.words).toBe(notes.sections.reduce((sum, { words }) => sum + words, 0));
        // One activity and one game of the first lesson, and the others of the week.
        expect(notes.shown).toBe(notes.sections.flatMap(({ cues }) => cues).filter(({ does }) => does !== 'say').length);
    });

    it('say how they were counted', () => {
        const { sections } = notesOf(week);
        const [lesson] = sections.filter(({ id }) => id === 'lesson-weigh-1');
        const trail = lesson!.time.trail.map(({ words }) => words);
        expect(trail[0]).toBe(`${lesson!.words} words at 170 a minute: ${Math.round(lesson!.words / 17) / 10} min`);
        expect(trail.slice(1)).toEqual(['1 activity begun at 1 min', '1 game shown at 1 min']);
        expect(lesson!.time).toMatchObject({ unit: 'min', text: `${Math.round(lesson!.words / 170 + 2)} min` });
    });

    it('a rate that nobody speaks at is not taken', () => {
        expect(notesOf(week, 100)).toMatchObject({ rate: 100, assumptions: [] });
        for (const rate of [0, -5, 1000, Number.NaN, 12.5]) expect(notesOf(week, rate)).toMatchObject({ rate: 170, assumptions: [expect.stringContaining('170 are counted')] });
    });
});

describe('the written notes', () => {
    const commonmark = new MarkdownIt('commonmark');
    const shape = (markdown: string): string[] => commonmark.parse(markdown, {}).flatMap(token => [token.type, ...(token.children ?? []).map(({ type }) => type)].filter(type => /^(?:html|image|link|heading|list_item|em|strong|code)/.test(type)));

    it('have a heading for each section, with its minutes', () => {
        const read = commonmark.parse(notesMarkdown(notesOf(week)), {});
        const headings = read.flatMap((token, index) => (token.type === 'heading_open' ? [read[index + 1]?.content] : []));
        expect(headings[0]).toBe('Speaking notes: week 3 of 12');
        expect(headings.slice(1)).toEqual(notesOf(week).sections.map(({ title, time }) => `${title} (${time.text})`));
    });

    it.each(hostileTexts)('stay what they are with the text %s', hostile => {
        const rough = notesOf(everyTextAs(adaptedWeek, hostile));
        expect(shape(notesMarkdown(rough)).filter(type => /^(?:html|image|link|strong|code)/.test(type))).toEqual([]);
        expect(shape(notesMarkdown(rough)).filter(type => type === 'list_item_open').length).toBe(rough.sections.reduce((sum, { cues }) => sum + cues.length, 0));
    });

    it('fit a terminal of eighty columns, and steer none', () => {
        const text = notesText(notesOf(everyTextAs(week, 'a\u001b[31m red\u0007 word')));
        expect(text).not.toMatch(/[^\n\P{Cc}]/u);
        for (const line of notesText(notesOf(week)).split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    });

    it('hold the same cues as text and as Markdown', () => {
        const notes = notesOf(week);
        const squeezed = (text: string): string => text.replace(/\s+/g, ' ');
        const written = squeezed(notesText(notes));
        for (const { text } of notes.sections.flatMap(({ cues }) => cues)) expect(written).toContain(squeezed(text));
    });

    it('are plain data', () => {
        const notes = notesOf(adaptedWeek);
        expect(JSON.parse(JSON.stringify(notes))).toEqual(JSON.parse(JSON.stringify(notes)) as unknown);
        expect(JSON.stringify(notes)).not.toContain('"parts":');
    });
});

describe('prose that is read out', () => {
    const read = (text: string): string => proseOf(week)(prose(text) as Prose);
    it('has titles for names and no markup', () => {
        expect(read('Take a *{gram-cube}*, **two** `{x}` and [a page](https://example.org).')).toMatch(/^Take a gram cubes?, two \{x\} and a page\.$/);
        expect(read('Before:\n\n- one\n- two')).toBe('Before: one; two');
    });
});
