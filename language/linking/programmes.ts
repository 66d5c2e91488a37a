import { URI, type LangiumSharedCoreServices, type WorkspaceFolder } from 'langium';

/** Names a programme: the address of the folder that holds it; '' for the one of files that lie in no open folder. */
export type ProgrammeKey = string;

/** The programme of files that lie in no open folder. */
export const loose: ProgrammeKey = '';

/**
 * Which file belongs to which programme. Every open folder is a programme of its own, and programmes know nothing of one another; a folder
 * within another belongs to the widest. A file outside of every folder, or one that was never saved, belongs to the only folder that is open;
 * where none or several are open, all such files are one programme by themselves.
 */
export class Programmes {
    private folders: readonly WorkspaceFolder[] | undefined;
    private keys: readonly ProgrammeKey[] = [];

    constructor(private readonly shared: LangiumSharedCoreServices) {}

    /** The programme of a file, whether the file is there or not. */
    of(file: URI | string): ProgrammeKey {
        const { open } = this;
        return open.length > 1 ? this.holderOf(file) ?? loose : open[0] ?? loose;
    }

    /** The programme of the folder that a file lies in; undefined for one that lies in no open folder. */
    holderOf(file: URI | string): ProgrammeKey | undefined {
        const address = addressOf(file);
        return this.open.find(folder => isIn(address, folder));
    }

    /** True where more than one folder is open, so that a name may mean several things. */
    get areSeveral(): boolean {
        return this.open.length > 1;
    }

    /** All programmes in the order of their folders: at least one. */
    get all(): readonly ProgrammeKey[] {
        const { open } = this;
        if (open.length === 1) return open;
        const others = open.length === 0 || this.shared.workspace.LangiumDocuments.all.some(({ uri }) => this.holderOf(uri) === undefined);
        return others ? [...open, loose] : open;
    }

    /** The widest of the folders that are open. The same list as long as they stay open. */
    get open(): readonly ProgrammeKey[] {
        const folders = this.shared.workspace.WorkspaceManager.workspaceFolders;
        if (this.folders !== folders) {
            this.folders = folders;
            const all = [...new Set((folders ?? []).map(({ uri }) => addressOf(uri)))];
            this.keys = all.filter(folder => !all.some(other => other !== folder && isIn(folder, other)));
        }
        return this.keys;
    }
}

/** The address of a file or folder as `URI.toString()` writes it, without a slash at its end. */
export function addressOf(file: URI | string): string {
    return (typeof file === 'string' ? URI.parse(file) : file).toString().replace(/\/$/, '');
}

/** True for what is the folder or lies in it; both as `addressOf` writes them. */
export function isIn(address: string, folder: ProgrammeKey): boolean {
    return address.startsWith(folder) && (address.length === folder.length || address[folder.length] === '/');
}
