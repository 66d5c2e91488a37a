/** Changes of an adaptation as CommonMark, beside what they changed. */
import type { ChangeFigures } from '../../planning/figures.js';
import type { Outline } from '../../markdown/outline.js';
import { plainText } from '../../markdown/plain-text.js';
import type { ToldChange } from '../change-places.js';
import { changeSentence, changesInWords, leftOutWords } from '../change-words.js';
import type { LeftOutLesson } from '../left-out.js';
import type { View } from '../view.js';
import { proseLines } from './prose-lines.js';

/** A paragraph each under a heading; items at a depth of a list. */
export function writeChanges(out: Outline, depth: number | 'paragraph', told: readonly ToldChange[] = [], view: View): void {
    const texts = changesInWords(told.map(({ change }) => change), view);
    told.forEach(({ change, again }, index) => {
        const lines = goingOn(plainText(texts[index] ?? ''), again ? undefined : change.because, view);
        if (depth === 'paragraph') out.paragraph(lines.join('\n'));
        else out.item(depth, lines);
    });
}

/** Under the title of what they changed, where it is told for whom. */
export function writeOwnChanges(out: Outline, depth: number, changes: readonly ChangeFigures[], view: View): void {
    for (const change of changes) out.item(depth, goingOn(plainText(changeSentence(change)), change.because, view));
}

export function writeLeftOut(out: Outline, lesson: LeftOutLesson, view: View): void {
    out.paragraph(goingOn(plainText(leftOutWords(lesson, view)), lesson.change.because, view).join('\n'));
}

/** A sentence, and the reason behind it; a list or several paragraphs below it. */
function goingOn(said: string, because: ChangeFigures['because'], view: View): string[] {
    const [first, ...more] = because ? proseLines(because, view.inSentence) : [];
    if (first === undefined) return [said];
    return /^(?:- |\d+\. )/.test(first) || more.includes('') ? [said, '', first, ...more] : [`${said} ${first}`, ...more];
}
