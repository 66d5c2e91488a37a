import Fraction from 'fraction.js';
import { unitNamed, type Unit } from '@haversack/language/facts/units';
import type { Amount, Exact, Place, Range, ThingSheet } from '@haversack/language/sheets/sheet';
import { decimalsOf, exactText, readExact } from './exact.js';
import type { Figure, TrailStep } from './figure.js';
import { kitchenParts, readsPlainly } from './rounding.js';

/** What amounts of one thing are counted in. */
export type Measure =
    | { is: 'measured'; unit: Unit }
    | { is: 'counted'; one: string; many: string }
    | { is: 'pieces' };

/**
 * The measure a thing declares; for a material that declares none, that of its packs, then that of `seen`, the first amount
 * met. So a forgotten `measured in g` still gives a brief (a check asks for it).
 */
export function measureOf(thing: ThingSheet, seen?: Amount): Measure {
    if (thing.kind === 'print') return { is: 'counted', one: 'copy', many: 'copies' };
    if (thing.kind === 'book') return { is: 'pieces' };
    const declared = thing.measured && unitNamed(thing.measured.unit);
    if (declared) return { is: 'measured', unit: declared };
    if (thing.counted) return { is: 'counted', one: thing.counted.one, many: thing.counted.many };
    for (const amount of [...thing.packs.map(p => p.amount), ...(seen ? [seen] : [])]) {
        const unit = amount.unit === undefined ? undefined : unitNamed(amount.unit);
        if (unit) return { is: 'measured', unit };
    }
    return { is: 'pieces' };
}

/** The amount as a number of the measure's own unit; undefined where it cannot be had exactly (a mass as a volume). */
export function inMeasure(amount: Amount, measure: Measure): Fraction | undefined {
    const value = readExact(amount.value);
    if (!value || amount.unit === undefined) return value;
    if (measure.is === 'counted') {
        const word = amount.unit.toLowerCase();
        return word === measure.one.toLowerCase() || word === measure.many.toLowerCase() ? value : undefined;
    }
    const unit = unitNamed(amount.unit);
    return measure.is === 'measured' && unit ? convert(value, unit, measure.unit) : undefined;
}

/**
 * The amount of a need in words: as it was written where the number of the measure's own unit would have to be rounded ("1/3 cup", not
 * "78.87 ml"). `times` multiplies it in the unit it was written in, where that is another.
 */
export function writtenAs(amount: Amount | undefined, value: Fraction, measure: Measure): { text: string; times?: (times: Fraction) => string } {
    const written = amount && readExact(amount.value);
    if (!amount || !written || readsPlainly(value, measure)) return { text: amountText(value, measure) };
    const unit = amount.unit === undefined ? undefined : unitNamed(amount.unit);
    const own: Measure | undefined = unit && { is: 'measured', unit };
    const text = own && readsPlainly(written, own) ? amountText(written, own) : [amount.value, amount.unit].filter(Boolean).join(' ');
    const another = own && measure.is === 'measured' && own.unit.symbol !== measure.unit.symbol;
    return { text, times: another ? times => amountText(written.mul(times), own) : undefined };
}

/** Exact within one dimension; undefined across dimensions. */
export function convert(value: Fraction, from: Unit, to: Unit): Fraction | undefined {
    if (from.symbol === to.symbol) return value;
    return from.dimension === to.dimension ? value.mul(from.factor).div(to.factor) : undefined;
}

/** A number of one measure as a number of another of the same thing. */
export function remeasure(value: Fraction, from: Measure, to: Measure): Fraction | undefined {
    if (from.is === 'measured' && to.is === 'measured') return convert(value, from.unit, to.unit);
    return from.is === to.is ? value : undefined;
}

/** Things that cannot be cut to measure are rounded up: pieces, sets, copies, sheets. */
export function comesWhole(measure: Measure): boolean {
    return measure.is !== 'measured' || measure.unit.dimension === 'sheet';
}

/** From this many on, people say it in the larger unit, provided two decimals write it exactly. */
const goesUp: ReadonlyMap<string, { symbol: string; from: number }> = new Map([
    ['g', { symbol: 'kg', from: 1000 }],
    ['ml', { symbol: 'l', from: 1000 }],
    ['mm', { symbol: 'm', from: 1000 }],
    ['cm', { symbol: 'm', from: 1000 }]
]);

