/** A picture as plain data, its values checked: what the drawing, its words and its hover are made from. */
export type Picture =
    /** 0 to 20, on one frame of ten or two. */
    | { kind: 'ten-frame'; count: number }
    /** Ticks every `by`; marked values lie on the line. */
    | { kind: 'number-line'; from: number; to: number; by: number; marks: number[] }
    /** `count` of `of` beads pushed aside, in fives and tens. */
    | { kind: 'bead-string'; count: number; of: number }
    | { kind: 'place-cards'; value: number }
    | { kind: 'base-ten'; value: number }
    | { kind: 'tally'; count: number }
    /** Each side is a sum of parts; it hangs level where the sums are equal. */
    | { kind: 'balance'; left: number[]; right: number[] }
    /** Bars of the same length, one below the other. */
    | { kind: 'fraction-bar'; fractions: { part: number; of: number }[] }
    | { kind: 'clock'; hour: number; minute: number }
    | { kind: 'array'; rows: number; columns: number };
