import type { GameSheet, LessonSheet, PartSheet, Step, Unsure } from '@haversack/language/sheets/sheet';
import { thingNamed, type Programme } from '@haversack/language/sheets/programme';
import { figure } from './amounts.js';
import type { Youngest } from '@haversack/language/facts/caution-ages';
import { changesOf } from './change-figures.js';
import { cautionFigures, cautionsOf, eachOnce } from './cautions.js';
import type { LineDemand } from './demand.js';
import type { CautionFigures, LessonFigures, PartFigures, StepFigures } from './figures.js';
import { placeOf } from './needs.js';
import { playersInWords, sizesInWords, tablesFor, type Crowd } from './people.js';
import { pictureFigures } from './pictures.js';
import { practiceItemFigures, practiceLines } from './practice.js';
import { counted, quoted } from '@haversack/language/facts/wording';

/** What a part of a lesson is shown with. */
export interface PartContext {
    programme: Programme;
    crowds: readonly Crowd[];
    lesson: LessonSheet;
    /** The need lines of this part, counted. */
    lines: readonly LineDemand[];
    startsAt?: number;
    /** Absent where nobody has said how old the children are. */
    youngest?: Youngest;
}

export function partFigures(part: PartSheet, context: PartContext): PartFigures {
    const { programme, lesson, lines } = context;
    const uri = part.uri ?? lesson.uri;
    const game = part.kind === 'game' ? programme.games.get(part.name) : undefined;
    return {
        kind: part.kind,
        name: part.name,
        title: game?.title ?? part.title,
        minutes: part.minutes,
        startsAt: context.startsAt,
        steps: stepFigures(part.steps, uri),
        cautions: partCautions(part, game, context),
        needs: lines.map(needFigures),
        game: game && gameFigures(game, programme, context.crowds),
        items: part.items,
        practice: part.practice && practiceLines(part),
        practiceItems: part.practice && practiceItemFigures(part, lesson),
        unsure: part.unsure && unsureInWords(part.unsure, lesson, programme),
        unsureAs: part.unsure,
        ...changesOf(part.adapted),
        place: { uri, range: part.at }
    };
}

export function needFigures(line: LineDemand): LessonFigures['needs'][number] {
    return {
        title: line.thing.title,
        name: line.thing.name,
        amount: figure(line.amount, line.measure, [...(line.choice ? [line.choice] : []), ...line.steps]),
        each: line.each,
        place: placeOf(line.line),
        optional: line.line.need.optional,
        ...changesOf(line.line.need.adapted)
    };
}

export function stepFigures(steps: readonly Step[], uri: string): StepFigures[] {
    return steps.map(step => {
        const place = { uri: step.uri ?? uri, range: step.at };
        return {
            word: step.word,
            prose: step.prose,
            picture: step.show && pictureFigures(step.show, place),
            place,
            under: stepFigures(step.under, place.uri),
            ...changesOf(step.adapted)
        };
    });
}

/** Names in braces anywhere in these steps. */
export function namesIn(steps: readonly Step[]): string[] {
    return steps.flatMap(step => [
        ...step.prose.parts.flatMap(part => ('name' in part ? [part.name] : [])),
        ...namesIn(step.under)
    ]);
}

/** The part's own cautions, its game's, and those of every thing it uses or speaks of. */
function partCautions(part: PartSheet, game: GameSheet | undefined, context: PartContext): CautionFigures[] {
    const spoken = [...namesIn(part.steps), ...(game ? namesIn(game.steps) : [])];
    const things = new Set([...context.lines.map(l => l.thing.name), ...spoken]);
    return eachOnce([
        ...cautionFigures(part.cautions, part.uri ?? context.lesson.uri, context.youngest),
        ...(game ? cautionsOf(game, context.youngest) : []),
        ...[...things].flatMap(name => {
            const thing = thingNamed(context.programme, name);
            return thing ? cautionsOf(thing, context.youngest) : [];
        })
    ]);
}

function gameFigures(game: GameSheet, programme: Programme, crowds: readonly Crowd[]): PartFigures['game'] {
    return {
        rules: game.found && rulesInWords(game.found, programme),
        players: game.players && playersInWords(game.players),
        tables: tablesInWords(game, crowds),
        kept: game.kept?.parts.length ? game.kept : undefined,
        place: { uri: game.uri, range: game.at },
        steps: stepFigures(game.steps, game.uri)
    };
}

/** "Table games for measuring, edition 3, chapter “Weighing”, number 12". */
function rulesInWords(found: NonNullable<GameSheet['found']>, programme: Programme): string {
    return [
        programme.books.get(found.book.name)?.title ?? found.book.name,
        found.edition === undefined ? '' : `edition ${found.edition}`,
        found.chapter === undefined ? '' : `chapter ${quoted(found.chapter)}`,
        found.number === undefined ? '' : `number ${found.number}`,
        found.page === undefined ? '' : `page ${found.page}`
    ].filter(Boolean).join(', ');
}

/** "3 tables of 3, 2 and 2 play at once (the class's own groups fit 2 to 4 players)". */
function tablesInWords(game: GameSheet, crowds: readonly Crowd[]): string {
    return crowds.filter(c => c.learners > 0).map(crowd => {
        const { sizes, why } = tablesFor(crowd, game.players);
        const room = crowd.title === undefined ? '' : `${crowd.title}: `;
        return `${room}${counted(sizes.length, 'table')} of ${sizesInWords(sizes)} ${sizes.length === 1 ? 'plays' : 'play at once'} (${why})`;
    }).join('; ');
}

function unsureInWords(unsure: Unsure, lesson: LessonSheet, programme: Programme): string {
    switch (unsure.then) {
        case 'repeat': {
            const other = unsure.of === undefined ? undefined : programme.lessons.get(unsure.of);
            const title = (other ?? lesson).parts.find(p => p.name === unsure.activity.name)?.title ?? unsure.activity.name;
            return `Repeat ${quoted(title)} ${other ? `of ${quoted(other.title)} ` : ''}${unsure.when}.`;
        }
        case 'repeat lesson': return `Repeat the whole lesson${unsure.when === undefined ? '' : ` ${unsure.when}`}.`;
        case 'revisit': return `Go on and revisit in ${counted(unsure.lessons, 'lesson')}.`;
    }
}
