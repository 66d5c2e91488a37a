import type { JSX } from 'preact';
import type { WeekBrief } from '../../planning/figures.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { placed, Title } from './lead.js';
import { Section } from './section.js';

export function Shelf({ brief, view }: { brief: WeekBrief; view: View }): JSX.Element | null {
    if (brief.stayOnShelf.length + brief.putAway.length === 0) return null;
    return (
        <Section id="shelf" title={words.shelf}>
            <ShelfList title={words.stayOnShelf} lines={brief.stayOnShelf} view={view} />
            <ShelfList title={words.putAway} lines={brief.putAway} view={view} />
        </Section>
    );
}

function ShelfList({ title, lines, view }: { title: string; lines: WeekBrief['stayOnShelf']; view: View }): JSX.Element | null {
    if (lines.length === 0) return null;
    return (
        <>
            <h3>{title}</h3>
            <ul class="plain">
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
