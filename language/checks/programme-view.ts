import type { Programme } from '../sheets/programme.js';
import type { ClassSheet, CourseSheet, Declared, FileSheet, LessonSheet, Mention, Need } from '../sheets/sheet.js';
import { adaptedFor } from '../adapting/adapt-course.js';
import type { Adapted } from '../adapting/adapted.js';
import { broughtByChanges, namedInAdditions } from './adaptation-facts.js';
import { nearest } from '../lexer/nearest.js';
import { circlesOf } from './circles.js';
import { courseFacts, type CourseFacts } from './course-facts.js';
import { firstMentions, lessonFacts, LessonReadings, type LessonFacts } from './lesson-facts.js';
import { namesUnknown, type NamedKind } from './names-unknown.js';
import { roomOf, type Room } from './rooms.js';
import { allSteps } from './walk-lessons.js';

/** A lesson at its place in a course. */
export interface Taught {
    course: CourseSheet;
    unit: string;
    /** From 0, over all units of the course. */
    index: number;
    lesson?: LessonSheet;
    mention: Mention;
}

/** What hangs on names alone, of the lessons and of everything that is no lesson; nothing in it leads to a sheet. */
const namesAlone = ['usedThings', 'usedObjectives', 'taughtWords', 'broughtIn', 'lessonCircles', 'objectiveCircles', 'unknownNames'] as const;

/** A view of a programme that differs in lessons only. */
export interface FormerView {
    view: ProgrammeView;
    /** True when the lessons that differ say the same names as before: see `namesSaid`. */
    saysTheSameNames: boolean;
}

/** A programme with what several checks ask of it, each worked out once when first asked. */
export class ProgrammeView {
    private readonly memo = new Map<string, unknown>();
    private readonly lessonMemo: WeakMap<LessonSheet, LessonFacts>;
    private readonly courseMemo = new Map<string, CourseFacts>();

    /**
     * `readings` keeps what lessons say themselves from one version of the programme to the next. What `former` knows of each
     * lesson's things still holds, and where no name came or went, what hangs on names alone does.
     */
    constructor(readonly programme: Programme, private readonly readings = new LessonReadings(), former?: FormerView) {
        this.lessonMemo = former?.view.lessonMemo ?? new WeakMap();
        if (!former?.saysTheSameNames) return;
        for (const name of namesAlone) if (former.view.memo.has(name)) this.memo.set(name, former.view.memo.get(name));
    }

    /** The lessons of each course in teaching order, by the course's name. */
    get courses(): ReadonlyMap<string, readonly Taught[]> {
        return this.once('courses', () => {
            const courses = new Map<string, Taught[]>();
            for (const course of this.programme.courses.values()) {
                const taught: Taught[] = [];
                for (const unit of course.units) {
                    for (const mention of unit.lessons) {
                        taught.push({ course, unit: unit.name, index: taught.length, lesson: this.programme.lessons.get(mention.name), mention });
                    }
                }
                courses.set(course.name, taught);
            }
            return courses;
        });
    }

    /** Every place at which a lesson is taught, by the lesson's name. */
    get taughtAt(): ReadonlyMap<string, readonly Taught[]> {
        return this.once('taughtAt', () => {
            const order = new Map<string, Taught[]>();
            for (const lessons of this.courses.values()) {
                for (const taught of lessons) push(order, taught.mention.name, taught);
            }
            return order;
        });
    }

    /** The first place of a lesson in each course that teaches it; courses with lines that could not be read are left out. */
    placesOf(lesson: LessonSheet): Taught[] {
        const places = this.taughtAt.get(lesson.name) ?? [];
        return places.filter((taught, index) => taught.lesson === lesson && !this.isBroken(taught.course)
            && places.findIndex(({ course }) => course === taught.course) === index);
    }

    factsOf(lesson: LessonSheet): LessonFacts {
        let facts = this.lessonMemo.get(lesson);
        if (!facts) {
            facts = lessonFacts(lesson, this.readings.of(lesson), this.programme);
            this.lessonMemo.set(lesson, facts);
        }
        return facts;
    }

    factsOfCourse(course: CourseSheet): CourseFacts {
        let facts = this.courseMemo.get(course.name);
        if (!facts) {
            facts = courseFacts(course, this);
            this.courseMemo.set(course.name, facts);
        }
        return facts;
    }

