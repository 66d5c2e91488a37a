import type { CourseSheet, LessonSheet, Mention, Range } from '../sheets/sheet.js';
import type { Edit, Fix } from './check.js';

/** Building blocks of quick fixes. */

export function replace(uri: string, at: Range, text: string): Edit {
    return { uri, replace: at, text };
}

export function insertAfter(uri: string, at: Range, text: string): Edit {
    return { uri, replace: { start: at.end, end: at.end }, text };
}

export function changeTo(uri: string, at: Range, text: string, preferred = true): Fix {
    return { title: `Change to '${text}'`, edits: [replace(uri, at, text)], preferred };
}

/** Takes the lines of a range away. */
export function removeLinesOf(uri: string, at: Range): Edit {
    return { uri, removeLines: [at.start.line, at.end.line] };
}

/** Takes one name out of lists such as `follows a, b`; a line that names nothing else goes as a whole. */
export function removeFromList(uri: string, list: readonly Mention[], mention: Mention): Edit {
    const line = list.filter(({ at }) => at.start.line === mention.at.start.line);
    const index = line.indexOf(mention);
    const before = line[index - 1];
    const after = line[index + 1];
    if (before) return replace(uri, { start: before.at.end, end: mention.at.end }, '');
    if (after) return replace(uri, { start: mention.at.start, end: after.at.start }, '');
    return removeLinesOf(uri, mention.at);
}

/** A line in a block whose header ends on `head`: after the last of its lines that stand there already. */
export function lineIn(uri: string, head: number, siblings: readonly Range[], line: string): Edit {
    const last = lastOf(siblings);
    if (last) return { uri, afterLine: last.end.line, like: last.start.line, deeper: 0, lines: [line] };
    return { uri, afterLine: head, like: head, deeper: 1, lines: [line] };
}

export function lastOf(ranges: readonly Range[]): Range | undefined {
    return ranges.reduce<Range | undefined>((last, range) => (!last || range.start.line >= last.start.line ? range : last), undefined);
}

/** Lines in front of the parts of a lesson: at the end of what its head says. */
export function inLessonHead(lesson: LessonSheet, lines: string[]): Edit {
    const firstPart = lesson.parts.reduce((first, part) => Math.min(first, part.whole.start.line), Number.POSITIVE_INFINITY);
    const said = [
        ...lesson.steps.map(({ at }) => at), ...lesson.needs.map(({ at }) => at), ...lesson.cautions.map(({ at }) => at),
        ...[...lesson.follows, ...lesson.introduces, ...lesson.practises, ...lesson.checks, ...lesson.notNeeded, ...lesson.words].map(({ at }) => at)
    ].filter(({ end }) => end.line < firstPart);
    const head = lesson.at.start.line;
    const until = Math.min(firstPart - 1, lesson.whole.end.line);
    return { uri: lesson.uri, afterLine: lastOf(said)?.end.line ?? head, like: head, deeper: 1, lines, ...(lines.length > 1 && { until }) };
}

const objectiveWords = { introduces: 'introduces', practises: 'practises', checks: 'checks' } as const;

/** Names an objective in a lesson as introduced or checked. */
export function nameObjective(lesson: LessonSheet, does: keyof typeof objectiveWords, objective: string): Edit {
    const same = lastOf(lesson[does].map(({ at }) => at));
    if (same) return insertAfter(lesson.uri, same, `, ${objective}`);
    const line = `${objectiveWords[does]} ${objective}`;
    const others = [...lesson.introduces, ...lesson.practises, ...lesson.checks].map(({ at }) => at);
    if (others.length === 0) return inLessonHead(lesson, ['objectives', `  ${line}`]);
    return lineIn(lesson.uri, lesson.at.start.line, others, line);
}

/** Puts one line of a course in front of another. */
export function teachBefore(course: CourseSheet, moved: Mention, before: Mention): Fix {
    return {
        title: `Teach '${moved.name}' before '${before.name}'`,
        edits: [
            removeLinesOf(course.uri, moved.at),
            { uri: course.uri, afterLine: before.at.start.line - 1, like: before.at.start.line, deeper: 0, lines: [moved.name] }
        ]
    };
}
