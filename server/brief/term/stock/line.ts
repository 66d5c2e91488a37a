/** Where the line of a stock drawing goes. Only pixels are worked out here; every amount comes from the record. */
import Fraction from 'fraction.js';
import { scaleLinear } from 'd3-scale';
import { curveStepAfter, line } from 'd3-shape';
import type { Quantity, RecordWeek, ThingRecord } from '../../../planning/supply-figures.js';

export const size = { width: 300, top: 30, bottom: 92, arrives: 100, bought: 110, weeks: 124, height: 128 };

export interface StockLine {
    /** Path of what is left. */
    path: string;
    /** The same with the ground below it. */
    area: string;
    /** Amount at the upper edge of the plot, in the record's unit. */
    upper: number;
    safetyAt?: number;
    weeks: { week: number; from: number; middle: number }[];
    /** Weeks whose number is written, so far apart that they never touch. */
    labelled: { week: number; middle: number }[];
}

/** Least pixels between the numbers of two weeks. */
const between = 30;

/** The line of one thing in pixels of the plot, y downwards. */
export function stockLine(record: ThingRecord): StockLine {
    const { weeks } = record;
    const points = levels(record);
    const safety = record.safety && asNumber(record.safety);
    const most = points.reduce((highest, [, level]) => Math.max(highest, level), Math.max(safety ?? 0, 1e-9));
    const x = scaleLinear().domain([0, Math.max(weeks.length, 1)]).range([0, size.width]);
    const y = scaleLinear().domain([0, most]).nice(4).range([size.bottom, size.top]);
    const path = line<[number, number]>().x(([at]) => round(x(at))).y(([, level]) => round(y(level))).curve(curveStepAfter)(points) ?? '';
    const placed = weeks.map(({ week }, index) => ({ week, from: round(x(index)), middle: round(x(index + 0.5)) }));
    return {
        path, area: `${path}L${size.width},${size.bottom}L0,${size.bottom}Z`, upper: y.domain()[1] ?? most,
        safetyAt: safety === undefined || safety <= 0 ? undefined : round(y(safety)), weeks: placed, labelled: spread(placed)
    };
}

/** What comes is there from the first day of the week; what is used is gone by its end. */
function levels(record: ThingRecord): [number, number][] {
    const opening = record.opening ? exactNumber(record.opening.exact) : 0;
    const points: [number, number][] = [[0, opening]];
    let before = opening;
    record.weeks.forEach((week, index) => {
        const after = asNumber(week.onHand);
        points.push([index, before + asNumber(week.scheduled) + asNumber(week.receipts)], [index + 0.5, after]);
        before = after;
    });
    return [...points, [record.weeks.length, before]];
}

function spread(weeks: StockLine['weeks']): StockLine['labelled'] {
    const [first, ...rest] = weeks;
    if (!first) return [];
    const labelled: StockLine['labelled'] = [first];
    // The first one says "week 1" and stands at the left edge.
    let last = 34;
    for (const week of rest) {
        if (week.middle - last < between && week.week !== first.week + 1) continue;
        if (week.middle - last < between || week.middle > size.width - 8) continue;
        labelled.push(week);
        last = week.middle;
    }
    return labelled;
}

export function comes({ scheduled, receipts }: RecordWeek): { arrives: boolean; bought: boolean } {
    return { arrives: asNumber(scheduled) > 0, bought: asNumber(receipts) > 0 };
}

/** The weeks that change something, and the first; the others repeat what stands above them. */
export function changingWeeks(record: ThingRecord): RecordWeek[] {
    return record.weeks.filter((week, index) => {
        const before = record.weeks[index - 1];
        return !before || [week.gross, week.scheduled, week.receipts].some(amount => asNumber(amount) !== 0) || week.onHand.exact !== before.onHand.exact;
    });
}

/** Some of it is in the cupboard at the start. */
export function stocked({ opening }: ThingRecord): boolean {
    return opening !== undefined && exactNumber(opening.exact) > 0;
}

/** Anything of it is ever there. */
export function counted(record: ThingRecord): boolean {
    return stocked(record) || record.weeks.some(week => comes(week).arrives || comes(week).bought || asNumber(week.onHand) !== 0);
}

/** "0" is told by an empty cell. */
export function unlessNone(amount: Quantity): string {
    return asNumber(amount) === 0 ? '' : amount.text;
}

function asNumber({ exact }: Quantity): number {
    return exactNumber(exact);
}

function exactNumber(exact: string): number {
    try {
        return new Fraction(exact).valueOf();
    } catch {
        return 0;
    }
}

function round(pixels: number): number {
    return Math.round(pixels * 10) / 10;
}
