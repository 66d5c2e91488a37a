import type { ComponentChildren, JSX } from 'preact';
import { words } from '../words.js';

interface InWordsProps {
    /** What the drawing shows; also the caption of the table. */
    of: string;
    heads: readonly string[];
    /** Table rows. */
    children: ComponentChildren;
}

/** What a drawing shows, as a table that is opened on demand: the way for the keyboard and for those who do not see the drawing. */
export function InWords({ of, heads, children }: InWordsProps): JSX.Element {
    return (
        <details class="in-words">
            <summary>{words.inWords}<span class="unseen">: <bdi>{of}</bdi></span></summary>
            <table>
                <caption><bdi>{of}</bdi></caption>
                <thead><tr>{heads.map(head => <th scope="col">{head}</th>)}</tr></thead>
                <tbody>{children}</tbody>
            </table>
        </details>
    );
}
