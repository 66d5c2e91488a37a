import { titleInSentence } from '@haversack/server/brief/title-in-sentence';
import { describe, expect, it } from 'vitest';

// English spelling of plurals and capitals: common practice, no source.
describe('a title inside a sentence', () => {
    it('begins small for materials and prints, unless it begins the sentence', () => {
        expect(titleInSentence('pan-balance', 'Pan balance', 'material')).toBe('pan balance');
        expect(titleInSentence('tally-sheet', 'Tally table', 'print')).toBe('tally table');
        expect(titleInSentence('pan-balance', 'Pan balance', 'material', { begins: true })).toBe('Pan balance');
        expect(titleInSentence('north', 'north', 'word', { begins: true })).toBe('North');
        expect(titleInSentence('string', 'Élastiques', 'material')).toBe('élastiques');
    });

    it('stands in quotation marks for books, games, lessons and objectives, unless it is set apart already, and stays as it is for unknown names', () => {
        for (const kind of ['book', 'game', 'lesson', 'objective'] as const) {
            expect(titleInSentence('x', 'Lost sheep', kind)).toBe('“Lost sheep”');
            expect(titleInSentence('x', 'Lost sheep', kind, { marked: true })).toBe('Lost sheep');
            expect(titleInSentence('x', 'Lost sheep', kind, { listed: true })).toBe('Lost sheep');
        }
        expect(titleInSentence('x-y', 'x-y', undefined, { begins: true })).toBe('x-y');
    });

    it.each(['LED lamp', 'A4 card', 'I think, I tried', 'T-squares', 'Market Street price list', 'Box of Fröbel'])('keeps the capital of a name of its own: %s', title => {
        expect(titleInSentence('thing', title, 'material')).toBe(title);
    });

    it("takes the number from the writer's own word", () => {
        const read = (name: string, title: string) => titleInSentence(name, title, 'material');
        expect(read('paper-cup', 'Paper cups')).toBe('paper cup');
        expect(read('egg-box', 'Egg boxes for ten')).toBe('egg box for ten');
        expect(read('twenty-bead-string', 'Bead strings to twenty')).toBe('bead string to twenty');
        expect(read('spot-die', 'Spot dice')).toBe('spot die');
        expect(read('fallen-leaf', 'Fallen leaves')).toBe('fallen leaf');
        expect(read('table-knife', 'Table knives')).toBe('table knife');
        expect(read('plant-diary', 'Plant diaries')).toBe('plant diary');
        expect(read('scissors', "Children's scissors")).toBe("children's scissors");
        expect(read('glass', 'Glasses')).toBe('glass');
        expect(read('paper-cups', 'Paper cups')).toBe('paper cups');
        expect(read('dot-sheet', 'Dots in five rows')).toBe('dots in five rows');
    });

    it('keeps the plural of the inventory in a list', () => {
        expect(titleInSentence('paper-cup', 'Paper cups', 'material', { listed: true })).toBe('paper cups');
    });

    it('takes the ending that the writer put behind it', () => {
        expect(titleInSentence('linking-cube', 'Linking cubes', 'material', { ending: 's' })).toBe('linking cubes');
    });

    it.each([
        ['fallen-leaf', 'Fallen leaves', 's', 'fallen leaves'], ['spot-die', 'Spot dice', 's', 'spot dice'], ['loupe', 'Magnifying glasses', 's', 'magnifying glasses'], ['box', 'Crates', 'es', 'crates'],
        ['lens', 'Lens', 'es', 'lenses'], ['glass', 'Glasses', 'es', 'glasses'], ['wooden-spoon', 'Wooden spoon', 's', 'wooden spoons'], ['loupe', 'Magnifying glasses', '-like', 'magnifying glasses-like']
    ])('never puts a plural behind a plural: {%s} “%s” with %s', (name, title, ending, words) => {
        expect(titleInSentence(name, title, 'material', { ending })).toBe(words);
    });

    it('leaves out what stands behind a comma', () => {
        expect(titleInSentence('glass-bottle', 'Glass bottles, all alike', 'material')).toBe('glass bottle');
    });
});
