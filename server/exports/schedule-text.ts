import { onOneLine } from '../markdown/one-line.js';
import type { ScheduleFigures } from '../planning/schedule-figures.js';
import { meetingInWords, nothingToPlan, scheduleLists } from './schedule-lines.js';
import { textTable } from './text-table.js';

/** The term for a terminal: a line for each meeting, then what does not fit and what would help. */
export function scheduleText(schedule: ScheduleFigures, title: string): string {
    const lines = [onOneLine(title), ''];
    const block = (heading: string, content: readonly string[]): void => {
        if (content.length > 0) lines.push(heading, ...content.map(line => `  ${onOneLine(line)}`), '');
    };
    const rows = schedule.weeks.flatMap(week => week.meetings.map((meeting, i) =>
        [i === 0 ? String(week.number) : '', meeting.date ?? '', meeting.label, meeting.minutes > 0 ? `${meeting.minutes} min` : '', meetingInWords(meeting)]));
    if (rows.length === 0) lines.push(nothingToPlan, '');
    else lines.push(...textTable([{ title: 'week', number: true }, { title: 'date' }, { title: 'day' }, { title: 'time', number: true }, { title: 'lessons' }], rows), '');
    block('No meetings', schedule.daysOff.filter(off => off.costs).map(off => `${off.from === off.to ? off.from : `${off.from} to ${off.to}`}: ${off.title}`));
    for (const [heading, list] of scheduleLists(schedule)) block(heading, list);
    return `${lines.join('\n').trimEnd()}\n`;
}
