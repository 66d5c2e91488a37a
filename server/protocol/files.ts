/**
 * Files that the server cannot read by itself: a browser has no disk, and a folder on the desktop may lie elsewhere. The client sends
 * them when the server starts and whenever one changes.
 */

/** A file as it lies in the workspace. */
export interface FedFile {
    uri: string;
    /** What it holds, as base64. Absent for a calendar or framework, which is sent when it is asked for, and for what cannot be sent. */
    bytes?: string;
    /** Why it cannot be sent. */
    wrong?: 'too-large' | 'unreadable';
}

export interface FilesParams {
    /** Files that are new or have changed. */
    files?: FedFile[];
    /** Addresses of files that are gone, or of folders with all that lay in them. */
    gone?: string[];
    /** True once everything that lies in the workspace at the start has been sent. */
    whole?: boolean;
}

/** From the client, `FilesParams`. A client that sends files says so in its initialization options: `sendsFiles`. */
export const filesNotification = 'haversack/files';

/** From the server: asks for a calendar or framework that the programme names, as `{ uri }`. The answer is a `FedFile`, or null where there is none. */
export const wantedFileRequest = 'haversack/wantedFile';

/** The largest calendar or framework that is read, in bytes: a town's calendar of many years is a quarter of this. */
export const largestNamedFile = 8 * 1024 * 1024;
