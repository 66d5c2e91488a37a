import { thingNamed, type Programme } from '@haversack/language/sheets/programme';
import type { BookSheet, CourseSheet, GameSheet, KitSheet, LessonSheet, MaterialSheet, ObjectiveSheet, PartSheet, PrintSheet } from '@haversack/language/sheets/sheet';
import { pairUp, wordsOf, type Aspect, type Pair, type Pairing } from './alike.js';
import { flatSteps, proseText, sameName, saying, stepsOf, stepText, type Renamed } from './plain.js';

/** Likeness from which on two of different names count as one. A thing or objective shows less of itself than a lesson, so it must agree in more. */
const least = { lesson: 0.5, part: 0.5, thing: 0.6, objective: 0.6, course: 0.5 };

/** What kept comparing from one look to the next spares: what a sheet says, by the sheet. */
export type EditionMemo = WeakMap<object, string>;

/** Who of the old edition is who in the new one. */
export class Matched {
    readonly materials: Pairing<MaterialSheet>;
    readonly prints: Pairing<PrintSheet>;
    readonly books: Pairing<BookSheet>;
    readonly games: Pairing<GameSheet>;
    readonly kits: Pairing<KitSheet>;
    readonly objectives: Pairing<ObjectiveSheet>;
    readonly lessons: Pairing<LessonSheet>;
    readonly courses: Pairing<CourseSheet>;
    private readonly things = new Map<string, string>();
    private readonly objectiveNames = new Map<string, string>();
    private readonly lessonPairs = new Map<string, Pair<LessonSheet>>();
    private readonly usedIn: { old?: Map<string, string[]>; new?: Map<string, string[]> } = {};
    private readonly parts = new Map<Pair<LessonSheet>, Pairing<PartSheet>>();

    constructor(readonly old: Programme, readonly now: Programme, private readonly memo: EditionMemo = new WeakMap()) {
        this.materials = this.pair(old.materials, now.materials, least.thing, (one, side) => this.thingAspects(one, side));
        this.prints = this.pair(old.prints, now.prints, least.thing, (one, side) => this.thingAspects(one, side));
        this.books = this.pair(old.books, now.books, least.thing, (one, side) => this.thingAspects(one, side));
        for (const { pairs } of [this.materials, this.prints, this.books]) this.keepNames(pairs);
        this.games = this.pair(old.games, now.games, least.thing, (one, side) => gameAspects(one, this.toNew(side)));
        this.kits = this.pair(old.kits, now.kits, least.thing, (one, side) => [
            title(one, 1), { what: 'things', weight: 3, items: one.holds.map(({ thing }) => this.toNew(side)(thing.name)) }
        ]);
        for (const { pairs } of [this.games, this.kits]) this.keepNames(pairs);
        this.objectives = this.pair(old.objectives, now.objectives, least.objective, (one, side) => this.objectiveAspects(one, side));
        for (const { old: before, new: after } of this.objectives.pairs) this.objectiveNames.set(before.name, after.name);
        this.lessons = this.pair(old.lessons, now.lessons, least.lesson, (one, side) => this.lessonAspects(one, side));
        for (const pair of this.lessons.pairs) this.lessonPairs.set(pair.old.name, pair);
        this.courses = this.pair(old.courses, now.courses, least.course, (one, side) => [
            title(one, 1), { what: 'lessons', weight: 3, items: one.units.flatMap(({ lessons }) => lessons.map(({ name }) => (side === 'old' ? this.newLesson(name) : name))) }
        ]);
    }

    /** The name that a material, print, book, game or kit of the old edition has in the new one. */
    readonly newThing: Renamed = name => this.things.get(name) ?? name;

    readonly newObjective: Renamed = name => this.objectiveNames.get(name) ?? name;

    readonly newLesson: Renamed = name => this.lessonPairs.get(name)?.new.name ?? name;

    readonly newCourse: Renamed = name => this.courses.pairs.find(({ old }) => old.name === name)?.new.name ?? name;

