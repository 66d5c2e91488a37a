import { unitNamed, units } from '../facts/units.js';
import { nearest } from '../lexer/nearest.js';
import type { MaterialSheet, ThingSheet } from '../sheets/sheet.js';
import { amountsIn, measureNamed, type AmountOf, type Measure } from './amounts-in.js';
import { sizeOf } from './exact-numbers.js';
import type { Check, Finding, Fix } from './check.js';
import { changeTo, lineIn, replace } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';

const wordsOfUnits = units.flatMap(({ symbol, plural, spellings }) => [symbol, plural, ...spellings]);
const lengths = units.filter(({ dimension }) => dimension === 'length');

export const unknownUnit: Check = {
    code: 'unknown-unit', severity: 'error', title: 'A unit that is not known',
    explains: 'This is neither a unit of the language nor the word that the material is counted in. The units are g, kg, oz, lb, ml, l, fl oz, cup, pint, quart, gallon, mm, cm, m, in, ft, yd and sheet. A thing that is simply counted needs no unit: write `20 per pair`. A word of its own is declared with the material, as in `counted in set / sets`.',
    wrong: 'material dried-bean\n  consumable\n  measured in gr', right: 'material dried-bean\n  consumable\n  measured in g',
    *find(file, view) {
        for (const material of file.materials) {
            const { measured, size } = material;
            if (measured && !unitNamed(measured.unit)) {
                const guess = nearest(measured.unit, wordsOfUnits);
                yield {
                    message: `'${measured.unit}' is not a unit that amounts can be measured in${guess ? `; did you mean '${guess}'?` : '. Use g, ml, cm, cup, sheet or the like, or leave the line out for things that are counted.'}`,
                    at: measured.at, fixes: guess ? [changeTo(file.uri, measured.at, guess)] : [countInstead(material, measured.unit)]
                };
            }
            if (size && unitNamed(size.unit)?.dimension !== 'length') {
                const guess = nearest(size.unit, lengths.flatMap(({ symbol, spellings }) => [symbol, ...spellings]));
                const at = { start: { line: size.at.end.line, character: size.at.end.character - size.unit.length }, end: size.at.end };
                yield {
                    message: `A size is given in mm, cm, m, in, ft or yd, not in '${size.unit}'${guess ? `; did you mean '${guess}'?` : '.'}`, at,
                    fixes: [changeTo(file.uri, at, guess ?? 'mm', guess !== undefined)]
                };
            }
        }
        for (const { thing, amount } of amountsIn(file, view)) {
            const known = measureNamed(thing.name, view);
            if (!known || amount.unit === undefined || unitNamed(amount.unit) || isOwnWord(amount.unit, known.measure) || view.programme.unreadable.has(amount.unit)) continue;
            const own = typeof known.measure === 'object' && 'one' in known.measure ? known.measure : undefined;
            const near = nearest(amount.unit, own ? [own.one, own.many] : wordsOfUnits);
            const guess = near && own ? (sizeOf(amount.value) > 1 ? own.many : own.one) : near;
            yield {
                message: `'${amount.unit}' is no unit that '${thing.name}' has${guess ? `; did you mean '${guess}'?` : `. ${howItIsGiven(known.measure)}`}`, at: amount.at,
                fixes: guess ? [changeTo(file.uri, amount.at, `${amount.value} ${guess}`)] : [inItsMeasure(amount, known.measure, file.uri)]
            };
        }
    }
};

export const wrongUnit: Check = {
    code: 'wrong-unit', severity: 'error', title: 'A unit that cannot be converted to the material’s',
    explains: 'The amount is given in one kind of measure and the material in another: a mass cannot be turned into a volume, nor pieces into grams. Within one kind any unit will do, such as kg where the material is measured in g. Give the amount in the measure of the material, or change how the material is measured.',
    wrong: 'material dried-bean\n  consumable\n  measured in g\n\nlesson weigh-1\n  materials\n    dried-bean 1 cup per pair',
    right: 'material dried-bean\n  consumable\n  measured in g\n\nlesson weigh-1\n  materials\n    dried-bean 0.2 kg per pair',
    *find(file, view) {
        for (const one of amountsIn(file, view)) {
            const known = measureNamed(one.thing.name, view);
            const finding = known && mismatch(one, known.thing, known.measure, file.uri, view);
            if (finding) yield finding;
        }
    }
};

