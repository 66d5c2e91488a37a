import { cautionKind } from '@haversack/language/facts/cautions';
import type { Caution, GameSheet, ThingSheet } from '@haversack/language/sheets/sheet';
import { titleFromName } from '@haversack/language/sheets/titles';
import type { CautionFigures } from './figures.js';

/** The usual caution beside each line that a writer wrote; `thing` is the name of what it is about. */
export function cautionFigures(cautions: readonly Caution[], uri: string, thing?: string): CautionFigures[] {
    return cautions.map(caution => ({
        kind: caution.kind,
        title: cautionKind(caution.kind)?.title ?? titleFromName(caution.kind),
        text: cautionKind(caution.kind)?.text ?? `${titleFromName(caution.kind)}: take care.`,
        prose: caution.prose,
        thing,
        place: { uri, range: caution.at }
    }));
}

/** The cautions of a thing or a game; books have none. */
export function cautionsOf(thing: ThingSheet | GameSheet): CautionFigures[] {
    return thing.kind === 'book' ? [] : cautionFigures(thing.cautions, thing.uri, thing.name);
}

/** Each line once, in order. */
export function eachOnce(cautions: readonly CautionFigures[]): CautionFigures[] {
    const key = (c: CautionFigures): string => `${c.place.uri}#${c.place.range.start.line}:${c.place.range.start.character}`;
    return [...new Map(cautions.map(c => [key(c), c])).values()];
}
