/** Own names of days and months: Intl's short forms differ between hosts ("Sep", "Sept"). */

/** Monday first, as in ISO 8601. */
export const weekdayNames: readonly string[] = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
export const monthNames: readonly string[] = [
    'January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'
];

/** "Mon", "Sep". */
export function shortName(name: string | undefined): string {
    return name?.slice(0, 3) ?? '';
}
