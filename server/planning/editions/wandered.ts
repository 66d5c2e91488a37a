import type { LessonSheet, PartSheet } from '@haversack/language/sheets/sheet';
import { pairUp, type Pair } from './alike.js';
import type { Matched } from './matched.js';
import { flatSteps, saying, stepText } from './plain.js';

/** A part that stands in another lesson now; both lessons as the new edition has them. */
export interface Wandered {
    from: LessonSheet;
    to: LessonSheet;
    pair: Pair<PartSheet>;
}

/** So much of the steps must be the same, for many lessons begin and end alike. */
const nearlyTheSame = 0.8;

/** Parts that left one lesson and stand in another one, nearly word for word. */
export function wanderedParts(matched: Matched, pairs: readonly Pair<LessonSheet>[]): Wandered[] {
    const changed = pairs.filter(pair => !matched.saysTheSame(pair));
    const gone = changed.flatMap(pair => matched.partsOf(pair).gone.map(part => ({ part, lesson: pair.new })));
    const added = changed.flatMap(pair => matched.partsOf(pair).added.map(part => ({ part, lesson: pair.new })));
    const wanders = pairUp(gone, added, {
        // Both in one lesson would have been paired there, so no two names are the same.
        name: ({ part, lesson }) => `${lesson.name}.${part.name}`, saying: ({ part }) => saying(part), least: nearlyTheSame,
        aspects: ({ part }, side) => [
            { what: 'steps', weight: 3, items: flatSteps(part.steps).map(step => stepText(step, side === 'old' ? matched.newName : undefined)) },
            { what: 'games', weight: 3, items: part.kind === 'game' ? [side === 'old' ? matched.newThing(part.name) : part.name] : [] },
            { what: 'practice lines', weight: 3, items: (part.practice ?? []).map(line => [...line.words, ...line.numbers].join(' ')) }
        ]
    });
    return wanders.pairs.flatMap(({ old, new: now, recognised }) => (recognised ? [{ from: old.lesson, to: now.lesson, pair: { old: old.part, new: now.part, recognised } }] : []));
}
