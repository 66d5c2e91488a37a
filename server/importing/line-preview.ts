import { textEditsFor } from '@haversack/language/checks/apply-edits';
import type { Edit } from '@haversack/language/checks/check';

const context = 2;

/** A run of lines before that others take the place of, from `first` up to but not including `next`; equal where lines are only added. */
interface Hunk {
    first: number;
    next: number;
    lines: string[];
}

/** The changed places of a file in the form of a unified diff, with a few lines around each. The edits say where to look, so nothing is searched. */
export function changedLines(before: string, after: string, edits: readonly Edit[]): string[] {
    const old = linesOf(before);
    const now = linesOf(after);
    const hunks = hunksOf(old, now, edits, before);
    const shown: string[] = [];
    let shift = 0;
    for (let at = 0; at < hunks.length;) {
        let to = at + 1;
        while (to < hunks.length && hunks[to]!.first - hunks[to - 1]!.next <= 2 * context) to++;
        const group = hunks.slice(at, to);
        const first = Math.max(0, group[0]!.first - context);
        const next = Math.min(old.length, group[group.length - 1]!.next + context);
        const grown = group.reduce((sum, { first: from, next: until, lines }) => sum + lines.length - (until - from), 0);
        shown.push(`@@ -${old.length === 0 ? 0 : first + 1},${next - first} +${first + shift + 1},${next - first + grown} @@`);
        let line = first;
        for (const { first: from, next: until, lines } of group) {
            shown.push(...old.slice(line, from).map(text => ` ${text}`), ...old.slice(from, until).map(text => `-${text}`), ...lines.map(text => `+${text}`));
            line = until;
        }
        shown.push(...old.slice(line, next).map(text => ` ${text}`));
        shift += grown;
        at = to;
    }
    return shown;
}

/** The line that ends a file is no line of its own. */
function linesOf(text: string): string[] {
    const lines = text.split(/\r\n|\r|\n/);
    if (lines[lines.length - 1] === '') lines.pop();
    return lines;
}

function hunksOf(old: readonly string[], now: readonly string[], edits: readonly Edit[], before: string): Hunk[] {
    const touched = textEditsFor(before, edits).map(({ range: { start, end }, newText }) => ({
        first: start.line, next: start.line === end.line && start.character === 0 && end.character === 0 && /[\r\n]$/.test(newText) ? start.line : end.line + 1,
        grows: newText.split(/\r\n|\r|\n/).length - 1 - (end.line - start.line)
    })).sort((a, b) => a.first - b.first || a.next - b.next);
    const merged: { first: number; next: number; grows: number }[] = [];
    for (const { first, next, grows } of touched) {
        const last = merged[merged.length - 1];
        if (last && first <= last.next - (last.first === last.next ? 0 : 1)) {
            last.next = Math.max(last.next, next);
            last.grows += grows;
        } else merged.push({ first, next, grows });
    }
    let shift = 0;
    return merged.map(({ first, next, grows }) => {
        let [from, until, from2, until2] = [Math.min(first, old.length), Math.min(next, old.length), first + shift, next + shift + grows];
        shift += grows;
        from2 = Math.min(from2, now.length);
        until2 = Math.min(until2, now.length);
        // Lines at the edges that stay as they are belong to neither side.
        while (from < until && from2 < until2 && old[from] === now[from2]) { from++; from2++; }
        while (from < until && from2 < until2 && old[until - 1] === now[until2 - 1]) { until--; until2--; }
        return { first: from, next: until, lines: now.slice(from2, until2) };
    });
}
