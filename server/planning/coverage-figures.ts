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
    /** Meetings at which it is taught again, because children were unsure. */
    again?: number[];
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
    /** From one visit to the next, counted in meetings: 1 is the very next meeting. Lessons at the same meeting are one visit. */
    spacing: number[];
    /** "introduced in week 1, practised 3 times in weeks 1 to 4, checked in week 6; visited at widening gaps of 2, 4, 9 and 11 meetings". */
    text: string;
    /** No gap is shorter than the one before it and the last is longer than the first; absent with fewer than two gaps. It describes, it does not judge. */
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
    /** An item is met when a taught lesson introduces, practises or checks an objective aligned to it or to an item above it, or when all items under it are met (see coverage/framework-share.ts). */
    met: boolean;
    /** Met only because an item above it is. */
    through?: 'above';
}

export interface FrameworkFigures {
    name: string;
    title: string;
    place: Place;
    /** Title in the file. */
    document?: string;
    /** Why the file could not be read, in words. */
    wrong?: string;
    /** Items without others under them. */
    items: number;
    met: number;
    /** Of these, met only through an item above them. */
    metAbove?: number;
    /** "8 of 10 items are met (80 %), 3 of them only through an item above them". */
    text: string;
    tree: FrameworkNode[];
    /** Alignments to codes that the file does not have. */
    unknownCodes: { code: string; objective: string; place: Place }[];
    /** What was mended or left out while reading the file. */
    remarks?: string[];
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