    /** A name in braces. */
    readonly newName: Renamed = name => this.things.get(name) ?? this.lessonPairs.get(name)?.new.name ?? this.objectiveNames.get(name) ?? name;

    lessonPair(oldName: string): Pair<LessonSheet> | undefined {
        return this.lessonPairs.get(oldName);
    }

    partsOf(pair: Pair<LessonSheet>): Pairing<PartSheet> {
        let parts = this.parts.get(pair);
        if (!parts) {
            parts = pairUp<PartSheet>(pair.old.parts, pair.new.parts, {
                name: part => this.partName(part), saying, least: least.part,
                aspects: (part, side) => partAspects(part, side === 'old' ? this.newName : sameName)
            });
            this.parts.set(pair, parts);
        }
        return parts;
    }

    /** Both say the same to the letter, spacing, order of files and remarks aside. */
    saysTheSame(pair: Pair<object>): boolean {
        return this.sayingOf(pair.old) === this.sayingOf(pair.new);
    }

    titleIn(side: 'old' | 'new'): (name: string) => string {
        const programme = side === 'old' ? this.old : this.now;
        return name => (thingNamed(programme, name) ?? programme.games.get(name) ?? programme.kits.get(name) ?? programme.lessons.get(name) ?? programme.objectives.get(name))?.title ?? name.replaceAll('-', ' ');
    }

    private toNew(side: 'old' | 'new'): Renamed {
        return side === 'old' ? this.newThing : sameName;
    }

    private partName(part: PartSheet): string {
        return `${part.kind === 'game' ? 'game ' : ''}${part.name}`;
    }

    private keepNames(pairs: readonly Pair<{ name: string }>[]): void {
        for (const { old, new: now } of pairs) if (!this.things.has(old.name)) this.things.set(old.name, now.name);
    }

    private sayingOf(sheet: object): string {
        let text = this.memo.get(sheet);
        if (text === undefined) this.memo.set(sheet, text = saying(sheet));
        return text;
    }

    private pair<T extends { name: string }>(old: ReadonlyMap<string, T>, now: ReadonlyMap<string, T>, from: number, aspects: (one: T, side: 'old' | 'new') => readonly Aspect[]): Pairing<T> {
        return pairUp([...old.values()], [...now.values()], { name: one => one.name, saying: one => this.sayingOf(one), aspects, least: from });
    }

    /** What a thing is, and in which lessons it is used for how much. */
    private thingAspects(thing: MaterialSheet | PrintSheet | BookSheet, side: 'old' | 'new'): Aspect[] {
        const facts = saying({ ...thing, name: '', title: '', notes: [] }).split(/[,{}[\]]+/).filter(fact => fact !== '' && !/:(?:""|\[\]|)$/.test(fact));
        return [
            { ...title(thing, 3), must: sameTitle }, { what: 'facts', weight: 2, items: facts },
            { what: 'words', weight: 1, silent: true, items: thing.notes.flatMap(note => wordsOf(proseText(note))) },
            { what: 'uses', weight: 3, items: this.uses(side).get(thing.name) ?? [] }
        ];
    }

    private uses(side: 'old' | 'new'): ReadonlyMap<string, readonly string[]> {
        return (this.usedIn[side] ??= usesOf(side === 'old' ? this.old : this.now));
    }

    private objectiveAspects(objective: ObjectiveSheet, side: 'old' | 'new'): Aspect[] {
        const programme = side === 'old' ? this.old : this.now;
        const taught = [...programme.lessons.values()].flatMap(lesson => does.flatMap(word => (lesson[word].some(({ name }) => name === objective.name) ? [`${word} ${lesson.name}`] : [])));
        return [
            { ...title(objective, 3), must: sameTitle }, { what: 'lessons', weight: 3, items: taught },
            { what: 'codes', weight: 1, items: objective.alignsTo.map(({ framework, code }) => `${framework.name} ${code}`) },
            { what: 'strands', weight: 1, items: objective.strand === undefined ? [] : [objective.strand] },
            { what: 'words', weight: 1, silent: true, items: objective.about ? wordsOf(proseText(objective.about)) : [] }
        ];
    }

