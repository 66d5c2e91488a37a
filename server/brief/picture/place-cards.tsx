import { placesOf } from '@haversack/language/pictures/counted-kinds';
import type { Picture } from '@haversack/language/pictures/picture';
import type { JSX } from 'preact';
import { upTo } from './counters.js';
import { n, type Drawing } from './drawing.js';
import { hatched } from './hatched.js';

/** A card ends where a digit does, so that one that is laid over it covers whole digits. */
const digit = { width: 19, size: 23 };
const high = 40;
/** Each place has its band along the foot of the card. */
const band = 7;
const plus = 18;
const below = 14;
const edge = 1;

interface Card { digit: number; worth: number; digits: number; width: number }

/** The cards apart and, where there are several, laid over one another as the number. */
export function drawPlaceCards({ value }: Extract<Picture, { kind: 'place-cards' }>): Drawing {
    const cards = placesOf(value).map((place): Card => {
        const digits = String(place.worth).length;
        return { ...place, digits, width: digits * digit.width };
    });
    const left = cards.map((_, index) => edge + cards.slice(0, index).reduce((sum, { width }) => sum + width + plus, 0));
    const width = cards.reduce((sum, card) => sum + card.width, 0) + (cards.length - 1) * plus + 2 * edge;
    const widest = cards[0]?.width ?? 0;
    const together = cards.length > 1;
    return {
        width, height: (together ? 2 * high + below : high) + 2 * edge,
        shapes: (
            <>
                {cards.map((card, index) => (
                    <>
                        {index > 0 && <text x={n((left[index] ?? 0) - plus / 2)} y={edge + high / 2 + 5} font-size="16" text-anchor="middle">+</text>}
                        <CardAt card={card} x={left[index] ?? 0} y={edge} shown={card.digits} />
                    </>
                ))}
                {together && <g class="together">{cards.map((card, index) => <CardAt card={card} x={edge + widest - card.width} y={edge + high + below} shown={card.digits - (cards[index + 1]?.digits ?? 0)} />)}</g>}
            </>
        )
    };
}

/** `shown`: how many of its digits no other card lies on, from the left. */
function CardAt({ card, x, y, shown }: { card: Card; x: number; y: number; shown: number }): JSX.Element {
    const text = String(card.digit * card.worth);
    return (
        <g class="card">
            <rect class="edge" x={x} y={y} width={card.width} height={high} rx="3" />
            <Band place={card.digits} x={x} y={y + high - band} width={card.width} />
            {upTo(shown).map(index => <text x={x + (index + 0.5) * digit.width} y={y + 25} font-size={digit.size} text-anchor="middle">{text[index]}</text>)}
        </g>
    );
}

/** Nothing for ones; level lines for tens; slanted for hundreds; upright for thousands. */
function Band({ place, x, y, width }: { place: number; x: number; y: number; width: number }): JSX.Element | null {
    const upright = upTo(Math.floor((width - 4) / 4)).map(index => `M${x + 4 + index * 4} ${y}v${band - 1}`).join('');
    switch (place) {
        case 1: return null;
        case 2: return <path class="hatch" d={`M${x + 1} ${y + 0.5}h${width - 2}M${x + 1} ${y + 3.5}h${width - 2}`} />;
        case 3: return <path class="hatch" d={hatched(x + 1, y, width - 2, band - 1, 5)} />;
        default: return <path class="hatch" d={upright} />;
    }
}
