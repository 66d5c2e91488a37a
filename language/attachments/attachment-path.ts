import { URI } from 'langium';

/** A file that a programme names: its address, and the folder that it must really lie in. */
export interface NamedFile {
    uri: string;
    within: string;
}

/** One of the kind that is wanted; a framework's name ends in .json. */
const exampleFor = (path: string): string => (/\.json$/i.test(path.trim()) ? 'such as "frameworks/state.json"' : 'such as "calendars/town.ics"');

/**
 * Where a path leads, seen from the folder of the file that names it. Only plain relative paths that stay in the programme's folder lead anywhere; everything else
 * is refused with the reason, in a teacher's words.
 */
export function resolvePath(naming: string, path: string, folders: readonly string[]): NamedFile | { wrong: string } {
    const example = exampleFor(path);
    const refused = refusal(path, example);
    if (refused !== undefined) return { wrong: refused };
    const from = URI.parse(naming);
    if (from.scheme === 'untitled') return { wrong: 'This file has no place yet from which the path could lead. Save it first.' };
    const way = segmentsOf(from.path).slice(0, -1);
    const root = rootOf(from, folders) ?? [...way];
    for (const segment of segmentsOf(path)) {
        if (segment !== '..') way.push(segment);
        else if (way.length > root.length) way.pop();
        else return { wrong: `The path leads out of the programme's folder. Copy the file into the programme and name it from here, ${example}.` };
    }
    const address = (segments: readonly string[]): string => from.with({ path: `/${segments.join('/')}` }).toString();
    return { uri: address(way), within: address(root) };
}

function refusal(path: string, example: string): string | undefined {
    if (path.trim() === '') return `There is no path between the quotes. Write where the file lies, seen from this file, ${example}.`;
    // eslint-disable-next-line no-control-regex
    if (/[\u0000-\u001F\u007F]/.test(path)) return 'The path holds a character that stands in no file\'s name. Write it anew.';
    if (/^(?:\\\\|\/\/)/.test(path)) return `The path leads to another computer. Copy the file into the programme's folder and name it from here, ${example}.`;
    if (/^[/\\]/.test(path) || /^[a-z]:(?:[\\/]|$)/i.test(path)) return `The path begins at the top of the disk, so it holds on this computer only. Copy the file into the programme's folder and name it from here, ${example}.`;
    if (/^[a-z][a-z\d+.-]*:/i.test(path)) return `This is an address, and nothing is fetched from there. Save the file in the programme's folder and name it from here, ${example}.`;
    if (path.includes('\\')) return `The parts of a path are divided by / and not by \\. Write it ${example}.`;
    if (/%[\da-f]{2}/i.test(path)) return 'The path is written as in an address (% and two figures). Write the names of folders and file as they are.';
    return undefined;
}

/** The widest of the open folders that the file lies in; a file of its own has only its folder. */
function rootOf(from: URI, folders: readonly string[]): string[] | undefined {
    const own = segmentsOf(from.path);
    return folders.map(folder => URI.parse(folder)).filter(({ scheme, authority }) => scheme === from.scheme && authority === from.authority)
        .map(({ path }) => segmentsOf(path)).filter(root => root.length < own.length && root.every((segment, index) => segment === own[index]))
        .sort((a, b) => a.length - b.length)[0];
}

function segmentsOf(path: string): string[] {
    return path.split('/').filter(segment => segment !== '' && segment !== '.');
}
