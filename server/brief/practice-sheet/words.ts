import type { PracticeItemFigures, PracticeSheetFigures } from '../../planning/figures.js';

/** What stands on a practice sheet and its key beside the items. */
export const sheetWords = {
    name: 'Name',
    date: 'Date',
    key: 'Answer key',
    further: 'further items',
    practice: 'Practice',
    answer: 'answer'
};

export type SheetPractice = PracticeSheetFigures['practices'][number];

/** "Say the mass two ways", or "Answer key: Say the mass two ways". */
export function practiceTitle({ title }: SheetPractice, key: boolean): string {
    const shown = title.trim() || sheetWords.practice;
    return key ? `${sheetWords.key}: ${shown}` : shown;
}

/** "Which is heavier?, further items" */
export function lessonLine({ lesson, further }: PracticeSheetFigures): string {
    return [lesson.title, further ? sheetWords.further : ''].filter(Boolean).join(', ');
}

/** "10 items: sums 2 to 20; return to 7 and 8." */
export function itemsLine({ items, lines }: SheetPractice): string {
    return `${items.length} ${items.length === 1 ? 'item' : 'items'}: ${lines.join('; ')}.`;
}

/** What stands before the place of the answer, and what behind it. Undefined where the answer has no place in what is asked. */
export function aroundGap({ ask, room }: PracticeItemFigures): [before: string, after: string] | undefined {
    const at = room === 'gap' ? ask.lastIndexOf('?') : -1;
    return at < 0 ? undefined : [ask.slice(0, at), ask.slice(at + 1)];
}

/** The item with its answer in one line of text: "7 + 5 = 12", "Which is more, 31 or 89? → 89". */
export function answered(item: PracticeItemFigures): string {
    const around = aroundGap(item);
    return around ? around.join(item.answer) : `${item.ask} → ${item.answer}`;
}
