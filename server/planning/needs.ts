import Fraction from 'fraction.js';
import type { GameSheet, LessonSheet, Need, PartSheet, Per, Place } from '@haversack/language/sheets/sheet';
import type { Reading } from './cache.js';
import { groupsOf, pairsOf, sizesInWords, tablesFor, type Crowd } from './people.js';
import { counted } from '@haversack/language/facts/wording';

/** One line under `materials`, wherever in the lesson it stands. */
export interface NeedLine {
    need: Need;
    /** The file it stands in: a game's may be another than the lesson's. */
    uri: string;
    /** The part that uses it, counted from 0; -1 for a need of the whole lesson. */
    slot: number;
    part?: PartSheet;
    /** The game whose own need this is. */
    game?: GameSheet;
}

/** All need lines of a lesson: its own, its parts', and what the games it plays bring, their book of rules included. */
export function needLines(lesson: LessonSheet, reading: Reading): NeedLine[] {
    const lines: NeedLine[] = lesson.needs.map(need => ({ need, uri: need.uri ?? lesson.uri, slot: -1 }));
    lesson.parts.forEach((part, slot) => {
        for (const need of part.needs) lines.push({ need, uri: need.uri ?? part.uri ?? lesson.uri, slot, part });
        const game = part.kind === 'game' ? reading.game(part.name) : undefined;
        if (!game) return;
        for (const need of game.needs) lines.push({ need, uri: game.uri, slot, part, game });
        const rules = rulesNeed(game, reading);
        if (rules) lines.push({ need: rules, uri: game.uri, slot, part, game });
    });
    return lines;
}

function rulesNeed(game: GameSheet, reading: Reading): Need | undefined {
    if (!game.found || !reading.thing(game.found.book.name)) return undefined;
    const { book, at } = game.found;
    return { options: [{ thing: book, parts: [] }], amount: { value: '1', at }, per: { who: 'class' }, optional: false, at };
}

export function placeOf(line: NeedLine): Place {
    return { uri: line.uri, range: line.need.at };
}

/** How often one crowd needs the amount of a line, and why: 4, "4 pairs". */
export function timesFor(line: NeedLine, crowd: Crowd): { times: Fraction; words: string } {
    const { times, words } = count(line.need.per, crowd, line.game);
    return { times: new Fraction(times), words };
}

function count(per: Per | undefined, crowd: Crowd, game: GameSheet | undefined): { times: number; words: string } {
    switch (per?.who) {
        case 'learner': return { times: crowd.learners, words: counted(crowd.learners, 'learner') };
        case 'adult': return { times: crowd.adults, words: counted(crowd.adults, 'adult') };
        case 'pair': {
            const pairs = pairsOf(crowd.learners);
            return { times: pairs, words: counted(pairs, 'pair') };
        }
        case 'group': {
            if (per.size === undefined && game) {
                const tables = tablesFor(crowd, game.players);
                return { times: tables.sizes.length, words: `${counted(tables.sizes.length, 'table')} of ${sizesInWords(tables.sizes)} (${tables.why})` };
            }
            const sizes = groupsOf(crowd.learners, per.size ?? crowd.groupsOf);
            const known = per.size !== undefined || crowd.groupsOf !== undefined;
            const words = known && sizes.length > 0
                ? `${counted(sizes.length, 'group')} of ${sizesInWords(sizes)}`
                : `${counted(sizes.length, 'group')} (no group size is given)`;
            return { times: sizes.length, words };
        }
        case 'class': return { times: 1, words: 'the whole class' };
        default: return { times: 1, words: 'the whole class (nothing says per whom)' };
    }
}

/** "for each pair", "for the class". */
export function eachInWords(per: Per | undefined): string {
    if (!per || per.who === 'class') return 'for the class';
    if (per.who === 'group' && per.size !== undefined) return `for each group of ${per.size}`;
    return `for each ${per.who}`;
}
