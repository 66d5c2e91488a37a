/**
 * At which ages a kind of caution matters, and who is youngest in a room. The bands are those of rules for makers and sellers of toys; here they
 * only tell when to remind somebody, and say nothing of what is lawful.
 */

/** The one word after `present` that changes anything. */
export const underThrees = 'under-threes';

/**
 * Kinds that are a danger below an age, in years. Small parts, small balls and marbles: 16 CFR 1501.4, 1500.18(a)(17), 1500.19;
 * balloons under eight: 16 CFR 1500.19(b)(4). Magnets and button cells under three: our judgement (common practice, no source), they harm
 * at any age and their own caution always stands in the brief.
 */
export const seriousBelow: Readonly<Record<string, number>> = { 'small-parts': 3, 'small-ball': 3, magnet: 3, 'button-cell': 3, balloon: 8 };

/** Below these ages a size alone is reason enough to remind: the labels of 16 CFR 1500.19(b)(1) and (b)(2) to (b)(3). A room of older children only is not told. */
export const remindBelow = { 'small-parts': 6, 'small-ball': 8 } as const;

export interface Youngest {
    /** Whole years; 0 stands for any age under three. */
    years: number;
    /** "The youngest learners are 5". */
    who: string;
}

/** Undefined where nobody has said how old the children are. Of an age range turned round the lesser end counts. */
export function youngestOf(present: readonly string[], ages: { from: number; to?: number } | undefined): Youngest | undefined {
    if (present.includes(underThrees)) return { years: 0, who: 'Children under three are in the room' };
    const years = ages && Math.min(ages.from, ages.to ?? ages.from);
    return years === undefined || !(years >= 0) ? undefined : { years, who: `The youngest learners are ${years}` };
}

export function isSerious(kind: string, youngest: Youngest | undefined): boolean {
    return youngest !== undefined && Object.hasOwn(seriousBelow, kind) && youngest.years < seriousBelow[kind]!;
}
