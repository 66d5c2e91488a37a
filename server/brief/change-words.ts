/** Changes of an adaptation in sentences that the page and the Markdown share. */
import type { ChangeFigures } from '../planning/figures.js';
import { isAdded } from './change-places.js';
import type { LeftOutLesson } from './left-out.js';
import { ended } from './sentences.js';
import type { View } from './view.js';
import { words } from './words.js';

/** "Changed for Harbour co-op: 10 min instead of 15.", "Added for Harbour co-op.", "Brought in for Harbour co-op." */
export function changeWords(change: ChangeFigures, { className }: View): string {
    const added = isAdded(change);
    const of = `${added ? sentenceStart(change.says) : 'Changed'}${className === undefined ? '' : ` for ${className}`}`;
    return added ? `${of}.` : `${of}: ${ended(change.says)}`;
}

/** For several changes of one thing: for whom they are is said once. */
export function changesInWords(changes: readonly ChangeFigures[], view: View): string[] {
    return changes.map((change, index) => {
        const before = changes[index - 1];
        return before && !isAdded(before) && !isAdded(change) ? changeSentence(change) : changeWords(change, view);
    });
}

/** "Moved to before “Small stories”.": where it is told whose changes these are. */
export function changeSentence({ says }: ChangeFigures): string {
    return ended(sentenceStart(says));
}

function sentenceStart(text: string): string {
    return text.charAt(0).toUpperCase() + text.slice(1);
}

/** "“Market sums” is left out for Harbour co-op."; where something stands in its place, the change itself. */
export function leftOutWords({ title, change }: LeftOutLesson, view: View): string {
    const plain = `“${title}” is left out`;
    return change.says === plain ? `${plain}${view.className === undefined ? '' : ` for ${view.className}`}.` : changeWords(change, view);
}

/** "With the changes of “Shorter autumn”; left out here: “Market sums”." Nothing where the class is taught the course as it stands. */
export function withChanges(adaptations: readonly { title: string }[], leftOut: readonly { title: string }[] = []): string | undefined {
    if (adaptations.length === 0) return undefined;
    const titles = (list: readonly { title: string }[]): string => joined(list).map(({ before, item }) => `${before}“${item.title}”`).join('');
    return `${words.withChanges} ${titles(adaptations)}${leftOut.length > 0 ? `; ${words.leavesOut} ${titles(leftOut)}` : ''}.`;
}

/** "With the changes of “Shorter autumn” and “Harbour days”" is put together from these: what stands before each title. */
export function joined<T>(list: readonly T[]): { before: string; item: T }[] {
    return list.map((item, index) => ({ item, before: index === 0 ? '' : index === list.length - 1 ? ' and ' : ', ' }));
}
