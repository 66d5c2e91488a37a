/**
 * Lines of text for drawings, which cannot wrap by themselves. Nobody knows the reader's font beforehand, so widths are those of a wide one;
 * in most fonts lines come out a little short, in none too long.
 */

/** Widths as a share of the text size, measured in DejaVu Sans and rounded up; each with the characters that have it at most. */
const widths: readonly (readonly [number, string])[] = [
    [0.3, "'ijlIJ"], [0.34, ' ,./:;\\|’‘'], [0.37, 'f-'], [0.42, '()[]t!r'], [0.46, '"'], [0.53, '*_`–“”sz'], [0.56, '?cçL'], [0.6, 'Fkvxy'],
    [0.64, 'PTYaeoéá$0123456789ESbdghnpqu{}üñ'], [0.7, 'KABVXZCR'], [0.75, 'UN'], [0.79, 'HDGOQ&'], [0.84, 'w#+<=>^~'], [0.87, 'M'], [1, 'm%W@…—']
];
const known: ReadonlyMap<string, number> = new Map(widths.flatMap(([width, characters]) => [...characters].map(character => [character, width] as const)));
const capital = /^\p{Lu}/u;
const ideograph = /^[\u1100-\u11ff\u2e80-\u9fff\ua960-\ua97f\uac00-\ud7ff\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60]|^\p{Extended_Pictographic}|^[\u{20000}-\u{3fffd}]/u;

function share(character: string): number {
    const width = known.get(character);
    if (width !== undefined) return width;
    if (ideograph.test(character)) return 1.15;
    return capital.test(character) ? 0.9 : 0.8;
}

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });
const plain = /^[\x20-\x7e]*$/;

function characters(text: string): string[] {
    return plain.test(text) ? text.split('') : [...segmenter.segment(text)].map(({ segment }) => segment);
}

/** Pixels that a text needs at most at a text size in pixels. */
export function textWidth(text: string, size: number): number {
    return characters(text).reduce((sum, character) => sum + share(character), 0) * size;
}

/** A text in at most `most` lines of `width` pixels; the last one ends with "…" where something is left out. */
export function fitLines(text: string, width: number, size: number, most: number): string[] {
    const lines: string[] = [];
    const space = textWidth(' ', size);
    let line = '';
    let used = 0;
    const words = text.trim().split(/\s+/u).flatMap(long => broken(long, width, size).map((piece, index) => ({ piece, begins: index === 0 })));
    for (const { piece, begins } of words) {
        const more = textWidth(piece, size);
        const gap = begins ? space : 0;
        if (line === '' || used + gap + more <= width) {
            used += line === '' ? more : gap + more;
            line = line === '' ? piece : `${line}${begins ? ' ' : ''}${piece}`;
        } else {
            lines.push(line);
            [line, used] = [piece, more];
        }
        // One line beyond the last is enough to know that something is left out.
        if (lines.length > most) break;
    }
    if (line !== '') lines.push(line);
    if (lines.length <= most) return lines;
    return [...lines.slice(0, most - 1), shortened(lines.slice(most - 1).join(' '), width, size)];
}

/** Letters that stay together on either side of a break within a word. */
const least = 3;

/** A word that is longer than a line, in pieces that are not: behind its own hyphen if it has one, else with a hyphen where it is broken. */
function broken(word: string, width: number, size: number): string[] {
    if (textWidth(word, size) <= width) return [word];
    const hyphen = word.slice(1, -1).indexOf('-') + 1;
    if (hyphen > 0) return [word.slice(0, hyphen + 1), ...broken(word.slice(hyphen + 1), width, size)].flatMap(piece => broken(piece, width, size));
    const all = characters(word);
    const pieces: string[] = [];
    const room = width - textWidth('-', size);
    while (all.length > 0 && textWidth(all.join(''), size) > width) {
        let count = 1;
        for (let used = share(all[0] ?? '') * size; count < all.length; count++) {
            used += share(all[count] ?? '') * size;
            if (used > room) break;
        }
        if (all.length - count < least && count > least) count -= least - (all.length - count);
        pieces.push(`${all.splice(0, count).join('')}-`);
    }
    return [...pieces, all.join('')];
}

function shortened(text: string, width: number, size: number): string {
    let kept = '';
    let used = textWidth('…', size);
    for (const character of characters(text)) {
        used += share(character) * size;
        if (used > width) break;
        kept += character;
    }
    return `${kept.replace(/[-\s]+$/u, '')}…`;
}
