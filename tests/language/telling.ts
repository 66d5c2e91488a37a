/** All that a person gets of a problem, as lines to compare: what is marked and said, where it leads, and what each mend does to the text. */
import type { Fix, Problem } from '@haversack/language/checks/check';
import type { Range } from '@haversack/language/sheets/sheet';
import { mend, nameOf, problemsIn, readFixture, type Files } from './fixture.js';

/** The problems of one code, each as `toldIn` has it. */
export async function toldOf(code: string, text: string, find: (files: Files) => Promise<Problem[]> = problemsIn): Promise<string> {
    const { files } = readFixture(text);
    return (await find(files)).filter(problem => problem.code === code).map(problem => toldIn(files, problem)).join('\n');
}

/**
 * `'marked text': message`, with `faded` where it shows as unused; below it `see 'text': message` for each place it leads to; `mend: title` for each mend, `mend*:`
 * for the one that is most likely meant, and the lines that go and come, each block of them behind the line above it.
 */
function toldIn(files: Files, { uri, at, message, unused, related = [], fixes = [] }: Problem): string {
    return [
        `${unused ? 'faded ' : ''}${marked(files, uri, at)}: ${message}`,
        ...related.map(({ message: says, place }) => `  see ${marked(files, place.uri, place.range)}: ${says}`),
        ...fixes.flatMap(fix => [`  mend${fix.preferred ? '*' : ''}: ${fix.title}`, ...changes(files, fix)])
    ].join('\n');
}

function marked(files: Files, uri: string, { start, end }: Range): string {
    const name = nameOf(uri);
    const lines = files[name]!.split('\n');
    const text = start.line === end.line ? lines[start.line]!.slice(start.character, end.character) : `${lines[start.line]!.slice(start.character)} …`;
    return `'${text}' (${Object.keys(files).length > 1 ? `${name} ` : ''}${start.line + 1})`;
}

function changes(files: Files, fix: Fix): string[] {
    const mended = mend(files, fix);
    return Object.keys(mended).flatMap(name => (mended[name] === files[name] ? [] : changedLines((files[name] ?? '').split('\n'), mended[name]!.split('\n'))));
}

/** Lines that both have in common are as many as can be. */
function changedLines(before: readonly string[], after: readonly string[]): string[] {
    const common = Array.from({ length: before.length + 1 }, () => new Array<number>(after.length + 1).fill(0));
    for (let i = before.length - 1; i >= 0; i--) {
        for (let j = after.length - 1; j >= 0; j--) common[i]![j] = before[i] === after[j] ? common[i + 1]![j + 1]! + 1 : Math.max(common[i + 1]![j]!, common[i]![j + 1]!);
    }
    const lines: string[] = [];
    let [i, j, inBlock] = [0, 0, false];
    while (i < before.length || j < after.length) {
        if (i < before.length && j < after.length && before[i] === after[j]) {
            [i, j, inBlock] = [i + 1, j + 1, false];
            continue;
        }
        if (!inBlock) lines.push(`    | ${before[i - 1] ?? ''}`.trimEnd());
        inBlock = true;
        if (i < before.length && (j === after.length || common[i + 1]![j]! >= common[i]![j + 1]!)) lines.push(`    - ${before[i++]}`.trimEnd());
        else lines.push(`    + ${after[j++]}`.trimEnd());
    }
    return lines;
}
