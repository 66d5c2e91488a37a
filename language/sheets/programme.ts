import type {
    AdaptationSheet, BookSheet, ClassSheet, CourseSheet, Declared, FileSheet, FrameworkSheet, GameSheet, KitSheet,
    LessonSheet, MaterialSheet, ObjectiveSheet, PrintSheet, ThingSheet
} from './sheet.js';
import type { Attachment } from '../attachments/attachment.js';

/** All files of one programme, with every name looked up once. The first declaration of a name counts. */
export interface Programme {
    files: ReadonlyMap<string, FileSheet>;
    materials: ReadonlyMap<string, MaterialSheet>;
    prints: ReadonlyMap<string, PrintSheet>;
    books: ReadonlyMap<string, BookSheet>;
    games: ReadonlyMap<string, GameSheet>;
    kits: ReadonlyMap<string, KitSheet>;
    lessons: ReadonlyMap<string, LessonSheet>;
    objectives: ReadonlyMap<string, ObjectiveSheet>;
    frameworks: ReadonlyMap<string, FrameworkSheet>;
    courses: ReadonlyMap<string, CourseSheet>;
    classes: ReadonlyMap<string, ClassSheet>;
    adaptations: ReadonlyMap<string, AdaptationSheet>;
    /** Every declaration after the first of the same kind and name. */
    repeated: readonly { first: Declared; again: Declared & { kind: string } }[];
    unreadable: ReadonlySet<string>;
    /** Calendars and frameworks that the files name, by `attachmentKey` of the naming file and the path as written. */
    attachments: ReadonlyMap<string, Attachment>;
}

/** Names one mention of a file: the address of the file that names it, and the path as written there. */
/** True for a file that declares lessons and nothing else: a change in it moves no other declaration. */
export function declaresOnlyLessons(sheet: FileSheet): boolean {
    const { materials, prints, books, games, kits, objectives, frameworks, courses, classes, adaptations } = sheet;
    return [materials, prints, books, games, kits, objectives, frameworks, courses, classes, adaptations].every(list => list.length === 0);
}

export function attachmentKey(uri: string, path: string): string {
    return `${uri} ${path}`;
}

/** A material, print or book of that name, in this order. */
export function thingNamed(programme: Programme, name: string): ThingSheet | undefined {
    return programme.materials.get(name) ?? programme.prints.get(name) ?? programme.books.get(name);
}

/** Gathers file sheets (in a stable order of their addresses) into one programme. */
export function gatherProgramme(sheets: Iterable<FileSheet>, attachments: ReadonlyMap<string, Attachment> = new Map()): Programme {
    const files = new Map([...sheets].sort((a, b) => (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : 0)).map(s => [s.uri, s]));
    const repeated: { first: Declared; again: Declared & { kind: string } }[] = [];
    const unreadable = new Set<string>();
    for (const sheet of files.values()) {
        for (const word of sheet.unreadable) unreadable.add(word);
    }
    const byName = <T extends Declared & { kind: string }>(pick: (sheet: FileSheet) => T[]): Map<string, T> => {
        const names = new Map<string, T>();
        for (const sheet of files.values()) {
            for (const again of pick(sheet)) {
                const first = names.get(again.name);
                if (first) repeated.push({ first, again });
                else names.set(again.name, again);
            }
        }
        return names;
    };
    return {
        files,
        materials: byName(s => s.materials),
        prints: byName(s => s.prints),
        books: byName(s => s.books),
        games: byName(s => s.games),
        kits: byName(s => s.kits),
        lessons: byName(s => s.lessons),
        objectives: byName(s => s.objectives),
        frameworks: byName(s => s.frameworks),
        courses: byName(s => s.courses),
        classes: byName(s => s.classes),
        adaptations: byName(s => s.adaptations),
        repeated,
        unreadable,
        attachments
    };
}
