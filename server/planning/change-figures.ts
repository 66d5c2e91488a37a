import type { ChangeMark } from '@haversack/language/sheets/adaptation-sheet';
import type { ChangeFigures } from './figures.js';

export function changeFigures({ says, because, place, adaptation }: ChangeMark): ChangeFigures {
    return { says, ...(because && { because }), place, adaptation: adaptation.title };
}

/** The changes of a sheet, as a property that is absent where there are none. */
export function changesOf(marks: readonly ChangeMark[] | undefined): { changes?: ChangeFigures[] } {
    return marks && marks.length > 0 ? { changes: marks.map(changeFigures) } : {};
}