/**
 * An amount for people, in the measure's own unit or the next larger one. `said` is what the text says where that is not `value`
 * itself (see rounding.ts); `exact` is always `value`, in the unit of the text.
 */
export function figure(value: Fraction, measure: Measure, trail: TrailStep[] = [], said = value): Figure {
    if (measure.is === 'pieces') return { exact: exactText(value), text: mixedText(value), trail };
    if (measure.is === 'counted') {
        const word = value.gt(1) || value.equals(0) ? measure.many : measure.one;
        return { exact: exactText(value), unit: word, text: `${mixedText(value)} ${word}`, trail };
    }
    const { value: shown, unit } = friendlyUnit(said, measure.unit);
    const word = shown.gt(1) || shown.equals(0) ? unit.plural : unit.symbol;
    const number = unit.parts === 'fraction' ? mixedText(shown) : decimalText(shown);
    return { exact: exactText(convert(value, measure.unit, unit) ?? value), unit: word, text: `${number} ${word}`, trail };
}

export function amountText(value: Fraction, measure: Measure): string {
    return figure(value, measure).text;
}

function friendlyUnit(value: Fraction, unit: Unit): { value: Fraction; unit: Unit } {
    const up = goesUp.get(unit.symbol);
    const larger = up && unitNamed(up.symbol);
    if (up && larger && value.gte(up.from)) {
        const raised = convert(value, unit, larger);
        const decimals = raised && decimalsOf(raised);
        if (raised && decimals !== undefined && decimals <= 2) return { value: raised, unit: larger };
    }
    return { value, unit };
}

/** At most two decimals; a longer number is shown rounded up, so that nobody brings too little. */
function decimalText(value: Fraction): string {
    const decimals = decimalsOf(value);
    return decimals !== undefined && decimals <= 2 ? value.toString(2) : value.ceil(2).toString(2);
}

/** "1 1/2" for parts that a measuring cup or a ruler shows, else decimals. */
function mixedText(value: Fraction): string {
    return kitchenParts.has(value.d) ? value.toFraction(true) : decimalText(value);
}

/** A percentage from 0; undefined where none is written or it cannot be read. */
function share(percent: { percent: Exact } | undefined): Fraction | undefined {
    const value = percent && readExact(percent.percent);
    return value && value.gt(0) ? value.div(100) : undefined;
}

/** The shares of a spare and of a loss, of 1; a loss of all is passed over. */
export function allowances(thing: ThingSheet): { spare?: Fraction; loss?: Fraction } {
    if (thing.kind !== 'material') return {};
    const loss = share(thing.loss);
    return { spare: share(thing.spare), loss: loss?.lt(1) ? loss : undefined };
}

/**
 * What to have ready for a use of `amount`: spares mark up (100 and 10% is 110), a loss divides (100 at 10% is 112 whole ones:
 * so many that 100 are left), then whole things are rounded up. Exact throughout. A loss of all is passed over.
 */
export function spared(amount: Fraction, thing: ThingSheet, measure: Measure): Fraction {
    const { spare, loss } = allowances(thing);
    let value = amount;
    if (spare) value = value.mul(spare.add(1));
    if (loss) value = value.div(new Fraction(1).sub(loss));
    return comesWhole(measure) ? value.ceil() : value;
}

/** The trail of `spared`; empty where it changes nothing. */
export function sparedSteps(amount: Fraction, thing: ThingSheet, measure: Measure): TrailStep[] {
    const { spare, loss } = allowances(thing);
    const steps: TrailStep[] = [];
    let value = amount;
    const text = (v: Fraction): string => amountText(v, measure);
    const place = (at: Range | undefined): Place | undefined => at && { uri: thing.uri, range: at };
    const material = thing.kind === 'material' ? thing : undefined;
    if (spare) {
        const more = value.mul(spare.add(1));
        steps.push({ words: `spare ${material?.spare?.percent}%: ${text(value)} becomes ${text(more)}`, place: place(material?.spare?.at) });
        value = more;
    }
    if (loss) {
        const more = value.div(new Fraction(1).sub(loss));
        steps.push({ words: `loss ${material?.loss?.percent}%: ${text(more)} leave ${text(value)}`, place: place(material?.loss?.at) });
        value = more;
    }
    if (comesWhole(measure) && value.d !== 1n) steps.push({ words: `rounded up to whole things: ${text(value.ceil())}` });
    return steps;
}
