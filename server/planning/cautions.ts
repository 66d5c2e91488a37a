import { isSerious, remindBelow, seriousBelow, youngestOf, type Youngest } from '@haversack/language/facts/caution-ages';
import { cautionKind, gaugeFirst, swallowedMagnets } from '@haversack/language/facts/cautions';
import { gaugeAnswer, isSmallBall, type GaugeAnswer } from '@haversack/language/facts/small-parts';
import type { Caution, ClassSheet, CourseSheet, GameSheet, MaterialSheet, ThingSheet } from '@haversack/language/sheets/sheet';
import { titleFromName } from '@haversack/language/sheets/titles';
import { changesOf } from './change-figures.js';
import type { CautionFigures } from './figures.js';

/** Who is youngest where the class meets, as far as anybody has said; without a class, by the ages of the course. */
export function youngestIn(sheet: ClassSheet | undefined, course: CourseSheet | undefined): Youngest | undefined {
    return youngestOf(sheet?.present.map(({ who }) => who) ?? [], sheet?.ages ?? course?.ages);
}

/** The usual caution beside each line that a writer wrote; `thing` is the name of what it is about. */
export function cautionFigures(cautions: readonly Caution[], uri: string, youngest: Youngest | undefined, thing?: string): CautionFigures[] {
    return cautions.map(caution => ({
        kind: caution.kind,
        title: cautionKind(caution.kind)?.title ?? titleFromName(caution.kind),
        text: cautionKind(caution.kind)?.text ?? `${titleFromName(caution.kind)}: take care.`,
        prose: caution.prose,
        thing,
        place: { uri: caution.uri ?? uri, range: caution.at },
        ...seriously(caution.kind, youngest),
        ...changesOf(caution.adapted)
    }));
}

/** The cautions of a thing or a game, those that its size and the ages in the room make included; books have none. */
export function cautionsOf(thing: ThingSheet | GameSheet, youngest: Youngest | undefined): CautionFigures[] {
    if (thing.kind === 'book') return [];
    const declared = cautionFigures(thing.cautions, thing.uri, youngest, thing.name);
    if (thing.kind !== 'material' || !thing.size) return declared;
    const answer = gaugeAnswer(thing.size.sides, thing.size.unit);
    return [...declared.map(caution => (caution.kind === 'magnet' ? magnetBySize(caution, thing, answer) : caution)), ...bySize(thing, answer, youngest)];
}

/** Each line once, in order. */
export function eachOnce(cautions: readonly CautionFigures[]): CautionFigures[] {
    const key = (c: CautionFigures): string => `${c.place.uri}#${c.place.range.start.line}:${c.place.range.start.character}`;
    return [...new Map(cautions.map(c => [key(c), c])).values()];
}

function seriously(kind: string, youngest: Youngest | undefined): Pick<CautionFigures, 'serious'> {
    return youngest && isSerious(kind, youngest) ? { serious: `${youngest.who}: keep all of it out of their reach.` } : {};
}

/** A magnet that can be swallowed harms at any age, so here the ages in the room do not matter. */
function magnetBySize(caution: CautionFigures, thing: MaterialSheet, answer: GaugeAnswer | undefined): CautionFigures {
    if (answer === undefined || answer === 'does not fit') return caution;
    return { ...caution, text: `${swallowedMagnets[answer]} ${caution.text}`, computed: sizeInWords(thing) };
}

/**
 * What nobody declared and the size tells: a small ball or a small part, where the youngest are of an age that the published labels speak of.
 * Whoever has written a choking caution under the thing has said it already.
 */
function bySize(thing: MaterialSheet, answer: GaugeAnswer | undefined, youngest: Youngest | undefined): CautionFigures[] {
    const { size, cautions, name, uri } = thing;
    if (!size || !youngest || cautions.some(({ kind }) => Object.hasOwn(seriousBelow, kind))) return [];
    const kind = isSmallBall(size.sides, size.unit) ? 'small-ball' : 'small-parts';
    if (youngest.years >= remindBelow[kind] || (kind === 'small-parts' && (answer === undefined || answer === 'does not fit'))) return [];
    const usual = cautionKind(kind)!;
    return [{
        kind,
        title: usual.title,
        text: answer === 'check with a real gauge' ? `${gaugeFirst} ${usual.text}` : usual.text,
        thing: name,
        place: { uri, range: size.at },
        computed: `${sizeInWords(thing)}; ${youngest.who.charAt(0).toLowerCase()}${youngest.who.slice(1)}`,
        ...seriously(kind, youngest)
    }];
}

/** How the sizes are read: one length is a ball, two are the side of a square and a length. */
function sizeInWords({ size }: MaterialSheet): string {
    const { sides = [], unit = '' } = size ?? {};
    if (sides.length === 1) return `a ball of ${sides[0]} ${unit}`;
    if (sides.length === 2) return `${sides[0]} ${unit} square, ${sides[1]} ${unit} long`;
    return `${sides.join(' x ')} ${unit}`;
}
