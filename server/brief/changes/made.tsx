import type { JSX } from 'preact';
import type { ChangesFigures, Consequence, LedgerChange } from '../../planning/ledger-figures.js';
import { placed, Lead, Title } from '../pieces/lead.js';
import { ProseText } from '../pieces/prose.js';
import { Section } from '../pieces/section.js';
import { ended, sentence } from '../sentences.js';
import type { View } from '../view.js';
import { byAdaptation, changeMinutes } from './sentences.js';
import { changesWords, consequenceLabels } from './words.js';

/** Each change with its reason and, right under it, what it breaks. */
export function Made({ changes: { ledger }, view }: { changes: ChangesFigures; view: View }): JSX.Element | null {
    if (!ledger || ledger.changes.length + ledger.otherConsequences.length === 0) return null;
    return (
        <Section id="changes-made" title={changesWords.made}>
            {byAdaptation(ledger).map(({ adaptation, changes }, index, all) => (
                <>
                    {all.length > 1 && <h3><Title place={adaptation?.place} view={view} text={adaptation?.title ?? changes[0]?.adaptation.title ?? ''} /></h3>}
                    <ol class="made" start={1 + all.slice(0, index).reduce((sum, before) => sum + before.changes.length, 0)}>
                        {changes.map(change => <Change change={change} view={view} />)}
                    </ol>
                </>
            ))}
            {ledger.otherConsequences.length > 0 && (
                <>
                    <h3>{changesWords.others}</h3>
                    <ul class="steps">{ledger.otherConsequences.map(consequence => <ConsequenceLine consequence={consequence} view={view} />)}</ul>
                </>
            )}
        </Section>
    );
}

function Change({ change, view }: { change: LedgerChange; view: View }): JSX.Element {
    const { says, because, idle, consequences, place } = change;
    const time = changeMinutes(change);
    return (
        <li {...placed(place, view)}>
            <p><Title place={place} view={view} text={sentence(says)} /></p>
            {time && <p class="quiet">{time}</p>}
            {(because || idle !== undefined || consequences.length > 0) && (
                <ul class="steps">
                    {because && <li class="step"><span class="label">{changesWords.because}</span><div class="told"><ProseText prose={because} view={view} /></div></li>}
                    {idle !== undefined && <li class="step"><span class="label weighty">{changesWords.idle}</span><p class="told"><bdi>{sentence(idle)}</bdi></p></li>}
                    {consequences.map(consequence => <ConsequenceLine consequence={consequence} view={view} />)}
                </ul>
            )}
        </li>
    );
}

function ConsequenceLine({ consequence: { kind, says, about, fact }, view }: { consequence: Consequence; view: View }): JSX.Element {
    return (
        <li class="step" {...placed(about.place, view)}>
            <span class={fact ? 'label' : 'label weighty'}>{consequenceLabels[kind]}</span>
            <p class="told"><Lead place={about.place} view={view}><bdi>{ended(says)}</bdi></Lead></p>
        </li>
    );
}
