/** What reads the files that a programme names. The language itself knows no disk. */
export interface AttachmentReader {
    /**
     * The text of a file that really lies within a folder, links followed; or why there is none, in a teacher's words. `real` is where
     * a link led. Never throws.
     */
    read(uri: string, within: string): { text: string; real?: string } | { wrong: string; missing?: boolean };
    /** Names of what lies in a folder, that of a folder with / behind it; none where it cannot be read. */
    list(folder: string): string[];
}

export const noReader: AttachmentReader = {
    read: () => ({ wrong: 'Files beside the programme\'s own cannot be read here. Open the programme from a folder on this computer.' }),
    list: () => []
};
