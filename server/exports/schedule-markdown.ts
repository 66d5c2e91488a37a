import { Outline } from '../markdown/outline.js';
import { plainText } from '../markdown/plain-text.js';
import type { ScheduleFigures } from '../planning/schedule-figures.js';
import { meetingInWords, nothingToPlan, scheduleLists } from './schedule-lines.js';

/** The term as CommonMark: a heading for each week, a line for each meeting. */
export function scheduleMarkdown(schedule: ScheduleFigures, title: string): string {
    const out = new Outline();
    out.heading(1, plainText(title));
    if (schedule.weeks.length === 0) out.paragraph(nothingToPlan);
    for (const week of schedule.weeks) {
        out.heading(2, `Week ${week.number}`);
        for (const remark of week.remarks) out.paragraph(plainText(remark));
        for (const meeting of week.meetings) {
            out.item(0, plainText(`${meeting.label}${meeting.minutes > 0 ? `, ${meeting.minutes} min` : ''}: ${meetingInWords(meeting)}`));
        }
    }
    for (const [heading, lines] of scheduleLists(schedule)) {
        if (lines.length > 0) out.heading(2, heading);
        for (const line of lines) out.item(0, plainText(line));
    }
    return out.toString();
}
