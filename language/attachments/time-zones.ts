import type { RepeatRule } from './attachment.js';
import { readLine, type Component } from './content-lines.js';
import { secondsADay } from './day-numbers.js';
import { readMoment, readRule } from './moments.js';
import { repetitions, timesAYear, type Effort } from './repetitions.js';

/** One of the times of the year of a zone: from its onsets on, the clock differs from UTC by `to` seconds. */
interface Observance {
    from: number;
    to: number;
    start: number;
    rules: RepeatRule[];
    also: number[];
    /** Onsets found before, by rule and stretch of time. */
    onsets: Map<string, number[]>;
}

/** Clocks change at least once in two of these, or not by a rule. */
const blockLength = 200 * secondsADay;

/** No clock on earth is changed more often by one rule; one that is would only keep us busy. */
const mostChangesAYear = 366;

/** Clocks of time zones: those that a calendar defines itself, and those of the IANA database. All times are seconds since 1970-01-01. */
export class TimeZones {
    private readonly own = new Map<string, Observance[]>();
    private readonly named = new Map<string, Intl.DateTimeFormat | undefined>();
    /** Looking for a change of the clock ends here in a calendar that is made to keep one busy. */
    private readonly effort: Effort = { left: 4_000_000 };

    constructor(components: readonly Component[]) {
        for (const { lines, inner } of components) {
            const name = lines.map(readLine).find(line => line?.name === 'TZID')?.value;
            const observances = inner.flatMap(component => readObservance(component) ?? []);
            if (name !== undefined && observances.length > 0) this.own.set(name, observances);
        }
    }

    /** What the clocks of a zone show at an instant; the instant itself in a zone that nobody knows. */
    toLocal(utc: number, zone: string): number {
        return utc + this.offsetAt(utc, zone);
    }

    /** The instant at which the clocks of a zone show a time; where they show it twice, one of the two. */
    toUtc(local: number, zone: string): number {
        return local - this.offsetAt(local - this.offsetAt(local, zone), zone);
    }

    private offsetAt(utc: number, zone: string): number {
        if (zone === 'UTC') return 0;
        const own = this.own.get(zone);
        if (own) return this.offsetByRules(utc, own);
        const format = this.formatOf(zone);
        return format ? offsetIn(format, utc) : 0;
    }

    private offsetByRules(utc: number, observances: readonly Observance[]): number {
        let latest = Number.NEGATIVE_INFINITY;
        let offset: number | undefined;
        for (const observance of observances) {
            const onset = this.lastOnset(observance, utc + observance.from) - observance.from;
            if (onset > latest) {
                latest = onset;
                offset = observance.to;
            }
        }
        return offset ?? observances.reduce((first, observance) => (observance.start < first.start ? observance : first)).from;
    }

    /** In the wall-clock time before the change. */
    private lastOnset({ start, rules, also, from, onsets }: Observance, local: number): number {
        let last = start <= local ? start : Number.NEGATIVE_INFINITY;
        for (const time of also) if (time <= local && time > last) last = time;
        rules.forEach((rule, index) => {
            const until = rule.until === undefined ? local : Math.min(local, rule.until + from);
            const block = Math.floor(until / blockLength);
            const key = `${index} ${block}`;
            let times = onsets.get(key);
            if (!times) {
                times = [...repetitions({ ...rule, until: undefined }, start, (block - 2) * blockLength, (block + 1) * blockLength, this.effort)];
                onsets.set(key, times);
            }
            for (const time of times) if (time <= until && time > last) last = time;
        });
        return last;
    }

    private formatOf(zone: string): Intl.DateTimeFormat | undefined {
        if (!this.named.has(zone)) this.named.set(zone, knownFormat(zone));
        return this.named.get(zone);
    }
}

/** Longer than any name of a time zone; what is searched is no longer. */
const longestZone = 100;

/** Some programs write a prefix of their own before the name that everybody knows. */
function knownFormat(zone: string): Intl.DateTimeFormat | undefined {
    const plain = /[A-Za-z]+\/[\w+-]+(?:\/[\w+-]+)?$/.exec(zone.slice(-longestZone))?.[0];
    for (const name of [zone, plain]) {
        if (name === undefined) continue;
        try {
            return new Intl.DateTimeFormat('en-US', { timeZone: name, timeZoneName: 'longOffset' });
        } catch {
            continue;
        }
    }
    return undefined;
}

function offsetIn(format: Intl.DateTimeFormat, utc: number): number {
    const name = format.formatToParts(new Date(utc * 1000)).find(({ type }) => type === 'timeZoneName')?.value ?? '';
    const parts = /([+-])(\d+):(\d+)(?::(\d+))?/.exec(name);
    if (!parts) return 0;
    return (parts[1] === '-' ? -1 : 1) * (Number(parts[2]) * 3600 + Number(parts[3]) * 60 + Number(parts[4] ?? 0));
}

function readObservance({ lines }: Component): Observance | undefined {
    const read = lines.flatMap(line => readLine(line) ?? []);
    const value = (name: string): string => read.find(line => line.name === name)?.value ?? '';
    const start = readMoment(value('DTSTART'));
    const from = offsetOf(value('TZOFFSETFROM'));
    const to = offsetOf(value('TZOFFSETTO'));
    if (!start || from === undefined || to === undefined) return undefined;
    return {
        from, to, onsets: new Map(), start: start.day * secondsADay + (start.time ?? 0),
        rules: read.filter(({ name }) => name === 'RRULE').flatMap(line => readRule(line.value, moment => moment.day * secondsADay + (moment.time ?? 0)) ?? [])
            .filter(rule => timesAYear(rule, false) <= mostChangesAYear),
        also: read.filter(({ name }) => name === 'RDATE').flatMap(line => line.value.split(',')).flatMap(written => {
            const moment = readMoment(written);
            return moment ? [moment.day * secondsADay + (moment.time ?? 0)] : [];
        })
    };
}

function offsetOf(value: string): number | undefined {
    const parts = /^([+-])(\d{2})(\d{2})(\d{2})?$/.exec(value);
    return parts ? (parts[1] === '-' ? -1 : 1) * (Number(parts[2]) * 3600 + Number(parts[3]) * 60 + Number(parts[4] ?? 0)) : undefined;
}
