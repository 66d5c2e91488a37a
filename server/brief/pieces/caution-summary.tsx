import type { JSX } from 'preact';
import type { WeekBrief } from '../../planning/figures.js';
import { groupCautions, seriousFirst } from '../caution-groups.js';
import { hasCautions } from '../sentences.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { Cautions } from './caution.js';
import { Section } from './section.js';

/** The week's cautions together, with the one sentence that puts local rules and qualified advice first. */
export function CautionSummary({ brief, view }: { brief: WeekBrief; view: View }): JSX.Element | null {
    if (!hasCautions(brief)) return null;
    return (
        <Section id="cautions" title={words.cautions}>
            <Cautions groups={seriousFirst(groupCautions(brief.cautions))} view={view} />
            <p>{words.deferral}</p>
        </Section>
    );
}
