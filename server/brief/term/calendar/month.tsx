/** One month as a drawing: weeks are rows, days are cells with what is taught. Drawn twice, for wide and for narrow pages. */
import type { JSX } from 'preact';
import type { Place } from '@haversack/language/sheets/sheet';
import type { TaughtFigures } from '../../../planning/schedule-figures.js';
import { fitLines, textWidth } from '../../drawing/fit-text.js';
import { groundFill, Grounds, type Ground } from '../../drawing/grounds.js';
import { MarkAt } from '../../drawing/marks.js';
import { pieceWords, taughtRemark } from '../../meetings.js';
import { placed } from '../../pieces/lead.js';
import type { View } from '../../view.js';
import { dayWords, heads, shortWhy, termWords } from '../words.js';
import type { Block, Cell, GapRow, WeekRow } from './blocks.js';
import { freeWords, placeOfDay } from './entries.js';

/** Pixels of a drawing at its own size; it is never shown smaller. */
interface Measures {
    width: number;
    /** Room for the number of the week. */
    side: number;
    size: number;
    line: number;
    /** Lines for the title of one lesson. */
    most: number;
    head: number;
    wide: boolean;
}

/** The narrow one fits a page of 320 pixels with its margins. */
const measures = {
    wide: { width: 640, side: 62, size: 11.5, line: 14.5, most: 3, head: 20, wide: true },
    narrow: { width: 288, side: 30, size: 10.5, line: 13, most: 4, head: 18, wide: false }
} satisfies Record<string, Measures>;

const pad = 4.5;
const grounds: Ground[] = ['slanted', 'dotted', 'level'];

export function Month({ block, shape, view }: { block: Block; shape: 'wide' | 'narrow'; view: View }): JSX.Element {
    const m = measures[shape];
    const id = `month-${block.id}-${shape}`;
    const top = block.columns.length > 0 ? m.head : 2;
    let y = top;
    const rows = block.rows.map(row => {
        const laid = row.kind === 'week' ? layWeek(row, block.columnCount, m) : layGap(row, m);
        const at = y;
        y += laid.height + 3;
        return { laid, at };
    });
    return (
        <svg class={`drawing month ${shape}`} viewBox={`0 0 ${m.width} ${y + 1}`} role="img" aria-label={`${block.title} as a calendar; the table below says the same.`}>
            <Grounds id={id} grounds={grounds} />
            {block.columns.map((column, index) => <text class="small lesser" x={left(index, block.columnCount, m) + pad} y={m.head - 6}>{column}</text>)}
            {block.columns.length > 0 && <text class="small lesser" x={0} y={m.head - 6}>{heads.week}</text>}
            {rows.map(({ laid, at }) => (laid.kind === 'week' ? <Week laid={laid} y={at} id={id} m={m} view={view} /> : <Gap laid={laid} y={at} id={id} m={m} view={view} />))}
        </svg>
    );
}

function columnWidth(columns: number, m: Measures): number {
    return (m.width - m.side) / Math.max(columns, 1);
}

function left(column: number, columns: number, m: Measures): number {
    return m.side + column * columnWidth(columns, m) + 1.5;
}

/** Text of a cell under its date, in groups that each lead to a place. */
interface Laid {
    lines: string[];
    place?: Place;
    title?: string;
    quiet?: boolean;
    /** Stands on a patterned ground. */
    backed?: boolean;
    strong?: boolean;
}

interface LaidWeek {
    kind: 'week';
    row: WeekRow;
    height: number;
    cells: { cell: Cell; x: number; width: number; groups: Laid[] }[];
}

function layWeek(row: WeekRow, columns: number, m: Measures): LaidWeek {
    const width = columnWidth(columns, m) - 3;
    const cells = row.cells.flatMap((cell, index) => (cell ? [{ cell, x: left(index, columns, m), width, groups: cellText(cell, width - 2 * pad, m) }] : []));
    const tallest = cells.reduce((most, { groups }) => Math.max(most, textHeight(groups, m)), m.line);
    return { kind: 'week', row, cells, height: m.line + Math.max(tallest, row.now ? m.line * 2 : 0) + 2 * pad + 1 };
}

/** Pixels between what two lessons of one day say. */
const apart = 4;

function textHeight(groups: readonly Laid[], m: Measures): number {
    return groups.reduce((height, group) => height + group.lines.length * m.line, Math.max(groups.length - 1, 0) * apart);
}

function cellText(cell: Cell, width: number, m: Measures): Laid[] {
    const groups: Laid[] = cell.today ? [{ lines: [dayWords.today], strong: true }] : [];
    const fit = (text: string, most = m.most): string[] => fitLines(text, width, m.size, most);
    const { meeting, off } = cell;
    if (off) groups.push({ lines: fit(off.title, 2), place: off.place, title: `${off.title}: ${termWords.noMeeting}`, backed: true });
    if (meeting?.free) groups.push({ lines: fit(freeWords(meeting.free), 2), place: meeting.free.place, title: meeting.free.words, backed: true });
    for (const taught of meeting?.taught ?? []) groups.push(lessonText(taught, fit));
    return groups;
}

