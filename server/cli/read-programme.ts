import { existsSync, readdirSync, readFileSync, statSync, type Dirent } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { EmptyFileSystem, URI, type LangiumDocument } from 'langium';
import { programmeFile } from '@haversack/language/facts/programme-file';
import type { Problem } from '@haversack/language/checks/check';
import { AttachmentStore } from '@haversack/language/attachments/attachment-store';
import { createHaversackServices, type HaversackServices } from '@haversack/language/module';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import { NodeAttachments } from '../node-attachments.js';
import { CouldNotRun } from './could-not-run.js';


/** A programme read from a folder, with everything that is wrong in it. */
export interface ReadProgramme {
    root: string;
    view: ProgrammeView;
    problems: Problem[];
    /** Addresses of the files that were asked about: all of them, or the one. */
    files: string[];
    /** The text of a file of the programme. */
    textOf(uri: string): string | undefined;
    /** How a file is named to a person: relative to where the command was started. */
    show(uri: string): string;
}

/** Reads the programme at a path: a folder with everything below it, or the folder of the programme that a file is in. */
export async function readProgramme(path: string): Promise<ReadProgramme> {
    const { root, only } = findRoot(resolve(path), path);
    const files = someFilesBelow(root, path);
    const { shared, haversack } = createHaversackServices(EmptyFileSystem, new AttachmentStore(new NodeAttachments(), () => [URI.file(root).toString()]));
    const documents = files.map(file => shared.workspace.LangiumDocumentFactory.fromString(readText(file), URI.file(file)));
    for (const document of documents) shared.workspace.LangiumDocuments.addDocument(document);
    await shared.workspace.DocumentBuilder.build(documents, { validation: true });
    const asked = documents.filter(document => only === undefined || document.uri.fsPath === only);
    return {
        root,
        view: haversack.sheets.viewOf(documents[0]!.uri),
        problems: asked.flatMap(document => problemsOf(document, haversack)),
        files: asked.map(({ uri }) => uri.toString()),
        textOf: uri => shared.workspace.LangiumDocuments.getDocument(URI.parse(uri))?.textDocument.getText(),
        show: uri => relative(process.cwd(), URI.parse(uri).fsPath) || uri
    };
}

function problemsOf(document: LangiumDocument, services: HaversackServices): readonly Problem[] {
    const problems = services.validation.DocumentValidator.lastProblems(document);
    return [...problems].sort(byLine);
}

export function byLine(a: Problem, b: Problem): number {
    return a.at.start.line - b.at.start.line || a.at.start.character - b.at.start.character;
}

/** For a file, the highest folder above it that itself holds an inventory or a course; else the file's own folder. */
function findRoot(path: string, asGiven: string): { root: string; only?: string } {
    if (!existsSync(path)) throw new CouldNotRun(`There is nothing at ${asGiven}. Check the path.`);
    if (statSync(path).isDirectory()) return { root: path };
    if (!programmeFile.test(path)) throw new CouldNotRun(`${asGiven} is no .lesson, .kit or .course file.`);
    let root = dirname(path);
    let above = root;
    for (let level = 0; level < 4 && dirname(above) !== above; level++) {
        if (list(above).some(name => /\.(kit|course)$/.test(name))) root = above;
        above = dirname(above);
    }
    return { root, only: path };
}

function list(folder: string): string[] {
    try {
        return readdirSync(folder).sort();
    } catch {
        return [];
    }
}

/** The files that are meant by a path: all below a folder, or the one. */
export function filesAt(path: string): { root: string; files: string[] } {
    const { root, only } = findRoot(resolve(path), path);
    return { root, files: only === undefined ? someFilesBelow(root, path) : [only] };
}

function someFilesBelow(root: string, asGiven: string): string[] {
    const files = filesBelow(root);
    if (files.length === 0) throw new CouldNotRun(`There is no .lesson, .kit or .course file in ${asGiven}. Give the folder of a programme.`);
    return files;
}

function filesBelow(folder: string): string[] {
    let entries;
    try {
        entries = readdirSync(folder, { withFileTypes: true });
    } catch (error) {
        throw new CouldNotRun(`The folder ${folder} could not be read: ${reason(error)}.`);
    }
    return entries.sort((a, b) => (a.name < b.name ? -1 : 1)).flatMap(entry => {
        if (entry.name.startsWith('.') || entry.name === 'node_modules') return [];
        const path = join(folder, entry.name);
        if (entry.isDirectory()) return filesBelow(path);
        return programmeFile.test(entry.name) && (entry.isFile() || isLinkToFile(entry, path)) ? [path] : [];
    });
}

/** Also true for a link that leads nowhere: reading it then tells so. Links to folders may lead in a circle and are not followed. */
function isLinkToFile(entry: Dirent, path: string): boolean {
    return entry.isSymbolicLink() && !statSync(path, { throwIfNoEntry: false })?.isDirectory();
}

/** The text of a file, without a byte order mark unless that is asked for. */
export function readText(file: string, marked = false): string {
    let bytes;
    try {
        bytes = readFileSync(file);
    } catch (error) {
        throw new CouldNotRun(`${relative(process.cwd(), file)} could not be read: ${reason(error)}.`);
    }
    try {
        return new TextDecoder('utf-8', { fatal: true, ignoreBOM: marked }).decode(bytes);
    } catch {
        throw new CouldNotRun(`${relative(process.cwd(), file)} is not UTF-8 text. Open it in an editor and save it with the encoding UTF-8.`);
    }
}

/** Why the system refused, in words. */
export function reason(error: unknown): string {
    const code = (error as NodeJS.ErrnoException).code;
    const known: Record<string, string> = {
        EACCES: 'you have no permission', EPERM: 'you have no permission', ENOENT: 'it does not exist', EISDIR: 'it is a folder', ENOTDIR: 'a part of the path is not a folder', ENOSPC: 'the disk is full', EROFS: 'the disk cannot be written to'
    };
    return (code && known[code]) ?? (error as Error).message;
}
