import { CompletionItemKind } from 'vscode-languageserver-protocol';
import { adaptCourse } from '@haversack/language/adapting/adapt-course';
import { adaptationsFor } from '@haversack/language/adapting/adaptations-for';
import type { AdaptingMemo } from '@haversack/language/adapting/memo';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { DraftToken } from '@haversack/language/lexer/fit-line';
import type { AdaptationSheet, LessonSheet } from '@haversack/language/sheets/sheet';
import { partTitle } from '../planning/part-title.js';
import { declaredAt, type Candidate } from './candidates.js';

/** What a line of an adaptation is about. */
export interface ChangeLine {
    adaptation: AdaptationSheet;
    /** From 0. */
    line: number;
    /** The words that stand already. */
    tokens: readonly DraftToken[];
}

/** Names that may come next in a change, those of its course first; undefined where the line asks for something else. */
export class AdaptationCandidates {
    constructor(private readonly view: ProgrammeView, private readonly memo: AdaptingMemo) {}

    /** `type` is what the grammar calls that which is named, `feature` how the line calls it. */
    of(type: string, feature: string | undefined, change: ChangeLine): Candidate[] | undefined {
        if (type !== 'NamedPart' && !this.view.programme.courses.has(change.adaptation.of?.name ?? '')) return undefined;
        switch (type) {
            case 'Lesson': return this.lessons(feature, change);
            case 'NamedPart': return this.parts(change);
            case 'Thing': return feature === 'forThing' ? this.others(change) : feature === 'thing' && headOf(change).startsWith('swap') ? this.things(change) : undefined;
            default: return undefined;
        }
    }

    /** Lessons of the course that the class is still taught, in its order. */
    stillTaught({ adaptation, line }: Pick<ChangeLine, 'adaptation' | 'line'>): string[] {
        const { programme } = this.view;
        const course = programme.courses.get(adaptation.of?.name ?? '');
        if (!course) return [];
        const names = course.units.flatMap(({ lessons }) => lessons.map(({ name }) => name));
        const all = adaptationsFor(programme, { class: adaptation.forClass?.name, course: course.name });
        // What stands in this line itself may be written over.
        const others = all.map(one => (one === adaptation ? { ...one, changes: one.changes.filter(({ head }) => head.start.line !== line) } : one));
        const taught = new Set([...adaptCourse(programme, course, others, this.memo).madeOf.values()].flat());
        return names.filter(name => taught.has(name));
    }

    private lessons(feature: string | undefined, change: ChangeLine): Candidate[] {
        const { programme } = this.view;
        const still = this.stillTaught(change);
        const known = new Set(still);
        const candidate = (lesson: LessonSheet, detail: string, rank: number): Candidate => ({ name: lesson.name, title: lesson.title, detail, kind: CompletionItemKind.Class, rank, ...declaredAt(lesson) });
        // A lesson stands beside others, and is joined with others.
        const named = headOf(change) === 'move' || headOf(change) === 'join' ? change.tokens.filter(({ symbol }) => symbol === 'NAME').map(({ text }) => text) : [];
        const own = still.filter(name => !named.includes(name)).flatMap(name => programme.lessons.get(name) ?? []);
        if (isBrought(feature, change)) return [...programme.lessons.values()].filter(({ name }) => !known.has(name)).map(lesson => candidate(lesson, 'lesson', 2));
        const thing = feature === 'lesson' && headOf(change) === 'swap' ? nameOf(change) : undefined;
        const needs = (lesson: LessonSheet): boolean => thing !== undefined && this.view.factsOf(lesson).needs.some(need => need.options.some(option => option.thing.name === thing));
        const mine = own.map((lesson, order) => ({ ...candidate(lesson, 'lesson of this course', needs(lesson) ? 0 : 1), order }));
        return isFromAnywhere(change) ? [...mine, ...[...programme.lessons.values()].filter(({ name }) => !known.has(name)).map(lesson => candidate(lesson, 'lesson', 2))] : mine;
    }

