import { attachmentKey } from '../sheets/programme.js';
import type { FileSheet, Range } from '../sheets/sheet.js';
import { resolvePath } from './attachment-path.js';
import { noReader, type AttachmentReader } from './attachment-reader.js';
import type { Attachment } from './attachment.js';
import { readCalendar } from './calendar-file.js';
import { endsAs, type AttachmentKind } from './endings.js';
import { readFramework } from './framework-file.js';

const kinds: Readonly<Record<AttachmentKind, { read(text: string): Attachment; wrongEnding: string }>> = {
    calendar: { read: readCalendar, wrongEnding: 'The file of a calendar ends in .ics. Save it as iCalendar and name that file.' },
    framework: { read: readFramework, wrongEnding: 'The file of a framework ends in .json. Save it as CASE JSON and name that file.' }
};

/** A file as it was last read. */
interface Kept {
    kind: AttachmentKind;
    uri: string;
    within: string;
    /** Where a link led. */
    real?: string;
    text?: string;
    attachment: Attachment;
    /** Files that name it. */
    namedBy: Set<string>;
}

/** What the files of one programme name. */
interface Named {
    kept: Map<string, Kept>;
    refusals: Map<string, Attachment>;
    attachments: ReadonlyMap<string, Attachment>;
}

/** Keeps every file that a programme names from one reading to the next, until it is told that the file has changed. */
export class AttachmentStore {
    private readonly programmes = new Map<string, Named>();

    /** `folders`: addresses of the folders that are open. */
    constructor(private readonly reader: AttachmentReader = noReader, private readonly folders: () => readonly string[] = () => []) {}

    /** What the sheets of a programme name, by `attachmentKey`: the same map as long as nothing in it has changed. */
    of(sheets: readonly FileSheet[], programme = ''): ReadonlyMap<string, Attachment> {
        const former = this.programmes.get(programme) ?? nothingNamed;
        const kept = new Map<string, Kept>();
        const refusals = new Map<string, Attachment>();
        const found = new Map<string, Attachment>();
        for (const sheet of sheets) {
            for (const { path, kind } of pathsIn(sheet)) found.set(attachmentKey(sheet.uri, path), this.attachment(sheet.uri, path, kind, { former, kept, refusals }));
        }
        const attachments = isSame(found, former.attachments) ? former.attachments : found;
        this.programmes.set(programme, { kept, refusals, attachments });
        return attachments;
    }

    /** A programme is closed. */
    forget(programme: string): void {
        this.programmes.delete(programme);
    }

    /**
     * Reads again what may have changed: files, or folders with all that lies in them. The addresses of the files whose programme
     * now says something else; none when nothing that is named has changed.
     */
    refresh(changed: readonly string[]): string[] {
        const affected = new Set<string>();
        for (const kept of [...this.programmes.values()].flatMap(named => [...named.kept.values()])) {
            if (!changed.some(uri => isOrHolds(uri, kept.uri) || (kept.real !== undefined && isOrHolds(uri, kept.real)))) continue;
            const before = kept.attachment;
            this.read(kept);
            if (kept.attachment !== before) for (const uri of kept.namedBy) affected.add(uri);
        }
        return [...affected];
    }

    /** Addresses of the files that a sheet names, as far as its paths lead anywhere. */
    namedIn(sheet: FileSheet): string[] {
        return pathsIn(sheet).flatMap(({ path }) => {
            const place = resolvePath(sheet.uri, path, this.folders());
            return 'uri' in place ? [place.uri] : [];
        });
    }

    private attachment(naming: string, path: string, kind: AttachmentKind, { former, kept, refusals }: { former: Named } & Omit<Named, 'attachments'>): Attachment {
        const place = endsAs(path, kind) || path.trim() === '' ? resolvePath(naming, path, this.folders()) : resolvedWithEnding(naming, path, kind, this.folders());
        if ('wrong' in place) {
            const key = `${kind} ${place.wrong}`;
            const refusal = former.refusals.get(key) ?? refusals.get(key) ?? { state: 'wrong', message: place.wrong };
            refusals.set(key, refusal);
            return refusal;
        }
        const key = `${kind} ${place.uri} ${place.within}`;
        let file = kept.get(key);
        if (!file) {
            const before = former.kept.get(key);
            file = before ?? { kind, ...place, attachment: { state: 'wrong', message: '' }, namedBy: new Set() };
            file.namedBy.clear();
            if (!before) this.read(file);
            kept.set(key, file);
        }
        file.namedBy.add(naming);
        return file.attachment;
    }

    /** The same attachment as before where the file says the same. */
    private read(file: Kept): void {
        const answer = this.reader.read(file.uri, file.within);
        if ('wrong' in answer) {
            const near = answer.missing ? this.filesNear(file) : undefined;
            const same = file.attachment.state === 'wrong' && file.attachment.message === answer.wrong && String(file.attachment.near) === String(near);
            if (!same) file.attachment = { state: 'wrong', message: answer.wrong, ...(near && { near }) };
            file.text = undefined;
            file.real = undefined;
            return;
        }
        file.real = answer.real;
        if (file.text === answer.text) return;
        file.text = answer.text;
        file.attachment = kinds[file.kind].read(answer.text);
    }

    /** Files of the same kind in the folder of a missing one, or in the nearest folder above that exists: their addresses. */
    private filesNear({ kind, uri, within }: Kept): string[] {
        for (let folder = parentOf(uri); folder.length >= within.length; folder = parentOf(folder)) {
            const names = this.reader.list(folder, within);
            const here = names.filter(name => endsAs(name, kind)).map(name => `${folder}/${encodeURIComponent(name)}`);
            const below = names.filter(name => name.endsWith('/') && !name.startsWith('.')).slice(0, mostFolders).flatMap(name => {
                const inner = `${folder}/${encodeURIComponent(name.slice(0, -1))}`;
                return this.reader.list(inner, within).filter(file => endsAs(file, kind)).map(file => `${inner}/${encodeURIComponent(file)}`);
            });
            if (names.length > 0) return [...here, ...below].slice(0, mostNear);
        }
        return [];
    }
}

const nothingNamed: Named = { kept: new Map(), refusals: new Map(), attachments: new Map() };
const mostFolders = 50;
const mostNear = 100;

/** The paths of a file, as they are written, and where they stand with their quotes. */
export function pathsIn(sheet: FileSheet): { path: string; at: Range; kind: AttachmentKind }[] {
    return [
        ...sheet.classes.flatMap(({ offFrom }) => offFrom.map(({ path, at }) => ({ path, at, kind: 'calendar' as const }))),
        ...sheet.frameworks.flatMap(({ from }) => (from ? [{ path: from.path, at: from.at, kind: 'framework' as const }] : []))
    ];
}

/** A path that leads out is told of first; only then that the file is of another kind. */
function resolvedWithEnding(naming: string, path: string, kind: AttachmentKind, folders: readonly string[]): { wrong: string } {
    const place = resolvePath(naming, path, folders);
    return 'wrong' in place ? place : { wrong: kinds[kind].wrongEnding };
}

function isSame(found: ReadonlyMap<string, Attachment>, before: ReadonlyMap<string, Attachment>): boolean {
    return found.size === before.size && [...found].every(([key, attachment]) => before.get(key) === attachment);
}

function isOrHolds(changed: string, uri: string): boolean {
    return uri === changed || uri.startsWith(`${changed}/`);
}

function parentOf(uri: string): string {
    return uri.slice(0, Math.max(0, uri.lastIndexOf('/')));
}
