/** Objectives, frameworks and lessons for tests of coverage, beside those of sheets.ts. */
import type { Attachment, FrameworkItem } from '@haversack/language/attachments/attachment';
import { attachmentKey, gatherProgramme, type Programme } from '@haversack/language/sheets/programme';
import type { FrameworkSheet, LessonSheet, ObjectiveSheet } from '@haversack/language/sheets/sheet';
import type { Meeting, ScheduleFigures, TaughtFigures } from '../../server/planning/schedule-figures.js';
import { file, lesson, mention, range, uri } from './sheets.js';

export const objective = (name: string, more: Partial<ObjectiveSheet> = {}): ObjectiveSheet =>
    ({ kind: 'objective', name, title: name.toUpperCase(), uri, at: range(), whole: range(), buildsOn: [], alignsTo: [], ...more });

/** `aligned('f', '1', '2')`: to two codes of the framework f. */
export const aligned = (framework: string, ...codes: string[]): Pick<ObjectiveSheet, 'alignsTo'> =>
    ({ alignsTo: codes.map(code => ({ framework: mention(framework), code, at: range() })) });

export const framework = (name: string, path: string | undefined = `${name}.json`): FrameworkSheet =>
    ({ kind: 'framework', name, title: name.toUpperCase(), uri, at: range(), whole: range(), from: path === '' ? undefined : { path, at: range() } });

/** Items by "code" or ["code", ...items under it]. */
export type Outline = string | [string, ...Outline[]];
export function items(...outline: Outline[]): FrameworkItem[] {
    return outline.map(entry => (typeof entry === 'string'
        ? { identifier: `id-${entry}`, code: entry, statement: `Statement ${entry}`, children: [] }
        : { identifier: `id-${entry[0]}`, code: entry[0], statement: `Statement ${entry[0]}`, children: items(...entry.slice(1) as Outline[]) }));
}
export const frameworkFile = (...outline: Outline[]): Attachment => ({ state: 'framework', framework: { title: 'The document', items: items(...outline), remarks: [] } });

/** `working('l1', '+a ~b ?c')`: introduces a, practises b, checks c. */
export function working(name: string, does = '', more: Partial<LessonSheet> = {}): LessonSheet {
    const of = (sign: string) => does.split(' ').filter(word => word.startsWith(sign)).map(word => mention(word.slice(1)));
    return lesson(name, [], [], { introduces: of('+'), practises: of('~'), checks: of('?'), ...more });
}

type Declaration = Parameters<typeof file>[number] | ObjectiveSheet | FrameworkSheet;

/** Attachments by the path that a framework names. */
export function covered(declarations: Declaration[], attachments: Record<string, Attachment> = {}): Programme {
    const plain = file(...declarations.filter((d): d is Parameters<typeof file>[number] => d.kind !== 'objective' && d.kind !== 'framework'));
    const sheet = { ...plain, objectives: declarations.filter(d => d.kind === 'objective'), frameworks: declarations.filter(d => d.kind === 'framework') };
    return gatherProgramme([sheet], new Map(Object.entries(attachments).map(([path, attachment]) => [attachmentKey(uri, path), attachment])));
}

/** A schedule with the lessons of each meeting: "a b" for two, "" for a free day, "a/1" and "a/2" for pieces, "a!" for a lesson that is taught again. */
export function scheduled(course: string | undefined, ...meetings: string[]): ScheduleFigures {
    const day = (text: string, i: number): Meeting => {
        const taught = text.split(' ').filter(Boolean).map((word): TaughtFigures => {
            const [, name = word, piece, again] = /^([\w-]+)(?:\/(\d))?(!)?$/.exec(word) ?? [];
            return {
                lesson: name, title: name, place: { uri, range: range() }, minutes: 10, ...(piece && { piece: { number: Number(piece), of: 2 } }), ...(again && { why: 'repeat' as const })
            };
        });
        return { label: `Day ${i + 1}`, lessons: [...new Set(taught.map(t => t.lesson))], taught, minutes: 0 };
    };
    const days = meetings.map(day);
    const weeks = Array.from({ length: Math.ceil(days.length / 4) }, (_, w) => ({ number: w + 1, meetings: days.slice(w * 4, w * 4 + 4), remarks: [] }));
    return { course, class: undefined, weeks, daysOff: [], unplaced: [], proposals: [], problems: [], assumptions: [], trail: [] };
}
