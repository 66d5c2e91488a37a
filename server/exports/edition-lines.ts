/** What the text, the Markdown and the JSON of compared editions say alike. */
import type { Place } from '@haversack/language/sheets/sheet';
import type { Difference, EditionFigures, ReappliedAdaptation, ReappliedChange } from '../planning/edition-figures.js';

/** What the two sides are called, and the addresses of their folders: places are told as seen from there. */
export interface EditionNames {
    old: { name: string; root: string };
    new: { name: string; root: string };
}

export const editionWords = {
    adaptations: 'Adaptations with the new edition', onlyOld: 'only the old edition has it', assumed: 'Taken for granted', before: 'before', after: 'now', wants: 'the adaptation', newEdition: 'the new edition', rewrite: 'write now'
} as const;

export const outcomeWords: Readonly<Record<ReappliedChange['outcome'], string>> = { clean: 'As before', moved: 'Moved', done: 'No longer needed', conflict: 'Conflict' };

/** "Old: “v1”. New: “v2”. The term is that of “Harbour co-op”, its adaptation “Shorter autumn” counted in." */
export function sidesLine({ class: group }: EditionFigures, { old, new: now }: EditionNames): string {
    return `Old: “${old.name}”. New: “${now.name}”.${group ? ` The term is that of “${group.title}”${group.adapted === undefined ? '' : `, ${group.adapted}`}.` : ''}`;
}

/** "old: weighing.lesson, line 12; new: weighing.lesson, line 14"; empty where it stands nowhere. */
export function placesLine(sides: Pick<Difference, 'old' | 'new'>, names: EditionNames): string {
    return (['old', 'new'] as const).flatMap(side => {
        const place = sides[side];
        return place ? [`${side}: ${addressOf(place, names[side].root)}`] : [];
    }).join('; ');
}

/** "lessons/weighing.lesson, line 12", as seen from the programme's folder. */
function addressOf({ uri, range }: Place, root: string): string {
    const folder = root.endsWith('/') ? root : `${root}/`;
    const path = uri.startsWith(folder) ? uri.slice(folder.length) : uri.slice(uri.lastIndexOf('/') + 1);
    return `${readable(path)}, line ${range.start.line + 1}`;
}

function readable(path: string): string {
    try {
        return decodeURIComponent(path);
    } catch {
        return path;
    }
}

/** Both sides of what is moved or in conflict, line by line. */
export function changeLines({ wants, newEdition, rewritten }: ReappliedChange): string[] {
    return [
        ...(newEdition === undefined ? [] : [`${editionWords.wants}: ${wants}`, `${editionWords.newEdition}: ${newEdition}`]),
        ...(rewritten === undefined ? [] : [`${editionWords.rewrite}: ${rewritten}`])
    ];
}

/** Where all apply as before, the summary says it; else all, so that somebody sees which do. */
export function changesToShow({ changes }: ReappliedAdaptation): readonly ReappliedChange[] {
    return changes.every(({ outcome }) => outcome === 'clean') ? [] : changes;
}

export function outcomeLine({ outcome, line, settled }: ReappliedChange): string {
    return `${settled ? 'Seen for this edition' : outcomeWords[outcome]}: ${line}`;
}
