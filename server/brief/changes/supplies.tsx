import type { JSX } from 'preact';
import type { Figure } from '../../planning/figure.js';
import type { ChangesFigures, LedgerFigures } from '../../planning/ledger-figures.js';
import { Trail } from '../pieces/figure.js';
import { placed, Title } from '../pieces/lead.js';
import { Section } from '../pieces/section.js';
import type { View } from '../view.js';
import { changesWords, heads } from './words.js';

/** What is needed in other amounts over the term, and what that costs. */
export function ChangedSupplies({ changes: { ledger }, view }: { changes: ChangesFigures; view: View }): JSX.Element | null {
    if (!ledger) return null;
    return (
        <Section id="changes-supplies" title={changesWords.supplies}>
            {ledger.supplies.length === 0 ? <p>{changesWords.sameSupplies}</p> : (
                <table class="before-after">
                    <caption>{changesWords.suppliesCaption}</caption>
                    <Heads first={heads.thing} />
                    <tbody>
                        {ledger.supplies.map(thing => (
                            <tr {...placed(thing.place, view)}>
                                <th scope="row"><Title place={thing.place} view={view} text={thing.title} /></th>
                                <Amount figure={thing.before} view={view} />
                                <Amount figure={thing.after} view={view} />
                                <td><bdi>{thing.difference}</bdi></td>
                            </tr>
                        ))}
                    </tbody>
                </table>
            )}
            {ledger.money.length > 0 && <Money money={ledger.money} />}
        </Section>
    );
}

function Heads({ first }: { first: string }): JSX.Element {
    return <thead><tr>{[first, heads.before, heads.after, heads.difference].map(head => <th scope="col">{head}</th>)}</tr></thead>;
}

function Amount({ figure, view }: { figure: Figure | undefined; view: View }): JSX.Element {
    return <td>{figure ? <Trail steps={figure.trail} view={view}>{figure.text}</Trail> : <span class="quiet">{changesWords.none}</span>}</td>;
}

function Money({ money }: { money: LedgerFigures['money'] }): JSX.Element {
    return (
        <>
            <h3>{changesWords.money}</h3>
            <table class="before-after">
                <caption>{changesWords.moneyCaption}</caption>
                <Heads first={heads.currency} />
                <tbody>
                    {money.map(({ currency, before, after, difference }) => (
                        <tr>
                            <th scope="row"><bdi>{currency}</bdi></th>
                            {[before, after].map(side => <td>{side ? side.text : <span class="quiet">{changesWords.none}</span>}</td>)}
                            <td><bdi>{difference}</bdi></td>
                        </tr>
                    ))}
                </tbody>
            </table>
        </>
    );
}
