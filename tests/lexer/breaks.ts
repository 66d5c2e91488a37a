/** Sixteen ways in which a line goes wrong. Each gives the broken line, or nothing where it does not apply. */
export const breaks: Readonly<Record<string, (line: string) => string | undefined>> = {
    'first letter gone': line => line.replace(/(\s*)\S/, '$1'),
    'letters swapped': line => line.replace(/^(\s*)(\S)(\S)/, '$1$3$2'),
    'colon gone': line => (line.includes(':') ? line.replace(':', '') : undefined),
    'quote gone': line => (line.includes('"') ? line.replace(/"(?=[^"]*$)/, '') : undefined),
    'brace gone': line => (line.includes('}') ? line.replace('}', '') : undefined),
    'two deeper': line => `  ${line}`,
    'two shallower': line => (line.startsWith('  ') ? line.slice(2) : undefined),
    'one deeper': line => ` ${line}`,
    'one shallower': line => (line.startsWith(' ') ? line.slice(1) : undefined),
    'at the edge': line => (/^\s/.test(line) ? line.trimStart() : undefined),
    'junk after': line => `${line} %%% ???`,
    'junk before': line => line.replace(/^(\s*)/, '$1@@ '),
    'cut in half': line => line.slice(0, Math.ceil((line.length + line.search(/\S/)) / 2)),
    'last word gone': line => line.replace(/\s+\S+\s*$/, ''),
    'capitals': line => line.toUpperCase(),
    'line gone': () => ''
};

export interface Broken {
    file: string;
    /** From 0. */
    line: number;
    /** Index of the first line after everything that stood under the line. */
    end: number;
    how: string;
    was: string;
    is: string;
    text: string;
}

/** Every line of a file that says something, broken in every way. */
export function* brokenVersions(file: string, text: string): Iterable<Broken> {
    const lines = text.split('\n');
    for (const [index, was] of lines.entries()) {
        if (was.trim() === '' || was.trim().startsWith('#')) continue;
        const end = endOfBlock(lines, index);
        for (const [how, breakIt] of Object.entries(breaks)) {
            const is = breakIt(was);
            if (is === undefined || is === was) continue;
            yield { file, line: index, end, how, was, is, text: [...lines.slice(0, index), is, ...lines.slice(index + 1)].join('\n') };
        }
    }
}

const indentOf = (line: string): number => line.search(/\S/);

export function endOfBlock(lines: readonly string[], index: number): number {
    let end = index + 1;
    while (end < lines.length && (lines[end]!.trim() === '' || indentOf(lines[end]!) > indentOf(lines[index]!))) end++;
    return end;
}

/** The lines that a line stands under, nearest first. */
export function linesAbove(lines: readonly string[], index: number): number[] {
    const above: number[] = [];
    let indent = indentOf(lines[index]!);
    for (let at = index - 1; at >= 0 && indent > 0; at--) {
        const line = lines[at]!;
        if (line.trim() === '' || line.trim().startsWith('#') || indentOf(line) >= indent) continue;
        above.push(at);
        indent = indentOf(line);
    }
    return above;
}
