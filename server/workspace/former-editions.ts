import { URI, UriUtils } from 'langium';
import type { CourseSheet, FileSheet } from '@haversack/language/sheets/sheet';
import type { Programme } from '@haversack/language/sheets/programme';
import type { FormerEdition, FormerEditions } from '../plan-checks/term.js';
import type { HaversackServerServices } from './services.js';

/** What looks former editions up, such as in the history of a folder. Never throws; undefined where there is none. */
export interface FormerEditionReader {
    /** `folder`: address of the programme's folder. `others`: sheets of files outside it, as they are now. */
    find(folder: string, wanted: { course: string; edition: string }, others: readonly FileSheet[]): Promise<Programme | undefined>;
}

/**
 * Former editions as far as they have been found. Looking for one begins when it is first asked for and keeps nobody waiting: whoever asked is
 * told when it is there. Nothing is looked for before the client has said that the workspace is trusted.
 */
export class FormerEditionStore implements FormerEditions {
    private readonly found = new Map<string, FormerEdition | undefined>();
    private readonly sought = new Set<string>();
    /** One is looked for after another: a file may name any number of editions. */
    private last: Promise<void> = Promise.resolve();
    private onFound: () => void = () => undefined;

    constructor(private readonly services: HaversackServerServices, private readonly reader?: FormerEditionReader) {}

    /** Called when an edition has been found, or may be looked for from now on. */
    whenFound(tell: () => void): void {
        this.onFound = tell;
    }

    of(course: CourseSheet, edition: string): FormerEdition | undefined {
        const { client, programmes } = this.services;
        const folder = programmes.holderOf(course.uri);
        if (!this.reader || !client.trusts || folder === undefined) return undefined;
        // With the edition that the course has now: when that changes, the history may hold more.
        const key = JSON.stringify([folder, course.name, edition, course.edition]);
        if (!this.sought.has(key)) {
            this.sought.add(key);
            this.last = this.last.then(() => this.seek(key, folder, course.name, edition));
        }
        return this.found.get(key);
    }

    /** The client trusts the workspace from now on. */
    lookFromNow(): void {
        this.onFound();
    }

    private async seek(key: string, folder: string, course: string, edition: string): Promise<void> {
        const root = URI.parse(folder);
        const others = [...this.services.sheets.viewAt(folder).programme.files.values()].filter(({ uri }) => !UriUtils.contains(root, URI.parse(uri)));
        try {
            const programme = await this.reader?.find(folder, { course, edition }, others);
            if (!programme) return;
            this.found.set(key, { programme, memo: new WeakMap() });
            this.onFound();
        } catch (error) {
            this.services.shared.lsp.Connection?.console.error(`A former edition could not be looked for: ${String(error)}`);
        }
    }
}
