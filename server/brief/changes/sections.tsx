/** The page of changes, piece by piece: what an adaptation does to a class's course. */
import type { ChangesFigures } from '../../planning/ledger-figures.js';
import { renderSections, type RenderedSection } from '../rendered-section.js';
import { viewOfNames, type BriefOptions } from '../view.js';
import { ChangesHeader } from './header.js';
import { ChangedLessons } from './lessons.js';
import { Made } from './made.js';
import { ChangedSupplies } from './supplies.js';

/** The sections that have something to say: changes, changes-made, changes-lessons, changes-supplies; without an adaptation the first alone. */
export function changesSections(changes: ChangesFigures, options: BriefOptions = {}): RenderedSection[] {
    const view = viewOfNames(changes.names, changes.class?.title, options);
    return renderSections([
        ['changes', <ChangesHeader changes={changes} view={view} />],
        ['changes-made', <Made changes={changes} view={view} />],
        ['changes-lessons', <ChangedLessons changes={changes} view={view} />],
        ['changes-supplies', <ChangedSupplies changes={changes} view={view} />]
    ]);
}
