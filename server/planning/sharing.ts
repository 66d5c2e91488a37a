import type { Programme } from '@haversack/language/sheets/programme';
import type { ClassSheet } from '@haversack/language/sheets/sheet';

/** All classes joined to one by `shares cupboard with`, either way round, it itself left out; in the order of the files. */
export function sharingWith(programme: Programme, sheet: ClassSheet | undefined): ClassSheet[] {
    if (!sheet) return [];
    const classes = [...programme.classes.values()];
    if (classes.every(({ sharesWith }) => sharesWith.length === 0)) return [];
    const joined = new Set([sheet.name]);
    for (let size = 0; size < joined.size;) {
        size = joined.size;
        for (const { name, sharesWith } of classes) {
            const names = sharesWith.map(({ name: other }) => other).filter(other => programme.classes.has(other));
            if (!joined.has(name) && !names.some(other => joined.has(other))) continue;
            if (names.length > 0) joined.add(name);
            if (joined.has(name)) names.forEach(other => joined.add(other));
        }
    }
    return classes.filter(({ name }) => name !== sheet.name && joined.has(name));
}
