import type { Programme } from '@haversack/language/sheets/programme';
import type { MaterialSheet, ThingSheet } from '@haversack/language/sheets/sheet';
import type { WantedThing } from './merge-rows.js';
import type { Understood } from './cells.js';
import { amountIn, isWordOf, measureOf, numeral, plural, quantityIn, singular, written, type Measure, type Quantity } from './quantities.js';

/** How amounts of a thing are given once the import is made, and the line that says so where it has to be added. */
export interface ThingMeasure {
    measure: Measure;
    line?: string;
}

/** The measure of a thing: what the programme says, else what the rows show. */
export function measureFor(wanted: WantedThing, thing: ThingSheet | undefined, programme: Programme): ThingMeasure {
    const said = thing && measureOf(thing);
    if (thing && (said !== 'pieces' || thing.kind !== 'material' || thing.packs.length > 0 || isUsedInPieces(thing, programme))) return { measure: said ?? 'pieces' };
    const quantities = [...wanted.packs.map(({ amount }) => amount), wanted.onHand, wanted.safetyStock].filter(quantity => quantity !== undefined);
    const unit = quantities.find(quantity => quantity.unit)?.unit;
    if (unit) return { measure: { unit }, line: `measured in ${unit.symbol}` };
    const words = quantities.map(({ word }) => word).find(word => word !== undefined && !isOfTitle(word, wanted.title));
    const word = words ?? quantities.map(({ packs }) => packs).find(packs => packs !== undefined);
    if (word === undefined) return { measure: 'pieces' };
    const one = singular(word);
    const many = one === word ? plural(one) : word;
    return { measure: { one, many }, line: `counted in ${one === many ? one : `${one} / ${many}`}` };
}

/** An amount of a cell as one that the programme can count with, in its own words; or why it cannot. */
export function fitted(quantity: Quantity, measure: Measure, title: string, packs: readonly { amount: Quantity }[] | undefined): Understood<Quantity> {
    if (quantity.packs !== undefined) {
        if (measure !== 'pieces' && 'one' in measure && isWordOf(quantity.packs, measure)) return { value: { ...counted(quantity, measure) } };
        const [pack, ...more] = packs ?? [];
        if (!pack || more.length > 0) return { cannot: `how much is in ${quantity.text === '1' ? 'the' : 'each of'} ${written({ ...quantity, word: quantity.packs })} is not certain` };
        const whole = { ...pack.amount, ...numeral(quantity.value.mul(pack.amount.value)) };
        return { value: whole, remark: `${quantity.text} ${quantity.packs} of ${written(pack.amount)} are ${written(whole)}` };
    }
    const plain = quantity.word !== undefined && isOfTitle(quantity.word, title) ? { ...quantity, word: undefined } : quantity;
    if (measure === 'pieces') return plain.unit || plain.word !== undefined ? { cannot: `it is counted in pieces, and '${written(quantity)}' cannot be` } : { value: plain };
    if ('one' in measure) return quantityIn(plain, measure) ? { value: counted(plain, measure) } : { cannot: `it is counted in ${measure.many}, and '${written(quantity)}' cannot be` };
    if (!plain.unit && plain.word === undefined) return { cannot: `it is measured in ${measure.unit.symbol}: '${quantity.text}' of what?` };
    return quantityIn(plain, measure) ? { value: plain } : { cannot: `it is measured in ${measure.unit.symbol}, and '${written(quantity)}' cannot be` };
}

function counted({ value, text }: Quantity, { one, many }: { one: string; many: string }): Quantity {
    return { value, text, word: value.gt(1) || value.equals(0) ? many : one };
}

/** "60 cubes" of "Gram cubes" are sixty of them. */
function isOfTitle(word: string, title: string): boolean {
    return title.toLowerCase().split(/[^\p{L}\p{N}]+/u).some(part => singular(part) === singular(word));
}

/** True where a lesson, game, kit or class counts the material without a unit: giving it one would change what they say. */
function isUsedInPieces({ name, safetyStock }: MaterialSheet, programme: Programme): boolean {
    const isOne = (thing: { name: string }, amount: { value: string; unit?: string } | undefined): boolean => thing.name === name && amount !== undefined && amountIn(amount, 'pieces') !== undefined;
    if (safetyStock) return true;
    for (const lesson of programme.lessons.values()) {
        for (const { options, amount } of [...lesson.needs, ...lesson.parts.flatMap(part => part.needs)]) if (options.some(({ thing }) => isOne(thing, amount))) return true;
    }
    for (const { needs } of programme.games.values()) for (const { options, amount } of needs) if (options.some(({ thing }) => isOne(thing, amount))) return true;
    for (const { holds } of programme.kits.values()) if (holds.some(({ thing, amount }) => isOne(thing, amount))) return true;
    for (const { onHand, onOrder } of programme.classes.values()) if ([...onHand, ...onOrder].some(({ thing, amount }) => isOne(thing, amount))) return true;
    return false;
}
