import { CompletionItemKind, type Position } from 'vscode-languageserver-protocol';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import { allNeeds } from '@haversack/language/checks/walk-lessons';
import type { Declared, LessonSheet } from '@haversack/language/sheets/sheet';

/** A name that could stand somewhere. */
export interface Candidate {
    name: string;
    title: string;
    /** "material, reusable". */
    detail: string;
    kind: CompletionItemKind;
    /** Sorts before others when small. */
    rank: number;
    /** Among those of one rank; by name where there is none. */
    order?: number;
    /** Where it is declared, so that more can be told of it. */
    declared?: { uri: string; at: Position };
}

type Named = Pick<Declared, 'name' | 'title'> & Partial<Pick<Declared, 'uri' | 'at'>>;

/** Where something is declared, as a candidate carries it. */
export function declaredAt({ uri, at }: Partial<Pick<Declared, 'uri' | 'at'>>): Pick<Candidate, 'declared'> {
    return uri === undefined || at === undefined ? {} : { declared: { uri, at: at.start } };
}

/** Names that a reference to a type of the grammar may have. `lesson` and `thing` are those of the line, where it has them. */
export function candidatesFor(type: string, view: ProgrammeView, lesson: LessonSheet | undefined, thing: string | undefined): Candidate[] {
    const { programme } = view;
    const list = (names: Iterable<Named>, detail: string | ((named: Named) => string), kind: CompletionItemKind, rank = 2): Candidate[] =>
        [...names].map(named => ({ name: named.name, title: named.title, detail: typeof detail === 'string' ? detail : detail(named), kind, rank, ...declaredAt(named) }));
    const materials = (): Candidate[] => [...programme.materials.values()].map(material => ({
        name: material.name, title: material.title, detail: ['material', material.use].filter(Boolean).join(', '), kind: CompletionItemKind.Value, rank: 2, ...declaredAt(material)
    }));
    const things = (): Candidate[] => [
        ...materials(), ...list(programme.prints.values(), 'print', CompletionItemKind.File), ...list(programme.books.values(), 'book', CompletionItemKind.Module)
    ];
    const lessons = (): Candidate[] => list(programme.lessons.values(), 'lesson', CompletionItemKind.Class);
    const objectives = (): Candidate[] => list(programme.objectives.values(), 'objective', CompletionItemKind.Reference);
    const games = (): Candidate[] => list(programme.games.values(), 'game', CompletionItemKind.Event);
    const parts = (kinds?: readonly string[]): Candidate[] => list(
        (lesson?.parts ?? []).filter(part => part.kind !== 'game' && (!kinds || kinds.includes(part.kind))).map(({ name, title, at }) => ({ name, title, at, uri: lesson?.uri })), 'part of this lesson', CompletionItemKind.Method
    );
    switch (type) {
        case 'Material': return materials();
        case 'Thing': return things();
        case 'MaterialPart': {
            const material = thing === undefined ? undefined : programme.materials.get(thing);
            return list((material?.parts ?? []).map(part => ({ name: part.name, title: part.name, at: part.at, uri: material?.uri })), `part of ${thing ?? ''}`, CompletionItemKind.EnumMember);
        }
        case 'Book': return list(programme.books.values(), 'book', CompletionItemKind.Module);
        case 'Game': return games();
        case 'Kit': return list(programme.kits.values(), 'kit', CompletionItemKind.Folder);
        case 'Lesson': return lessons();
        case 'Objective': return objectives();
        case 'Framework': return list(programme.frameworks.values(), 'framework', CompletionItemKind.Interface);
        case 'Course': return list(programme.courses.values(), 'course', CompletionItemKind.Module);
        case 'Class': return list(programme.classes.values(), 'class', CompletionItemKind.Struct);
        case 'LessonPart': return parts();
        case 'Repeatable': return parts(['warm-up', 'activity', 'practice']);
        case 'Nameable': return nameable(things(), games(), lessons(), objectives(), view, lesson);
        default: return [];
    }
}

/** In prose the lesson's own things come first, then its games and words, then everything else. */
function nameable(things: Candidate[], games: Candidate[], lessons: Candidate[], objectives: Candidate[], view: ProgrammeView, lesson: LessonSheet | undefined): Candidate[] {
    const own = new Set((lesson ? allNeeds(lesson) : []).flatMap(need => need.options.map(option => option.thing.name)));
    const played = new Set((lesson?.parts ?? []).filter(part => part.kind === 'game').map(part => part.name));
    const words = new Map<string, Candidate>();
    for (const taught of view.programme.lessons.values()) {
        for (const { name, at } of taught.words) {
            const rank = taught.name === lesson?.name ? 1 : 3;
            if (!words.has(name) || words.get(name)!.rank > rank) {
                words.set(name, { name, title: name, detail: `word, taught in ${taught.name}`, kind: CompletionItemKind.Text, rank, ...declaredAt({ uri: taught.uri, at }) });
            }
        }
    }
    const ranked = (list: Candidate[], mine: ReadonlySet<string>, otherwise: number): Candidate[] => {
        for (const candidate of list) candidate.rank = mine.has(candidate.name) ? 0 : otherwise;
        return list;
    };
    const all = [...ranked(things, own, 2), ...ranked(games, played, 3), ...words.values(), ...ranked(lessons, new Set(), 4), ...ranked(objectives, new Set(), 5)];
    const seen = new Set<string>();
    return all.filter(({ name }) => !seen.has(name) && seen.add(name));
}

/** The lesson around a line. */
export function lessonAt(lessons: readonly LessonSheet[], line: number): LessonSheet | undefined {
    return lessons.find(({ whole }) => whole.start.line <= line && line <= whole.end.line)
        ?? [...lessons].reverse().find(({ whole }) => whole.start.line <= line);
}
