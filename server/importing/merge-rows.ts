import { written, type Quantity } from './quantities.js';
import type { InventoryRow } from './inventory-rows.js';

/** What all rows of one thing say together. */
export interface WantedThing extends Omit<InventoryRow, 'pack'> {
    packs: NonNullable<InventoryRow['pack']>[];
    /** What each row after the first came to, by its number. */
    others: { row: InventoryRow; remarks: string[]; lost: boolean }[];
}

const facts: [keyof InventoryRow, string][] = [
    ['use', 'use'], ['lead', 'days until it arrives'], ['keeps', 'how long it keeps'], ['source', 'where it comes from'], ['onHand', 'on hand'], ['safetyStock', 'safety stock'], ['spare', 'spare']
];

/** A thing may stand in several rows, one for each pack it comes in. Of what two rows say differently the first counts, and that is told. */
export function mergeRows([first, ...rest]: readonly [InventoryRow, ...InventoryRow[]]): WantedThing {
    const whole = { ...first };
    const packs = new Map<string, NonNullable<InventoryRow['pack']>>();
    if (first.pack) packs.set(sizeOf(first.pack.amount), { ...first.pack });
    const notes = new Set(first.notes);
    const others = rest.map(row => {
        const remarks = [`the same thing as row ${first.row}`];
        let lost = row.lost;
        for (const [fact, words] of facts) {
            const [before, now] = [said(whole[fact]), said(row[fact])];
            if (now === undefined || now === before) continue;
            if (before === undefined) Object.assign(whole, { [fact]: row[fact] });
            else {
                remarks.push(`${words}: '${now}' is left out, for '${before}' stands in a row above`);
                lost = true;
            }
        }
        for (const note of row.notes) notes.add(note);
        if (row.pack) {
            const { pack } = row;
            const same = packs.get(sizeOf(pack.amount));
            if (!same) {
                packs.set(sizeOf(pack.amount), { ...pack });
                remarks.push(`its pack of ${written(pack.amount)} is taken as one more`);
            } else if (pack.cost && !same.cost) same.cost = pack.cost;
            else if (pack.cost && same.cost && (pack.cost.value !== same.cost.value || pack.cost.currency !== same.cost.currency)) {
                remarks.push(`the price ${pack.cost.value} ${pack.cost.currency} is left out, for ${same.cost.value} ${same.cost.currency} stands in a row above`);
                lost = true;
            }
        }
        return { row, remarks: [...remarks, ...row.remarks], lost };
    });
    return { ...whole, notes: [...notes], packs: [...packs.values()], others };
}

/** The same for 500 g and 0.5 kg. */
function sizeOf({ value, unit, word }: Quantity): string {
    return unit ? `${value.mul(unit.factor).toFraction()} ${unit.dimension}` : `${value.toFraction()} ${word ?? ''}`;
}

function said(fact: InventoryRow[keyof InventoryRow] | Quantity): string | undefined {
    if (fact === undefined || typeof fact === 'string') return fact;
    if (typeof fact === 'object' && 'days' in fact) return fact.text;
    return written(fact as Quantity);
}