function lessonText(taught: TaughtFigures, fit: (text: string, most?: number) => string[]): Laid {
    const aside = [pieceWords(taught), taught.why && shortWhy[taught.why]].filter(Boolean).join(', ');
    const remarks = taughtRemark(taught);
    return { lines: [...fit(taught.title), ...(aside ? fit(`(${aside})`, 3) : [])], place: taught.place, title: remarks ? `${taught.title} (${remarks})` : taught.title };
}

function Week({ laid: { row, cells, height }, y, id, m, view }: { laid: LaidWeek; y: number; id: string; m: Measures; view: View }): JSX.Element {
    return (
        <>
            <text class="strong" x={0} y={y + pad + m.size}>{m.wide ? `${heads.week} ${row.week.number}` : row.week.number}</text>
            {row.now && fitLines(termWords.thisWeek, m.side - 6, m.size, 2).map((line, index) => <text class="small" x={0} y={y + pad + m.size + m.line * (index + 1)}>{line}</text>)}
            {cells.map(({ cell, x, width, groups }) => (
                <g class="day" {...placed(placeOfDay(cell), view)}>
                    <rect class={cell.today ? 'cell now' : 'cell'} x={x} y={y} width={width} height={height} rx={2} fill={groundOf(cell, id)} />
                    <DateLine cell={cell} x={x} y={y} width={width} m={m} />
                    <Groups groups={groups} x={x + pad} y={y + pad + m.size} m={m} view={view} />
                </g>
            ))}
        </>
    );
}

function groundOf(cell: Cell, id: string): string | undefined {
    if (cell.off) return groundFill(id, 'slanted');
    if (!cell.meeting?.free) return undefined;
    return groundFill(id, cell.meeting.free.why === 'catch-up' ? 'dotted' : 'level');
}

/** The date, with a sign for what has come here out of its turn. */
function DateLine({ cell, x, y, width, m }: { cell: Cell; x: number; y: number; width: number; m: Measures }): JSX.Element {
    const marks = [...new Set((cell.meeting?.taught ?? []).flatMap(({ why }) => (why ? [why] : [])))].slice(0, m.wide ? 3 : 1);
    const room = width - 2 * pad - marks.length * 12;
    // The month is told by the block; a day without a date keeps what fits of its label.
    const short = cell.date !== undefined && textWidth(cell.label, m.size) > room ? String(Number(cell.date.slice(8))) : cell.label;
    const label = fitLines(short, room, m.size, 1)[0] ?? '';
    return (
        <>
            {groundOf(cell, '') !== undefined && <Backing x={x + pad} y={y + pad + m.size} text={label} m={m} />}
            <text class="lesser" x={x + pad} y={y + pad + m.size}>{label}</text>
            {marks.map((mark, index) => <MarkAt mark={mark} x={x + width - 9 - index * 12} y={y + pad + m.size / 2 + 1} />)}
        </>
    );
}

/** Plain ground behind words that stand on a pattern. */
function Backing({ x, y, text, m }: { x: number; y: number; text: string; m: Measures }): JSX.Element {
    return <rect class="backing" x={x - 2} y={y - m.size + 0.5} width={textWidth(text, m.size) + 4} height={m.size + 3} />;
}

function Groups({ groups, x, y, m, view }: { groups: Laid[]; x: number; y: number; m: Measures; view: View }): JSX.Element {
    return (
        <>
            {groups.map((group, index) => {
                const first = y + m.line + textHeight(groups.slice(0, index), m) + (index > 0 ? apart : 0);
                return (
                    <g {...placed(group.place, view)}>
                        {group.title !== undefined && <title>{group.title}</title>}
                        {group.lines.map((text, at) => (
                            <>
                                {group.backed && <Backing x={x} y={first + m.line * at} text={text} m={m} />}
                                <text class={group.strong ? 'strong' : undefined} x={x} y={first + m.line * at}>{text}</text>
                            </>
                        ))}
                    </g>
                );
            })}
        </>
    );
}

interface LaidGap {
    kind: 'gap';
    row: GapRow;
    lines: string[];
    height: number;
}

function layGap(row: GapRow, m: Measures): LaidGap {
    const text = row.now ? `${row.text} (${termWords.thisWeek})` : row.text;
    const lines = fitLines(text, m.width - m.side - 2 * pad - 3, m.size, m.wide ? 2 : 4);
    return { kind: 'gap', row, lines, height: m.line * lines.length + 2 * pad };
}

function Gap({ laid: { row, lines, height }, y, id, m, view }: { laid: LaidGap; y: number; id: string; m: Measures; view: View }): JSX.Element {
    const x = m.side + 1.5;
    return (
        <g {...placed(row.off[0]?.place, view)}>
            <rect class="cell" x={x} y={y} width={m.width - m.side - 3} height={height} rx={2} fill={groundFill(id, 'slanted')} />
            {lines.map((line, index) => (
                <>
                    <Backing x={x + pad} y={y + pad + m.size - 1 + m.line * index} text={line} m={m} />
                    <text x={x + pad} y={y + pad + m.size - 1 + m.line * index}>{line}</text>
                </>
            ))}
        </g>
    );
}
