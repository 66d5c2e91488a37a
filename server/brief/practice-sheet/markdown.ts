import { Outline } from '../../markdown/outline.js';
import { plainText } from '../../markdown/plain-text.js';
import type { PracticeItemFigures, PracticeSheetFigures } from '../../planning/figures.js';
import { keyNote } from '../pieces/key-note.js';
import { answered, aroundGap, itemsLine, lessonLine, practiceTitle, sheetWords } from './words.js';

/** The practices of a lesson as CommonMark: the items with a blank for each answer, or with `key` the answers alone. */
export function practiceSheetMarkdown(sheet: PracticeSheetFigures, key = false): string {
    const out = new Outline();
    for (const practice of sheet.practices) {
        out.heading(1, plainText(practiceTitle(practice, key)));
        out.paragraph(plainText(lessonLine(sheet)));
        out.paragraph(key ? plainText(itemsLine(practice)) : `${sheetWords.name}: ${blank(24)} ${sheetWords.date}: ${blank(12)}`);
        if (!key) for (const { text, title } of practice.pictures) out.paragraph(plainText([title, text].filter(Boolean).join(': ')));
        practice.items.forEach((item, index) => out.item(0, key ? plainText(answered(item)) : asked(item), `${practice.first + index}.`));
        const note = key && keyNote(practice.items);
        if (note) out.paragraph(plainText(note));
    }
    return out.toString();
}

/** Underscores that stay underscores. */
const blank = (length: number): string => '\\_'.repeat(length);

function asked(item: PracticeItemFigures): string {
    const around = aroundGap(item);
    if (around) return `${plainText(around[0])} ${[blank(6), plainText(around[1])].filter(Boolean).join(' ')}`;
    return `${plainText(item.ask)} ${blank(item.room === 'number' ? 6 : 24)}`;
}
