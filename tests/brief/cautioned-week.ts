/** The fixture's week with younger children in the room: a caution that is serious there, one that was worked out from a size, and a magnet that can be swallowed. */
import type { CautionFigures, WeekBrief } from '@haversack/server/planning/figures';
import { week } from './fixture.js';
import { place, prose } from './fixture-tools.js';

const serious = 'Children under three are in the room: keep all of it out of their reach.';
const smallParts = { kind: 'small-parts', title: 'Small parts', text: 'Choking hazard: count them out and count them back.', serious };

export const declared: CautionFigures = { ...smallParts, thing: 'dried-bean', place: place('inventory.kit', 31), prose: prose('Beans stay in their tray.') };
export const workedOut: CautionFigures = { ...smallParts, thing: 'gram-cube', place: place('inventory.kit', 8), computed: '10 x 10 x 10 mm; children under three are in the room' };
export const magnet: CautionFigures = { kind: 'magnet', title: 'Magnets', text: 'Small enough to swallow. Count them.', thing: 'pan-balance', place: place('inventory.kit', 1), computed: '5 mm square, 20 mm long', serious };
const calm: CautionFigures = { kind: 'glass', title: 'Glass', text: 'Breaks into sharp pieces.', thing: 'glass-jar', place: place('inventory.kit', 52) };

export const cautionedWeek: WeekBrief = {
    ...week,
    cautions: [calm, declared, workedOut, magnet],
    lessons: week.lessons.map((lesson, index) => (index > 0 ? lesson : { ...lesson, cautions: [declared, workedOut, magnet] }))
};
