import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, extname } from 'node:path';
import type { Problem } from '@haversack/language/checks/check';
import type { Programme } from '@haversack/language/sheets/programme';
import { CouldNotRun, exitCodes } from './could-not-run.js';
import { reason } from './read-programme.js';

/** The format that a file's ending asks for, or `otherwise` without an ending. */
export function formatOf(out: string | undefined, otherwise: string): string {
    const ending = out === undefined ? '' : extname(out).slice(1).toLowerCase();
    const known: Record<string, string> = { '': otherwise, htm: 'html', markdown: 'md', txt: 'text', ical: 'ics' };
    return Object.hasOwn(known, ending) ? known[ending] ?? otherwise : ending;
}

/** Throws CouldNotRun for a class that the programme does not have; without a name the first is meant. */
export function mustKnowClass(programme: Programme, name: string | undefined): void {
    if (name === undefined || programme.classes.has(name)) return;
    const known = [...programme.classes.keys()];
    const there = known.length === 0 ? 'This programme declares no class.' : known.length === 1 ? `The only class is ${known[0]}.` : `The classes are ${known.join(', ')}.`;
    throw new CouldNotRun(`There is no class '${name}'. ${there}`);
}

/** To a file if one is named, else to the terminal. */
export function deliver(text: string, out: string | undefined, write: (text: string) => void, tell: (text: string) => void): void {
    if (out === undefined) return write(text);
    try {
        writeFileSync(out, text);
    } catch (error) {
        const folder = dirname(out);
        throw new CouldNotRun(`${out} could not be written: ${existsSync(folder) ? reason(error) : `there is no folder ${folder}`}.`);
    }
    tell(`Wrote ${out}\n`);
}

/** What a file holds that will be written over; undefined where there is none. */
export function writtenBefore(out: string | undefined): string | undefined {
    if (out === undefined || !existsSync(out)) return undefined;
    try {
        return readFileSync(out, 'utf8');
    } catch (error) {
        throw new CouldNotRun(`${out} could not be read: ${reason(error)}.`);
    }
}

/** Says that errors in the text left something out; the exit code that goes with it. */
export function errorsTold(problems: readonly Problem[], what: string, tell: (text: string) => void): number {
    const errors = problems.filter(({ severity }) => severity === 'error').length;
    if (errors > 0) tell(`${errors} ${errors === 1 ? 'error' : 'errors'} in the text: ${what} shows what could be read. 'haversack check' lists them.\n`);
    return errors > 0 ? exitCodes.problems : exitCodes.fine;
}
