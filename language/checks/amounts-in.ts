import { unitNamed, type Unit } from '../facts/units.js';
import { thingNamed } from '../sheets/programme.js';
import type { Amount, FileSheet, LessonSheet, Mention, Need, ThingSheet } from '../sheets/sheet.js';
import type { ProgrammeView } from './programme-view.js';

/** An amount of a thing, wherever one can stand. */
export interface AmountOf {
    thing: Mention;
    amount: Amount;
    where: 'need' | 'kit' | 'on hand' | 'on order' | 'pack' | 'safety stock';
}

/** The needs of lessons and games in a file, with the lesson where there is one. */
export function needsIn(file: FileSheet, view: ProgrammeView): { need: Need; lesson?: LessonSheet }[] {
    return [
        ...file.lessons.flatMap(lesson => view.factsOf(lesson).needs.map(need => ({ need, lesson }))),
        ...file.games.flatMap(game => game.needs.map(need => ({ need })))
    ];
}

export function* amountsIn(file: FileSheet, view: ProgrammeView): Iterable<AmountOf> {
    for (const { need } of needsIn(file, view)) {
        const thing = need.options[0]?.thing;
        if (thing && need.amount) yield { thing, amount: need.amount, where: 'need' };
    }
    for (const kit of file.kits) for (const { thing, amount } of kit.holds) if (amount) yield { thing, amount, where: 'kit' };
    for (const group of file.classes) {
        for (const { thing, amount } of group.onHand) if (amount) yield { thing, amount, where: 'on hand' };
        for (const { thing, amount } of group.onOrder) if (amount) yield { thing, amount, where: 'on order' };
    }
    for (const material of file.materials) {
        for (const { amount } of material.packs) yield { thing: material, amount, where: 'pack' };
        if (material.safetyStock) yield { thing: material, amount: material.safetyStock, where: 'safety stock' };
    }
}

/** What the amounts of a thing are given in: a unit, its own words for one and many, or plain pieces. */
export type Measure = { unit: Unit; said: boolean } | { one: string; many: string } | 'pieces';

/** Absent where a line of the thing could not be read, or its unit is unknown: then nothing is certain. */
export function measureOf(thing: ThingSheet, view: ProgrammeView): Measure | undefined {
    if (view.isBroken(thing)) return undefined;
    if (thing.kind === 'print') return { one: 'copy', many: 'copies' };
    if (thing.kind === 'book') return 'pieces';
    if (thing.measured) {
        const unit = unitNamed(thing.measured.unit);
        return unit && { unit, said: true };
    }
    if (thing.counted) return { one: thing.counted.one, many: thing.counted.many };
    for (const { amount } of thing.packs) {
        const unit = amount.unit === undefined ? undefined : unitNamed(amount.unit);
        if (unit) return { unit, said: false };
    }
    return 'pieces';
}

export function measureNamed(name: string, view: ProgrammeView): { thing: ThingSheet; measure: Measure } | undefined {
    const thing = thingNamed(view.programme, name);
    const measure = thing && measureOf(thing, view);
    return thing && measure && { thing, measure };
}
