import type { GameSheet, LessonSheet, Need, Place } from '@haversack/language/sheets/sheet';
import type { Programme } from '@haversack/language/sheets/programme';
import type { Difference } from '../edition-figures.js';
import { listing } from '@haversack/language/facts/wording';
import type { Pair } from './alike.js';
import type { Matched } from './matched.js';
import { placeIn, type Renamed } from './plain.js';
import { amountKey, difference, needText, perText } from './words.js';

interface Line {
    need: Need;
    place: Place;
    /** Equal for lines that ask for the same. */
    key: string;
    text: string;
    /** Its end that tells of the kit. */
    kit: string;
}

/** What a lesson asks for now, and its games and parts; which part of the lesson a line stands under means nothing for who fetches it. */
export function needDifferences(matched: Matched, { old, new: now }: Pair<LessonSheet>): Difference[] {
    const before = linesByThing(matched, old, 'old');
    const after = linesByThing(matched, now, 'new');
    const things = [...new Set([...after.keys(), ...before.keys()])];
    return things.flatMap(thing => differencesOf(title(matched, thing), before.get(thing) ?? [], after.get(thing) ?? []));
}

/** What a game asks for, for the game itself. */
export function gameNeedDifferences(matched: Matched, old: GameSheet, now: GameSheet): Difference[] {
    const before = byThing(old.needs.map(need => lineFrom(matched, need, old.uri, 'old')));
    const after = byThing(now.needs.map(need => lineFrom(matched, need, now.uri, 'new')));
    return [...new Set([...after.keys(), ...before.keys()])].flatMap(thing => differencesOf(title(matched, thing), before.get(thing) ?? [], after.get(thing) ?? []));
}

function title(matched: Matched, newName: string): string {
    return matched.titleIn('new')(newName) === newName.replaceAll('-', ' ') ? matched.titleIn('old')(newName) : matched.titleIn('new')(newName);
}

function differencesOf(thing: string, before: readonly Line[], after: readonly Line[]): Difference[] {
    const gone = without(before, after);
    const added = without(after, before);
    if (gone.length === 0 && added.length === 0) return [];
    const sides = { old: gone[0]?.place ?? before[0]?.place, new: added[0]?.place ?? after[0]?.place };
    const texts = (lines: readonly Line[]): string => listing(lines.map(({ text }) => text));
    if (before.length === 0) return [difference('need', `${thing}: now needed, ${texts(added)}`, { new: sides.new })];
    if (after.length === 0) return [difference('need', `${thing}: no longer needed (was ${texts(gone)})`, { old: sides.old })];
    if (gone.length === 0) return [difference('need', `${thing}: also ${texts(added)}`, sides)];
    if (added.length === 0) return [difference('need', `${thing}: no longer ${texts(gone)}`, sides)];
    // Only where that is what changed, it is said whether the kit has it.
    const plain = (lines: readonly Line[]): string => listing(lines.map(({ text, kit }) => text.slice(0, text.length - kit.length)));
    const says = plain(added) === plain(gone) ? `${texts(added)} instead of ${texts(gone)}` : `${plain(added)} instead of ${plain(gone)}${added.every(({ kit }) => kit === gone[0]!.kit) && gone.every(({ kit }) => kit === gone[0]!.kit) ? '' : `; now${added[0]!.kit === '' ? ' nothing is said of the kit' : added[0]!.kit.slice(1)}`}`;
    return [difference('need', `${thing}: ${says}`, sides)];
}

/** Lines of the one list that the other does not have as often. */
function without(lines: readonly Line[], others: readonly Line[]): Line[] {
    const left = others.map(({ key }) => key);
    return lines.filter(({ key }) => {
        const found = left.indexOf(key);
        if (found >= 0) left.splice(found, 1);
        return found < 0;
    });
}

function linesByThing(matched: Matched, lesson: LessonSheet, side: 'old' | 'new'): Map<string, Line[]> {
    const programme: Programme = side === 'old' ? matched.old : matched.now;
    const lines = lesson.needs.map(need => lineFrom(matched, need, lesson.uri, side));
    for (const part of lesson.parts) {
        for (const need of part.needs) lines.push(lineFrom(matched, need, part.uri ?? lesson.uri, side));
        const game = part.kind === 'game' ? programme.games.get(part.name) : undefined;
        for (const need of game?.needs ?? []) lines.push(lineFrom(matched, need, game!.uri, side));
    }
    return byThing(lines);
}

function byThing(lines: readonly { thing: string; line: Line }[]): Map<string, Line[]> {
    const things = new Map<string, Line[]>();
    for (const { thing, line } of lines) {
        if (thing === '') continue;
        things.set(thing, [...things.get(thing) ?? [], line]);
    }
    return things;
}

function lineFrom(matched: Matched, need: Need, uri: string, side: 'old' | 'new'): { thing: string; line: Line } {
    const renamed: Renamed = side === 'old' ? matched.newThing : name => name;
    const titleOf = matched.titleIn(side);
    const others = need.options.slice(1).map(({ thing }) => titleOf(thing.name));
    const kit = need.inKit === undefined ? '' : need.inKit ? ', in the kit' : ', not in the kit';
    const text = `${needText(need, name => name.replaceAll('-', ' '))}${others.length > 0 ? `, or ${listing(others, 'or')}` : ''}${kit}`;
    const parts = need.options.map(option => `${renamed(option.thing.name)} ${option.parts.map(({ name }) => name).sort().join(' ')}`).join(' or ');
    const key = `${parts}|${amountKey(need.amount)}|${perText(need.per)}|${need.optional ? 'optional' : ''}|${need.inKit ?? ''}`;
    return { thing: renamed(need.options[0]?.thing.name ?? ''), line: { need, place: placeIn(uri, need.at), key, text, kit } };
}
