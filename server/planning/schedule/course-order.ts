import type { Adapted, AppliedChange } from '@haversack/language/adapting/adapted';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import { quoted } from '@haversack/language/facts/wording';
import { circlesAmong } from './circles.js';
import { shapeOf, type LessonShape } from './pieces.js';

/** The lessons of a course with what each has to wait for; a lesson that the course names twice is there twice. */
export interface CourseOrder {
    lessons: readonly LessonSheet[];
    shapes: readonly LessonShape[];
    /** Where each name stands. */
    positions: ReadonlyMap<string, readonly number[]>;
    /** Where that stands which is taught of a lesson as its course calls it: itself, its pieces, or what it is joined to. */
    meant: ReadonlyMap<string, readonly number[]>;
    /** For each piece of a lesson that an adaptation has split, where the other pieces stand: no two share a meeting. */
    apart: ReadonlyMap<number, readonly number[]>;
    /** Where adaptations have changed the course. */
    adapted?: AdaptedOrder;
    /** For each lesson, positions of those it follows (the first of each name), circles and lessons of other courses left out. */
    before: readonly (readonly number[])[];
    /** Positions of lessons that wait for each other, each circle with at least one. */
    circles: number[][];
    /** For each lesson, positions of those that wait for it. */
    behind: readonly (readonly number[])[];
}

type AdaptedOrder = Pick<Adapted, 'base' | 'changes' | 'madeOf' | 'leftOut'>;

const none: readonly number[] = [];
const noPieces: ReadonlyMap<string, readonly number[]> = new Map();

export function courseOrder(lessons: readonly LessonSheet[], adapted?: AdaptedOrder): CourseOrder {
    const positions = new Map<string, number[]>();
    lessons.forEach(({ name }, i) => {
        const known = positions.get(name);
        if (known) known.push(i);
        else positions.set(name, [i]);
    });
    const named = lessons.map(({ follows }) => {
        if (follows.length === 0) return none;
        const found: number[] = [];
        for (const { name } of follows) {
            const position = positions.get(name)?.[0];
            if (position !== undefined && !found.includes(position)) found.push(position);
        }
        return found;
    });
    const circles = circlesAmong(named);
    const before = circles.length === 0 ? named : withoutCircles(named, circles, i => positions.get(lessons[i]?.name ?? '')?.[0] ?? i);
    const behind: number[][] = lessons.map(() => []);
    before.forEach((list, i) => list.forEach(p => behind[p]?.push(i)));
    const meant = adapted ? positionsMeant(lessons, adapted) : positions;
    return { lessons, shapes: lessons.map(shapeOf), positions, meant, apart: piecesApart(lessons, adapted ? meant : noPieces), adapted, before, circles, behind };
}

/** In words, who leaves a lesson out; undefined where nobody does. */
export function leftOutBy(name: string, { adapted }: CourseOrder): string | undefined {
    const change = adapted?.leftOut.get(name);
    return change && quoted(change.adaptation.title);
}

/** The change because of which a lesson stands behind one that follows it; undefined where the course as it is written has the two that way round. */
export function puttingBehind(before: LessonSheet, after: LessonSheet, { adapted }: CourseOrder): AppliedChange | undefined {
    if (!adapted) return undefined;
    const written = adapted.base.units.flatMap(({ lessons }) => lessons.map(({ name }) => name));
    const indexes = ({ name }: LessonSheet): number[] => (adapted.madeOf.get(name) ?? [name]).map(own => written.indexOf(own));
    const [first, last] = [Math.min(...indexes(before)), Math.max(...indexes(after))];
    if (last >= 0 && first > last) return undefined;
    const orders = new Set(['move lesson', 'insert lesson', 'swap lesson', 'join lessons']);
    return [...adapted.changes].reverse().find(({ change, touched }) => orders.has(change.does) && (touched.includes(before.name) || touched.includes(after.name)));
}

function positionsMeant(lessons: readonly LessonSheet[], { madeOf }: AdaptedOrder): Map<string, number[]> {
    const meant = new Map<string, number[]>();
    lessons.forEach(({ name }, i) => {
        for (const own of madeOf.get(name) ?? [name]) meant.set(own, [...meant.get(own) ?? [], i]);
    });
    return meant;
}

function piecesApart(lessons: readonly LessonSheet[], meant: ReadonlyMap<string, readonly number[]>): Map<number, number[]> {
    const apart = new Map<number, number[]>();
    for (const positions of meant.values()) {
        if (positions.length < 2) continue;
        for (const i of positions) {
            const others = positions.filter(other => lessons[other]?.name !== lessons[i]?.name);
            if (others.length > 0) apart.set(i, [...apart.get(i) ?? [], ...others]);
        }
    }
    return apart;
}

/** `first`: where the name of a lesson stands first. */
function withoutCircles(
    named: readonly (readonly number[])[], circles: readonly (readonly number[])[], first: (position: number) => number
): (readonly number[])[] {
    const circleOf = new Map<number, number>();
    circles.forEach((circle, n) => circle.forEach(i => circleOf.set(i, n)));
    return named.map((positions, i) => {
        const home = circleOf.get(first(i));
        return home === undefined ? positions : positions.filter(p => circleOf.get(p) !== home);
    });
}

/** Which lesson's turn it is: the first of the course that waits for none. */
export class Turns {
    private readonly waitsFor: Int32Array;
    /** Positions that may be taught, the last first. */
    private readonly ready: number[] = [];
    private readonly held = new Set<number>();
    left: number;

    /** `held` lessons have a date of their own and no turn. */
    constructor(private readonly order: CourseOrder, held: Iterable<number>) {
        this.left = order.lessons.length;
        this.waitsFor = Int32Array.from(order.before, positions => positions.length);
        for (const i of held) this.held.add(i);
        for (let i = order.lessons.length - 1; i >= 0; i--) if (this.waitsFor[i] === 0 && !this.held.has(i)) this.ready.push(i);
    }

    /** Whether all that a lesson follows has been taught. */
    isReady(position: number): boolean {
        return this.waitsFor[position] === 0;
    }

    next(): number | undefined {
        return this.ready[this.ready.length - 1];
    }

    /** Takes the lesson whose turn it is. */
    take(): void {
        this.ready.pop();
    }

    /** A lesson has been taught to its end. */
    taught(position: number): void {
        this.left -= 1;
        this.held.delete(position);
        for (const i of this.order.behind[position] ?? none) {
            this.waitsFor[i] = (this.waitsFor[i] ?? 1) - 1;
            if (this.waitsFor[i] === 0 && !this.held.has(i)) this.add(i);
        }
    }

    /** A lesson that could not be taught on its own date gets its turn like any other. */
    release(position: number): void {
        if (this.held.delete(position) && this.isReady(position)) this.add(position);
    }

    private add(position: number): void {
        let low = 0;
        let high = this.ready.length;
        while (low < high) {
            const middle = (low + high) >> 1;
            if (this.ready[middle]! > position) low = middle + 1;
            else high = middle;
        }
        this.ready.splice(low, 0, position);
    }
}
