/** ISO dates in words. Own names of days and months: Intl's short forms differ between hosts ("Sep", "Sept"). */
const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** "Mon 14 Sep 2026"; a text that is no existing date comes back as it was. */
export function dayInWords(iso: string, withYear = true): string {
    const written = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
    const date = new Date(`${iso}T00:00:00Z`);
    if (!written || Number.isNaN(date.getTime()) || date.getUTCDate() !== Number(written[3])) return iso;
    const words = `${weekdays[date.getUTCDay()]} ${date.getUTCDate()} ${months[date.getUTCMonth()]}`;
    return withYear ? `${words} ${written[1]}` : words;
}

/** "Mon 14 Sep to Thu 17 Sep 2026"; undefined where no date is known. */
export function spanInWords(from: string | undefined, to: string | undefined): string | undefined {
    if (from === undefined || to === undefined || from === to) {
        const only = from ?? to;
        return only === undefined ? undefined : dayInWords(only);
    }
    return `${dayInWords(from, from.slice(0, 4) !== to.slice(0, 4))} to ${dayInWords(to)}`;
}
