import { onOneLine } from '../../markdown/one-line.js';
import type { PracticeItemFigures, PracticeSheetFigures } from '../../planning/figures.js';
import { keyNote } from '../pieces/key-note.js';
import { answered, aroundGap, itemsLine, lessonLine, practiceTitle, sheetWords } from './words.js';

/** The practices of a lesson as plain text: the items with a blank for each answer, or with `key` the answers alone. */
export function practiceSheetText(sheet: PracticeSheetFigures, key = false): string {
    return `${sheet.practices.map(practice => {
        const last = practice.first + practice.items.length - 1;
        const width = String(last).length;
        const lines = practice.items.map((item, index) => {
            const number = `${String(practice.first + index).padStart(width)}. `;
            return number + (key ? answered(item) : asked(item, number.length));
        });
        const pictures = key ? [] : practice.pictures.map(({ text, title }) => onOneLine([title, text].filter(Boolean).join(': ')));
        const top = key ? itemsLine(practice) : `${sheetWords.name}: ${'_'.repeat(24)}  ${sheetWords.date}: ${'_'.repeat(12)}`;
        const note = key ? keyNote(practice.items) : undefined;
        return [onOneLine(practiceTitle(practice, key)), onOneLine(lessonLine(sheet)), '', top, ...pictures, '', ...lines, ...(note ? ['', note] : [])].join('\n');
    }).join('\n\n\n')}\n`;
}

function asked(item: PracticeItemFigures, indent: number): string {
    const around = aroundGap(item);
    if (around) return around.join('____');
    return item.room === 'number' ? `${item.ask} ____` : `${item.ask}\n${' '.repeat(indent)}${'_'.repeat(40)}`;
}
