import type { Problem } from '@haversack/language/checks/check';
import type { Range } from '@haversack/language/sheets/sheet';

/** Problems of a file and those of its plan, without what the plan tells better: one cause, one message. */
export function toldOnce(own: readonly Problem[], planned: readonly Problem[]): Problem[] {
    const better = planned.flatMap(({ uri, instead = [] }) => instead.map(one => ({ uri, ...one })));
    if (better.length === 0) return [...own, ...planned];
    return [...own.filter(problem => !better.some(({ uri, code, at }) => code === problem.code && uri === problem.uri && isWithin(problem.at, at))), ...planned];
}

function isWithin(inner: Range, outer: Range): boolean {
    return isNotBefore(inner.start, outer.start) && isNotBefore(outer.end, inner.end);
}

function isNotBefore(one: Range['start'], other: Range['start']): boolean {
    return one.line > other.line || (one.line === other.line && one.character >= other.character);
}
