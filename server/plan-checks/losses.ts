import type { Explained } from '@haversack/language/checks/check';
import { lessonsBrought, lessonsChanged, partsNamed } from '@haversack/language/sheets/adaptation-names';
import type { WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import type { Range } from '@haversack/language/sheets/sheet';
import type { ConsequenceKind } from '../planning/ledger-figures.js';
import { placeOf, type Loss } from './adapted-courses.js';
import { fixesFor } from './consequence-fixes.js';
import type { PlanCheck, PlanFinding } from './plan-check.js';

/** A rule about one kind of loss, told where the change stands that brings it about. */
export function lossCheck(kind: ConsequenceKind, explained: Omit<Explained, 'severity' | 'on'>, related?: (loss: Loss) => PlanFinding['related']): PlanCheck {
    return {
        ...explained, severity: 'warning', on: '2026-09-07',
        *find(view, term) {
            for (const loss of term.adapted.losses(kind)) {
                const { of, made, consequence } = loss;
                const { uri, range } = placeOf(of);
                yield {
                    uri: made?.adaptation.uri ?? uri, at: made ? withoutReason(made.applied.change) : range, message: consequence.says,
                    related: related?.(loss) ?? [], fixes: made ? fixesFor({ ...loss, made }, view.programme, term.adapted) : []
                };
            }
        }
    };
}

/** The first line of a change up to its last name where a reason follows: what is wrong is not the reason. */
function withoutReason(change: WrittenChange): Range {
    if (!change.because) return change.head;
    const names = [...lessonsChanged(change), ...lessonsBrought(change), ...partsNamed(change)].map(({ at }) => at.end);
    const last = names.reduce((end, other) => (other.line === change.head.start.line && other.character > end.character ? other : end), change.head.start);
    return last === change.head.start ? change.head : { start: change.head.start, end: last };
}

/** Where the objective is named in the first lessons that ask for it. */
export function usesOf({ broken: { about, lessons, users = lessons } }: Loss): PlanFinding['related'] {
    return users.slice(0, 3).flatMap(({ sheet }) => {
        const named = [...sheet.practises, ...sheet.checks].find(({ name }) => name === about);
        return named ? [{ message: `“${sheet.title}” asks for it`, place: { uri: named.uri ?? sheet.uri, range: named.at } }] : [];
    });
}

/** Where the first lessons say that they follow it. */
export function followsIn({ broken: { about, lessons, later } }: Loss): PlanFinding['related'] {
    return lessons.slice(0, 3).flatMap(({ sheet }) => {
        const named = sheet.follows.find(({ name }) => name === about || name === later?.name);
        return named ? [{ message: `“${sheet.title}” follows it`, place: { uri: named.uri ?? sheet.uri, range: named.at } }] : [];
    });
}
