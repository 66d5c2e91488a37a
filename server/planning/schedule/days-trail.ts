import { isoOfDay } from '@haversack/language/attachments/day-numbers';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import type { TrailStep } from '../figure.js';
import type { DaysOffFigures } from '../schedule-figures.js';
import { counted, quoted } from '@haversack/language/facts/wording';
import type { Piece, Run } from './course-run.js';
import type { DaysOff, Stretch } from './days-off.js';
import { termInWords, weekdaysInWords } from './meeting-days.js';
import type { Pace, Term } from './term.js';
import { costs, weekdaysBetween } from './weeks.js';

/** Stretches off that are told one by one. */
const toldStretches = 12;

/** The class's own days off, and those of its calendars from the first meeting day to the last. */
export function daysOffFigures(off: DaysOff, term: Term, to: number): DaysOffFigures[] {
    return off.listed(term.start, to)
        .map(s => ({ from: isoOfDay(s.from), to: isoOfDay(s.to), title: s.title, place: s.place, calendar: s.calendar, costs: costs(s, term, term.start, to) }));
}

/** How the meeting days came about: weekdays, less days off, less what is kept free. */
export function daysTrail(sheet: ClassSheet, pace: Pace, term: Term, off: DaysOff, run: Run, pieces: readonly (readonly Piece[])[]): TrailStep[] {
    const to = term.end ?? run.days.at(-1)?.day ?? term.start;
    const all = weekdaysBetween(term.start, to, term.weekdays);
    const [meets] = sheet.meets;
    const steps: TrailStep[] = [{
        words: `${weekdaysInWords(term.weekdays)}, ${termInWords(term.start, to)}: ${counted(all, 'day')}`,
        place: meets && { uri: sheet.uri, range: meets.at }
    }];
    const { told, taken } = lessStretches(off.between(term.start, to), term, to);
    steps.push(...told);
    if (taken > 0) steps.push({ words: `leaves ${counted(all - taken, 'meeting day')}` });
    const free = run.days.filter(d => d.free === 'catch-up').length;
    if (pace.catchUp && free > 0) {
        steps.push({
            words: `${counted(free, 'day')} of them kept free to catch up (${pace.catchUp.days} after every ${counted(pace.catchUp.every, 'lesson')})`,
            place: sheet.catchUp && { uri: sheet.uri, range: sheet.catchUp.at }
        });
    }
    const split = pieces.filter(p => p.length > 1).length;
    if (pace.session !== undefined && split > 0) {
        steps.push({
            words: `${counted(split, 'lesson')} ${split === 1 ? 'takes' : 'take'} more than one meeting of ${pace.session} min`,
            place: sheet.session && { uri: sheet.uri, range: sheet.session.at }
        });
    }
    return steps;
}

/** Each day is taken away by the first stretch that holds it. */
function lessStretches(stretches: readonly Stretch[], term: Term, to: number): { told: TrailStep[]; taken: number } {
    const told: TrailStep[] = [];
    let more = 0;
    let taken = 0;
    let from = term.start;
    for (const stretch of stretches) {
        const days = weekdaysBetween(Math.max(stretch.from, from), Math.min(stretch.to, to), term.weekdays);
        from = Math.max(from, stretch.to + 1);
        if (days === 0) continue;
        taken += days;
        if (told.length < toldStretches) told.push({ words: `less ${days} for ${quoted(stretch.title)}`, place: stretch.place });
        else more += days;
    }
    if (more > 0) told.push({ words: `less ${more} for other days off` });
    return { told, taken };
}
