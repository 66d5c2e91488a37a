/** What reads the files that a programme names. The language itself knows no disk. */
export interface AttachmentReader {
    /**
     * The text of a file that really lies within a folder, links followed; or why there is none, in a teacher's words. `real` is where
     * a link led. Never throws.
     */
    read(uri: string, within: string): { text: string; real?: string } | { wrong: string; missing?: boolean };
    /** Names of what lies in a folder that really lies within another or is it, that of a folder with / behind it; none where it cannot be read. */
    list(folder: string, within: string): string[];
}

/** The answer for a file that is not there. */
export const noSuchFile = { wrong: 'There is no such file. Check the names of its folder and of the file itself, seen from this file.', missing: true } as const;

export const noReader: AttachmentReader = {
    read: () => ({ wrong: 'Files beside the programme\'s own cannot be read here. Open the programme from a folder on this computer.' }),
    list: () => []
};
