import type { JSX } from 'preact';
import type { ThingFigures, WeekBrief } from '../../planning/figures.js';
import { marks, onlyParts, stock } from '../sentences.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { AmountLine, Trail } from './figure.js';
import { Title } from './lead.js';
import { ProseGoingOn, ProseText } from './prose.js';
import { Section } from './section.js';

export function FetchList({ brief, view }: { brief: WeekBrief; view: View }): JSX.Element {
    return (
        <Section id="fetch" title={words.fetch}>
            {brief.fetch.length === 0 && <p>{words.nothingToFetch}</p>}
            {brief.fetch.map(group => (
                <>
                    <h3><bdi>{group.title}</bdi></h3>
                    <ul class="things">{group.things.map(thing => <Thing thing={thing} brief={brief} view={view} />)}</ul>
                </>
            ))}
        </Section>
    );
}

function Thing({ thing, brief, view }: { thing: ThingFigures; brief: WeekBrief; view: View }): JSX.Element {
    const marked = marks(thing, brief);
    const held = stock(thing);
    const parts = onlyParts(thing);
    return (
        <AmountLine
            amount={thing.amount} view={view} place={thing.place} id={view.thingId(thing)} tick
            head={<><Title place={thing.place} view={view} text={thing.title} />{marked && <span class="quiet"> ({marked})</span>}</>}
        >
            {thing.kept && <div>{words.kept}: <ProseGoingOn prose={thing.kept} view={view} /></div>}
            {thing.days.length > 0 && <p class="quiet">{words.needed}: {thing.days.join(', ')}</p>}
            {parts && <p><bdi>{parts}</bdi></p>}
            {thing.or.length > 0 && <p>{words.or}: <bdi>{thing.or.join(', ')}</bdi></p>}
            {thing.remark && <p><bdi>{thing.remark}</bdi></p>}
            {held && (
                <div class={thing.missing ? 'short' : 'quiet'}>
                    <Trail steps={[...(thing.atHand?.trail ?? []), ...(thing.missing?.trail ?? [])]} view={view}>{held}</Trail>
                </div>
            )}
            {thing.notes.map(note => <ProseText prose={note} view={view} />)}
        </AmountLine>
    );
}
