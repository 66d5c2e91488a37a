import Fraction from 'fraction.js';
import { exactText, sum } from '../exact.js';
import type { Figure } from '../figure.js';
import type { Cue, CueDoes } from '../speaking-figures.js';
import { counted } from '@haversack/language/facts/wording';

/**
 * Words a minute where nobody says otherwise: common practice for a talk through one week's lessons. Published for grown readers: 183 read aloud
 * (Brysbaert 2019, Journal of Memory and Language 109, 104047); conversation about 150.
 */
export const usualRate = 170;
export const slowestRate = 40;
export const fastestRate = 400;

/** Seconds that showing takes (common practice, no source), and how it is called for one and for several. */
const showing: Record<Exclude<CueDoes, 'say'>, { seconds: number; one: string; many: string; time: string }> = {
    begin: { seconds: 60, one: 'activity begun', many: 'activities begun', time: '1 min' },
    play: { seconds: 60, one: 'game shown', many: 'games shown', time: '1 min' },
    picture: { seconds: 20, one: 'picture held up', many: 'pictures held up', time: '20 s' }
};

/**
 * Words as they are spoken: letters with what joins them ("don't", "p.m."), and numbers as one word ("12", "2.50"). Both halves of a hyphenated
 * word count.
 */
export function spokenWords(text: string): number {
    return text.match(/[\p{L}\p{M}\p{N}]+(?:(?:(?<=\p{L})['’.](?=\p{L})|(?<=\p{N})[.,](?=\p{N}))[\p{L}\p{M}\p{N}]+)*/gu)?.length ?? 0;
}

export interface SpokenTime {
    words: number;
    shown: number;
    time: Figure;
}

/** The minutes of these cues: "412 words at 170 a minute: 2.4 min; 3 activities begun at 1 min: 3 min". */
export function spokenTime(cues: readonly Cue[], rate: number): SpokenTime {
    const words = cues.reduce((total, cue) => total + (cue.does === 'say' ? spokenWords(cue.text) : 0), 0);
    const spoken = new Fraction(words, rate);
    const shows = Object.entries(showing).map(([does, kind]) => {
        const count = cues.filter(cue => cue.does === does).length;
        return { ...kind, count, minutes: new Fraction(count * kind.seconds, 60) };
    }).filter(({ count }) => count > 0);
    const minutes = sum([spoken, ...shows.map(show => show.minutes)]);
    return {
        words,
        shown: shows.reduce((total, { count }) => total + count, 0),
        time: {
            exact: exactText(minutes), unit: 'min', text: wholeMinutes(minutes),
            trail: [
                { words: `${counted(words, 'word')} at ${rate} a minute: ${minutesInWords(spoken)}` },
                ...shows.map(({ count, one, many, time, minutes: shown }) => ({ words: `${counted(count, one, many)} at ${time}${count === 1 ? '' : ` each: ${minutesInWords(shown)}`}` }))
            ]
        }
    };
}

/** A talk is planned in whole minutes; how they were counted tells the tenths. */
function wholeMinutes(minutes: Fraction): string {
    return minutes.compare(1) < 0 ? 'less than 1 min' : `${minutes.round().valueOf()} min`;
}

/** To a tenth of a minute. */
function minutesInWords(minutes: Fraction): string {
    return `${minutes.mul(10).round().div(10).valueOf()} min`;
}
