import type { Programme } from '../sheets/programme.js';
import type { GameSheet, LessonSheet, Mention, Need, Prose, Step } from '../sheets/sheet.js';
import { allNeeds, allProse, allSteps, namesIn } from './walk-lessons.js';

/** What several checks ask of one lesson. */
export interface LessonFacts {
    /** The lesson's own needs and those of its parts. */
    needs: readonly Need[];
    games: readonly GameSheet[];
    /** Things that are there: needed, brought by a game, or a stand-in for one of them. */
    there: ReadonlySet<string>;
    /** Each name that stands in braces somewhere in the lesson, where it stands first. */
    named: ReadonlyMap<string, Mention>;
    prose: readonly Prose[];
    /** Steps of the lesson and its parts, those under others included. */
    steps: readonly Step[];
}

export function lessonFacts(lesson: LessonSheet, programme: Programme): LessonFacts {
    const needs = allNeeds(lesson);
    const games = lesson.parts.flatMap(part => (part.kind === 'game' ? programme.games.get(part.name) ?? [] : []));
    const there = thingsThere(needs, programme);
    for (const game of games) {
        for (const thing of gameThings(game, programme)) there.add(thing);
    }
    const prose = allProse(lesson);
    return {
        needs, games, there, prose,
        named: firstMentions(prose),
        steps: allSteps([...lesson.steps, ...lesson.parts.flatMap(part => part.steps)])
    };
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
        for (const mention of namesIn(text)) {
            if (!named.has(mention.name)) named.set(mention.name, mention);
        }
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
