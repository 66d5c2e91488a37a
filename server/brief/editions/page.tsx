import type { JSX } from 'preact';
import type { Difference, EditionFigures, EditionGroup, EditionSection } from '../../planning/edition-figures.js';
import { htmlPage, type PageOptions } from '../html-page.js';
import { Labelled } from '../pieces/labelled.js';
import { Section } from '../pieces/section.js';
import { renderSections } from '../rendered-section.js';
import { viewWithoutNames, type View } from '../view.js';
import { Adaptations } from './adaptations.js';
import { Places, type Views } from './places.js';
import { editionWords } from './words.js';

/** What the two sides are called, and the addresses of their folders. */
export interface EditionPageOptions extends Pick<PageOptions, 'theme'> {
    old: { name: string; root?: string };
    new: { name: string; root?: string };
}

/** What changed for a teacher, as one HTML file that needs nothing else: no script, no font, no picture. */
export function editionPage(figures: EditionFigures, options: EditionPageOptions): string {
    const view = ({ root }: { root?: string }): View => viewWithoutNames({ root });
    const views: Views = { old: view(options.old), new: view(options.new) };
    return htmlPage(`${editionWords.heading}: ${figures.title}`, renderSections([
        ['editions', <Header figures={figures} options={options} />],
        ...figures.sections.map((section): [string, JSX.Element] => [`editions-${section.id}`, <Changes section={section} views={views} />]),
        ['editions-adaptations', <Adaptations figures={figures} views={views} />]
    ]), options);
}

function Header({ figures, options }: { figures: EditionFigures; options: EditionPageOptions }): JSX.Element {
    const sections = [...figures.sections.map(({ id, title }) => ({ id: `editions-${id}`, title })), ...(figures.adaptations.length > 0 ? [{ id: 'editions-adaptations', title: editionWords.adaptations }] : [])];
    return (
        <header id="editions">
            <p class="course"><bdi>{figures.title}</bdi></p>
            <h1>{editionWords.heading}</h1>
            <p class="facts">{figures.summary}</p>
            <Labelled label={editionWords.old}><bdi>{options.old.name}</bdi></Labelled>
            <Labelled label={editionWords.new}><bdi>{options.new.name}</bdi></Labelled>
            {figures.class && <Labelled label={editionWords.term}><bdi>{figures.class.title}</bdi>{figures.class.adapted !== undefined && <>, <bdi>{figures.class.adapted}</bdi></>}</Labelled>}
            {sections.length > 1 && (
                <nav aria-label={editionWords.contents}>
                    <ul class="plain findings">{sections.map(({ id, title }) => <li><a href={`#${id}`}>{title}</a></li>)}</ul>
                </nav>
            )}
            {figures.assumptions.length > 0 && <p class="assumed">{editionWords.assumed}: <bdi>{figures.assumptions.join(' ')}</bdi></p>}
        </header>
    );
}

function Changes({ section: { id, title, groups }, views }: { section: EditionSection; views: Views }): JSX.Element {
    return (
        <Section id={`editions-${id}`} title={title}>
            {groups.map(group => <Group group={group} views={views} />)}
        </Section>
    );
}

function Group({ group: { title, differences }, views }: { group: EditionGroup; views: Views }): JSX.Element {
    return (
        <>
            {title !== undefined && <h3><bdi>{title}</bdi></h3>}
            <ul class="plain">{differences.map(one => <Line difference={one} views={views} />)}</ul>
        </>
    );
}

function Line({ difference: { says, why, before, after, ...sides }, views }: { difference: Difference; views: Views }): JSX.Element {
    return (
        <li>
            <bdi>{says}</bdi>
            {why !== undefined && <p class="quiet"><bdi>{why}</bdi></p>}
            {before !== undefined && <Labelled label={editionWords.before}><bdi>{before}</bdi></Labelled>}
            {after !== undefined && <Labelled label={editionWords.after}><bdi>{after}</bdi></Labelled>}
            <Places sides={sides} views={views} />
        </li>
    );
}
