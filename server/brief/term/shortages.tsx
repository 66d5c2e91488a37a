import { Fragment, type JSX } from 'preact';
import type { ClashFigures, ShortageFigures, SupplyFigures } from '../../planning/supply-figures.js';
import { AmountLine } from '../pieces/figure.js';
import { placed, Title } from '../pieces/lead.js';
import { Section } from '../pieces/section.js';
import { asId, type View } from '../view.js';
import type { TermFigures } from '../../planning/term-figures.js';
import { shortageWords } from './sentences.js';
import { termWords } from './words.js';

export function Shortages({ term, view }: { term: TermFigures; view: View }): JSX.Element | null {
    const { shortages, clashes } = term.supplies;
    if (shortages.length + clashes.length === 0) return null;
    return (
        <Section id="term-short" title={termWords.short}>
            {shortages.length > 0 && <ul class="things">{shortages.map(shortage => <Shortage shortage={shortage} supplies={term.supplies} view={view} />)}</ul>}
            {clashes.length > 0 && (
                <>
                    <h3>{termWords.clashes}</h3>
                    <ul class="things">{clashes.map(clash => <Clash clash={clash} view={view} />)}</ul>
                </>
            )}
        </Section>
    );
}

function Shortage({ shortage, supplies, view }: { shortage: ShortageFigures; supplies: SupplyFigures; view: View }): JSX.Element {
    const order = supplies.orders.find(({ id }) => id === shortage.order);
    return (
        <AmountLine
            amount={shortage.missing} view={view} place={shortage.place}
            head={<><Title place={shortage.place} view={view} text={shortage.title} /><span class="quiet">, {shortage.meeting}, week {shortage.week}</span></>}
        >
            <p>{shortageWords(shortage)} {termWords.forLessons}: {shortage.lessons.map((lesson, index) => (
                <Fragment>{index > 0 && ', '}<span {...placed(lesson.place, view)}><Title place={lesson.place} view={view} text={lesson.title} /></span></Fragment>
            ))}</p>
            {shortage.standIns.length > 0 && (
                <p>{termWords.standIns}: {shortage.standIns.map((standIn, index) => (
                    <Fragment>{index > 0 && '; '}<bdi>{standIn.text}</bdi>{!standIn.enough && ` (${termWords.notEnough})`}</Fragment>
                ))}.</p>
            )}
            {order && <p><a href={`#order-${asId(order.id)}`}>{termWords.orderHelps}</a></p>}
        </AmountLine>
    );
}

function Clash({ clash, view }: { clash: ClashFigures; view: View }): JSX.Element {
    return (
        <AmountLine
            amount={clash.missing} view={view} place={clash.place}
            head={<><Title place={clash.place} view={view} text={clash.title} /><span class="quiet">, {clash.meeting}</span></>}
        >
            <p>{shortageWords({ needed: clash.together, atHand: clash.atHand })}</p>
            {clash.classes.map(one => (
                <p {...placed(one.place, view)}><Title place={one.place} view={view} text={one.title} />: <bdi>{one.needed.text}</bdi> (<bdi>{one.lessons.join(', ')}</bdi>)</p>
            ))}
        </AmountLine>
    );
}
