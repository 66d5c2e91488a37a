import { Fragment, type JSX } from 'preact';
import { basketFacts, lateWords, type Basket } from '../basket.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { placed, Title } from './lead.js';

/** What to put in the basket, what it costs, what it serves, and whether it is late: in words. */
export function BasketLines({ basket, view }: { basket: Basket; view: View }): JSX.Element {
    const { packsToBuy = [] } = basket;
    const facts = basketFacts(basket);
    const late = lateWords(basket);
    return (
        <>
            {late && <p class="late"><bdi>{late}</bdi></p>}
            {packsToBuy.length > 0 && (
                <p>
                    {words.toBuy}: {packsToBuy.map((pack, index) => (
                        <Fragment>{index > 0 && ', '}<span {...placed(pack.place, view)}><Title place={pack.place} view={view} text={pack.text} /></span></Fragment>
                    ))}.
                </p>
            )}
            {facts && <p class="quiet"><bdi>{facts}</bdi></p>}
        </>
    );
}