export const missingUnit: Check = {
    code: 'missing-unit', severity: 'warning', missing: true, title: 'An amount of a measured material without a unit',
    explains: 'The material is measured, so a bare number leaves open what is meant. It is taken as the unit of the material; write the unit to make it certain.',
    wrong: 'material dried-bean\n  consumable\n  measured in g\n\nlesson weigh-1\n  materials\n    dried-bean 150 per pair',
    right: 'material dried-bean\n  consumable\n  measured in g\n\nlesson weigh-1\n  materials\n    dried-bean 150 g per pair',
    *find(file, view) {
        for (const { thing, amount } of amountsIn(file, view)) {
            const measure = amount.unit === undefined ? measureNamed(thing.name, view)?.measure : undefined;
            if (typeof measure !== 'object' || !('unit' in measure) || !measure.said) continue;
            const unit = sizeOf(amount.value) > 1 ? measure.unit.plural : measure.unit.symbol;
            yield {
                message: `'${thing.name}' is measured in ${measure.unit.symbol}: ${amount.value} of what?`, at: amount.at,
                fixes: [{ title: `Write '${amount.value} ${unit}'`, edits: [replace(file.uri, amount.at, `${amount.value} ${unit}`)], preferred: true }]
            };
        }
    }
};

function mismatch({ thing, amount, where }: AmountOf, sheet: ThingSheet, measure: Measure, uri: string, view: ProgrammeView): Finding | undefined {
    const unit = amount.unit === undefined ? undefined : unitNamed(amount.unit);
    if (!unit || isOwnWord(amount.unit!, measure) || view.programme.unreadable.has(amount.unit!)) return undefined;
    const related = sheet.uri === uri && where === 'pack' ? undefined : [{ message: `'${thing.name}' is declared here`, place: { uri: sheet.uri, range: sheet.at } }];
    if (typeof measure === 'object' && 'unit' in measure) {
        if (measure.unit.dimension === unit.dimension) {
            if (measure.said || where !== 'pack') return undefined;
            return {
                message: `'${thing.name}' is sold in ${unit.symbol}; say that it is measured in ${unit.symbol}, so that lessons can ask for it in that unit.`, at: amount.at,
                fixes: [measureIt(sheet as MaterialSheet, unit.symbol)]
            };
        }
        return {
            message: `'${thing.name}' is measured in ${measure.unit.symbol}, and ${amount.value} ${amount.unit} cannot be turned into that. Give the amount in ${measure.unit.symbol} or a unit like it.`,
            at: amount.at, related, fixes: [inItsMeasure(amount, measure, uri)]
        };
    }
    const fixes = [inItsMeasure(amount, measure, uri)];
    if (sheet.kind === 'material' && measure === 'pieces') fixes.push({ ...measureIt(sheet, unit.symbol), preferred: false });
    return { message: `${howItIsGiven(measure, thing.name)} ${amount.value} ${amount.unit} of it cannot be counted.`, at: amount.at, related, fixes };
}

function isOwnWord(word: string, measure: Measure): boolean {
    if (typeof measure !== 'object' || !('one' in measure)) return false;
    return [measure.one, measure.many].some(own => own.toLowerCase() === word.toLowerCase());
}

function howItIsGiven(measure: Measure, name = 'It'): string {
    const who = name === 'It' ? name : `'${name}'`;
    if (measure === 'pieces') return `${who} is counted in pieces, without a unit.`;
    return 'one' in measure ? `${who} is counted in ${measure.many}.` : `${who} is measured in ${measure.unit.symbol}.`;
}

function inItsMeasure({ value, at }: AmountOf['amount'], measure: Measure, uri: string): Fix {
    if (measure === 'pieces') return { title: `Write '${value}' without a unit`, edits: [replace(uri, at, value)], preferred: true };
    const many = sizeOf(value) > 1;
    const word = 'one' in measure ? (many ? measure.many : measure.one) : many ? measure.unit.plural : measure.unit.symbol;
    return { title: `Write '${value} ${word}'`, edits: [replace(uri, at, `${value} ${word}`)], preferred: true };
}

function measureIt(material: MaterialSheet, symbol: string): Fix {
    const line = `measured in ${symbol}`;
    return { title: `Add '${line}' to '${material.name}'`, edits: [lineIn(material.uri, material.at.start.line, [], line)], preferred: true };
}

function countInstead(material: MaterialSheet, word: string): Fix {
    const { start, end } = material.measured!.at;
    const line = { start: { line: start.line, character: start.character - 'measured in '.length }, end };
    return { title: `Write 'counted in ${word}'`, edits: [replace(material.uri, line, `counted in ${word}`)] };
}
