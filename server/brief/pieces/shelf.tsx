import { Fragment, type JSX } from 'preact';
import type { WeekBrief } from '../../planning/figures.js';
import { kitsAtRest, type KitAtRest } from '../kits-at-rest.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { placed, Title } from './lead.js';
import { Section } from './section.js';

export function Shelf({ brief, view }: { brief: WeekBrief; view: View }): JSX.Element | null {
    if (brief.stayOnShelf.length + brief.putAway.length === 0) return null;
    return (
        <Section id="shelf" title={words.shelf}>
            <ShelfList title={words.stayOnShelf} lines={brief.stayOnShelf.filter(line => !line.kit)} kits={kitsAtRest(brief)} view={view} />
            <ShelfList title={words.putAway} lines={brief.putAway} kits={[]} view={view} />
        </Section>
    );
}

function ShelfList({ title, lines, kits, view }: { title: string; lines: WeekBrief['putAway']; kits: KitAtRest[]; view: View }): JSX.Element | null {
    if (lines.length + kits.length === 0) return null;
    return (
        <>
            <h3>{title}</h3>
            <ul class="plain">
                {kits.map(rest => <KitLine rest={rest} view={view} />)}
                {lines.map(line => (
                    <li {...placed(line.place, view)}>
                        <Title place={line.place} view={view} text={line.title} />
                        {line.why && <span class="quiet">: <bdi>{line.why}</bdi></span>}
                    </li>
                ))}
            </ul>
        </>
    );
}

/** All pieces of a kit that rest this week in a sentence for each time they come back. */
function KitLine({ rest, view }: { rest: KitAtRest; view: View }): JSX.Element {
    return (
        <li {...placed(rest.kit.place, view)}>
            <Title place={rest.kit.place} view={view} text={rest.kit.title} />
            {rest.groups.map(group => (
                <p>
                    <span class="quiet">{group.when}: </span>
                    {group.pieces.map((piece, index) => (
                        <Fragment>{index > 0 && ', '}<Title place={piece.place} view={view} text={piece.title} /></Fragment>
                    ))}.
                </p>
            ))}
        </li>
    );
}
