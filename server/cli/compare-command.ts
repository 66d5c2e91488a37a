import { statSync } from 'node:fs';
import { resolve } from 'node:path';
import { URI } from 'langium';
import type { Programme } from '@haversack/language/sheets/programme';
import { editionPage } from '../brief/editions/page.js';
import type { EditionNames } from '../exports/edition-lines.js';
import { editionMarkdown } from '../exports/edition-markdown.js';
import { editionText } from '../exports/edition-text.js';
import { figuresJson } from '../exports/json.js';
import { commitOf, NoHistory, repositoryOf } from '../history/git.js';
import { programmeAt } from '../history/revision.js';
import { compareEditions } from '../planning/editions/compare-editions.js';
import { CouldNotRun, exitCodes } from './could-not-run.js';
import { deliver } from './output.js';
import { chosenFormat, type Write } from './planned.js';
import { readProgramme } from './read-programme.js';

export interface CompareOptions {
    in?: string;
    course?: string;
    class?: string;
    format?: string;
    out?: string;
}

interface Edition {
    name: string;
    root: string;
    programme: Programme;
}

/** What changed for a teacher between two folders, or two revisions of one. */
export async function compareCommand(old: string, now: string, options: CompareOptions, write: Write, tell: Write): Promise<number> {
    const format = chosenFormat(options, ['text', 'md', 'html', 'json'], 'a comparison');
    const before = await editionAt(old, options.in ?? '.');
    const after = await editionAt(now, options.in ?? '.');
    mustKnow('course', options.course, before.programme.courses, after.programme.courses);
    mustKnow('class', options.class, before.programme.classes, after.programme.classes);
    const figures = compareEditions(before.programme, after.programme, { course: options.course, class: options.class });
    const names: EditionNames = { old: { name: before.name, root: before.root }, new: { name: after.name, root: after.root } };
    const text = format === 'html' ? editionPage(figures, names)
        : format === 'md' ? editionMarkdown(figures, names)
            : format === 'json' ? figuresJson('haversack-comparison', { old: before.name, new: after.name, comparison: figures })
                : editionText(figures, names);
    deliver(text, options.out, write, tell);
    const unread = [before, after].filter(({ programme }) => [...programme.files.values()].some(({ brokenLines }) => brokenLines?.length));
    for (const { name, programme } of unread) {
        const lines = [...programme.files.values()].reduce((sum, { brokenLines }) => sum + (brokenLines?.length ?? 0), 0);
        tell(`${lines} ${lines === 1 ? 'line' : 'lines'} of ${name} could not be read: the comparison shows what could be. 'haversack check' lists them.\n`);
    }
    return unread.length > 0 ? exitCodes.problems : exitCodes.fine;
}

/** A folder where there is one of that name; else a revision of the programme's folder. */
async function editionAt(asGiven: string, within: string): Promise<Edition> {
    if (asGiven !== '' && statSync(resolve(asGiven), { throwIfNoEntry: false })?.isDirectory()) {
        const { root, view: { programme } } = await readProgramme(asGiven);
        return { name: asGiven, root: URI.file(root).toString(), programme };
    }
    const folder = resolve(within);
    try {
        const repository = await repositoryOf(folder);
        const programme = await programmeAt(repository, await commitOf(repository, asGiven), asGiven);
        return { name: asGiven, root: URI.file(folder).toString(), programme };
    } catch (error) {
        throw error instanceof NoHistory ? new CouldNotRun(error.message) : error;
    }
}

function mustKnow(kind: 'course' | 'class', name: string | undefined, old: ReadonlyMap<string, unknown>, now: ReadonlyMap<string, unknown>): void {
    if (name === undefined || old.has(name) || now.has(name)) return;
    const known = [...new Set([...now.keys(), ...old.keys()])];
    throw new CouldNotRun(`There is no ${kind} '${name}' in either edition. ${known.length === 0 ? `Neither declares a ${kind}.` : `There is ${known.join(', ')}.`}`);
}
