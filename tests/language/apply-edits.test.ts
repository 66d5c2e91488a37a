import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdits, textEditsFor } from '@haversack/language/checks/apply-edits';
import type { Edit } from '@haversack/language/checks/check';

const uri = 'file:///a.kit';
const at = (line: number, from: number, to = from) => ({ start: { line, character: from }, end: { line, character: to } });

describe('edits in a document', () => {
    test('a replacement keeps everything around it', () => {
        expect(applyEdits('one two\nthree', [{ uri, replace: at(0, 4, 7), text: 'TWO' }])).toBe('one TWO\nthree');
    });

    test('new lines stand in the column of the line they are like, whole steps further in', () => {
        const text = 'material a\n    reusable\n\nmaterial b\n    reusable\n';
        expect(applyEdits(text, [{ uri, afterLine: 1, deeper: 0, lines: ['from kit'] }])).toBe('material a\n    reusable\n    from kit\n\nmaterial b\n    reusable\n');
        expect(applyEdits(text, [{ uri, afterLine: 0, deeper: 1, lines: ['from kit'] }])).toBe('material a\n    from kit\n    reusable\n\nmaterial b\n    reusable\n');
        expect(applyEdits(text, [{ uri, afterLine: 1, like: 0, deeper: 0, lines: ['', 'material c', '  reusable'] }]))
            .toBe('material a\n    reusable\n\nmaterial c\n    reusable\n\nmaterial b\n    reusable\n');
    });

    test('a block that stands there empty takes the lines, a remark behind it or not', () => {
        const edit: Edit = { uri, afterLine: 1, like: 0, deeper: 1, lines: ['materials', '  a 1'], until: 3 };
        expect(applyEdits('lesson l\n  words w\n  materials\n  activity b', [edit])).toBe('lesson l\n  words w\n  materials\n    a 1\n  activity b');
        expect(applyEdits('lesson l\r\n\tmaterials # to fetch\r\n\tactivity b', [edit])).toBe('lesson l\r\n\tmaterials # to fetch\r\n\t\ta 1\r\n\tactivity b');
        expect(applyEdits('lesson l\n  words w\n  activity b\n  game c\n    materials', [edit])).toBe('lesson l\n  words w\n  materials\n    a 1\n  activity b\n  game c\n    materials');
    });

    test('tabs stay tabs, and a line without lines under it takes the step of the file', () => {
        const text = 'material a\n\treusable\nlesson b\n';
        expect(applyEdits(text, [{ uri, afterLine: 2, deeper: 1, lines: ['materials', '  a 1'] }])).toBe('material a\n\treusable\nlesson b\n\tmaterials\n\t\ta 1\n');
    });

    test('the step is that of the block where it has one, else that of the first line that is text', () => {
        const edit = (afterLine: number): Edit => ({ uri, afterLine, deeper: 1, lines: ['materials', '  a 1'] });
        const text = 'material a\n  reusable\nlesson b\n    draft\nlesson c\n';
        expect(applyEdits(text, [edit(2)])).toBe('material a\n  reusable\nlesson b\n    materials\n        a 1\n    draft\nlesson c\n');
        expect(applyEdits(text, [edit(4)])).toBe('material a\n  reusable\nlesson b\n    draft\nlesson c\n  materials\n    a 1\n');
        expect(applyEdits('        \n      # as it was\nmaterial a\n\n     # why\n   reusable\nlesson b\n', [edit(6)])).toBe('        \n      # as it was\nmaterial a\n\n     # why\n   reusable\nlesson b\n   materials\n      a 1\n');
        expect(applyEdits('material a\n\n     # why\n   reusable\nlesson b\n  draft\n', [edit(0)])).toBe('material a\n   materials\n      a 1\n\n     # why\n   reusable\nlesson b\n  draft\n');
    });

    test('an editor gets ranges within the document', () => {
        expect(textEditsFor('a\nbb', [{ uri, removeLines: [1, 1] }])).toEqual([{ range: { start: { line: 0, character: 1 }, end: { line: 1, character: 2 } }, newText: '' }]);
        expect(textEditsFor('a\nbb\nc', [{ uri, removeLines: [0, 1] }])).toEqual([{ range: { start: { line: 0, character: 0 }, end: { line: 2, character: 0 } }, newText: '' }]);
        expect(textEditsFor('aa', [{ uri, removeLines: [0, 0] }])).toEqual([{ range: at(0, 0, 2), newText: '' }]);
        expect(textEditsFor('a\nbb', [{ uri, afterLine: 1, deeper: 0, lines: ['x'] }])).toEqual([{ range: at(1, 2), newText: '\nx' }]);
        expect(textEditsFor('a\n', [{ uri, afterLine: 0, deeper: 0, lines: ['x'] }])).toEqual([{ range: at(1, 0), newText: 'x\n' }]);
    });

    test('line breaks are those of the document', () => {
        expect(applyEdits('a\r\nb\r\n', [{ uri, afterLine: 0, deeper: 0, lines: ['x', 'y'] }])).toBe('a\r\nx\r\ny\r\nb\r\n');
        expect(applyEdits('a\rb', [{ uri, afterLine: 1, deeper: 0, lines: ['x'] }])).toBe('a\rb\rx');
    });

    test('a last line without a line break', () => {
        expect(applyEdits('a\nb', [{ uri, afterLine: 1, deeper: 0, lines: ['x'] }])).toBe('a\nb\nx');
        expect(applyEdits('a\nb', [{ uri, removeLines: [1, 1] }])).toBe('a');
        expect(applyEdits('a', [{ uri, removeLines: [0, 0] }])).toBe('');
    });

    test('past the end means after the last line', () => {
        const end = Number.MAX_SAFE_INTEGER;
        expect(applyEdits('a\n', [{ uri, afterLine: end, deeper: 0, lines: ['', 'x'] }])).toBe('a\n\nx\n');
        expect(applyEdits('a', [{ uri, afterLine: end, deeper: 0, lines: ['', 'x'] }])).toBe('a\n\nx');
        expect(applyEdits('', [{ uri, afterLine: end, deeper: 0, lines: ['', 'x'] }])).toBe('x\n');
    });

    test('a byte order mark is no indentation', () => {
        expect(applyEdits('\uFEFFa\nb', [{ uri, afterLine: 0, deeper: 0, lines: ['x'] }])).toBe('\uFEFFa\nx\nb');
    });

    test('several edits count from the document as it was', () => {
        const edits: Edit[] = [{ uri, removeLines: [2, 2] }, { uri, afterLine: 0, like: 1, deeper: 0, lines: ['c'] }];
        expect(applyEdits('unit\n  b\n  c\nend\n', edits)).toBe('unit\n  c\n  b\nend\n');
    });

    test('no character outside the edit is lost', () => {
        const line = fc.stringMatching(/^[ \t]{0,4}[a-z#"{}é]{0,8}$/);
        const text = fc.tuple(fc.array(line, { minLength: 1, maxLength: 6 }), fc.constantFrom('\n', '\r\n', '\r')).map(([lines, eol]) => lines.join(eol));
        fc.assert(fc.property(text, fc.nat(8), fc.nat(8), fc.nat(2), (before, afterLine, like, deeper) => {
            const after = applyEdits(before, [{ uri, afterLine, like, deeper, lines: ['QQ'] }]);
            expect(after.split('QQ')).toHaveLength(2);
            const lines = (all: string): string[] => all.split(/\r\n|\r|\n/).filter(one => one.trim() !== '');
            expect(lines(after).filter(one => !one.includes('QQ'))).toEqual(lines(before));
        }));
    });
});
