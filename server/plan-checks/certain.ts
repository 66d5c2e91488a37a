import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import { nearest } from '@haversack/language/lexer/nearest';
import { thingNamed } from '@haversack/language/sheets/programme';
import type { ClassSheet } from '@haversack/language/sheets/sheet';

/**
 * True when what the classes of a cupboard have and need of a thing is known for sure. Not where a line about it could not be read, or names
 * something that is not there: that has a message of its own, and what follows from it would be a second one.
 */
export function isCertain(name: string, cupboard: readonly string[], view: ProgrammeView): boolean {
    const { programme } = view;
    const thing = thingNamed(programme, name);
    if (!thing || view.isBroken(thing) || view.isDoubtful('thing', name)) return false;
    return cupboard.flatMap(member => programme.classes.get(member) ?? []).every(group => isKnown(name, group, view));
}

function isKnown(name: string, group: ClassSheet, view: ProgrammeView): boolean {
    const { programme } = view;
    const unknown = [...group.onHand, ...group.onOrder].filter(held => !thingNamed(programme, held.thing.name));
    if (view.isBroken(group) || unknown.some(held => name.startsWith(held.thing.name) || nearest(held.thing.name, [name]) !== undefined)) return false;
    const course = group.teaches && programme.courses.get(group.teaches.name);
    return [...group.kits, ...course?.uses ?? []].every(({ kit }) => {
        const sheet = programme.kits.get(kit.name);
        return sheet !== undefined && !view.isBroken(sheet);
    });
}
