import { sumOf } from '@haversack/language/pictures/balance';
import type { Picture } from '@haversack/language/pictures/picture';
import type { JSX } from 'preact';
import { letters, n, type Drawing } from './drawing.js';

const half = 88;
const middle = 156;
const pivot = 26;
const block = { width: 24, height: 17, inRow: 5 };
const pan = { half: 66, high: 6 };
/** Degrees: a small difference is seen, a great one leaves the pans where they can be read. */
const tilt = { least: 4, most: 12 };

/** A beam on a post. Each pan hangs from its end and stays level, whatever the beam does. */
export function drawBalance({ left, right }: Extract<Picture, { kind: 'balance' }>): Drawing {
    const degrees = tiltOf(sumOf(left), sumOf(right));
    const turn = (degrees * Math.PI) / 180;
    const [across, down] = [half * Math.cos(turn), half * Math.sin(turn)];
    const rows = Math.ceil(Math.max(left.length, right.length) / block.inRow);
    const hang = Math.max(48, rows * (block.height + 1) + 22);
    const foot = pivot + half * Math.sin((tilt.most * Math.PI) / 180) + hang + pan.high + 14;
    return {
        width: middle * 2, height: n(foot + 2),
        shapes: (
            <>
                <path class="drawn broad" d={`M${middle} ${pivot}V${n(foot)}M${middle - 44} ${n(foot)}H${middle + 44}`} />
                <path class="drawn slight" d={`M${middle - 8} 5H${middle - 3}M${middle + 3} 5H${middle + 8}`} />
                <g class="beam" transform={`rotate(${n(-degrees)} ${middle} ${pivot})`}>
                    <path class="drawn broad" d={`M${middle - half} ${pivot}H${middle + half}`} />
                    <path class="drawn" d={`M${middle} ${pivot}V6`} />
                </g>
                <Pan parts={left} x={middle - across} y={pivot + down} hang={hang} side="left" />
                <Pan parts={right} x={middle + across} y={pivot - down} hang={hang} side="right" />
                <circle class="pip" cx={middle} cy={pivot} r="4.5" />
            </>
        )
    };
}

/** Degrees by which the left end sinks; less than 0 where the right one does. */
function tiltOf(left: number, right: number): number {
    if (left === right) return 0;
    const share = Math.abs(left - right) / Math.max(left, right);
    return Math.sign(left - right) * (tilt.least + (tilt.most - tilt.least) * share);
}

/** `x`, `y`: the end of the beam from which it hangs. */
function Pan({ parts, x, y, hang, side }: { parts: readonly number[]; x: number; y: number; hang: number; side: string }): JSX.Element {
    const plate = y + hang;
    return (
        <g class={`pan ${side}-pan`}>
            <path class="drawn slight" d={`M${n(x)} ${n(y)}L${n(x - pan.half + 2)} ${n(plate)}M${n(x)} ${n(y)}L${n(x + pan.half - 2)} ${n(plate)}`} />
            <path class="plate" d={`M${n(x - pan.half)} ${n(plate)}H${n(x + pan.half)}l-6 ${pan.high}H${n(x - pan.half + 6)}Z`} />
            <circle class="pip" cx={n(x)} cy={n(y)} r="2.5" />
            {parts.map((part, index) => {
                const row = Math.floor(index / block.inRow);
                const inRow = Math.min(block.inRow, parts.length - row * block.inRow);
                const from = x - (inRow * (block.width + 1) - 1) / 2 + (index % block.inRow) * (block.width + 1);
                const top = plate - (row + 1) * (block.height + 1) + 0.4;
                return (
                    <>
                        <rect class="edge weight" x={n(from)} y={n(top)} width={block.width} height={block.height} />
                        <text x={n(from + block.width / 2)} y={n(top + block.height - 4.5)} font-size={part === 100 ? letters - 1.5 : letters} text-anchor="middle">{part}</text>
                    </>
                );
            })}
        </g>
    );
}
