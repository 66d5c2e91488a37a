import { readdirSync, readFileSync } from 'node:fs';
import type { Files } from './fixture.js';

/** The files of one of the example programmes and those that they name, by their path in it. */
export function exampleFiles(name: 'first-steps' | 'year'): Files {
    const folder = new URL(`../../examples/${name}/`, import.meta.url);
    const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(path => /\.(lesson|kit|course|ics|json)$/.test(path));
    return Object.fromEntries(paths.map(path => [path, readFileSync(new URL(path, folder), 'utf8')]));
}
