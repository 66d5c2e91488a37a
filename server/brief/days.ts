/** ISO dates in words. */
import { monthNames, shortName, weekdayNames } from '@haversack/language/facts/day-names';

/** "Mon 14 Sep 2026"; a text that is no existing date comes back as it was. */
export function dayInWords(iso: string, withYear = true): string {
    const written = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
    const date = new Date(`${iso}T00:00:00Z`);
    if (!written || Number.isNaN(date.getTime()) || date.getUTCDate() !== Number(written[3])) return iso;
    const words = `${shortName(weekdayNames[(date.getUTCDay() + 6) % 7])} ${date.getUTCDate()} ${shortName(monthNames[date.getUTCMonth()])}`;
    return withYear ? `${words} ${written[1]}` : words;
}

/** "14 Sep" */
export function dayAndMonth(iso: string): string {
    return dayInWords(iso, false).replace(/^[A-Z][a-z]{2} (?=\d)/, '');
}

/** "Mon 14 Sep to Thu 17 Sep 2026"; undefined where no date is known. */
export function spanInWords(from: string | undefined, to: string | undefined): string | undefined {
    if (from === undefined || to === undefined || from === to) {
        const only = from ?? to;
        return only === undefined ? undefined : dayInWords(only);
    }
    return `${dayInWords(from, from.slice(0, 4) !== to.slice(0, 4))} to ${dayInWords(to)}`;
}

/** "September 2026" */
export function monthInWords(iso: string): string {
    return `${monthNames[Number(iso.slice(5, 7)) - 1] ?? ''} ${iso.slice(0, 4)}`;
}