    /** A course as a class is taught it, or as all classes are; undefined where no adaptation applies. */
    adapted(course: CourseSheet, group?: ClassSheet): Adapted | undefined {
        if (this.programme.adaptations.size === 0) return undefined;
        return this.once(`adapted ${course.name} ${group?.name ?? ''}`, () => adaptedFor(this.programme, { class: group?.name, course: course.name }, this.readings.adapting));
    }

    /** Facts of a course as a class is taught it. */
    factsFor(course: CourseSheet, group: ClassSheet): CourseFacts {
        const adapted = this.adapted(course, group);
        if (!adapted) return this.factsOfCourse(course);
        return this.once(`facts ${course.name} ${group.name}`, () => new ProgrammeView(adapted.programme, this.readings).factsOfCourse(adapted.course));
    }

    /** Lessons that some adaptation brings into a course, whole or with one of their parts. */
    get broughtIn(): ReadonlySet<string> {
        return this.once('broughtIn', () => new Set([...this.programme.adaptations.values()].flatMap(({ changes }) => changes.flatMap(broughtByChanges))));
    }

    /** Classes that are taught a lesson because an adaptation brings it into their course, by its name. */
    get broughtTo(): ReadonlyMap<string, readonly ClassSheet[]> {
        return this.once('broughtTo', () => {
            const brought = new Map<string, ClassSheet[]>();
            if (this.broughtIn.size === 0) return brought;
            for (const group of this.programme.classes.values()) {
                const course = group.teaches && this.programme.courses.get(group.teaches.name);
                const adapted = course && this.adapted(course, group);
                const own = new Set(course && this.courses.get(course.name)?.map(({ mention }) => mention.name));
                for (const name of new Set([...adapted?.madeOf.values() ?? []].flat())) if (!own.has(name)) push(brought, name, group);
            }
            return brought;
        });
    }

    /** The lessons that play a game, by the game's name. */
    get playedIn(): ReadonlyMap<string, readonly LessonSheet[]> {
        return this.once('playedIn', () => {
            const played = new Map<string, LessonSheet[]>();
            for (const lesson of this.programme.lessons.values()) {
                for (const part of lesson.parts) {
                    if (part.kind === 'game') push(played, part.name, lesson);
                }
            }
            return played;
        });
    }

    /**
     * Names of things that a lesson, a game or what an adaptation adds names in its needs, its text or its not-needed list, or that stand in for another.
     * Lines that could not be read count as naming everything in them.
     */
    get usedThings(): ReadonlySet<string> {
        return this.once('usedThings', () => {
            const used = new Set<string>(this.programme.unreadable);
            const take = (needs: readonly Need[]): void => {
                for (const need of needs) for (const option of need.options) used.add(option.thing.name);
            };
            for (const file of this.programme.files.values()) {
                for (const lesson of file.lessons) {
                    const { needs, named } = this.factsOf(lesson);
                    take(needs);
                    for (const name of named.keys()) used.add(name);
                    for (const thing of lesson.notNeeded) used.add(thing.name);
                }
                for (const game of file.games) {
                    take(game.needs);
                    for (const name of firstMentions(allSteps(game.steps).map(({ prose }) => prose)).keys()) used.add(name);
                    if (game.found) used.add(game.found.book.name);
                }
                for (const material of file.materials) for (const standIn of material.standIns) used.add(standIn.thing.name);
                for (const adaptation of file.adaptations) {
                    for (const change of adaptation.changes) {
                        if (change.does === 'swap thing') used.add(change.forThing.name);
                        for (const name of namedInAdditions(change).things) used.add(name);
                    }
                }
            }
            return used;
        });
    }

    private get wordsAdded(): Mention[] {
        return [...this.programme.adaptations.values()].flatMap(({ changes }) => changes.flatMap(change => (change.does === 'add to lesson' ? change.added.words : [])));
    }

    /** Every word that a lesson teaches, an adaptation's additions among them. */
    get taughtWords(): ReadonlySet<string> {
        return this.once('taughtWords', () => new Set([...[...this.programme.lessons.values()].flatMap(lesson => lesson.words), ...this.wordsAdded].map(({ name }) => name)));
    }

