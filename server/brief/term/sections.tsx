/** The term view's HTML, piece by piece. */
import { renderSections, type RenderedSection } from '../rendered-section.js';
import { viewWithoutNames, type BriefOptions } from '../view.js';
import { TermBuying } from './buying.js';
import { Calendar } from './calendar/calendar.js';
import { Coverage } from './coverage/coverage.js';
import { Frameworks } from './coverage/frameworks.js';
import type { TermFigures } from '../../planning/term-figures.js';
import { TermHeader } from './header.js';
import { LeftOut } from './left-out.js';
import { Otherwise } from './otherwise.js';
import { Shortages } from './shortages.js';
import { Stock } from './stock/stock.js';

/**
 * The sections that have something to say: term, term-calendar, term-otherwise, term-left-out, term-short, term-buy, term-stock, term-coverage, term-frameworks.
 * Marks of a drawing carry the place they lead to; the words beside the drawing hold a button for each in the preview.
 */
export function termSections(term: TermFigures, options: BriefOptions = {}): RenderedSection[] {
    const view = viewWithoutNames(options);
    return renderSections([
        ['term', <TermHeader term={term} view={view} />],
        ['term-calendar', <Calendar term={term} view={view} />],
        ['term-otherwise', <Otherwise term={term} options={options} />],
        ['term-left-out', <LeftOut term={term} view={view} />],
        ['term-short', <Shortages term={term} view={view} />],
        ['term-buy', <TermBuying term={term} view={view} />],
        ['term-stock', <Stock term={term} view={view} />],
        ['term-coverage', <Coverage term={term} view={view} />],
        ['term-frameworks', <Frameworks term={term} view={view} />]
    ]);
}
