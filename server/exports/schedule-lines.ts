/** What the text, the Markdown and the calendar of a term say alike. */
import type { Meeting, ScheduleFigures, TaughtFigures } from '../planning/schedule-figures.js';

/** Said in place of the weeks where there are none. */
export const nothingToPlan = 'There are no lessons to plan.';

/** "Which is heavier? (part 1 of 2; again: the children were unsure on Thu 10 Sep)". */
export function pieceInWords({ title, piece, remark }: Pick<TaughtFigures, 'title' | 'piece' | 'remark'>): string {
    const more = [piece && `part ${piece.number} of ${piece.of}`, remark].filter(Boolean);
    return more.length > 0 ? `${title} (${more.join('; ')})` : title;
}

/** What a meeting teaches, or why it is free. */
export function meetingInWords({ taught, free }: Meeting): string {
    return taught.map(pieceInWords).join('; ') || (free?.words ?? '');
}

/** What does not hold in the plan and what was assumed: lists under their headings. An empty list has nothing to say. */
export function scheduleLists({ unplaced, proposals, problems, assumptions }: ScheduleFigures): [heading: string, lines: string[]][] {
    return [
        ['Does not fit', unplaced.map(({ title, why }) => `${title}: ${why}`)],
        ['What would help', proposals.map(({ title, gives, givesUp }) => `${title}: ${gives} It gives up: ${givesUp}`)],
        ['To look at', problems.map(({ message }) => message)],
        ['Taken for granted', assumptions]
    ];
}