    /** Parts of the lesson before the dot, or of the lesson that the line begins with. */
    private parts({ adaptation, tokens }: ChangeLine): Candidate[] {
        const { programme } = this.view;
        const dot = tokens.map(({ symbol }) => symbol).lastIndexOf('.');
        const owner = dot > 0 ? tokens[dot - 1]?.text : tokens.find(({ symbol }) => symbol === 'NAME')?.text;
        const added = adaptation.changes.flatMap(change => (change.does === 'add to lesson' && change.lesson.name === owner ? change.added.parts : []));
        const seen = new Set<string>();
        return [...programme.lessons.get(owner ?? '')?.parts ?? [], ...added].filter(({ name }) => name !== '' && !seen.has(name) && seen.add(name))
            .map((part, order): Candidate => ({
            name: part.name, title: partTitle(programme, part),
            detail: [part.kind, part.minutes === undefined ? '' : `${part.minutes} min`].filter(Boolean).join(', '),
            kind: part.kind === 'game' ? CompletionItemKind.Event : CompletionItemKind.Method, rank: 1, order,
            ...(part.kind === 'game' ? declaredAt(programme.games.get(part.name) ?? {}) : declaredAt({ uri: part.uri ?? programme.lessons.get(owner ?? '')?.uri, at: part.at }))
        }));
    }

    /** What its lessons use, before everything else. */
    private things(change: ChangeLine): Candidate[] {
        const used = new Set(this.stillTaught(change).flatMap(name => this.view.programme.lessons.get(name) ?? [])
            .flatMap(lesson => [...this.view.factsOf(lesson).needs, ...this.view.factsOf(lesson).games.flatMap(({ needs }) => needs)].flatMap(need => need.options.map(({ thing }) => thing.name))));
        return this.allThings(name => (used.has(name) ? 1 : 3));
    }

    /** Stand-ins of the thing, before everything else. */
    private others(change: ChangeLine): Candidate[] {
        const thing = nameOf(change);
        const standIns = new Set(this.view.programme.materials.get(thing ?? '')?.standIns.map(one => one.thing.name));
        return this.allThings(name => (standIns.has(name) ? 0 : 2)).filter(({ name }) => name !== thing).map(one => (one.rank === 0 ? { ...one, detail: `stand-in for ${thing}` } : one));
    }

    private allThings(rankOf: (name: string) => number): Candidate[] {
        const { materials, prints, books } = this.view.programme;
        return [...materials.values(), ...prints.values(), ...books.values()].map(thing => ({
            name: thing.name, title: thing.title, detail: thing.kind, rank: rankOf(thing.name), ...declaredAt(thing),
            kind: thing.kind === 'material' ? CompletionItemKind.Value : thing.kind === 'print' ? CompletionItemKind.File : CompletionItemKind.Module
        }));
    }
}

/** The words that say what the line does: "skip lesson", "swap", "insert activity". */
function headOf({ tokens }: ChangeLine): string {
    const [first, second] = tokens.map(({ symbol }) => symbol);
    return second === 'lesson' || second === 'activity' ? `${first} ${second}` : first ?? '';
}

function nameOf({ tokens }: ChangeLine): string | undefined {
    return tokens.find(({ symbol }) => symbol === 'NAME')?.text;
}

/** A lesson that the course does not have yet. */
function isBrought(feature: string | undefined, change: ChangeLine): boolean {
    return feature === 'forLesson' || (feature === 'lesson' && headOf(change) === 'insert');
}

/** A part may be taken from any lesson. */
function isFromAnywhere(change: ChangeLine): boolean {
    const head = headOf(change);
    const words = change.tokens.map(({ symbol }) => symbol);
    return (head === 'insert activity' && words.length === 2) || (head === 'swap activity' && words.at(-1) === 'for');
}
