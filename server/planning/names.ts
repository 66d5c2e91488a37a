import type { Programme } from '@haversack/language/sheets/programme';
import type { GameSheet, LessonSheet, Prose } from '@haversack/language/sheets/sheet';
import type { CautionFigures, NameFigures, ThingFigures } from './figures.js';
import { namesIn } from './parts.js';

/** Titles and places for all that this week's lines speak of: names in braces, things, and what cautions are about. */
export function nameFigures(
    programme: Programme, lessons: readonly LessonSheet[], things: readonly ThingFigures[], cautions: readonly CautionFigures[]
): Record<string, NameFigures> {
    const facts = new Map(things.map(t => [t.name, factOf(t)]));
    const prose: (Prose | undefined)[] = [...things.flatMap(t => [t.kept, ...t.notes]), ...lessons.flatMap(l => gamesOf(programme, l).map(g => g.kept)), ...cautions.map(c => c.prose)];
    const spoken = new Set([
        ...lessons.flatMap(l => lessonNames(programme, l)),
        ...prose.flatMap(p => p?.parts.flatMap(part => ('name' in part ? [part.name] : [])) ?? []),
        ...things.map(t => t.name),
        ...cautions.flatMap(c => (c.thing === undefined ? [] : [c.thing]))
    ]);
    // Names such as "__proto__" must stay plain entries; fromEntries defines them as own properties.
    return Object.fromEntries([...spoken].flatMap(name => {
        const found = lookUp(programme, name, lessons);
        const fact = facts.get(name);
        return found ? [[name, fact === undefined ? found : { ...found, fact }]] : [];
    }));
}

/** The same for names in braces in some prose alone. */
export function namesInProse(programme: Programme, prose: readonly (Prose | undefined)[]): Record<string, NameFigures> {
    const names = new Set(prose.flatMap(one => one?.parts.flatMap(part => ('name' in part ? [part.name] : [])) ?? []));
    return Object.fromEntries([...names].flatMap(name => {
        const found = lookUp(programme, name, []);
        return found ? [[name, found]] : [];
    }));
}

function lessonNames(programme: Programme, lesson: LessonSheet): string[] {
    return [
        ...namesIn(lesson.steps),
        ...[...lesson.parts, ...gamesOf(programme, lesson)].flatMap(({ steps }) => namesIn(steps))
    ];
}

function gamesOf(programme: Programme, lesson: LessonSheet): GameSheet[] {
    return lesson.parts.flatMap(part => (part.kind === 'game' ? programme.games.get(part.name) ?? [] : []));
}

function lookUp(programme: Programme, name: string, lessons: readonly LessonSheet[]): NameFigures | undefined {
    const sheet = programme.materials.get(name) ?? programme.prints.get(name) ?? programme.books.get(name)
        ?? programme.games.get(name) ?? programme.lessons.get(name) ?? programme.objectives.get(name);
    if (sheet) return { title: sheet.title, kind: sheet.kind, place: { uri: sheet.uri, range: sheet.at } };
    const taughtIn = lessons.find(l => l.words.some(w => w.name === name)) ?? findWord(programme, name);
    const word = taughtIn?.words.find(w => w.name === name);
    return taughtIn && word && { title: name.replaceAll('-', ' '), kind: 'word', place: { uri: taughtIn.uri, range: word.at } };
}

function findWord(programme: Programme, name: string): LessonSheet | undefined {
    for (const lesson of programme.lessons.values()) if (lesson.words.some(w => w.name === name)) return lesson;
    return undefined;
}

/** "this week 80, at hand 60". */
function factOf(thing: ThingFigures): string {
    return [`this week ${thing.amount.text}`, ...(thing.atHand ? [`at hand ${thing.atHand.text}`] : [])].join(', ');
}
