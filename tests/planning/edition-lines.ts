/** What a comparison tells, with the lines that it leads to. */
import type { Place } from '@haversack/language/sheets/sheet';
import type { EditionFigures } from '@haversack/server/planning/edition-figures';

/** "says | line of the old text | line of the new text", of one section or of all; nothing where it leads nowhere. */
export function toldWithLines({ sections }: EditionFigures, old: string, now: string, id?: string): string[] {
    const line = (text: string, place: Place | undefined): string => (place ? text.split('\n')[place.range.start.line]?.trim() ?? '?' : '');
    return sections.filter(section => id === undefined || section.id === id).flatMap(({ groups }) => groups).flatMap(({ differences }) => differences)
        .map(one => `${one.says} | ${line(old, one.old)} | ${line(now, one.new)}`);
}
