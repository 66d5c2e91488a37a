import ICAL from 'ical.js';

/** A property of a calendar: its line in parts. `value` is as written; see `textOf` for text. */
export interface ContentLine {
    name: string;
    params: Readonly<Record<string, string>>;
    value: string;
}

/** A component of a calendar with its own lines; what stands in components inside it is left out. */
export interface Component {
    name: string;
    lines: string[];
    /** Components inside a time zone: its times of the year. */
    inner: Component[];
    /** False when the file ends before it does. */
    whole: boolean;
}

const wantedInside: Readonly<Record<string, readonly string[]>> = { VEVENT: [], VTIMEZONE: ['STANDARD', 'DAYLIGHT'] };

/**
 * The events and time zones of a file (RFC 5545, 3.1 and 3.6), and the lines of the calendars themselves. Takes what towns publish: any line end, folds
 * wherever they fall, several calendars in one file, lines that are none. Components of other kinds are passed over.
 */
export function readComponents(text: string): { calendars: number; ownLines: string[]; events: Component[]; zones: Component[] } {
    const unfolded = text.replace(/^\uFEFF/, '').replace(/(?:\r\n|\r|\n)[ \t]/g, '');
    const found = { calendars: 0, ownLines: [] as string[], events: [] as Component[], zones: [] as Component[] };
    const open: { name: string; component?: Component }[] = [];
    for (const written of unfolded.split(/\r\n|\r|\n/)) {
        const line = written.trim();
        const limit = /^(BEGIN|END)\s*:\s*([\w-]+)$/i.exec(line);
        const name = limit?.[2]?.toUpperCase();
        const inside = open.at(-1);
        if (!limit || name === undefined) {
            if (inside?.component) inside.component.lines.push(line);
            else if (inside?.name === 'VCALENDAR') found.ownLines.push(line);
        } else if (limit[1]!.toUpperCase() === 'END') {
            close(open, name);
        } else {
            if (name === 'VCALENDAR') found.calendars++;
            open.push({ name, component: begin(name, inside?.component, found) });
        }
    }
    return found;
}

function begin(name: string, parent: Component | undefined, found: { events: Component[]; zones: Component[] }): Component | undefined {
    const component: Component = { name, lines: [], inner: [], whole: false };
    if (name === 'VEVENT') found.events.push(component);
    else if (name === 'VTIMEZONE') found.zones.push(component);
    else if (parent && wantedInside[parent.name]?.includes(name)) parent.inner.push(component);
    else return undefined;
    return component;
}

/** Closes a component, and what was left open inside it. An end without a beginning is passed over. */
function close(open: { name: string; component?: Component }[], name: string): void {
    // Nothing nests deeper than this in a calendar; looking further would let ends without a beginning cost too much.
    for (let at = open.length - 1; at >= Math.max(0, open.length - 8); at--) {
        if (open[at]!.name !== name) continue;
        for (const { component } of open.splice(at)) if (component?.name === name) component.whole = true;
        return;
    }
}

/** A line as name, parameters and value; undefined where it is none. */
export function readLine(line: string): ContentLine | undefined {
    const params: Record<string, string> = {};
    const name = /^[\w-]+/.exec(line)?.[0];
    if (name === undefined) return undefined;
    let at = name.length;
    while (line[at] === ';') {
        const equals = line.indexOf('=', at);
        if (equals < 0) return undefined;
        const end = endOfParam(line, equals + 1);
        params[line.slice(at + 1, equals).toUpperCase()] = line.slice(equals + 1, end).replace(/^"|"$/g, '');
        at = end;
    }
    return line[at] === ':' ? { name: name.toUpperCase(), params, value: line.slice(at + 1).trim() } : undefined;
}

/** Where a parameter ends: at the next semicolon or colon that does not stand in quotes. */
function endOfParam(line: string, from: number): number {
    let quoted = false;
    for (let at = from; at < line.length; at++) {
        if (line[at] === '"') quoted = !quoted;
        else if (!quoted && (line[at] === ';' || line[at] === ':')) return at;
    }
    return line.length;
}

/** A text value without its escapes (RFC 5545, 3.3.11), on one line. */
export function textOf(value: string): string {
    const text: unknown = ICAL.parse.property(`SUMMARY:${value}`)[3];
    return String(text).replace(/\s+/g, ' ').trim();
}
