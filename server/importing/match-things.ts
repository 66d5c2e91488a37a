import { thingNamed, type Programme } from '@haversack/language/sheets/programme';
import type { ThingSheet } from '@haversack/language/sheets/sheet';
import type { InventoryRow, SkippedRow } from './inventory-rows.js';
import { freeName, nameFromTitle } from './names.js';
import { titleKey } from './safe-text.js';

/** A thing of the programme, or one to be, with the rows that are about it: the first counts. */
export interface MatchedThing {
    name: string;
    /** Absent for a new one. */
    thing?: ThingSheet;
    by?: 'name' | 'title';
    rows: InventoryRow[];
}

/** Tells for every row which thing it is about: by its name, else by its title, else by the name that its title gives. */
export function matchThings(rows: readonly InventoryRow[], programme: Programme): { things: MatchedThing[]; skipped: SkippedRow[] } {
    const byTitle = thingsByTitle(programme);
    const skipped: SkippedRow[] = [];
    const matched = new Map<InventoryRow, MatchedThing>();
    const byName = new Map<string, MatchedThing>();
    const take = (row: InventoryRow, name: string, more: Pick<MatchedThing, 'thing' | 'by'>): void => {
        const there = byName.get(name);
        const match = there ?? { name, ...more, rows: [] };
        match.rows.push(row);
        byName.set(name, match);
        matched.set(row, match);
    };
    const left: InventoryRow[] = [];
    for (const row of rows) {
        const named = row.name === undefined ? undefined : thingNamed(programme, row.name);
        const titled = row.title === '' ? [] : byTitle.get(titleKey(row.title)) ?? [];
        if (named) take(row, named.name, { thing: named, by: 'name' });
        else if (titled.length === 1) take(row, titled[0]!.name, { thing: titled[0], by: 'title' });
        else if (titled.length > 1) skipped.push({ row: row.row, title: row.title, why: `${titled.map(({ name }) => `'${name}'`).join(' and ')} have this title: give one of them another, or add a column with names` });
        else left.push(row);
    }
    // Rows with names of their own come first, so that one without is the same thing as one of its title, wherever it stands.
    const fresh = new Map<string, string>();
    const tried = new Map<string, number>();
    for (const row of [...left.filter(({ name }) => name !== undefined), ...left.filter(({ name }) => name === undefined)]) {
        const wanted = row.name ?? nameFromTitle(row.title);
        const byItsTitle = `title ${titleKey(row.title)}`;
        const before = fresh.get(row.name === undefined ? byItsTitle : `name ${row.name}`);
        const existing = thingNamed(programme, wanted);
        let name = before;
        if (name !== undefined) take(row, name, {});
        else if (programme.unreadable.has(wanted) && !existing) skipped.push({ row: row.row, title: row.title, why: `'${wanted}' stands in a line of the programme that cannot be read: mend that first` });
        else if (existing && !byName.has(wanted)) take(row, name = wanted, { thing: existing, by: 'title' });
        else take(row, name = freeName(wanted, one => byName.has(one) || thingNamed(programme, one) !== undefined || programme.unreadable.has(one), tried), {});
        if (name === undefined) continue;
        if (row.name !== undefined) fresh.set(`name ${row.name}`, name);
        if (row.title !== '' && !fresh.has(byItsTitle)) fresh.set(byItsTitle, name);
    }
    return { things: [...new Set(rows.flatMap(row => matched.get(row) ?? []))], skipped };
}

function thingsByTitle(programme: Programme): Map<string, ThingSheet[]> {
    const things = new Map<string, ThingSheet[]>();
    const names = new Set([...programme.materials.keys(), ...programme.prints.keys(), ...programme.books.keys()]);
    for (const name of names) {
        const thing = thingNamed(programme, name)!;
        const key = titleKey(thing.title);
        things.set(key, [...(things.get(key) ?? []), thing]);
    }
    return things;
}
