import type { Picture } from '@haversack/language/pictures/picture';
import type { JSX } from 'preact';
import { upTo } from './counters.js';
import { n, type Drawing } from './drawing.js';

const centre = 76;
const rim = 74;
const lengths = { hour: 32, minute: 46 };

/** A face with its hands; the hour hand moves half a degree with each minute. */
export function drawClock({ hour, minute }: Extract<Picture, { kind: 'clock' }>): Drawing {
    return {
        width: centre * 2, height: centre * 2,
        shapes: (
            <>
                <circle class="edge" cx={centre} cy={centre} r={rim} />
                {upTo(60).map(tick => {
                    const hourly = tick % 5 === 0;
                    return <path class={hourly ? 'drawn' : 'drawn slight'} d={`M${point(tick * 6, rim - (hourly ? 7 : 4))}L${point(tick * 6, rim)}`} />;
                })}
                {upTo(12).map(index => {
                    const [x, y] = around((index + 1) * 30, 57);
                    return <text x={x} y={n(y + 4.6)} font-size="13" text-anchor="middle">{index + 1}</text>;
                })}
                <Hand kind="hour" angle={(hour % 12) * 30 + minute / 2} width={4.5} />
                <Hand kind="minute" angle={minute * 6} width={2} />
                <circle class="pip" cx={centre} cy={centre} r="4" />
            </>
        )
    };
}

/** Degrees from 12 on, clockwise. */
function Hand({ kind, angle, width }: { kind: keyof typeof lengths; angle: number; width: number }): JSX.Element {
    const [x, y] = around(angle, lengths[kind]);
    return <line class={`hand ${kind}-hand`} x1={centre} y1={centre} x2={x} y2={y} stroke-width={width} />;
}

function around(angle: number, distance: number): [number, number] {
    const turn = (angle * Math.PI) / 180;
    return [n(centre + distance * Math.sin(turn)), n(centre - distance * Math.cos(turn))];
}

function point(angle: number, distance: number): string {
    return around(angle, distance).join(' ');
}
