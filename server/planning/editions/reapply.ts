import type { AdaptationSheet, WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import type { Programme } from '@haversack/language/sheets/programme';
import type { ReappliedAdaptation, ReappliedChange } from '../edition-figures.js';
import { changeLine, wantsOf } from './change-line.js';
import { clashesOf } from './clashes.js';
import { CourseEditions } from './course-editions.js';
import { doneAlready } from './done-already.js';
import { Matched, type EditionMemo } from './matched.js';
import { placeIn } from './plain.js';
import { coursesCompared, type CoursePair } from './scope.js';
import { Touched } from './touched.js';
import { counted, listing } from '@haversack/language/facts/wording';

/**
 * Every adaptation of the new edition, and those that only the old one has, change by change, three-way: what the adaptation wants against what
 * the new edition did to the old one. Pure; never throws.
 */
export function reapply(old: Programme, now: Programme, { course, memo }: { course?: string; memo?: EditionMemo } = {}): ReappliedAdaptation[] {
    const matched = new Matched(old, now, memo);
    return reapplied(matched, coursesCompared(matched, course));
}

export function reapplied(matched: Matched, courses: readonly CoursePair[]): ReappliedAdaptation[] {
    const { old, now } = matched;
    const sides: { side: 'old' | 'new'; adaptation: AdaptationSheet }[] = [
        ...[...now.adaptations.values()].map(adaptation => ({ side: 'new' as const, adaptation })),
        ...[...old.adaptations.values()].filter(({ name }) => !now.adaptations.has(name)).map(adaptation => ({ side: 'old' as const, adaptation }))
    ];
    const known = courses.map(pair => ({ pair, course: new CourseEditions(matched, pair) }));
    return sides.flatMap(({ side, adaptation }) => {
        const one = known.find(({ pair }) => adaptation.of !== undefined && pair[side]?.name === adaptation.of.name);
        return one ? [reapplyOne(one.course, settledBy(matched, one.pair, adaptation, side), adaptation, side)] : [];
    });
}

type Settles = (change: WrittenChange) => boolean;

/**
 * Which changes have been looked at in the light of the new edition: those that say so. Where the course says the same edition on both sides, no
 * line can say so; then it is those that the old side does not have as they are now.
 */
function settledBy({ old }: Matched, { old: before, new: after }: CoursePair, adaptation: AdaptationSheet, side: 'old' | 'new'): Settles {
    const current = after?.edition;
    if (current !== undefined && current !== before?.edition) return change => change.asOf?.edition === current || adaptation.edition === current;
    const former = side === 'new' ? old.adaptations.get(adaptation.name) : undefined;
    const lines = former && new Set(former.changes.map(change => changeLine(change)));
    return change => lines !== undefined && !lines.has(changeLine(change));
}

function reapplyOne(course: CourseEditions, isSettled: Settles, adaptation: AdaptationSheet, side: 'old' | 'new'): ReappliedAdaptation {
    const { name, title, uri, at, edition, changes } = adaptation;
    const outcomes = changes.map(change => reapplyChange(course, isSettled(change), adaptation, change));
    return { name, title, place: placeIn(uri, at), side, edition, summary: summaryOf(outcomes), changes: outcomes };
}

function summaryOf(changes: readonly ReappliedChange[]): string {
    const count = (outcome: ReappliedChange['outcome']): number => changes.filter(change => change.outcome === outcome).length;
    const [clean, moved, conflicts, done] = [count('clean'), count('moved'), count('conflict'), count('done')];
    if (changes.length > 0 && changes.every(({ settled }) => settled)) return 'Written against the new edition already, or looked at again for it.';
    if (clean === changes.length) return clean === 1 ? 'The only change applies as before.' : `All ${clean} changes apply as before.`;
    if (changes.length === 1) return moved === 1 ? 'The only change applies to what has moved.' : done === 1 ? 'The only change is no longer needed.' : 'The only change is in conflict.';
    const told = [clean > 0 && `${clean} ${clean === 1 ? 'applies' : 'apply'} as before`, moved > 0 && `${moved} ${moved === 1 ? 'applies' : 'apply'} to what has moved`, done > 0 && `${done} ${done === 1 ? 'is' : 'are'} no longer needed`, conflicts > 0 && `${conflicts} ${conflicts === 1 ? 'is' : 'are'} in conflict`];
    return `Of ${counted(changes.length, 'change')}, ${listing(told.flatMap(one => one || []))}.`;
}

function reapplyChange(course: CourseEditions, settled: boolean, adaptation: AdaptationSheet, change: WrittenChange): ReappliedChange {
    const place = placeIn(adaptation.uri, change.head);
    const touched = new Touched(course, adaptation, change);
    const line = changeLine(change);
    const base = { line, place, wants: wantsOf(change, touched.titles), settled, former: touched.former, ...touched.places };
    if (settled) return { ...base, outcome: 'clean', renames: [] };
    const done = doneAlready(touched, change);
    if (done !== undefined) return { ...base, outcome: 'done', newEdition: done, renames: [] };
    const clashes = clashesOf(touched, change);
    const rewritten = changeLine(change, mention => touched.called(mention));
    const { renames, elsewhere } = touched;
    const told = clashes.length > 0 ? clashes : elsewhere;
    return {
        ...base,
        outcome: clashes.length > 0 ? 'conflict' : renames.length > 0 || elsewhere.length > 0 ? 'moved' : 'clean',
        newEdition: told.length > 0 ? [...new Set(told)].join('; ') : undefined,
        rewritten: rewritten === line ? undefined : rewritten,
        renames
    };
}
