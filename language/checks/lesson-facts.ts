import { AdaptingMemo } from '../adapting/memo.js';
import type { Programme } from '../sheets/programme.js';
import type { GameSheet, LessonSheet, Mention, Need, Prose, Step } from '../sheets/sheet.js';
import { addSteps, allNeeds, eachName } from './walk-lessons.js';

/** What a lesson says itself, whatever else the programme holds. */
export interface LessonReading {
    /** The lesson's own needs and those of its parts. */
    needs: readonly Need[];
    /** Steps of the lesson and its parts, those under others included. */
    steps: readonly Step[];
    /** The text of all steps and cautions. */
    prose: readonly Prose[];
    /** Each name that stands in braces somewhere in the lesson, where it stands first. */
    named: ReadonlyMap<string, Mention>;
    /** Plain words in what is said and asked, in lower case; gathered when first asked for, as only courses that teach words ask. */
    spoken: () => ReadonlySet<string>;
}

/** What several checks ask of one lesson. */
export interface LessonFacts extends LessonReading {
    games: readonly GameSheet[];
    /** Things that are there: needed, brought by a game, or a stand-in for one of them. */
    there: ReadonlySet<string>;
}

/** Keeps the readings for as long as the sheets live, over many versions of a programme. */
export class LessonReadings {
    /** What adaptations have made of them. */
    readonly adapting = new AdaptingMemo();
    private readonly memo = new WeakMap<LessonSheet, LessonReading>();

    of(lesson: LessonSheet): LessonReading {
        let reading = this.memo.get(lesson);
        if (!reading) {
            reading = readLesson(lesson);
            this.memo.set(lesson, reading);
        }
        return reading;
    }
}

function readLesson(lesson: LessonSheet): LessonReading {
    const steps: Step[] = [];
    const prose: Prose[] = [];
    for (const block of [lesson, ...lesson.parts]) addSteps(block.steps, steps);
    for (const step of steps) prose.push(step.prose);
    for (const block of [lesson, ...lesson.parts]) {
        for (const caution of block.cautions) if (caution.prose) prose.push(caution.prose);
    }
    let spoken: ReadonlySet<string> | undefined;
    return { needs: allNeeds(lesson), steps, prose, named: firstMentions(prose), spoken: () => (spoken ??= wordsSpoken(steps)) };
}

function wordsSpoken(steps: readonly Step[]): Set<string> {
    const words = new Set<string>();
    for (const { word, prose } of steps) if (word === 'say' || word === 'ask') addWords(prose, words);
    return words;
}

function addWords(prose: Prose, words: Set<string>): void {
    for (const part of prose.parts) {
        if ('text' in part) for (const word of part.text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []) words.add(word);
    }
}

export function lessonFacts(lesson: LessonSheet, reading: LessonReading, programme: Programme): LessonFacts {
    const games = lesson.parts.flatMap(part => (part.kind === 'game' ? programme.games.get(part.name) ?? [] : []));
    const there = thingsThere(reading.needs, programme);
    for (const game of games) {
        for (const thing of gameThings(game, programme)) there.add(thing);
    }
    return { ...reading, games, there };
}

/** Things that are there when a lesson is taught, worked out anew: for one that an adaptation has made. */
export function thingsTaughtWith(lesson: LessonSheet, programme: Programme): ReadonlySet<string> {
    return lessonFacts(lesson, readLesson(lesson), programme).there;
}

/** What a game brings: its needs with their stand-ins, and the book with its rules. */
export function gameThings(game: GameSheet, programme: Programme): Set<string> {
    const things = thingsThere(game.needs, programme);
    if (game.found) things.add(game.found.book.name);
    return things;
}

export function firstMentions(prose: readonly Prose[]): Map<string, Mention> {
    const named = new Map<string, Mention>();
    for (const text of prose) {
        eachName(text, mention => { if (!named.has(mention.name)) named.set(mention.name, mention); });
    }
    return named;
}

function thingsThere(needs: readonly Need[], programme: Programme): Set<string> {
    const there = new Set<string>();
    for (const need of needs) {
        for (const { thing } of need.options) {
            there.add(thing.name);
            for (const standIn of programme.materials.get(thing.name)?.standIns ?? []) there.add(standIn.thing.name);
        }
    }
    return there;
}
