/**
 * The kinds of caution a writer may name, each with the usual caution in our own words. These are reminders for a
 * teaching adult, not a safety assessment: wherever one is shown, its deferral is shown too.
 *
 * Thresholds behind the wording (small-parts.ts and caution-ages.ts compute with them): small parts 16 CFR 1501.4, small balls 16 CFR 1500.18(a)(17), balloons and marbles 16 CFR
 * 1500.19, magnets 16 CFR 1262, button cells 16 CFR 1263. Sharp, hot, glass, allergen and chemical: common practice, no source.
 */
export interface CautionKind {
    kind: string;
    title: string;
    /** The usual caution, one or two sentences. */
    text: string;
    /** Who decides before we do. */
    deferral: string;
}

/** Stands below every list of cautions. */
export const deferral = 'Local rules, product labels and qualified advice come first.';

const caution = (kind: string, title: string, text: string): CautionKind => ({ kind, title, text, deferral });

export const cautionKinds: readonly CautionKind[] = [
    caution('small-parts', 'Small parts',
        'Choking hazard: keep small pieces away from children under three and from anyone who still puts things in the mouth. Count them out and count them back.'),
    caution('small-ball', 'Small ball',
        'Choking hazard: a small ball or marble can block the airway of a young child. Keep it away from children under three, and pick up every one that rolls.'),
    caution('magnet', 'Magnets',
        'Loose strong magnets must never be swallowed: two can pinch the gut and do grave harm. Count them out and back, and if one may have been swallowed seek medical help at once.'),
    caution('button-cell', 'Button cell',
        'A swallowed button or coin cell burns inside within hours. Keep the compartment screwed shut and spare cells locked away, and if one may have been swallowed seek medical help at once.'),
    caution('balloon', 'Balloons',
        'Choking hazard: children under eight can choke on a balloon that is not blown up or on its pieces. An adult blows balloons up, and broken pieces are thrown away at once. Some people are allergic to latex.'),
    caution('sharp', 'Sharp',
        'Sharp edge or point: show how to hold, carry and hand it over, stay near while it is in use, and put it away out of reach.'),
    caution('hot', 'Hot',
        'Can burn: an adult handles what is hot, and children stand back until it has cooled.'),
    caution('glass', 'Glass',
        'Breaks into sharp pieces: use it on a firm table, and an adult sweeps up broken glass, never bare hands.'),
    caution('allergen', 'Allergen',
        'Some people react to this: ask every family before the lesson, keep it off shared tables where anyone is allergic, and wash hands afterwards.'),
    caution('chemical', 'Chemical',
        'Read the label before use: keep it off skin and out of eyes and mouths, air the room, and store it in its own container out of reach.')
];

const byKind: ReadonlyMap<string, CautionKind> = new Map(cautionKinds.map(c => [c.kind, c]));

export function cautionKind(kind: string): CautionKind | undefined {
    return byKind.get(kind);
}

/** Before the usual caution of a thing that only a gauge can tell small enough or not. */
export const gaugeFirst = 'By its size it may fit the small-parts cylinder: check with a real gauge, and until then take care.';

/**
 * Before the usual caution of magnets of a size that can be swallowed. How strong one is, nobody has measured, and magnets made for classrooms are outside the limits of 16 CFR 1262:
 * so the size alone is told, whatever may be sold.
 */
export const swallowedMagnets = { fits: 'Small enough to swallow.', 'check with a real gauge': 'Perhaps small enough to swallow: check with a real gauge.' } as const;