    /** For each thing a need that asks for as much of it as most lessons do; of several such, the first. */
    get usualNeeds(): ReadonlyMap<string, Need> {
        return this.once('usualNeeds', () => {
            const asked = new Map<string, Map<string, { need: Need; times: number }>>();
            for (const lesson of this.programme.lessons.values()) {
                for (const need of this.factsOf(lesson).needs) {
                    const name = need.options[0]?.thing.name;
                    if (name === undefined || !need.amount) continue;
                    const { amount: { value, unit }, per } = need;
                    const amounts = asked.get(name) ?? new Map<string, { need: Need; times: number }>();
                    asked.set(name, amounts);
                    const key = JSON.stringify([value, unit, per]);
                    amounts.set(key, { need: amounts.get(key)?.need ?? need, times: (amounts.get(key)?.times ?? 0) + 1 });
                }
            }
            return new Map([...asked].map(([name, amounts]) => [name, [...amounts.values()].reduce((most, one) => (one.times > most.times ? one : most)).need]));
        });
    }

    /** Classes where children under three are in the room, with their courses. */
    get youngRooms(): readonly Room[] {
        return this.once('youngRooms', () => [...this.programme.classes.values()].flatMap(group => roomOf(group, this.programme) ?? []).filter(({ youngest }) => youngest < 3));
    }

    /** Objectives that a lesson, or what an adaptation adds, introduces, practises, checks or names in its text. */
    get usedObjectives(): ReadonlySet<string> {
        return this.once('usedObjectives', () => {
            const used = new Set<string>(this.programme.unreadable);
            for (const lesson of this.programme.lessons.values()) {
                for (const { name } of [...lesson.introduces, ...lesson.practises, ...lesson.checks]) used.add(name);
                for (const name of this.factsOf(lesson).named.keys()) used.add(name);
            }
            for (const { changes } of this.programme.adaptations.values()) {
                for (const change of changes) for (const name of namedInAdditions(change).objectives) used.add(name);
            }
            return used;
        });
    }

    /** Lessons that follow each other in a circle, by name: the names of the circle in order. */
    get lessonCircles(): ReadonlyMap<string, readonly string[]> {
        return this.once('lessonCircles', () => circlesOf(this.programme.lessons, lesson => lesson.follows));
    }

    /** Objectives that build on each other in a circle. */
    get objectiveCircles(): ReadonlyMap<string, readonly string[]> {
        return this.once('objectiveCircles', () => circlesOf(this.programme.objectives, objective => objective.buildsOn));
    }

    /**
     * True when a name of this kind may be written somewhere without having been understood: in a line that could not be read, or
     * misspelt or half typed where nothing of that name is known. Then nothing is said of what is missing about it: one slip, one
     * message.
     */
    isDoubtful(kind: NamedKind, name: string): boolean {
        if (this.programme.unreadable.has(name)) return true;
        return this.unknownNames[kind].some(unknown => name.startsWith(unknown) || nearest(unknown, [name]) !== undefined);
    }

    private get unknownNames(): Record<NamedKind, readonly string[]> {
        return this.once('unknownNames', () => namesUnknown(this.programme, lesson => this.factsOf(lesson)));
    }

    /** True where a line of the declaration could not be read: it may say more than its sheet. */
    isBroken(declared: Declared): boolean {
        return this.brokenDeclarations.has(declared);
    }

    private get brokenDeclarations(): ReadonlySet<Declared> {
        return this.once('broken', () => {
            const broken = new Set<Declared>();
            for (const file of this.programme.files.values()) {
                if (!file.brokenLines?.length) continue;
                const declared = declarationsOf(file).sort((a, b) => a.whole.start.line - b.whole.start.line);
                for (const line of file.brokenLines) {
                    const above = declared.filter(({ whole }) => whole.start.line <= line).pop();
                    if (above) broken.add(above);
                }
            }
            return broken;
        });
    }

    private once<T>(name: string, work: () => T): T {
        if (!this.memo.has(name)) this.memo.set(name, work());
        return this.memo.get(name) as T;
    }
}

function push<T>(map: Map<string, T[]>, name: string, value: T): void {
    const values = map.get(name);
    if (values) values.push(value);
    else map.set(name, [value]);
}

export function declarationsOf(file: FileSheet): Declared[] {
    return [
        ...file.materials, ...file.prints, ...file.books, ...file.games, ...file.kits, ...file.lessons, ...file.objectives, ...file.frameworks,
        ...file.courses, ...file.classes, ...file.adaptations
    ];
}
