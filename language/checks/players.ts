import { counted } from '../facts/wording.js';
import type { ClassSheet, GameSheet, LessonSheet } from '../sheets/sheet.js';
import type { Check, Fix } from './check.js';
import { classesTaught } from './classes-taught.js';
import { replace } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';

const course = 'course measuring\n  unit weighing\n    weigh-1\n\nclass harbour\n  teaches measuring\n  learners 7\n  adults 1\n  starts 2026-09-07\n  meets mon\n\n';
const lesson = '\n\nlesson weigh-1\n  game grocer 10 min';

export const tooFewPlayers: Check = {
    code: 'too-few-players', severity: 'warning', title: 'A game with places that nobody takes',
    explains: 'All learners of a class play a game at the same time, at as few tables as the game’s largest number of players allows. Where they do not come out even, adults take the places that stay empty. Here there are more such places than adults, so some table cannot play. Let the game be played by fewer if its rules allow, count one more adult, or let an adaptation for the class skip the game or swap it.',
    wrong: `${course}game grocer\n  players 5${lesson}`, right: `${course}game grocer\n  players 3 to 5${lesson}`,
    *find(file, view) {
        for (const lesson of file.lessons) {
            for (const part of lesson.parts) {
                const game = part.kind === 'game' ? view.programme.games.get(part.name) : undefined;
                const short = game?.players && !view.isBroken(game) ? shortest(lesson, game, view) : undefined;
                if (!short) continue;
                const { crowd, places } = short;
                yield {
                    message: `'${game!.name}' is for ${playersOf(game!)} players. ${crowd.who} has ${counted(crowd.learners, 'learner')}, so ${counted(places, 'place')} at its ${counted(short.tables, 'table')} ${places === 1 ? 'stays' : 'stay'} empty, and ${crowd.adults === 0 ? 'no adult is there' : `only ${counted(crowd.adults, 'adult')} ${crowd.adults === 1 ? 'is' : 'are'} there`} to play along.`,
                    at: part.at, related: [{ message: 'How many play it', place: { uri: game!.uri, range: game!.players!.at } }, { message: 'The class', place: { uri: short.group.uri, range: short.group.at } }],
                    fixes: fewer(game!, short)
                };
            }
        }
    }
};

/** Those who play at the same time: a class, or a section of it. */
interface Crowd {
    who: string;
    learners: number;
    adults: number;
}

interface Short {
    group: ClassSheet;
    crowd: Crowd;
    tables: number;
    /** Places that no learner takes. */
    places: number;
}

/** The crowd that lacks the most players; undefined where all can play. */
function shortest(lesson: LessonSheet, game: GameSheet, view: ProgrammeView): Short | undefined {
    const { from, to = from } = game.players!;
    if (!(from >= 1 && to >= from)) return undefined;
    const groups = classesTaught(lesson, view).filter(({ taught }) => taught.some(({ parts }) => parts.some(({ kind, name }) => kind === 'game' && name === game.name)));
    const short = groups.flatMap(({ group }) => crowdsOf(group).map((crowd): Short => {
        const tables = Math.ceil(crowd.learners / to);
        return { group, crowd, tables, places: tables * from - crowd.learners };
    }));
    return short.filter(({ places, crowd }) => places > crowd.adults).sort((a, b) => b.places - b.crowd.adults - (a.places - a.crowd.adults))[0];
}

/** Only those of whom it is written how many they are; where nobody says how many adults there are, one is there. */
function crowdsOf({ name, learners, adults = 1, sections }: ClassSheet): Crowd[] {
    const crowds = sections.length === 0 ? [{ who: `Class '${name}'`, learners: learners?.count, adults }]
        : sections.map(section => ({ who: `Section '${section.name}' of class '${name}'`, learners: section.learners, adults: section.adults ?? adults }));
    return crowds.flatMap(crowd => (crowd.learners !== undefined && crowd.learners >= 1 ? [{ ...crowd, learners: crowd.learners }] : []));
}

/** As many as come to each table when every adult plays. */
function fewer(game: GameSheet, { crowd, tables }: Short): Fix[] {
    const { from, to = from, at } = game.players!;
    const least = Math.floor((crowd.learners + crowd.adults) / tables);
    return least < 1 ? [] : [{ title: `Let ${least} to ${to} play '${game.name}'`, edits: [replace(game.uri, at, `${least} to ${to}`)] }];
}

const playersOf = ({ players }: GameSheet): string => (players!.to === undefined || players!.to === players!.from ? String(players!.from) : `${players!.from} to ${players!.to}`);
