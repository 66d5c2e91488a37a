/** Which lesson introduces, practises and checks which objective, and what a framework asks: plain JSON-safe data. */
import type { Place } from '@haversack/language/sheets/sheet';
import type { TrailStep } from './figure.js';

export type Does = 'introduces' | 'practises' | 'checks';

/** A column of the grid: a lesson in teaching order. */
export interface CoverageLesson {
    name: string;
    title: string;
    place: Place;
    /** From 0, in teaching order. */
    index: number;
    /** From 1; meetings since the start, counting every meeting day. */
    meeting?: number;
    label?: string;
    date?: string;
    week?: number;
}

export type GapKind = 'never-introduced' | 'practised-before-introduced' | 'never-checked' | 'checked-before-introduced' | 'not-revisited' | 'never-used';

export interface CoverageGap {
    kind: GapKind;
    objective: string;
    message: string;
    /** Where it is best mended. */
    place: Place;
    lesson?: string;
}

/** A row of the grid. */
export interface CoverageObjective {
    name: string;
    title: string;
    place: Place;
    strand?: string;
    /** One entry a lesson that names it, in teaching order; `place` is the line. */
    cells: { lesson: number; does: Does[]; place: Place }[];
    /** Meetings between one visit and the next. */
    spacing: number[];
    /** "introduced in week 1, practised 3 times at widening gaps of 2, 4 and 9 meetings, checked in week 6". */
    text: string;
    widening?: boolean;
    gaps: CoverageGap[];
    trail: TrailStep[];
    alignsTo: { framework: string; code: string }[];
}

/** One item of a framework with what meets it. */
export interface FrameworkNode {
    code?: string;
    statement: string;
    type?: string;
    children: FrameworkNode[];
    /** Objectives aligned to this item itself. */
    objectives: { name: string; title: string; place: Place }[];
    /** Lessons that introduce, practise or check them. */
    lessons: { name: string; title: string; place: Place }[];
    /** Of items without children at or under this one. */
    leaves: number;
    leavesMet: number;
    /** An item is met when a taught lesson introduces, practises or checks an objective aligned to it, or to an item above it that names it whole (see coverage.ts). */
    met: boolean;
}

export interface FrameworkFigures {
    name: string;
    title: string;
    place: Place;
    /** Title in the file. */
    document?: string;
    /** Why the file could not be read, in words. */
    wrong?: string;
    items: number;
    met: number;
    /** "8 of 10 items are met (80 %)". */
    text: string;
    tree: FrameworkNode[];
    /** Alignments to codes that the file does not have. */
    unknownCodes: { code: string; objective: string; place: Place }[];
}

export interface CoverageFigures {
    course?: string;
    class?: string;
    lessons: CoverageLesson[];
    objectives: CoverageObjective[];
    gaps: CoverageGap[];
    /** Meetings without a visit after which an objective counts as not revisited. */
    revisitWithin: number;
    frameworks: FrameworkFigures[];
    assumptions: string[];
}
