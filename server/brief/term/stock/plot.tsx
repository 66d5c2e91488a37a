import type { JSX } from 'preact';
import type { ThingRecord } from '../../../planning/supply-figures.js';
import { fitLines } from '../../drawing/fit-text.js';
import { groundFill, Grounds } from '../../drawing/grounds.js';
import { MarkAt } from '../../drawing/marks.js';
import { placed } from '../../pieces/lead.js';
import type { View } from '../../view.js';
import { heads, termWords } from '../words.js';
import { comes, size, stocked, stockLine } from './line.js';

const text = 11;
/** Words for units have a plural, so they stand only where an amount is told in full. */
const symbol = /^\p{L}{1,2}$/u;

/** What is left of one thing as a falling line, with what comes marked under the week in which it does. */
export function StockPlot({ record, id, view }: { record: ThingRecord; id: string; view: View }): JSX.Element {
    const drawn = stockLine(record);
    const out = record.runsOut && drawn.weeks.find(({ week }) => week === record.runsOut?.week);
    const upper = fitLines(`${drawn.upper}${symbol.test(record.unit ?? '') ? ` ${record.unit}` : ''}`, 90, text, 1)[0] ?? '';
    // The amount at the upper edge stands where the mark of the week that runs out does not.
    const upperAtEnd = out !== undefined && out.middle < 130;
    return (
        <svg class="drawing stock" viewBox={`0 0 ${size.width} ${size.height}`} role="img" aria-label={`${record.title} week by week as a line; the table below says the same.`}>
            <Grounds id={id} grounds={['dotted']} />
            <path class="hairline" d={`M0 ${size.top}H${size.width}`} />
            <text class="small lesser" x={upperAtEnd ? size.width : 0} y={size.top - 4} text-anchor={upperAtEnd ? 'end' : 'start'}>{upper}</text>
            <path d={drawn.area} fill={groundFill(id, 'dotted')} />
            <path class="level" d={drawn.path} />
            {drawn.safetyAt !== undefined && <path class="dashes" d={`M0 ${drawn.safetyAt}H${size.width}`} />}
            <path class="stroke" d={`M0 ${size.bottom}H${size.width}`} />
            {record.weeks.map((week, index) => {
                const at = drawn.weeks[index]?.middle ?? 0;
                const { arrives, bought } = comes(week);
                return <>{arrives && <MarkAt mark="arrives" x={at} y={size.arrives} />}{bought && <MarkAt mark="bought" x={at} y={size.bought} />}</>;
            })}
            {drawn.labelled.map(({ week, middle }, index) => (
                <text class="small lesser" x={index === 0 ? 0 : middle} y={size.weeks} text-anchor={index === 0 ? 'start' : 'middle'}>{index === 0 ? `${heads.week.toLowerCase()} ${week}` : week}</text>
            ))}
            {out && (
                <g {...placed(record.runsOut?.place, view)}>
                    <path class="dashes fine" d={`M${out.middle} 16V${size.bottom}`} />
                    <MarkAt mark="runs-out" x={out.middle} y={size.bottom} />
                    <text class="strong small" x={Math.min(Math.max(out.middle, 4), size.width - 4)} y={12} text-anchor={anchor(out.middle)}>{`${(stocked(record) ? `${termWords.runsOut} in` : termWords.neededFrom).toLowerCase()} week ${out.week}`}</text>
                </g>
            )}
        </svg>
    );
}

/** Words of about 120 pixels round a place without leaving the drawing. */
function anchor(at: number): 'start' | 'middle' | 'end' {
    if (at < 65) return 'start';
    return at > size.width - 65 ? 'end' : 'middle';
}
