import { Temporal } from 'temporal-polyfill';

/** The date as ISO 8601 writes it, where the server runs: the only place of the server that reads the clock. */
export class Today {
    private set: string | undefined;

    get date(): string {
        return this.set ?? Temporal.Now.plainDateISO().toString();
    }

    /** The moment at which something is written, ISO 8601; on another day than the clock's, its first. */
    get moment(): string {
        return this.set === undefined ? Temporal.Now.instant().round('second').toString() : `${this.set}T00:00:00Z`;
    }

    /** Plans as if it were another day: what a client asked for when it started. What is no date is passed over. */
    be(date: unknown): void {
        try {
            this.set = typeof date === 'string' ? Temporal.PlainDate.from(date).toString() : undefined;
        } catch {
            this.set = undefined;
        }
    }
}
