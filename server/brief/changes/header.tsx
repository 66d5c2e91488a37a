import type { JSX } from 'preact';
import type { ChangesFigures } from '../../planning/ledger-figures.js';
import { placed, Title } from '../pieces/lead.js';
import { ProseText } from '../pieces/prose.js';
import { WithChanges } from '../pieces/with-changes.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { summary, unchanged, writtenFor } from './sentences.js';
import { changesWords } from './words.js';

export function ChangesHeader({ changes, view }: { changes: ChangesFigures; view: View }): JSX.Element {
    const { ledger } = changes;
    return (
        <header id="changes">
            <CourseAndClass changes={changes} view={view} />
            <h1>{ledger ? changesWords.changes : changesWords.nothing}</h1>
            {ledger && <WithChanges adaptations={ledger.adaptations.map(one => ({ ...one, remark: writtenFor(one) }))} view={view} />}
            {ledger?.adaptations.flatMap(({ notes }) => notes ?? []).map(note => <ProseText prose={note} view={view} />)}
            {ledger ? <ul class="plain findings">{summary(ledger).map(({ text, section }) => <li>{section === undefined ? text : <a href={`#${section}`}>{text}</a>}</li>)}</ul> : <Unchanged changes={changes} />}
            {ledger && ledger.assumptions.length > 0 && <p class="assumed">{words.assumed}: <bdi>{ledger.assumptions.join(' ')}</bdi></p>}
        </header>
    );
}

function CourseAndClass({ changes: { course, class: group }, view }: { changes: ChangesFigures; view: View }): JSX.Element | null {
    if (!course && !group) return null;
    return (
        <p class="course">
            {course && <span {...placed(course.place, view)}><Title place={course.place} view={view} text={course.title} /></span>}
            {course && group && ', '}
            {group && <span {...placed(group.place, view)}><Title place={group.place} view={view} text={group.title} /></span>}
        </p>
    );
}

/** Where no adaptation applies, how one is begun. */
function Unchanged({ changes }: { changes: ChangesFigures }): JSX.Element {
    const { why, lines } = unchanged(changes);
    return (
        <>
            <p><bdi>{why}</bdi></p>
            {lines.length > 0 && (
                <>
                    <p class="how">{changesWords.howTo}</p>
                    <pre class="to-write"><code>{lines.join('\n')}</code></pre>
                    <p class="quiet">{changesWords.otherWays}</p>
                </>
            )}
        </>
    );
}
