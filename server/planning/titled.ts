import type { Declared, Place } from '@haversack/language/sheets/sheet';

/** A declaration as figures name it. */
export interface Titled {
    name: string;
    title: string;
    place: Place;
}

export function titled({ name, title, uri, at }: Declared): Titled {
    return { name, title, place: { uri, range: at } };
}
