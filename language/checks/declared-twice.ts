import type { Declared, FileSheet, Mention, Range } from '../sheets/sheet.js';
import type { Check, Finding } from './check.js';
import { changeTo, removeFromList } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';

/** A name with what it names and where it was given first. */
interface Repeat {
    kind: string;
    name: string;
    at: Range;
    first: { uri: string; range: Range };
    /** Names that are taken beside it. */
    taken: ReadonlySet<string>;
}

export const declaredTwice: Check = {
    code: 'declared-twice', severity: 'error', title: 'A name declared twice',
    explains: 'Two things of one kind have the same name, so nobody can tell which is meant; the first one counts everywhere. Give one of them another name, or remove it. A material and a game may share a name: only names of one kind must differ. The parts of one lesson, of one material and the units of one course must differ too.',
    wrong: 'material gram-cube\n  reusable\n\nmaterial gram-cube "Small cubes"\n  reusable',
    right: 'material gram-cube\n  reusable\n\nmaterial small-cube "Small cubes"\n  reusable',
    *find(file, view) {
        for (const { kind, name, at, first, taken } of repeatsIn(file, view)) {
            yield {
                message: `There is another ${kind} '${name}'. Give one of the two another name, or remove it.`, at,
                related: [{ message: `The first '${name}'`, place: first }],
                fixes: [changeTo(file.uri, at, freeName(name, taken), false)]
            };
        }
        for (const material of file.materials) {
            for (const [index, part] of material.parts.entries()) {
                const first = material.parts.findIndex(({ name }) => name === part.name);
                if (first < index) yield repeatedPart(file.uri, material, part, material.parts[first]!);
            }
        }
    }
};

function* repeatsIn(file: FileSheet, view: ProgrammeView): Iterable<Repeat> {
    for (const { first, again } of view.programme.repeated) {
        if (again.uri !== file.uri) continue;
        const place = { uri: first.uri, range: first.at };
        yield { kind: again.kind, name: again.name, at: again.at, first: place, taken: namesOfKind(view, again.kind) };
    }
    for (const lesson of file.lessons) yield* repeatsAmong('part', lesson.parts.filter(({ kind }) => kind !== 'game'), file.uri);
    for (const course of file.courses) yield* repeatsAmong('unit', course.units, file.uri);
    for (const group of file.classes) yield* repeatsAmong('section', group.sections, file.uri);
}

function* repeatsAmong(kind: string, named: readonly { name: string; at: Range }[], uri: string): Iterable<Repeat> {
    const seen = new Map<string, Range>();
    const taken = new Set(named.map(({ name }) => name));
    for (const { name, at } of named) {
        const first = seen.get(name);
        if (first && name !== '') yield { kind, name, at, first: { uri, range: first }, taken };
        else seen.set(name, at);
    }
}

function namesOfKind({ programme }: ProgrammeView, kind: string): ReadonlySet<string> {
    const kinds: Record<string, ReadonlyMap<string, Declared>> = {
        material: programme.materials, print: programme.prints, book: programme.books, game: programme.games, kit: programme.kits, lesson: programme.lessons,
        objective: programme.objectives, framework: programme.frameworks, course: programme.courses, class: programme.classes, adaptation: programme.adaptations
    };
    return new Set(kinds[kind]?.keys());
}

function freeName(name: string, taken: ReadonlySet<string>): string {
    const [, stem, number] = /^(.*?)-(\d+)$/.exec(name) ?? [name, name, '1'];
    for (let next = Number(number) + 1; ; next++) {
        if (!taken.has(`${stem}-${next}`)) return `${stem}-${next}`;
    }
}

function repeatedPart(uri: string, material: { name: string; parts: readonly Mention[] }, part: Mention, first: Mention): Finding {
    return {
        message: `'${material.name}' has named the part '${part.name}' before.`, at: part.at,
        related: [{ message: `The first '${part.name}'`, place: { uri, range: first.at } }],
        fixes: [{ title: `Remove this '${part.name}'`, edits: [removeFromList(uri, material.parts, part)], preferred: true }]
    };
}
