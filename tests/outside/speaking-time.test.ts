/** Minutes of talk against published rates, and words against another counter. */
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readProgramme } from '@haversack/server/cli/read-programme';
import { proseOf } from '@haversack/server/brief/prose-in-words';
import { newPlanningCache } from '@haversack/server/planning/cache';
import { speakingNotes } from '@haversack/server/planning/speaking';
import { spokenTime, spokenWords } from '@haversack/server/planning/speaking/spoken-time';
import { planSchedule } from '@haversack/server/planning/schedule';
import { planWeek } from '@haversack/server/planning/week';
import Fraction from 'fraction.js';

const talk = (words: number) => [{ does: 'say' as const, text: Array.from({ length: words }, (_, i) => `word${i}`).join(' ') }];

describe('500 words', () => {
    // 183 words a minute read aloud: Brysbaert 2019, Journal of Memory and Language 109, 104047. Conversation about 150: attributed to the US National Center for
    // Voice and Speech. Public speaking from 100. The seconds are 500 / rate x 60.
    test.each([[183, 163.9], [150, 200], [100, 300]])('at %i words a minute: %f s', (rate, seconds) => {
        const { words, time } = spokenTime(talk(500), rate);
        expect(words).toBe(500);
        expect(new Fraction(time.exact).mul(60).valueOf()).toBeCloseTo(seconds, 1);
    });
    // 170 for a talk through one week's lessons: common practice, no source; between the published 150 and 183.
    test('at the usual 170: between those of 183 and of 150', () => {
        expect(new Fraction(spokenTime(talk(500), 170).time.exact).mul(60).valueOf()).toBeCloseTo(176.5, 1);
    });
});

/** Words as Unicode Standard Annex 29 breaks a text (Intl.Segmenter). */
const segmenter = new Intl.Segmenter('en', { granularity: 'word' });
const segmented = (text: string): number => [...segmenter.segment(text)].filter(({ isWordLike }) => isWordLike).length;

test.each([
    ['Where does it come from?', 5], ["Don't press on the children’s pans.", 6], ['1,467 words, 2.5 min', 4], ['place-value cards', 3], ['  — “…” ', 0], ['Mon 14 Sep 2026', 4], ['été, naïve café', 3]
])('words of "%s": %i', (text, words) => {
    expect(spokenWords(text)).toBe(words);
    expect(segmented(text)).toBe(words);
});

test.each([['first-steps', undefined], ['year', 'millpond'], ['year', 'friday-table'], ['year', 'rook-lane']])('weeks of %s, %s: the same number of words', async (folder, className) => {
    const { view: { programme } } = await readProgramme(join(import.meta.dirname, '../../examples', folder));
    const schedule = planSchedule(programme, { class: className });
    let all = 0;
    const cache = newPlanningCache();
    for (const { number } of schedule.weeks.filter((_, index, { length }) => length < 10 || index % 4 === 0)) {
        const brief = planWeek(programme, { class: className, week: number }, { schedule, today: '2026-09-01', cache });
        const { words, sections } = speakingNotes(brief, { inWords: proseOf(brief) });
        const text = sections.flatMap(({ cues }) => cues).filter(({ does }) => does === 'say').map(cue => cue.text).join('\n');
        expect(words, `week ${number}`).toBe(segmented(text));
        all += words;
    }
    expect(all).toBeGreaterThan(1000);
}, 120_000);
