import type { Place } from '@haversack/language/sheets/sheet';
import type { Meeting, ScheduleFigures, TaughtFigures } from '@haversack/server/planning/schedule-figures';
import type { OrderFigures, SupplyFigures } from '@haversack/server/planning/supply-figures';

export const place: Place = { uri: 'file:///shed/year.course', range: { start: { line: 3, character: 2 }, end: { line: 3, character: 9 } } };

export const taught = (lesson: string, title = lesson, more: Partial<TaughtFigures> = {}): TaughtFigures => ({ lesson, title, place, minutes: 30, ...more });

export const meeting = (date: string | undefined, label: string, ...pieces: TaughtFigures[]): Meeting =>
    ({ date, label, lessons: [...new Set(pieces.map(p => p.lesson))], taught: pieces, minutes: pieces.reduce((sum, p) => sum + p.minutes, 0) });

export function schedule(meetings: Meeting[], more: Partial<ScheduleFigures> = {}): ScheduleFigures {
    return {
        course: 'sums', class: 'shed', weeks: [{ number: 1, from: meetings[0]?.date, to: meetings.at(-1)?.date, meetings, remarks: [] }],
        daysOff: [], unplaced: [], proposals: [], problems: [], assumptions: [], trail: [], ...more
    };
}

const figure = (text: string) => ({ exact: text, text, trail: [{ words: `${text} counted`, place }] });

export const order = (title: string, more: Partial<OrderFigures> = {}): OrderFigures => ({
    id: title, name: title, title, place, source: 'shop', week: 1, covers: [1], net: figure('120'), bought: figure('200'), leftOver: { exact: '80', text: '80' },
    packs: [{ count: 2, text: '2 packs of 100 at 14.50 USD', place }], cost: { minor: '2900', currency: 'USD', text: '29.00 USD' },
    neededBy: '2026-09-14', orderBy: '2026-09-08', orderWeek: 1, when: 'needed Mon 14 Sep; arrives in 6 days, so order by Tue 8 Sep', ...more
});

export function supplies(orders: OrderFigures[], more: Partial<SupplyFigures> = {}): SupplyFigures {
    return {
        course: 'sums', class: 'shed', classTitle: 'Shed', sharedWith: [], learners: 7, weeks: [{ number: 1, from: '2026-09-14', to: '2026-09-17' }], things: [], orders,
        shortages: [], clashes: [], costs: { byWeek: [], term: [], perLearner: [], unpriced: [] }, assumptions: [], ...more
    };
}
