import { Outline } from '../markdown/outline.js';
import { plainText } from '../markdown/plain-text.js';
import type { ScheduleFigures } from '../planning/schedule-figures.js';
import { pieceInWords } from './schedule-text.js';

/** The term as CommonMark: a heading for each week, a line for each meeting. */
export function scheduleMarkdown(schedule: ScheduleFigures, title: string): string {
    const out = new Outline();
    out.heading(1, plainText(title));
    if (schedule.weeks.length === 0) out.paragraph('There are no lessons to plan.');
    for (const week of schedule.weeks) {
        out.heading(2, `Week ${week.number}`);
        for (const remark of week.remarks) out.paragraph(plainText(remark));
        for (const meeting of week.meetings) {
            const lessons = meeting.taught.map(pieceInWords).join('; ') || meeting.free?.words || '';
            out.item(0, plainText(`${meeting.label}${meeting.minutes > 0 ? `, ${meeting.minutes} min` : ''}: ${lessons}`));
        }
    }
    const list = (heading: string, lines: readonly string[]): void => {
        if (lines.length === 0) return;
        out.heading(2, heading);
        for (const line of lines) out.item(0, plainText(line));
    };
    list('Does not fit', schedule.unplaced.map(one => `${one.title}: ${one.why}`));
    list('What would help', schedule.proposals.map(p => `${p.title}: ${p.gives} It gives up: ${p.givesUp}`));
    list('To look at', schedule.problems.map(p => p.message));
    list('Taken for granted', schedule.assumptions);
    return out.toString();
}
