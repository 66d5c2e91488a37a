import type { ComponentChildren, JSX } from 'preact';
import type { Figure, TrailStep } from '../../planning/figure.js';
import type { Place } from '../../planning/figures.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { Lead, placed } from './lead.js';

/** Words that open to show how they were counted; plain words where there is nothing to show. */
export function Trail({ steps, view, children }: { steps: TrailStep[]; view: View; children: ComponentChildren }): JSX.Element {
    if (steps.length === 0) return <span class="amount">{children}</span>;
    return (
        <details class="trail">
            <summary><span class="amount">{children}</span><span class="unseen">, {words.howCounted}</span></summary>
            <ol>{steps.map(step => <TrailLine step={step} view={view} />)}</ol>
        </details>
    );
}

/** Words that open to show reasons, under a line; nothing where there are none. */
export function ReasonsBehind({ steps, view, children }: { steps: TrailStep[]; view: View; children: ComponentChildren }): JSX.Element | null {
    if (steps.length === 0) return null;
    return (
        <details class="trail quiet">
            <summary>{children}</summary>
            <ol>{steps.map(step => <TrailLine step={step} view={view} />)}</ol>
        </details>
    );
}

function TrailLine({ step, view }: { step: TrailStep; view: View }): JSX.Element {
    return (
        <li {...placed(step.place, view)}>
            <Lead place={step.place} view={view}><bdi>{step.words}</bdi></Lead>
            {step.place && !view.preview && <span class="address"> ({view.addressInWords(step.place)})</span>}
        </li>
    );
}

interface AmountLineProps {
    amount: Figure;
    view: View;
    /** The first line: the thing's title. */
    head: ComponentChildren;
    place?: Place;
    id?: string;
    /** A box to tick with a pen. */
    tick?: boolean;
    children?: ComponentChildren;
}

/** Longer amounts get a line of their own instead of the column, sooner on a narrow screen. */
const columnCharacters = 18;
const narrowCharacters = 9;

function shape(amount: Figure, tick: boolean): string {
    const { length } = amount.text;
    return ['thing', length > narrowCharacters && 'long', length > columnCharacters && 'wordy', tick && 'ticked'].filter(Boolean).join(' ');
}

/** One thing with its amount in a column before it. */
export function AmountLine({ amount, view, head, place, id, tick = false, children }: AmountLineProps): JSX.Element {
    return (
        <li class={shape(amount, tick)} id={id} {...placed(place, view)}>
            {tick && <span class="tick" aria-hidden="true" />}
            <div class="head">{head}</div>
            <div class="figure"><Trail steps={amount.trail} view={view}>{amount.text}</Trail></div>
            {children}
        </li>
    );
}
