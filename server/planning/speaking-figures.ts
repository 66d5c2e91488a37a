import type { Figure } from './figure.js';
import type { Place } from './figures.js';

/**
 * What somebody does at one line of the notes: says it (its words are counted), or shows something (a stated time is counted in place of the
 * words): how an activity begins, a turn of a game, a picture.
 */
export type CueDoes = 'say' | 'begin' | 'play' | 'picture';

export interface Cue {
    does: CueDoes;
    /** Plain text on one line. */
    text: string;
    /** Where the brief's line stands; absent for what sums several of them up. */
    place?: Place;
}

export interface SpokenSection {
    /** "welcome", "things", "lesson-NAME", "cautions", "next"; a lesson that is taught twice has a number behind its name. */
    id: string;
    title: string;
    cues: Cue[];
    /** Of the cues that are said. */
    words: number;
    /** Cues that are shown. */
    shown: number;
    /** Minutes, with how they were counted. */
    time: Figure;
}

/** An outline for walking families through a week aloud. */
export interface SpeakingNotes {
    course: string;
    class?: string;
    week: number;
    weeks: number;
    /** Words a minute. */
    rate: number;
    sections: SpokenSection[];
    words: number;
    shown: number;
    time: Figure;
    /** What had to be assumed about the rate. */
    assumptions: string[];
}
