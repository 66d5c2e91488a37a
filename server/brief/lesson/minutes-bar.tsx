import type { JSX } from 'preact';
import type { LessonFigures, PartFigures } from '../../planning/figures.js';
import { lessonTime, partKindAndTime, partTitle, plural } from '../sentences.js';
import { words } from '../words.js';
import { Patterns, patternFill } from './patterns.js';

/**
 * Per cent of the bar that a number needs: below the first it shows on wide screens and paper only, below the second never.
 * The list under the bar numbers every piece.
 */
const numberedOnNarrow = 7.5;
const numberedOnWide = 3.6;

interface Piece {
    part: PartFigures;
    /** Position among all parts, from 1. */
    number: number;
    /** Per cent of the bar. */
    from: number;
    width: number;
}

/** The session as a bar whose pieces are as wide as they are long, with the same told in a list below. */
export function MinutesBar({ lesson, id }: { lesson: LessonFigures; id: string }): JSX.Element | null {
    if (lesson.parts.length === 0) return null;
    const pieces = layOut(lesson.parts);
    const kinds = [...new Set(lesson.parts.map(part => part.kind))];
    return (
        <div class="run">
            <h3>{words.run}, {lessonTime(lesson)}</h3>
            {pieces.length > 0 && (
                <svg class="bar" width="100%" height="34" role="img" aria-label={`${plural(lesson.minutes, 'minute')} as a bar; the list below says the same.`}>
                    <Patterns id={id} kinds={kinds} />
                    {pieces.map(piece => <rect class="piece" x={`${piece.from}%`} y="2" width={`${piece.width}%`} height="30" fill={patternFill(id, piece.part.kind)} />)}
                    {pieces.filter(piece => piece.width >= numberedOnWide).map(piece => (
                        <g class={piece.width < numberedOnNarrow ? 'fine' : undefined}>
                            <circle class="disc" cx={`${round(piece.from + piece.width / 2)}%`} cy="17" r="10" />
                            <text class="number" x={`${round(piece.from + piece.width / 2)}%`} y="17" dy="4.5" text-anchor="middle">{piece.number}</text>
                        </g>
                    ))}
                </svg>
            )}
            <ol class="pieces">
                {lesson.parts.map((part, index) => (
                    <li>
                        <svg class="swatch" width="18" height="18" aria-hidden="true"><rect class="piece" x="1" y="1" width="16" height="16" fill={patternFill(id, part.kind)} /></svg>
                        <span><span class="count">{index + 1}</span> <bdi>{partTitle(part)}</bdi> <span class="quiet">{partKindAndTime(part)}</span></span>
                    </li>
                ))}
            </ol>
        </div>
    );
}

/** Parts without minutes take no room in the bar; they stand in the list. */
function layOut(parts: PartFigures[]): Piece[] {
    const whole = parts.reduce((sum, part) => sum + (part.minutes ?? 0), 0);
    const pieces: Piece[] = [];
    let before = 0;
    parts.forEach((part, index) => {
        const minutes = part.minutes ?? 0;
        if (minutes > 0) pieces.push({ part, number: index + 1, from: round((before / whole) * 100), width: round((minutes / whole) * 100) });
        before += minutes;
    });
    return pieces;
}

function round(percent: number): number {
    return Math.round(percent * 100) / 100;
}
