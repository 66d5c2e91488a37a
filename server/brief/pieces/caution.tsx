import type { JSX } from 'preact';
import { Fragment } from 'preact';
import type { CautionGroup } from '../caution-groups.js';
import { cautionAdvice, cautionLabel, cautionReasons, cautionThings } from '../sentences.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { ReasonsBehind } from './figure.js';
import type { ChangePlaces } from '../change-places.js';
import { Changes } from './change.js';
import { Lead, placed, Title } from './lead.js';
import { ProseText } from './prose.js';

interface CautionLineProps {
    group: CautionGroup;
    /** Absent in the week's summary: what changed is told in the lesson. */
    changes?: ChangePlaces;
    view: View;
}

/** One kind of caution as a list item: the word itself, the things, the usual advice and what writers added. */
export function CautionLine({ group, changes, view }: CautionLineProps): JSX.Element {
    const [first] = group.cautions;
    const things = cautionThings(group, view);
    return (
        <li class="caution" {...placed(first.place, view)}>
            <span class="label"><Lead place={first.place} view={view}>{cautionLabel(group)}</Lead></span>
            <div class="told">
                <p>
                    {things.map(({ title, place }, index) => <Fragment>{index > 0 && ', '}<Title place={index > 0 ? place : undefined} view={view} text={title} /></Fragment>)}
                    {things.length > 0 && '. '}<bdi>{cautionAdvice(group)}</bdi>
                </p>
                {group.added.map(caution => (
                    <div class="added">
                        {group.cautions.length > 1 && caution.thing !== undefined && <span class="quiet"><bdi>{view.titleOf(caution.thing)}</bdi>: </span>}
                        {caution.prose && <ProseText prose={caution.prose} view={view} />}
                    </div>
                ))}
                {changes && group.changed.map(caution => <Changes told={changes.get(caution)} view={view} />)}
                <ReasonsBehind steps={cautionReasons(group, view)} view={view}>{words.workedOut}</ReasonsBehind>
            </div>
        </li>
    );
}

export function Cautions({ groups, view }: { groups: CautionGroup[]; view: View }): JSX.Element | null {
    return groups.length ? <ul class="steps">{groups.map(group => <CautionLine group={group} view={view} />)}</ul> : null;
}
