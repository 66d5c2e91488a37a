import type { JSX } from 'preact';
import type { BuyFigures, WeekBrief } from '../../planning/figures.js';
import { packs, whenToBuy } from '../sentences.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { BasketLines } from './basket.js';
import { AmountLine } from './figure.js';
import { Title } from './lead.js';
import { Section } from './section.js';

export function Buy({ brief, view }: { brief: WeekBrief; view: View }): JSX.Element {
    return (
        <Section id="buy" title={words.buy}>
            {brief.buy.length === 0 ? <p>{words.nothingToBuy}</p> : <BuyLines lines={brief.buy} brief={brief} view={view} />}
        </Section>
    );
}

export function BuyLines({ lines, brief, view }: { lines: BuyFigures[]; brief: WeekBrief; view: View }): JSX.Element {
    return (
        <ul class="things">
            {lines.map(line => (
                <AmountLine
                    amount={line.missing} view={view} place={line.place} tick
                    head={<Title place={line.place} view={view} text={line.title} />}
                >
                    <p><bdi>{whenToBuy(line, brief)}</bdi></p>
                    <BasketLines basket={line} view={view} />
                    {packs(line) && <p class="quiet"><bdi>{packs(line)}</bdi></p>}
                </AmountLine>
            ))}
        </ul>
    );
}
