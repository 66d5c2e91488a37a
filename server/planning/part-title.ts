import type { Programme } from '@haversack/language/sheets/programme';
import type { PartSheet } from '@haversack/language/sheets/sheet';

/** What people call a part: a game by the title of what is played. */
export function partTitle({ games }: Programme, part: PartSheet): string {
    return part.kind === 'game' ? games.get(part.name)?.title ?? part.title : part.title;
}
