import type { Meeting, ScheduleFigures, TaughtFigures } from '../planning/schedule-figures.js';
import { onOneLine, textTable } from './text-table.js';

/** The term for a terminal: a line for each meeting, then what does not fit and what would help. */
export function scheduleText(schedule: ScheduleFigures, title: string): string {
    const lines = [onOneLine(title), ''];
    const block = (heading: string, content: readonly string[]): void => {
        if (content.length > 0) lines.push(heading, ...content.map(line => `  ${onOneLine(line)}`), '');
    };
    const rows = schedule.weeks.flatMap(week => week.meetings.map((meeting, i) =>
        [i === 0 ? String(week.number) : '', meeting.date ?? '', meeting.label, meeting.minutes > 0 ? `${meeting.minutes} min` : '', lessonsOf(meeting)]));
    if (rows.length === 0) lines.push('There are no lessons to plan.', '');
    else lines.push(...textTable([{ title: 'week', number: true }, { title: 'date' }, { title: 'day' }, { title: 'time', number: true }, { title: 'lessons' }], rows), '');
    block('No meetings', schedule.daysOff.filter(off => off.costs).map(off => `${off.from === off.to ? off.from : `${off.from} to ${off.to}`}: ${off.title}`));
    block('Does not fit', schedule.unplaced.map(one => `${one.title}: ${one.why}`));
    block('What would help', schedule.proposals.map(p => `${p.title}: ${p.gives} It gives up: ${p.givesUp}`));
    block('To look at', schedule.problems.map(p => p.message));
    block('Taken for granted', schedule.assumptions);
    return `${lines.join('\n').trimEnd()}\n`;
}

function lessonsOf(meeting: Meeting): string {
    return meeting.taught.length > 0 ? meeting.taught.map(pieceInWords).join('; ') : meeting.free?.words ?? '';
}

/** "Which is heavier? (part 1 of 2; again: the children were unsure on Thu 10 Sep)". */
export function pieceInWords(one: TaughtFigures): string {
    const more = [one.piece && `part ${one.piece.number} of ${one.piece.of}`, one.remark].filter(Boolean);
    return more.length > 0 ? `${one.title} (${more.join('; ')})` : one.title;
}