    private lessonAspects(lesson: LessonSheet, side: 'old' | 'new'): Aspect[] {
        const steps = stepsOf(lesson);
        const thing = this.toNew(side);
        const objective = side === 'old' ? this.newObjective : sameName;
        const needs = [...lesson.needs, ...lesson.parts.flatMap(part => part.needs)];
        return [
            title(lesson, 1),
            { what: 'parts', weight: 2, items: lesson.parts.map(part => `${part.kind} ${thing(part.name)}`) },
            { what: 'steps', weight: 2, items: steps.map(step => stepText(step, thing).toLowerCase()) },
            { what: 'words', weight: 2, silent: true, items: steps.flatMap(step => wordsOf(stepText(step, thing))) },
            { what: 'materials', weight: 1.5, items: needs.flatMap(need => need.options.map(option => thing(option.thing.name))) },
            { what: 'objectives', weight: 1.5, items: does.flatMap(word => lesson[word].map(({ name }) => `${word} ${objective(name)}`)) }
        ];
    }
}

const does = ['introduces', 'practises', 'checks'] as const;

/** Another thing may stand in the same place: it has the same name only where most words of its title are the same. */
const sameTitle = 0.51;

function title({ title: text }: { title: string }, weight: number): Aspect {
    return { what: 'title', weight, silent: true, items: wordsOf(text).map(word => word.replace(/(?<=\p{L}{3})s$/u, '')) };
}

function usesOf(programme: Programme): Map<string, string[]> {
    const uses = new Map<string, string[]>();
    for (const lesson of programme.lessons.values()) {
        for (const need of [...lesson.needs, ...lesson.parts.flatMap(part => part.needs)]) {
            for (const { thing } of need.options) {
                const use = `${lesson.name} ${need.amount?.value ?? ''} ${need.amount?.unit ?? ''} ${need.per?.who ?? ''}`;
                const list = uses.get(thing.name);
                if (list) list.push(use);
                else uses.set(thing.name, [use]);
            }
        }
    }
    return uses;
}

function gameAspects(game: GameSheet, thing: Renamed): Aspect[] {
    const { found, players, needs, steps } = game;
    return [
        { ...title(game, 3), must: sameTitle },
        { what: 'rules', weight: 2, items: found ? [`${thing(found.book.name)} ${found.chapter ?? ''} ${found.number ?? ''} ${found.page ?? ''}`] : [] },
        { what: 'players', weight: 1, items: players ? [`${players.from} ${players.to ?? ''}`] : [] },
        { what: 'materials', weight: 2, items: needs.flatMap(need => need.options.map(option => thing(option.thing.name))) },
        { what: 'words', weight: 2, silent: true, items: flatSteps(steps).flatMap(step => wordsOf(stepText(step, thing))) }
    ];
}

function partAspects(part: PartSheet, renamed: Renamed): Aspect[] {
    const steps = flatSteps(part.steps);
    return [
        { what: 'kind', weight: 0.5, silent: true, items: [part.kind] },
        { what: 'title', weight: 1, silent: true, items: wordsOf(part.title) },
        { what: 'games', weight: 3, items: part.kind === 'game' ? [renamed(part.name)] : [] },
        { what: 'steps', weight: 2, items: steps.map(step => stepText(step, renamed).toLowerCase()) },
        { what: 'words', weight: 2, silent: true, items: steps.flatMap(step => wordsOf(stepText(step, renamed))) },
        { what: 'materials', weight: 1, items: part.needs.flatMap(need => need.options.map(option => renamed(option.thing.name))) },
        { what: 'practice lines', weight: 2, items: (part.practice ?? []).map(line => [...line.words, ...line.numbers].join(' ')) }
    ];
}
