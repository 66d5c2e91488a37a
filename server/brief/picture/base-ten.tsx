import type { Picture } from '@haversack/language/pictures/picture';
import type { JSX } from 'preact';
import { upTo } from './counters.js';
import { n, type Drawing } from './drawing.js';

const edge = 1.5;
/** The same for every number, so that pictures can be compared. */
const one = 6;
const ten = one * 10;
const depth = one * 4;
/** Between two places. */
const apart = 16;

/** Blocks of each place from the left, standing on one ground line: a thousand, hundreds in columns of five, tens side by side, ones in columns of five. */
export function drawBaseTen({ value }: Extract<Picture, { kind: 'base-ten' }>): Drawing {
    const [thousands = 0, hundreds = 0, tens = 0, ones = 0] = [1000, 100, 10, 1].map(worth => Math.floor(value / worth) % 10);
    const between = { hundreds: 5, tens: 3, ones: 3 };
    const columns = (count: number, size: number, gap: number): number => Math.ceil(count / 5) * (size + gap) - gap;
    const tall = (count: number, size: number, gap: number): number => Math.min(count, 5) * (size + gap) - gap;
    const rodAt = (index: number): number => index * (one + between.tens) + (index >= 5 ? between.tens * 2 : 0);
    const groups = [
        { count: thousands, width: ten + depth, height: ten + depth },
        { count: hundreds, width: columns(hundreds, ten, between.hundreds), height: tall(hundreds, ten, between.hundreds) },
        { count: tens, width: rodAt(tens - 1) + one, height: ten },
        { count: ones, width: columns(ones, one, between.ones), height: tall(ones, one, between.ones) }
    ];
    const there = groups.filter(({ count }) => count > 0);
    const height = Math.max(...there.map(group => group.height)) + 2 * edge;
    const width = there.reduce((sum, group) => sum + group.width, 0) + (there.length - 1) * apart + 2 * edge;
    const left = groups.map((_, index) => edge + groups.slice(0, index).reduce((sum, group) => sum + (group.count > 0 ? group.width + apart : 0), 0));
    const ground = height - edge;
    const stacked = (index: number, from: number, size: number, gap: number): { x: number; y: number } =>
        ({ x: from + Math.floor(index / 5) * (size + gap), y: ground - (index % 5 + 1) * (size + gap) + gap });
    return {
        width, height,
        shapes: (
            <>
                {thousands > 0 && <Thousand x={left[0] ?? 0} y={ground - ten} />}
                {upTo(hundreds).map(index => <Block kind="hundred" {...stacked(index, left[1] ?? 0, ten, between.hundreds)} across={10} down={10} look={index < 5 ? 'first' : 'second'} />)}
                {upTo(tens).map(index => <Block kind="ten" x={(left[2] ?? 0) + rodAt(index)} y={ground - ten} across={1} down={10} look={index < 5 ? 'first' : 'second'} />)}
                {upTo(ones).map(index => <Block kind="one" {...stacked(index, left[3] ?? 0, one, between.ones)} across={1} down={1} look={index < 5 ? 'first' : 'second'} />)}
            </>
        )
    };
}

interface BlockProps { kind: string; x: number; y: number; across: number; down: number; look: 'first' | 'second' }

/** A block with the lines between its ones; those between its tens are stronger, so that a hundred is seen as ten tens. */
function Block({ kind, x, y, across, down, look }: BlockProps): JSX.Element {
    const [width, height] = [across * one, down * one];
    const level = upTo(down - 1).map(index => `M${n(x)} ${n(y + (index + 1) * one)}h${width}`).join('');
    const upright = upTo(across - 1).map(index => `M${n(x + (index + 1) * one)} ${n(y)}v${height}`).join('');
    return (
        <g class={`block ${kind} ${look}-block`}>
            <rect class="face" x={n(x)} y={n(y)} width={width} height={height} />
            {level && <path class="between-ones" d={level} />}
            {upright && <path class="between-tens" d={upright} />}
            <rect class="outline" x={n(x)} y={n(y)} width={width} height={height} />
        </g>
    );
}

/** Ten hundreds, one behind the other, seen a little from above and from the right. */
function Thousand({ x, y }: { x: number; y: number }): JSX.Element {
    const layers = upTo(9).map(index => {
        const back = (depth * (index + 1)) / 10;
        return `M${n(x + back)} ${n(y - back)}h${ten}v${ten}`;
    }).join('');
    return (
        <g class="thousand">
            <path class="face" d={`M${x} ${n(y)}l${depth} ${-depth}h${ten}v${ten}l${-depth} ${depth}h${-ten}z`} />
            <path class="drawn slight" d={layers} />
            <Block kind="front" x={x} y={y} across={10} down={10} look="first" />
            <path class="outline" d={`M${x} ${n(y)}l${depth} ${-depth}h${ten}v${ten}l${-depth} ${depth}M${n(x + ten)} ${n(y)}l${depth} ${-depth}`} />
        </g>
    );
}
