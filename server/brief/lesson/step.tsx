import type { JSX } from 'preact';
import type { StepFigures } from '../../planning/figures.js';
import type { CautionGroup } from '../caution-groups.js';
import type { CautionPlaces } from '../caution-places.js';
import type { ChangePlaces } from '../change-places.js';
import { CautionLine } from '../pieces/caution.js';
import { Changes } from '../pieces/change.js';
import { PictureFigure } from '../picture/picture-figure.js';
import { Lead, placed } from '../pieces/lead.js';
import { ProseText } from '../pieces/prose.js';
import type { View } from '../view.js';
import { stepLabels } from '../words.js';

interface StepsProps {
    steps: StepFigures[];
    cautions: CautionPlaces['steps'];
    changes: ChangePlaces;
    view: View;
    /** Cautions that belong to no single step stand first. */
    first?: CautionGroup[];
}

/** These words speak about the step before them. */
const aside = new Set<StepFigures['word']>(['watch', 'instead', 'more']);

export function Steps({ steps, cautions, changes, view, first = [] }: StepsProps): JSX.Element | null {
    if (steps.length + first.length === 0) return null;
    return (
        <ul class="steps">
            {first.map(group => <CautionLine group={group} changes={changes} view={view} />)}
            {steps.map((step, index) => <StepLine step={step} beside={cautions.get(step) ?? []} changes={changes} view={view} under={index > 0 && aside.has(step.word)} />)}
        </ul>
    );
}

interface StepLineProps {
    step: StepFigures;
    beside: CautionGroup[];
    changes: ChangePlaces;
    view: View;
    under: boolean;
}

function StepLine({ step, beside, changes, view, under }: StepLineProps): JSX.Element {
    return (
        <li class={under ? 'step aside' : 'step'} {...placed(step.place, view)}>
            <span class="label"><Lead place={step.place} view={view}>{stepLabels[step.word]}</Lead></span>
            <div class="told">
                {step.picture ? <PictureFigure figures={step.picture} /> : <ProseText prose={step.prose} view={view} />}
                <Changes told={changes.get(step)} view={view} />
                {step.under.length + beside.length > 0 && (
                    <ul class="steps">
                        {beside.map(group => <CautionLine group={group} changes={changes} view={view} />)}
                        {step.under.map(inner => <StepLine step={inner} beside={[]} changes={changes} view={view} under={false} />)}
                    </ul>
                )}
            </div>
        </li>
    );
}
