import type { Problem } from '@haversack/language/checks/check';
import type { Range } from '@haversack/language/sheets/sheet';

/**
 * Problems of an older text at their lines in a newer one: those above the change stay, those below it move with their lines, those
 * in it are left out until somebody looks again. Without mends: what these would change may stand elsewhere by now.
 */
export function carryProblems(problems: readonly Problem[], before: string, now: string): Problem[] {
    if (before === now || problems.length === 0) return problems.map(problem => ({ ...problem, fixes: undefined }));
    const old = before.split('\n');
    const fresh = now.split('\n');
    const most = Math.min(old.length, fresh.length);
    let head = 0;
    while (head < most && old[head] === fresh[head]) head++;
    let tail = 0;
    while (tail < most - head && old[old.length - 1 - tail] === fresh[fresh.length - 1 - tail]) tail++;
    const moved = fresh.length - old.length;
    return problems.flatMap(problem => {
        const { start, end } = problem.at;
        const at = end.line < head ? problem.at : start.line >= old.length - tail ? lower(problem.at, moved) : undefined;
        const instead = at === problem.at ? problem.instead : problem.instead?.map(one => ({ ...one, at: lower(one.at, moved) }));
        return at ? [{ ...problem, at, instead, fixes: undefined }] : [];
    });
}

function lower({ start, end }: Range, lines: number): Range {
    return { start: { ...start, line: start.line + lines }, end: { ...end, line: end.line + lines } };
}
