import type { JSX } from 'preact';
import type { CostFigures, MoneyFigure, OrderFigures } from '../../planning/supply-figures.js';
import { AmountLine } from '../pieces/figure.js';
import { BasketLines } from '../pieces/basket.js';
import { Title } from '../pieces/lead.js';
import { Section } from '../pieces/section.js';
import { sentence } from '../sentences.js';
import { asId, type View } from '../view.js';
import type { TermFigures } from '../../planning/term-figures.js';
import { orderGroups } from './sentences.js';
import { heads, termWords } from './words.js';

export function TermBuying({ term, view }: { term: TermFigures; view: View }): JSX.Element {
    const { supplies } = term;
    return (
        <Section id="term-buy" title={termWords.buy}>
            {supplies.orders.length === 0 && <p>{termWords.nothingToBuy}</p>}
            {orderGroups(supplies).map(group => (
                <>
                    <h3>{group.title}</h3>
                    <ul class="things">{group.orders.map(order => <Order order={order} view={view} />)}</ul>
                </>
            ))}
            <Costs costs={supplies.costs} />
        </Section>
    );
}

function Order({ order, view }: { order: OrderFigures; view: View }): JSX.Element {
    const { trail } = order.net;
    return (
        <AmountLine
            amount={{ ...order.bought, trail: order.bought.trail.length > 0 ? order.bought.trail : trail }} view={view} place={order.place} tick id={`order-${asId(order.id)}`}
            head={<Title place={order.place} view={view} text={order.title} />}
        >
            <p><bdi>{sentence(order.when)}</bdi></p>
            <BasketLines basket={{ ...order, packsToBuy: order.packs }} view={view} />
        </AmountLine>
    );
}

/** A column for each currency: they are never added up. */
function Costs({ costs }: { costs: CostFigures }): JSX.Element | null {
    const currencies = [...new Set([...costs.term, ...costs.byWeek.flatMap(week => week.money)].map(money => money.currency))];
    const row = (head: JSX.Element | string, money: readonly MoneyFigure[]): JSX.Element => (
        <tr><th scope="row">{head}</th>{currencies.map(currency => <td class="number-cell">{money.find(one => one.currency === currency)?.text}</td>)}</tr>
    );
    if (currencies.length + costs.unpriced.length === 0) return null;
    return (
        <>
            <h3>{termWords.costs}</h3>
            {currencies.length > 0 && (
                <table class="costs">
                    <caption class="unseen">{termWords.costs}</caption>
                    <thead><tr><th scope="col">{heads.week}</th>{currencies.map(currency => <th scope="col" class="number-cell">{currency}</th>)}</tr></thead>
                    <tbody>{costs.byWeek.map(({ week, money }) => row(String(week), money))}</tbody>
                    <tfoot>
                        {row(termWords.wholeTerm, costs.term)}
                        {costs.perLearner.length > 0 && row(termWords.perLearner, costs.perLearner)}
                    </tfoot>
                </table>
            )}
            {costs.unpriced.length > 0 && <p class="quiet">{termWords.unpriced}: <bdi>{costs.unpriced.map(thing => thing.title).join(', ')}</bdi>.</p>}
        </>
    );
}
