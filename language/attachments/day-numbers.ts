/** Dates of the proleptic Gregorian calendar as whole days since 1970-01-01: quick to count with, and without a zone. */

export const secondsADay = 86_400;

export interface CivilDate {
    year: number;
    month: number;
    day: number;
}

/** 0001-01-01 and 9999-12-31: what an ISO date of four figures can say. */
export const firstDay = dayNumber(1, 1, 1);
export const lastDay = dayNumber(9999, 12, 31);

/** Counts in eras of 400 years that begin in March, so that the leap day ends a year. */
export function dayNumber(year: number, month: number, day: number): number {
    const y = month <= 2 ? year - 1 : year;
    const era = Math.floor(y / 400);
    const ofEra = y - era * 400;
    const ofYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
    return era * 146_097 + ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - 719_468;
}

/** The date of a number of days since 1970-01-01, which may be negative. */
export function civilDate(number: number): CivilDate {
    const z = number + 719_468;
    const era = Math.floor(z / 146_097);
    const ofEra = z - era * 146_097;
    const yearOfEra = Math.floor((ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) / 365);
    const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
    const month = Math.floor((5 * ofYear + 2) / 153);
    const civilMonth = month < 10 ? month + 3 : month - 9;
    return { year: yearOfEra + era * 400 + (civilMonth <= 2 ? 1 : 0), month: civilMonth, day: ofYear - Math.floor((153 * month + 2) / 5) + 1 };
}

/** 0 Monday to 6 Sunday. */
export function weekdayOf(number: number): number {
    return (((number + 3) % 7) + 7) % 7;
}

export function daysInMonth(year: number, month: number): number {
    return month === 12 ? 31 : dayNumber(year, month + 1, 1) - dayNumber(year, month, 1);
}

export function daysInYear(year: number): number {
    return dayNumber(year + 1, 1, 1) - dayNumber(year, 1, 1);
}

/** The number of a date that exists; undefined for any other. */
export function existingDay(year: number, month: number, day: number): number | undefined {
    if (year < 1 || year > 9999 || month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return undefined;
    return dayNumber(year, month, day);
}

/** The number of a date as ISO 8601 writes it, "2026-09-07"; undefined for one that does not exist. */
export function dayOfIso(date: string): number | undefined {
    const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
    return parts ? existingDay(Number(parts[1]), Number(parts[2]), Number(parts[3])) : undefined;
}

/** A number of days as an ISO 8601 date, for years 0001 to 9999. */
export function isoOfDay(number: number): string {
    const { year, month, day } = civilDate(number);
    return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}
