/** @returns ISO date of a moment where the person is */
export function localDay(moment: Date): string {
    return [moment.getFullYear(), moment.getMonth() + 1, moment.getDate()].map(part => String(part).padStart(2, '0')).join('-');
}

/** @returns ISO date of the first Monday after a moment, where the person is */
export function nextMonday(moment: Date): string {
    return localDay(new Date(moment.getFullYear(), moment.getMonth(), moment.getDate() + ((8 - moment.getDay()) % 7 || 7)));
}
