import type { GameSheet, LessonSheet } from '@haversack/language/sheets/sheet';
import type { NeedLine } from '../needs.js';
import { namesIn } from '../parts.js';
import type { Meeting, TaughtFigures } from '../schedule-figures.js';

/** What a meeting needs of a lesson of which it teaches a part. */
export interface Piece {
    /** Alike for pieces that need the same of one lesson. */
    key: string;
    takes(line: NeedLine, name: string, usedUp: boolean): boolean;
}

export type Taught = Pick<TaughtFigures, 'lesson'> & Partial<TaughtFigures>;

/** What is taught at a meeting; without details, its lessons whole. */
export function taughtAt(meeting: Meeting): readonly Taught[] {
    return meeting.taught.length > 0 ? meeting.taught : meeting.lessons.map(lesson => ({ lesson }));
}

/**
 * Undefined where the whole lesson is taught, again or not: then it needs all its things.
 *
 * A lesson split over meetings: what it needs as a whole and is handed back is there at each of them, what is used up comes once,
 * to the first; needs of a part come where the part is taught. A part that is repeated by itself needs its own things again, and of the
 * lesson's those that its steps name.
 */
export function pieceOf({ parts, piece, why }: Taught, lesson: LessonSheet, game: (name: string) => GameSheet | undefined): Piece | undefined {
    if (!parts) return undefined;
    const slots = new Set(parts);
    if (piece || (why !== 'repeat' && why !== 'revisit')) {
        const isFirst = (piece?.number ?? 1) === 1;
        return {
            key: `${parts.join()} ${isFirst ? 'first' : 'later'}`,
            takes: ({ slot }, _name, usedUp) => (slot < 0 ? isFirst || !usedUp : slots.has(slot))
        };
    }
    const repeated = parts.flatMap(slot => lesson.parts[slot] ?? []);
    const named = new Set(repeated.flatMap(part => [...namesIn(part.steps), ...namesIn((part.kind === 'game' ? game(part.name)?.steps : undefined) ?? [])]));
    return { key: `${parts.join()} again`, takes: ({ slot }, name) => (slot < 0 ? named.has(name) : slots.has(slot)) };
}
