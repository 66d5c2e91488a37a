/** What the text and the Markdown of coverage say alike. */
import type { CoverageFigures, CoverageObjective, FrameworkFigures, FrameworkNode } from '../planning/coverage-figures.js';

/** So many lessons are named beside an item of a framework; the rest is counted. */
const namedLessons = 3;

/** "Coverage of orchard-year, class millpond: 120 lessons, 73 objectives". */
export function coverageTitle({ course, class: name, lessons, objectives }: CoverageFigures): string {
    const what = [course, name && `class ${name}`].filter(Boolean).join(', ');
    const count = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;
    return `Coverage${what ? ` of ${what}` : ''}: ${count(lessons.length, 'lesson')}, ${count(objectives.length, 'objective')}`;
}

/** Objectives by strand, in the order in which the strands first appear; without any strand under an empty name. */
export function byStrand(objectives: readonly CoverageObjective[]): [strand: string, objectives: CoverageObjective[]][] {
    const strands = new Map<string, CoverageObjective[]>();
    for (const objective of objectives) {
        const strand = objective.strand ?? '';
        const known = strands.get(strand);
        if (known) known.push(objective);
        else strands.set(strand, [objective]);
    }
    return [...strands];
}

/** What is to be said of a framework beside its items. */
export function frameworkRemarks({ unknownCodes, remarks = [] }: FrameworkFigures): string[] {
    return [...unknownCodes.map(({ objective, code }) => `The objective ${objective} is aligned to ${code}, which the framework does not have.`), ...remarks];
}

/** "N.1 Counts to twenty: met in “One”, “Two” and 2 more lessons"; of an item with others under it, how many of those are met. */
export function nodeLine(node: FrameworkNode): string {
    const name = [node.code, node.statement === node.code ? undefined : node.statement.replace(/\.$/, '')].filter(Boolean).join(' ');
    const branch = node.children.length > 0 ? `${node.leavesMet} of ${node.leaves} met` : '';
    return `${name}: ${[branch, howMet(node)].filter(Boolean).join('; ')}`;
}

function howMet(node: FrameworkNode): string {
    if (node.lessons.length > 0) {
        const titles = node.lessons.slice(0, namedLessons).map(l => `“${l.title}”`);
        const more = node.lessons.length - titles.length;
        if (more > 0) return `met in ${titles.join(', ')} and ${more} more ${more === 1 ? 'lesson' : 'lessons'}`;
        return `met in ${titles.length > 1 ? `${titles.slice(0, -1).join(', ')} and ` : ''}${titles[titles.length - 1]!}`;
    }
    if (node.through === 'above') return 'met through the item above';
    if (node.objectives.length > 0) return 'aligned, but no lesson of the plan works on it';
    return node.children.length > 0 ? '' : 'not met';
}
