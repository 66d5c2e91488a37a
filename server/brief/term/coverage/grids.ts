/** The coverage of a term cut into grids that fit a page: a strand at a time, and no more lessons beside each other than there is room for. */
import type { CoverageFigures, CoverageLesson, CoverageObjective } from '../../../planning/coverage-figures.js';

export interface Grid {
    /** For ids. */
    id: string;
    lessons: CoverageLesson[];
    objectives: CoverageObjective[];
}

export interface Strand {
    /** Absent for objectives of no strand. */
    title?: string;
    objectives: CoverageObjective[];
    /** Lessons that name one of them, in teaching order. */
    lessons: CoverageLesson[];
}

/** Those of no strand come last. */
export function strandsOf({ objectives, lessons }: CoverageFigures): Strand[] {
    const titles = [...new Set(objectives.map(objective => objective.strand))];
    return [...titles.filter(title => title !== undefined), ...titles.filter(title => title === undefined)].map(title => {
        const of = objectives.filter(objective => objective.strand === title);
        const touched = new Set(of.flatMap(objective => objective.cells.map(cell => cell.lesson)));
        return { title, objectives: of, lessons: lessons.filter(lesson => touched.has(lesson.index)) };
    });
}

/** @param most lessons beside each other */
export function gridsOf({ objectives, lessons }: Strand, most: number): Grid[] {
    const grids: Grid[] = [];
    const evenly = Math.ceil(lessons.length / Math.ceil(lessons.length / most));
    for (let from = 0; from < lessons.length;) {
        const to = endOf(lessons, from, Math.min(most, evenly + 2));
        const beside = lessons.slice(from, to);
        const here = new Set(beside.map(lesson => lesson.index));
        grids.push({ id: String(grids.length + 1), lessons: beside, objectives: objectives.filter(objective => objective.cells.some(cell => here.has(cell.lesson))) });
        from = to;
    }
    return grids;
}

/** A week stays together where that leaves a good part of the room in use. */
function endOf(lessons: readonly CoverageLesson[], from: number, most: number): number {
    const to = Math.min(lessons.length, from + most);
    if (to === lessons.length) return to;
    const week = lessons[to]?.week;
    let start = to;
    while (start > from && week !== undefined && lessons[start - 1]?.week === week) start--;
    return start - from > most / 2 ? start : to;
}
