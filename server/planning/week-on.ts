import type { ScheduleFigures } from './schedule-figures.js';

/** The number of the week on a day (ISO date): the one with its last meeting on that day or after it, the last one when the term is over; 1 where weeks have no dates. */
export function weekOn({ weeks }: Pick<ScheduleFigures, 'weeks'>, today: string): number {
    const dated = weeks.filter(({ to, from }) => (to ?? from) !== undefined);
    const found = dated.find(({ to, from }) => (to ?? from)! >= today) ?? dated[dated.length - 1];
    return found?.number ?? 1;
}
