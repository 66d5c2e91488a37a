import type { JSX } from 'preact';
import type { Place } from '../../planning/figures.js';
import { joined } from '../change-words.js';
import type { LeftOutLesson } from '../left-out.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { leftOutId } from './change.js';
import { placed, Title } from './lead.js';

interface WithChangesProps {
    adaptations: readonly { title: string; place: Place; remark?: string }[];
    /** Those that stand further down on this page. */
    leftOut?: readonly LeftOutLesson[];
    view: View;
}

/** Which adaptations the class is taught with, and which lessons they leave out here. */
export function WithChanges({ adaptations, leftOut = [], view }: WithChangesProps): JSX.Element {
    return (
        <p class="adapted">
            {words.withChanges} {joined(adaptations).map(({ before, item }) => (
                <>{before}<span {...placed(item.place, view)}><Title place={item.place} view={view} text={`“${item.title}”`} /></span>{item.remark && ` (${item.remark})`}</>
            ))}
            {leftOut.length > 0 && <>; {words.leavesOut} {joined(leftOut).map(({ before, item }) => <>{before}<a href={`#${leftOutId(item)}`}><bdi>“{item.title}”</bdi></a></>)}</>}.
        </p>
    );
}
