/**
 * Every unit the language knows, once: grammar docs, completion, hover, checks and the engine read this table.
 *
 * Factors are exact, to gram, millilitre and millimetre. Source: NIST Special Publication 811 (2008), appendix B, and
 * NIST Handbook 44, appendix C, "General Tables of Units of Measurement": 1 in = 25.4 mm, 1 lb = 453.59237 g (avoirdupois),
 * 1 US gallon = 231 cubic inches = 3.785411784 l; the customary units are whole parts or multiples of these.
 */
export type Dimension = 'mass' | 'volume' | 'length' | 'sheet';

export interface Unit {
    /** The unit as figures show it, and the first of its spellings. */
    symbol: string;
    /** Other spellings a writer may use; all compared in lower case. */
    spellings: readonly string[];
    /** For amounts above one: the symbol itself where the unit is a symbol. */
    plural: string;
    /** In full, for hover and completion. */
    title: string;
    dimension: Dimension;
    /** How many grams, millilitres, millimetres or sheets one of it is: text that fraction.js reads. */
    factor: string;
    /** How people write parts of it: 1.25 kg, but 1 1/4 cups. */
    parts: 'decimal' | 'fraction';
}

const unit = (
    symbol: string, title: string, dimension: Dimension, factor: string, parts: Unit['parts'], spellings: string[] = [], plural = symbol
): Unit => ({ symbol, spellings, plural, title, dimension, factor, parts });

export const units: readonly Unit[] = [
    unit('g', 'gram', 'mass', '1', 'decimal', ['gram', 'grams']),
    unit('kg', 'kilogram', 'mass', '1000', 'decimal', ['kilogram', 'kilograms']),
    unit('oz', 'ounce (avoirdupois)', 'mass', '28.349523125', 'fraction', ['ounce', 'ounces']),
    unit('lb', 'pound (avoirdupois)', 'mass', '453.59237', 'fraction', ['lbs', 'pound', 'pounds']),
    unit('ml', 'millilitre', 'volume', '1', 'decimal', ['millilitre', 'millilitres', 'milliliter', 'milliliters']),
    unit('l', 'litre', 'volume', '1000', 'decimal', ['litre', 'litres', 'liter', 'liters']),
    unit('fl oz', 'US fluid ounce', 'volume', '29.5735295625', 'fraction', ['floz', 'fluid ounce', 'fluid ounces']),
    unit('cup', 'US cup, 8 fluid ounces', 'volume', '236.5882365', 'fraction', ['cups'], 'cups'),
    unit('pint', 'US liquid pint', 'volume', '473.176473', 'fraction', ['pints'], 'pints'),
    unit('quart', 'US liquid quart', 'volume', '946.352946', 'fraction', ['quarts'], 'quarts'),
    unit('gallon', 'US gallon', 'volume', '3785.411784', 'fraction', ['gallons'], 'gallons'),
    unit('mm', 'millimetre', 'length', '1', 'decimal', ['millimetre', 'millimetres', 'millimeter', 'millimeters']),
    unit('cm', 'centimetre', 'length', '10', 'decimal', ['centimetre', 'centimetres', 'centimeter', 'centimeters']),
    unit('m', 'metre', 'length', '1000', 'decimal', ['metre', 'metres', 'meter', 'meters']),
    unit('in', 'inch', 'length', '25.4', 'fraction', ['inch', 'inches']),
    unit('ft', 'foot', 'length', '304.8', 'fraction', ['foot', 'feet']),
    unit('yd', 'yard', 'length', '914.4', 'fraction', ['yard', 'yards']),
    unit('sheet', 'sheet of paper or card', 'sheet', '1', 'fraction', ['sheets'], 'sheets')
];

const bySpelling: ReadonlyMap<string, Unit> = new Map(
    units.flatMap(u => [u.symbol, u.plural, ...u.spellings].map(word => [word, u] as const))
);

/** The unit a word stands for, in any of its spellings, upper or lower case; blanks inside count as one. */
export function unitNamed(word: string): Unit | undefined {
    return bySpelling.get(word.trim().replace(/\s+/g, ' ').toLowerCase());
}
