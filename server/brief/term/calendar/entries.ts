/** What a day of the calendar says, for the drawing and for the words beside it. */
import type { DaysOffFigures, Meeting } from '../../../planning/schedule-figures.js';
import type { Place } from '@haversack/language/sheets/sheet';
import { termWords } from '../words.js';
import type { Cell } from './blocks.js';

export function freeWords(free: NonNullable<Meeting['free']>): string {
    return free.why === 'catch-up' ? termWords.catchUp : termWords.free;
}

export function offWords(off: DaysOffFigures): string {
    return `${off.title}: ${termWords.noMeeting}`;
}

/** Where a day leads that teaches nothing. */
export function placeOfDay(cell: Cell): Place | undefined {
    return cell.meeting?.free?.place ?? cell.off?.place ?? cell.meeting?.taught[0]?.place;
}
