import type { JSX } from 'preact';
import type { CoverageLesson, CoverageObjective, Does } from '../../../planning/coverage-figures.js';
import { fitLines } from '../../drawing/fit-text.js';
import { MarkAt } from '../../drawing/marks.js';
import { placed } from '../../pieces/lead.js';
import type { View } from '../../view.js';
import { doesWords, heads } from '../words.js';
import type { Grid } from './grids.js';

export interface GridShape {
    /** Pixels for the titles of objectives beside their row; 0 where they stand above it. */
    side: number;
    /** Lessons beside each other. */
    most: number;
    name: 'wide' | 'narrow';
}

/** The wide one fits A4 and Letter, the narrow one a page of 320 pixels. */
export const gridShapes: readonly GridShape[] = [{ side: 190, most: 25, name: 'wide' }, { side: 0, most: 15, name: 'narrow' }];

const column = 18;
/** Left edge of the first column where nothing stands beside it. */
const edge = 12;
/** Room for the numbers of the weeks and for the titles of the lessons, which stand upright. */
const weekLine = 14;
const titles = 132;
const top = weekLine + titles + 6;
const text = 11;
const line = 13.5;
/** Each kind of work has its own height in a row, besides its own shape. */
const lanes: Record<Does, number> = { introduces: -10, practises: 0, checks: 10 };
const lanesHeight = 32;

export function CoverageGrid({ grid, shape, title, view }: { grid: Grid; shape: GridShape; title: string; view: View }): JSX.Element {
    const left = shape.side || edge;
    const width = left + grid.lessons.length * column + 2;
    const rowWidth = Math.max(width, shape.side ? 0 : 288);
    let y = top;
    const rows = grid.objectives.map(objective => {
        const lines = fitLines(objective.title, (shape.side || rowWidth) - 10, text, 3);
        const label = lines.length * line;
        const height = shape.side ? Math.max(lanesHeight + 2, label + 7) : label + lanesHeight + 6;
        const row = { objective, lines, y, height, labelY: shape.side ? y + (height - label) / 2 : y + 4, marksY: shape.side ? y + height / 2 : y + label + 4 + lanesHeight / 2 };
        y += height;
        return row;
    });
    return (
        <svg class={`drawing grid ${shape.name}`} width={rowWidth} height={y + 2} viewBox={`0 0 ${rowWidth} ${y + 2}`} role="img" aria-label={`${title} as a grid of objectives and lessons; the list below says the same.`}>
            <Heads lessons={grid.lessons} left={left} labelled={shape.side > 0} spans={shape.side ? [[2, y]] : [[2, top], ...rows.map((row): [number, number] => [row.marksY - lanesHeight / 2, row.marksY + lanesHeight / 2])]} view={view} />
            {rows.map(row => (
                <>
                    <path class="hairline" d={`M0 ${row.y}H${rowWidth}`} />
                    <g {...placed(row.objective.place, view)}>
                        <title>{row.objective.title}</title>
                        {row.lines.map((words, index) => <text x={0} y={row.labelY + line * (index + 0.8)}>{words}</text>)}
                    </g>
                    <Visits objective={row.objective} lessons={grid.lessons} left={left} y={row.marksY} view={view} />
                </>
            ))}
            <path class="hairline" d={`M0 ${y}H${rowWidth}`} />
        </svg>
    );
}

interface HeadsProps {
    lessons: CoverageLesson[];
    left: number;
    /** There is room for the word "Week". */
    labelled: boolean;
    /** From and to, in pixels, of the lines between weeks. */
    spans: readonly (readonly [number, number])[];
    view: View;
}

function Heads({ lessons, left, labelled, spans, view }: HeadsProps): JSX.Element {
    const dated = lessons.some(lesson => lesson.week !== undefined);
    const rule = (x: number): JSX.Element => <path class="hairline" d={spans.map(([from, to]) => `M${x} ${from}V${to}`).join('')} />;
    return (
        <>
            {dated && labelled && <text class="small lesser" x={left - 6} y={weekLine - 3} text-anchor="end">{heads.week}</text>}
            {lessons.map((lesson, index) => {
                const x = left + index * column;
                const begins = index === 0 || lessons[index - 1]?.week !== lesson.week;
                return (
                    <>
                        {begins && rule(x)}
                        {begins && lesson.week !== undefined && <text class="small lesser" x={x + 3} y={weekLine - 3}>{lesson.week}</text>}
                        <g {...placed(lesson.place, view)}>
                            <title>{lesson.title}</title>
                            <rect class="touch" x={x} y={weekLine} width={column} height={titles} />
                            <text transform={`translate(${x + column / 2 + 4} ${weekLine + titles}) rotate(-90)`}>{fitLines(lesson.title, titles - 4, text, 1)[0]}</text>
                        </g>
                    </>
                );
            })}
            {rule(left + lessons.length * column)}
        </>
    );
}

function Visits({ objective, lessons, left, y, view }: { objective: CoverageObjective; lessons: CoverageLesson[]; left: number; y: number; view: View }): JSX.Element {
    return (
        <>
            {objective.cells.map(cell => {
                const at = lessons.findIndex(lesson => lesson.index === cell.lesson);
                if (at < 0) return null;
                return (
                    <g {...placed(cell.place, view)}>
                        <title>{`${lessons[at]?.title ?? ''}: ${cell.does.map(does => doesWords[does]).join(', ')}`}</title>
                        <rect class="touch" x={left + at * column} y={y - lanesHeight / 2} width={column} height={lanesHeight} />
                        {cell.does.map(does => <MarkAt mark={does} x={left + (at + 0.5) * column} y={y + lanes[does]} />)}
                    </g>
                );
            })}
        </>
    );
}
