/** Ways in which a text is damaged: by a slip of the hand, a broken transfer, another program, or ill will. */
import type { Chance } from './chance.js';

/** Characters that programs trip over, by what they are. */
export const oddCharacters: Readonly<Record<string, readonly string[]>> = {
    'right-to-left': ['\u202e', '\u2066', '\u200f', 'מאזניים', 'عدد', '\u061c'],
    'combining': ['e\u0301', '\u0300\u0301\u0302', '\u20e3', 'क्षि', '각'.normalize('NFD')],
    'beyond sixteen bits': ['🔔', '𐐷', '👩🏽‍🏫', '🇳🇱', '\u{10ffff}'],
    'lone surrogate': ['\ud800', '\udfff', '\udc00\ud800'],
    'NUL': ['\0', '\0\0\0'],
    'byte order mark': ['\ufeff'],
    'line separator': ['\u2028', '\u2029', '\u0085', '\v', '\f'],
    'without width': ['\u200b', '\u200d', '\u2060', '\u00ad'],
    'carriage return': ['\r', '\r\r\n', '\n\r'],
    'blank': ['\u00a0', '\u3000', '\t', ' \t ', '\u1680'],
    'control': ['\u0001', '\u001b[31m', '\u007f', '\u009b', '\u0008'],
    'not a character': ['\ufffe', '\uffff', '\ue000', '\ufdd0', '\ufffd'],
    'markup': ['<script>', '](javascript:x)', '`', '***', '{', '}', '\\', '"', '#', '&#60;', '%%', '$1'],
    'number': ['9'.repeat(400), '0', '-1', '1/0', '1e999', '0.1', '10000000000000000000000', '2026-02-30', '99:99']
};

const words = [
    'lesson', 'material', 'activity', 'materials', 'about:', 'do:', 'ask:', 'expect:', 'if unsure:', 'course', 'unit', 'class', 'kit', 'holds', 'adaptation', 'show', 'practice', 'objectives', 'per pair', 'pack of', 'costs',
    'constructor', '__proto__', 'toString', 'hand-bell', '1 per learner', '"Title"', '{hand-bell}', '# note', 'materials\n', '    '
];

type Mangler = (text: string, chance: Chance, other: string) => string;

const place = (text: string, chance: Chance): number => chance.below(text.length + 1);
const put = (text: string, at: number, what: string, over = 0): string => text.slice(0, at) + what + text.slice(at + over);
const onLines = (text: string, change: (lines: string[]) => void): string => {
    const lines = text.split('\n');
    change(lines);
    return lines.join('\n');
};

const manglers: Readonly<Record<string, Mangler>> = {
    'cut off': (text, chance) => text.slice(0, place(text, chance)),
    'begun late': (text, chance) => text.slice(place(text, chance)),
    'piece cut out': (text, chance) => put(text, place(text, chance), '', chance.below(40)),
    'piece doubled': (text, chance) => { const at = place(text, chance); return put(text, at, text.slice(at, at + chance.below(80))); },
    'two files spliced': (text, chance, other) => text.slice(0, place(text, chance)) + other.slice(place(other, chance)),
    'other file inside': (text, chance, other) => { const from = place(other, chance); return put(text, place(text, chance), other.slice(from, from + chance.below(300))); },
    'line gone': (text, chance) => onLines(text, lines => { lines.splice(chance.below(lines.length), 1 + chance.below(3)); }),
    'line doubled': (text, chance) => onLines(text, lines => { const at = chance.below(lines.length); lines.splice(at, 0, lines[at]!); }),
    'lines swapped': (text, chance) => onLines(text, lines => { const [a, b] = [chance.below(lines.length), chance.below(lines.length)]; [lines[a], lines[b]] = [lines[b]!, lines[a]!]; }),
    'indentation noise': (text, chance) => onLines(text, lines => {
        for (let times = 1 + chance.below(5); times > 0; times--) {
            const at = chance.below(lines.length);
            lines[at] = chance.one(['', ' ', '   ', '\t', ' \t', '\u3000', '                 ']) + (chance.happens(50) ? lines[at]! : lines[at]!.trimStart());
        }
    }),
    'letters swapped': (text, chance) => { const at = place(text, chance); return text.slice(0, at) + text.slice(at, at + 2).split('').reverse().join('') + text.slice(at + 2); },
    'word put in': (text, chance) => put(text, place(text, chance), chance.one(words)),
    'word put over another': (text, chance) => put(text, place(text, chance), chance.one(words), chance.below(12)),
    'other line ends': (text, chance) => text.replaceAll('\n', chance.one(['\r\n', '\r'])),
    'capitals': text => text.toUpperCase()
};
const odd: Mangler[] = Object.values(oddCharacters).map(some => (text, chance) => {
    let result = text;
    for (let times = 1 + chance.below(4); times > 0; times--) result = put(result, place(result, chance), chance.one(some), chance.below(3));
    return result;
});

const all: [string, Mangler][] = [...Object.entries(manglers), ...Object.keys(oddCharacters).map((kind, index): [string, Mangler] => [kind, odd[index]!])];
export const kindsOfDamage = all.map(([kind]) => kind);

/** A text damaged in one to four ways; `kinds` are their names. Never longer than some times the two texts. */
export function mangled(text: string, other: string, chance: Chance): { text: string; kinds: string[] } {
    const kinds: string[] = [];
    let result = text;
    for (let times = chance.happens(60) ? 1 : 1 + chance.below(4); times > 0; times--) {
        const [kind, mangle] = chance.one(all);
        kinds.push(kind);
        result = mangle(result, chance, other);
    }
    return { text: result, kinds };
}
