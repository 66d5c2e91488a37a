import { UriUtils } from 'langium';
import { nearest } from '../lexer/nearest.js';
import { attachmentKey } from '../sheets/programme.js';
import type { Attachment } from '../attachments/attachment.js';
import type { FileSheet, Range } from '../sheets/sheet.js';
import type { Check, Fix } from './check.js';
import { changeTo } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';

const group = 'course measuring\n\nclass harbour\n  teaches measuring\n  learners 7\n  starts 2026-09-07\n  meets mon\n';
const town = (...lines: string[]): string => ['BEGIN:VCALENDAR', 'BEGIN:VEVENT', 'UID:harvest', 'SUMMARY:Harvest day', ...lines, 'END:VEVENT', 'END:VCALENDAR'].join('\n');

export const fileNotUsable: Check = {
    code: 'file-not-usable', severity: 'error', title: 'A calendar or framework that cannot be used',
    explains: 'The file that is named here is missing, lies outside the programme\'s folder, or is not of the kind that belongs here. A path is written as seen from the file that names it, with `/` between its parts; nothing is read from outside the folder or from the network. Until it can be read, the plan goes on without it.',
    wrong: `${group}  off from "calendars/twon.ics"`, right: `${group}  off from "calendars/town.ics"`,
    beside: { 'calendars/town.ics': town('DTSTART;VALUE=DATE:20261005') },
    *find(file, view) {
        for (const { path, at, what, attachment } of filesNamed(file, view)) {
            if (attachment?.state !== 'wrong') continue;
            yield { message: `${what} cannot be used. ${attachment.message}`, at, fixes: otherPath(file.uri, path, at, attachment.near ?? []) };
        }
    }
};

export const filePartlyRead: Check = {
    code: 'file-partly-read', severity: 'information', title: 'A calendar or framework of which something was left out',
    explains: 'The file was read, but something in it could not be: an event that ends before it begins, say, or an item whose place is not told; or a word after `named` stands in the title of no event. The rest counts. Look whether what was left out matters, and ask whoever publishes the file to mend it.',
    wrong: `${group}  off from "calendars/town.ics"`, right: `${group}  off 2026-10-05 "Harvest day"`,
    beside: { 'calendars/town.ics': town('DTSTART;VALUE=DATE:20261005', 'DTEND;VALUE=DATE:20261001') },
    *find(file, view) {
        for (const { what, at, attachment } of filesNamed(file, view)) {
            const remarks = attachment?.state === 'calendar' ? attachment.calendar.remarks : attachment?.state === 'framework' ? attachment.framework.remarks : [];
            if (remarks.length > 0) yield { message: `${what} was read, but: ${remarks.join(' ')}`, at };
        }
        for (const { path, named, at } of file.classes.flatMap(({ offFrom }) => offFrom)) {
            const attachment = view.programme.attachments.get(attachmentKey(file.uri, path));
            if (attachment?.state !== 'calendar') continue;
            const unknown = named.filter(name => !attachment.calendar.events.some(({ title }) => title.toLowerCase().includes(name.trim().toLowerCase())));
            if (unknown.length > 0) {
                yield { message: `The calendar '${path}' was read, but no event of whole days in it is called ${unknown.map(name => `'${name}'`).join(' or ')}: that takes no day away. Look how the calendar writes it.`, at };
            }
        }
    }
};

interface Named {
    path: string;
    at: Range;
    /** What it is called in a message. */
    what: string;
    attachment: Attachment | undefined;
}

function filesNamed(file: FileSheet, { programme }: ProgrammeView): Named[] {
    const named = (kind: string, { path, at }: { path: string; at: Range }): Named => ({
        path, at, what: `The ${kind} '${path}'`, attachment: programme.attachments.get(attachmentKey(file.uri, path))
    });
    return [
        ...file.classes.flatMap(({ offFrom }) => offFrom.map(line => named('calendar', line))),
        ...file.frameworks.flatMap(({ from }) => (from ? [named('framework', from)] : []))
    ];
}

/** The existing file whose path is nearest, or else the only one whose name is the same. */
function otherPath(uri: string, path: string, at: Range, near: readonly string[]): Fix[] {
    const folder = uri.slice(0, uri.lastIndexOf('/'));
    const paths = near.map(address => UriUtils.relative(folder, address));
    const nameOf = (one: string): string => one.slice(one.lastIndexOf('/') + 1).toLowerCase();
    const sameName = paths.filter(one => nameOf(one) === nameOf(path));
    const meant = nearest(path, paths) ?? (sameName.length === 1 ? sameName[0] : undefined) ?? (paths.length === 1 ? paths[0] : undefined);
    return meant !== undefined && !/["\\]/.test(meant) ? [changeTo(uri, at, `"${meant}"`)] : [];
}
