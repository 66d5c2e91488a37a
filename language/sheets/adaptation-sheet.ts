import type { Caution, Declared, Exact, Mention, Need, PartSheet, Place, Prose, Range, Step } from './sheet.js';

/** What an adaptation says, as plain data; see sheet.ts for the rest of a file. */

/** `weigh-2.long-walk`: a part of a lesson. A game is meant by the name of the game that is played. */
export interface PartMention {
    lesson: Mention;
    part: Mention;
    at: Range;
}

export type Side = 'after' | 'before';

/** What `add to` brings to a lesson; to an activity come only steps, needs and cautions. */
export interface Added {
    steps: Step[];
    introduces: Mention[];
    practises: Mention[];
    checks: Mention[];
    needs: Need[];
    cautions: Caution[];
    words: Mention[];
    parts: PartSheet[];
}

export type Change =
    | { does: 'skip lesson'; lesson: Mention }
    | { does: 'skip activity'; activity: PartMention }
    /** `ratio`: so much of the other (`give`) does for so much of the thing (`replaces`). `within`: only there. */
    | { does: 'swap thing'; thing: Mention; forThing: Mention; ratio?: { give: Exact; replaces: Exact }; within?: { lesson: Mention; part?: Mention } }
    | { does: 'swap lesson'; lesson: Mention; forLesson: Mention }
    | { does: 'swap activity'; activity: PartMention; forActivity: PartMention }
    | { does: 'move lesson'; lesson: Mention; side: Side; anchor: Mention }
    | { does: 'move activity'; activity: PartMention; side: Side; anchor: PartMention }
    /** After that part of it. */
    | { does: 'split lesson'; lesson: Mention; after: Mention }
    | { does: 'split activity'; activity: PartMention; minutes: number }
    | { does: 'join lessons'; lesson: Mention; others: Mention[] }
    | { does: 'join activities'; activity: PartMention; others: PartMention[] }
    | { does: 'insert lesson'; lesson: Mention; side: Side; anchor: Mention }
    | { does: 'insert activity'; activity: PartMention; side: Side; anchor: PartMention }
    | { does: 'retime lesson'; lesson: Mention; minutes: number }
    | { does: 'retime activity'; activity: PartMention; minutes: number }
    /** New parts stand beside `anchor`, without one before the closing checkpoint. */
    | { does: 'add to lesson'; lesson: Mention; side?: Side; anchor?: Mention; added: Added }
    | { does: 'add to activity'; activity: PartMention; added: Added };

/** `asOf`: the edition of the course for which somebody has looked at this line again. `wordsEnd`: where its own words end, before `as of` and `because`. */
export type WrittenChange = Change & { because?: Prose; asOf?: { edition: string; at: Range }; wordsEnd?: Range['end']; head: Range; at: Range };

export interface AdaptationSheet extends Declared {
    kind: 'adaptation';
    of?: Mention;
    /** The edition of the course that it was written against. */
    edition?: string;
    editionAt?: Range;
    forClass?: Mention;
    changes: WrittenChange[];
    notes: Prose[];
}

/** On what an adaptation has changed (never in a sheet as written): so that whoever shows it can say so and lead to the line. */
export interface ChangeMark {
    /** In words for a teacher: "10 min instead of 15", "lentils instead of dried beans", "added". */
    says: string;
    because?: Prose;
    /** The first line of the change. */
    place: Place;
    /** Name and title of the adaptation. */
    adaptation: { name: string; title: string };
}
