import { thingNamed, type Programme } from '../sheets/programme.js';
import type { LessonSheet } from '../sheets/sheet.js';
import type { LessonFacts } from './lesson-facts.js';

export type NamedKind = 'thing' | 'objective' | 'lesson' | 'game';

/** Names that are used for something of a kind and that nothing of that kind has. */
export function namesUnknown(programme: Programme, factsOf: (lesson: LessonSheet) => LessonFacts): Record<NamedKind, readonly string[]> {
    const unknown = { thing: new Set<string>(), objective: new Set<string>(), lesson: new Set<string>(), game: new Set<string>() };
    const take = (kind: NamedKind, name: string, isKnown: boolean): void => { if (!isKnown) unknown[kind].add(name); };
    const takeThings = (mentions: readonly { thing: { name: string } }[]): void => {
        for (const { thing } of mentions) take('thing', thing.name, thingNamed(programme, thing.name) !== undefined);
    };
    for (const lesson of programme.lessons.values()) {
        const { needs, named } = factsOf(lesson);
        for (const need of needs) takeThings(need.options);
        for (const list of [lesson.introduces, lesson.practises, lesson.checks]) {
            for (const { name } of list) take('objective', name, programme.objectives.has(name));
        }
        for (const { name, kind } of lesson.parts) if (kind === 'game') take('game', name, programme.games.has(name));
        for (const name of named.keys()) {
            if (!thingNamed(programme, name) && !programme.games.has(name) && !programme.objectives.has(name) && !programme.lessons.has(name)) unknown.thing.add(name);
        }
    }
    for (const game of programme.games.values()) for (const need of game.needs) takeThings(need.options);
    for (const kit of programme.kits.values()) takeThings(kit.holds);
    for (const course of programme.courses.values()) {
        for (const unit of course.units) for (const { name } of unit.lessons) take('lesson', name, programme.lessons.has(name));
    }
    return { thing: [...unknown.thing], objective: [...unknown.objective], lesson: [...unknown.lesson], game: [...unknown.game] };
}
