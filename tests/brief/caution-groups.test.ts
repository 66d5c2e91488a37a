import { groupCautions } from '@haversack/server/brief/caution-groups';
import { placeCautions } from '@haversack/server/brief/caution-places';
import type { CautionFigures } from '@haversack/server/planning/figures';
import { describe, expect, it } from 'vitest';
import { firstLesson } from './fixture-lessons.js';
import { place, prose } from './fixture-tools.js';

const small = (thing: string, line: number, own?: string): CautionFigures =>
    ({ kind: 'small-parts', title: 'Small parts', text: 'Can be swallowed.', thing, place: place('a.kit', line), ...(own === undefined ? {} : { prose: prose(own) }) });
const glass: CautionFigures = { kind: 'glass', title: 'Glass', text: 'Breaks.', thing: 'jar', place: place('a.kit', 9) };

describe('cautions', () => {
    it('of one kind stand in one line, each thing once, with what writers added', () => {
        const groups = groupCautions([small('bead', 1), glass, small('cube', 2, 'Snap them.'), small('bead', 1)]);
        expect(groups.map(g => [g.cautions.map(c => c.thing), g.again, g.added.map(c => c.thing)])).toEqual([[['bead', 'cube'], false, ['cube']], [['jar'], false, []]]);
    });

    it('are in full the first time only; what a writer added is said once', () => {
        const said = new Set<string>();
        groupCautions([small('cube', 2, 'Snap them.')], said);
        expect(groupCautions([small('cube', 2, 'Snap them.'), small('bead', 1, 'Count them.')], said)).toMatchObject([{ again: true, added: [{ thing: 'bead' }] }]);
        expect(groupCautions([glass], said)).toMatchObject([{ again: false }]);
    });

    it('of one kind that a writer wrote at the lesson and at a part are both told', () => {
        const own = (line: number, text: string): CautionFigures => ({ kind: 'sharp', title: 'Sharp', text: 'Cuts.', place: place('a.lesson', line), prose: prose(text) });
        const lesson = firstLesson(small('dried-bean', 3));
        const [first, ...others] = lesson.parts;
        const places = placeCautions({ ...lesson, cautions: [own(1, 'Mind the ends.')], parts: [{ ...first!, cautions: [own(9, 'Blunt scissors.')] }, ...others] });
        expect(places.lesson).toMatchObject([{ again: false, added: [{ prose: prose('Mind the ends.') }] }]);
        expect([...places.parts.values()].flat().filter(({ cautions: [{ kind }] }) => kind === 'sharp')).toMatchObject([{ again: true, added: [{ prose: prose('Blunt scissors.') }] }]);
    });

    it('of a lesson lose none: every caution of every part has its line', () => {
        const lesson = firstLesson(small('dried-bean', 3));
        const places = placeCautions(lesson);
        const shown = [...places.lesson, ...[...places.parts.values()].flat(), ...[...places.steps.values()].flat()].flatMap(g => g.cautions);
        const all = [...lesson.cautions, ...lesson.parts.flatMap(p => p.cautions)];
        for (const caution of all) expect(shown.some(s => s.kind === caution.kind && s.thing === caution.thing && s.text === caution.text)).toBe(true);
    });
});
