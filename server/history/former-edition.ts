import { URI } from 'langium';
import type { FileSheet } from '@haversack/language/sheets/sheet';
import type { Programme } from '@haversack/language/sheets/programme';
import { contentsOf, NoHistory, repositoryOf, touchesOf, type Repository } from './git.js';
import { programmeAt } from './revision.js';

/** So many commits that touched a course are looked through. */
const mostCommits = 1000;

/** Looks former editions up in the git history of a folder on this disk. */
export const gitHistory = {
    async find(folder: string, wanted: WantedEdition, others: readonly FileSheet[]): Promise<Programme | undefined> {
        const root = URI.parse(folder);
        return root.scheme === 'file' ? formerEdition(root.fsPath, wanted, others) : undefined;
    }
};

export interface WantedEdition {
    course: string;
    edition: string;
}

/**
 * The programme in a folder as it was last while a course said that edition: as the newest commit has it in whose files the course still says
 * so. `others`: sheets of files outside the folder, as they are today. Undefined where the history has no such commit.
 */
export async function formerEdition(folder: string, wanted: WantedEdition, others: readonly FileSheet[] = []): Promise<Programme | undefined> {
    try {
        const repository = await repositoryOf(folder);
        const commit = await lastCommitWith(repository, wanted);
        if (commit === undefined) return undefined;
        const programme = await programmeAt(repository, commit, commit.slice(0, 10), others);
        return programme.courses.get(wanted.course)?.edition === wanted.edition ? programme : undefined;
    } catch (error) {
        if (error instanceof NoHistory) return undefined;
        throw error;
    }
}

/** Only commits that touch the course's file can give it another edition: the last one with an edition is that before the next of these. */
async function lastCommitWith(repository: Repository, wanted: WantedEdition): Promise<string | undefined> {
    const touches = await touchesOf(repository, ['.course'], mostCommits);
    const asked = touches.flatMap(({ commit, paths }, index) => paths.filter(path => !/[\r\n]/.test(path)).map(path => ({ commit, path, index })));
    const contents = await contentsOf(repository, asked.map(({ commit, path }) => `${commit}:${path}`));
    const found = asked.find((_, index) => saysEdition(contents[index], wanted));
    if (!found) return undefined;
    const next = touches.slice(0, found.index).reverse().find(({ paths }) => paths.includes(found.path));
    if (!next) return 'HEAD';
    // The parent on the main line, unless the edition came by another way.
    const [before] = await contentsOf(repository, [`${next.commit}^:${found.path}`]);
    return saysEdition(before, wanted) ? `${next.commit}^` : found.commit;
}

function saysEdition(content: Uint8Array | undefined, { course, edition }: WantedEdition): boolean {
    if (!content) return false;
    const text = new TextDecoder().decode(content);
    return text.split(/\r\n|\r|\n/).some(line => {
        const [, name, said] = /^\uFEFF?course\s+([\w-]+)(?:\s+"[^"]*")?\s+edition\s+(\S+)/.exec(line) ?? [];
        return name === course && said === edition;
    });
}
