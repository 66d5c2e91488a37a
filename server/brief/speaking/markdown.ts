import { Outline } from '../../markdown/outline.js';
import { plainText } from '../../markdown/plain-text.js';
import type { Cue, SpeakingNotes } from '../../planning/speaking-figures.js';
import { countedSo, courseAndClass, cueLabels, howToUse, notesTitle, wholeTime } from './words.js';

/** The notes as CommonMark: a heading for each section with its minutes, an item for each cue. */
export function notesMarkdown(notes: SpeakingNotes): string {
    const out = new Outline();
    out.heading(1, plainText(notesTitle(notes)));
    out.paragraph(plainText(courseAndClass(notes)));
    out.paragraph(plainText(wholeTime(notes)));
    out.paragraph(howToUse);
    for (const assumption of notes.assumptions) out.paragraph(plainText(assumption));
    for (const { title, time, cues } of notes.sections) {
        out.heading(2, plainText(`${title} (${time.text})`));
        for (const cue of cues) out.item(0, cueMarkdown(cue));
        out.paragraph(plainText(countedSo(time)));
    }
    return out.toString();
}

/** Emphasis is not all that tells what is shown: its line begins with a word. */
function cueMarkdown({ does, text }: Cue): string {
    return does === 'say' ? plainText(text) : `*${cueLabels[does]}:* ${plainText(text)}`;
}
