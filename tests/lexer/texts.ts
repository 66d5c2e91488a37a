import fc from 'fast-check';
import { firstSteps, languagePage, programmeFiles } from './reading.js';

/** Texts that try the reader: made of bits of the language, plain noise, and examples with pieces cut out, put in or moved. */

export const examples = [...programmeFiles(languagePage).values(), ...programmeFiles(firstSteps).values()];

/** Bits of the language and of nothing, so that random texts come near to real ones. */
const bit = fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom('lesson', 'material', 'activity', 'materials', 'objectives', 'about:', 'do:', 'ask:', 'expect:', 'watch:', 'if unsure:', 'course', 'unit', 'class', 'kit', 'holds', 'caution', 'off', 'meets', 'in kit', 'not in kit', 'per pair', 'pack of', 'costs', 'x', 'or', 'and', 'game') },
    { weight: 3, arbitrary: fc.constantFrom('hand-bell', 'weigh-1', 'épée', 'מאזניים', '天秤', 'ўеліка', 'Caps', 'a.b', 'dried-bean', 'ß', 'ǆ', '𐐷', 'İ') },
    { weight: 3, arbitrary: fc.constantFrom('10', '1/2', '1 1/2', '10%', '2026-09-14', '9:30', '"title"', '“title”', '"open', '{name}', '{open', '}', '\\{', '(', ')', ',', ':', '.', '# comment', '%%%', '\u00a0', '\ufeff', '\0', '\u2028', '\ud800', '🔔', 'e\u0301') },
    { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 6 }) }
);
export const indent = fc.oneof(fc.constantFrom('', '  ', '    ', '      ', '\t', '\t\t', ' \t', '   '), fc.string({ unit: fc.constantFrom(' ', '\t'), maxLength: 12 }));
const line = fc.tuple(indent, fc.array(bit, { maxLength: 7 })).map(([blanks, bits]) => blanks + bits.join(' '));
const lineEnd = fc.constantFrom('\n', '\n', '\n', '\r\n', '\r');
const madeText = fc.array(fc.tuple(line, lineEnd), { maxLength: 25 }).map(lines => lines.map(([text, end]) => text + end).join(''));
const noise = fc.oneof(fc.string({ unit: 'binary', maxLength: 200 }), fc.string({ unit: 'grapheme', maxLength: 200 }));

/** An example with a few pieces cut out, put in or moved. */
export const editedExample = fc.tuple(fc.constantFrom(...examples), fc.array(fc.tuple(fc.nat(), fc.nat(30), fc.oneof(bit, indent, lineEnd, fc.constant(''))), { minLength: 1, maxLength: 5 }))
    .map(([text, edits]) => edits.reduce((edited, [place, length, put]) => {
        const at = place % (edited.length + 1);
        return edited.slice(0, at) + put + edited.slice(at + length);
    }, text));
export const anyText = fc.oneof(madeText, noise, editedExample);
