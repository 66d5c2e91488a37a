import { realpathSync, writeFileSync } from 'node:fs';
import { isAbsolute, relative, sep } from 'node:path';
import { EmptyFileSystem } from 'langium';
import { createHaversackServices } from '@haversack/language/module';
import { withEdits } from '../formatting/blank-edits.js';
import { formatEdits, usualFormat, type FormatOptions } from '../formatting/format-text.js';
import { readLayout } from '../formatting/read-layout.js';
import { CouldNotRun, exitCodes } from './could-not-run.js';
import { filesAt, readText, reason } from './read-programme.js';

export interface FormatCommandOptions {
    indent?: string;
    write?: boolean;
}

/** Lists the files whose layout is not the usual one, and with --write lays them out. Nothing is written before every file has been read. */
export function formatCommand(path: string, options: FormatCommandOptions, write: (text: string) => void): number {
    const format = formatOf(options.indent ?? '2');
    const { automaton } = createHaversackServices(EmptyFileSystem).haversack.parser.Lexer;
    const { root, files } = filesAt(path);
    const read = files.map(file => {
        const text = readText(file, true);
        const edits = formatEdits(text, automaton, format);
        const broken = readLayout(text, automaton).lines.some(line => line.broken || line.kind === 'unread');
        return { file, broken, laidOut: edits.length === 0 ? undefined : withEdits(text, edits) };
    });
    const others = read.filter(({ laidOut }) => laidOut !== undefined);
    if (options.write) {
        for (const { file } of others) mustBeInside(root, file);
        for (const { file, laidOut } of others) save(file, laidOut!);
    }
    const left = read.filter(({ broken }) => broken).length;
    const told = [
        ...others.map(({ file }) => `${options.write ? 'Laid out ' : ''}${show(file)}`),
        ...(left === 0 ? [] : [`In ${count(left)} some lines cannot be read; the blocks they stand in stay as they are. 'haversack check' lists them.`]),
        others.length === 0 ? `${count(files.length)}: nothing to lay out.` : options.write ? `${count(others.length)} of ${files.length} laid out.` : `${count(others.length)} of ${files.length} not laid out as usual. Add --write to lay them out.`
    ];
    write(`${told.join('\n')}\n`);
    return others.length > 0 && !options.write ? exitCodes.problems : exitCodes.fine;
}

function formatOf(indent: string): FormatOptions {
    if (indent === 'tab') return { ...usualFormat, tabs: true };
    if (!/^[1-8]$/.test(indent)) throw new CouldNotRun(`A block cannot go in by '${indent}': give a number of spaces from 1 to 8, or tab.`);
    return { ...usualFormat, size: Number(indent) };
}

function count(files: number): string {
    return `${files} ${files === 1 ? 'file' : 'files'}`;
}

function show(file: string): string {
    return relative(process.cwd(), file) || file;
}

/** Links that lead out of the programme's folder are not followed. */
function mustBeInside(root: string, file: string): void {
    const way = relative(realpathSync(root), realpathSync(file));
    if (way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way)) throw new CouldNotRun(`${show(file)} leads outside the programme's folder, so nothing is written.`);
}

function save(file: string, text: string): void {
    try {
        writeFileSync(file, text);
    } catch (error) {
        throw new CouldNotRun(`${show(file)} could not be written: ${reason(error)}.`);
    }
}
