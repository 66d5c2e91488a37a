import type { LessonSheet, ObjectiveSheet } from '@haversack/language/sheets/sheet';
import type { Matched } from './matched.js';
import { comings } from './words.js';

/** The lessons that are taught, in teaching order. */
export interface Taught {
    old: readonly LessonSheet[];
    new: readonly LessonSheet[];
}

export type Does = 'introduces' | 'practises' | 'checks';

/** An objective that other lessons introduce, practise or check than before. */
export interface ObjectiveShift {
    does: Does;
    old: ObjectiveSheet;
    new: ObjectiveSheet;
    /** The lessons that do it, in either edition. */
    before: readonly LessonSheet[];
    after: readonly LessonSheet[];
    gone: readonly LessonSheet[];
    added: readonly LessonSheet[];
    /** Where one lesson took it from another: the lesson of the new edition at which that is told, of those that both editions teach. */
    toldAt?: LessonSheet;
    /** All lessons concerned are taught in both editions, or it is told at one of them: the objective itself need not tell it. */
    inLessons: boolean;
}

/** Which lessons do what for which objective, otherwise than before; so that it is told once, where a teacher acts. */
export class ObjectiveShifts {
    private readonly byName = new Map<string, ObjectiveShift>();

    constructor(private readonly matched: Matched, { old, new: now }: Taught) {
        const kept = new Map(old.flatMap(lesson => {
            const there = matched.lessonPair(lesson.name)?.new;
            return there && now.includes(there) ? [[lesson, there] as const] : [];
        }));
        const stays = new Set(kept.values());
        const before = lessonsByObjective(old);
        const after = lessonsByObjective(now);
        for (const pair of matched.objectives.pairs) {
            for (const does of allDoes) {
                const lists = { before: before.get(`${does} ${pair.old.name}`) ?? [], after: after.get(`${does} ${pair.new.name}`) ?? [] };
                const { gone, added } = comings(lists.before, lists.after, ({ name }) => matched.newLesson(name), ({ name }) => name);
                if (gone.length === 0 && added.length === 0) continue;
                const [from, to] = gone.length === 1 && added.length === 1 ? [gone[0]!, added[0]!] : [];
                const toldAt = to && stays.has(to) ? to : from && kept.get(from);
                const inLessons = toldAt !== undefined || (gone.every(lesson => kept.has(lesson)) && added.every(lesson => stays.has(lesson)));
                this.byName.set(`${does} ${pair.new.name}`, { does, old: pair.old, new: pair.new, ...lists, gone, added, toldAt, inLessons });
            }
        }
    }

    /** By the objective's name in the new edition. */
    of(does: Does, objective: string): ObjectiveShift | undefined {
        return this.byName.get(`${does} ${objective}`);
    }

    /** The title that a lesson of the old edition has now. */
    titleNow(lesson: LessonSheet): string {
        return (this.matched.lessonPair(lesson.name)?.new ?? lesson).title;
    }
}

const allDoes: readonly Does[] = ['introduces', 'practises', 'checks'];

function lessonsByObjective(lessons: readonly LessonSheet[]): Map<string, LessonSheet[]> {
    const found = new Map<string, LessonSheet[]>();
    for (const lesson of lessons) {
        for (const key of new Set(allDoes.flatMap(does => lesson[does].map(({ name }) => `${does} ${name}`)))) {
            const list = found.get(key);
            if (list) list.push(lesson);
            else found.set(key, [lesson]);
        }
    }
    return found;
}
