/** Cautions of one kind told in one line, and in full only the first time: a warning that is read ten times is read no more. */
import type { CautionFigures } from '../planning/figures.js';

export interface CautionGroup {
    /** All of one kind with the same usual advice, each thing once; never empty. */
    cautions: [CautionFigures, ...CautionFigures[]];
    /** The same advice stands further up in this lesson. */
    again: boolean;
    /** What writers added and has not been said yet. */
    added: CautionFigures[];
    /** What was worked out and not declared, where its reasons have not been told yet. */
    worked: CautionFigures[];
    /** What an adaptation has added or changed, where that has not been told yet. */
    changed: CautionFigures[];
}

/** Groups in the order of their first caution. `said` remembers what was told; a lesson begins with an empty one. */
export function groupCautions(cautions: readonly CautionFigures[], said = new Set<string>()): CautionGroup[] {
    const groups = new Map<string, CautionGroup>();
    for (const caution of cautions) {
        const advice = JSON.stringify([caution.kind, caution.text]);
        const group = groups.get(advice);
        const isNew = !said.has(own(caution));
        const added = caution.prose && isNew ? [caution] : [];
        const worked = caution.computed !== undefined && isNew ? [caution] : [];
        const changed = caution.changes && isNew ? [caution] : [];
        if (!group) groups.set(advice, { cautions: [caution], again: said.has(advice), added, worked, changed });
        else {
            if (!group.cautions.some(c => c.thing === caution.thing)) group.cautions.push(caution);
            group.added.push(...added);
            group.worked.push(...worked);
            group.changed.push(...changed);
        }
        said.add(own(caution));
    }
    for (const advice of groups.keys()) said.add(advice);
    return [...groups.values()];
}

/** For the summary of a week: what the ages in the room make serious stands first. */
export function seriousFirst(groups: readonly CautionGroup[]): CautionGroup[] {
    const isSerious = ({ cautions: [first] }: CautionGroup): boolean => first.serious !== undefined;
    return [...groups.filter(isSerious), ...groups.filter(group => !isSerious(group))];
}

function own({ kind, thing, place }: CautionFigures): string {
    return JSON.stringify([kind, thing, place.uri, place.range.start.line]);
}
