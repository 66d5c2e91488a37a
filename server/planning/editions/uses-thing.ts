import type { Programme } from '@haversack/language/sheets/programme';
import type { LessonSheet, Need, PartSheet } from '@haversack/language/sheets/sheet';
import { flatSteps } from './plain.js';

/** Whether a lesson, or a game that it plays, asks for a thing or names it in a step. */
export function usesThing(programme: Programme, lesson: LessonSheet, name: string): boolean {
    const asks = (needs: readonly Need[]): boolean => needs.some(({ options }) => options.some(({ thing }) => thing.name === name));
    const tells = (steps: PartSheet['steps']): boolean => flatSteps(steps).some(({ prose }) => prose.parts.some(part => 'name' in part && part.name === name));
    return asks(lesson.needs) || tells(lesson.steps) || lesson.parts.some(part => asks(part.needs) || tells(part.steps) || asks((part.kind === 'game' ? programme.games.get(part.name)?.needs : undefined) ?? []));
}
