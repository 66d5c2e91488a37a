import type { CourseSheet, Range, UnitSheet } from '@haversack/language/sheets/sheet';

/** A lesson by its line in the course's text (from 0); without one, a lesson that the course does not list yet. */
export interface MovedLesson {
    name: string;
    line?: number;
}

/** Where lessons are to stand: one line up or down, in the place of a lesson, or at the end of a unit (both by their lines). */
export type Destination = { by: 'up' | 'down' } | { lesson: number } | { unit: number };

export interface LessonsMoved {
    edits: { range: Range; newText: string }[];
    /** The lines of the lessons afterwards, in their order. */
    lines: number[];
}

/** Lines of a text, each with its line end; `lines[i].text` and `.end` together make the text again. */
interface TextLine {
    text: string;
    end: string;
}

/** What goes along with a lesson: comments right above its line, and deeper lines below. */
interface Block {
    from: number;
    lesson: number;
    /** Exclusive. */
    to: number;
}

/** The line before which the lessons are put, counted in the text as it is, and the indentation there. */
interface Place {
    before: number;
    indent: string;
    unit: UnitSheet;
}

/**
 * The edits that put lessons elsewhere in their course. A lesson takes along the comments right above it; every other line stays as it is, character for
 * character, and so does a moved line but for its indentation where another unit has another one. No edits where all stand there already; undefined
 * where a line does not hold what is said of it.
 */
export function moveLessons(text: string, course: CourseSheet, moved: readonly MovedLesson[], to: Destination): LessonsMoved | undefined {
    const lines = linesOf(text);
    const blocks = blocksOf(lines, course);
    const listed = moved.flatMap(({ line }) => line ?? []);
    const added = moved.filter(({ line }) => line === undefined).map(({ name }) => name);
    if (listed.some(line => !blocks.has(line)) || moved.length === 0) return undefined;
    const own = inOrder(course).filter(line => listed.includes(line)).map(line => blocks.get(line)!);
    const place = placeFor(to, own, { lines, blocks, course });
    if (place === 'there already') return { edits: [], lines: own.map(({ lesson }) => lesson) };
    if (!place) return undefined;
    return rearranged(lines, own, added, place);
}

/** The lines that edits lie in, and what is between them; the first counted from 0. */
export function heldLines(text: string, edits: LessonsMoved['edits']): { from: number; lines: string[] } {
    if (edits.length === 0) return { from: 0, lines: [] };
    const from = Math.min(...edits.map(({ range }) => range.start.line));
    const to = Math.max(...edits.map(({ range }) => range.end.line));
    return { from, lines: text.split(/\r\n|\r|\n/).slice(from, to + 1) };
}

function rearranged(lines: readonly TextLine[], own: readonly Block[], added: readonly string[], { before, indent, unit }: Place): LessonsMoved {
    const taken = new Set(own.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, index) => from + index)));
    const usualEnd = lines.find(({ end }) => end !== '')?.end ?? '\n';
    const blocks = own.map(block => ({ block, lines: inUnit(lines, block, indent, unit) }));
    const inserted = [...blocks.flatMap(one => one.lines), ...added.map(name => ({ text: indent + name, end: usualEnd }))];
    const kept = (from: number, to: number): TextLine[] => lines.slice(from, to).filter((_, index) => !taken.has(from + index));
    const above = kept(0, before);
    const after = withLastEndLast([...above, ...inserted, ...kept(before, lines.length)], usualEnd);
    let line = above.length;
    const at = blocks.map(({ block, lines: { length } }) => {
        const lesson = line + block.lesson - block.from;
        line += length;
        return lesson;
    });
    return { edits: editsTo(lines, after, { own, inserted, before }), lines: [...at, ...added.map((_, index) => line + index)] };
}

/** One edit for each piece of text that goes, and one for what comes; where a last line without a line end is among them, one edit for all. */
function editsTo(lines: readonly TextLine[], after: readonly TextLine[], { own, inserted, before }: { own: readonly Block[]; inserted: readonly TextLine[]; before: number }): LessonsMoved['edits'] {
    if (joined(lines) === joined(after)) return [];
    const start = (line: number): Range['start'] => ({ line, character: 0 });
    const last = lines.length - 1;
    const endsOpen = lines[last]!.end === '';
    if (!endsOpen || (before <= last && own.every(({ to }) => to <= last))) {
        const taken = own.map(({ from, to }) => ({ range: { start: start(from), end: start(to) }, newText: '' }));
        const above = taken.filter(({ range }) => range.start.line < before);
        return [...above, { range: { start: start(before), end: start(before) }, newText: joined(inserted) }, ...taken.slice(above.length)];
    }
    const first = lines.findIndex(({ text, end }, index) => text !== after[index]?.text || end !== after[index]?.end);
    return [{ range: { start: start(first), end: { line: last, character: lines[last]!.text.length } }, newText: joined(after.slice(first)) }];
}

/** Where a text ends without a line end, it still does, and a line that stood last has one now. */
function withLastEndLast(lines: readonly TextLine[], usualEnd: string): TextLine[] {
    const last = lines.length - 1;
    const without = lines.findIndex(({ end }) => end === '');
    if (without < 0 || without === last) return [...lines];
    return lines.map(({ text, end }, index) => ({ text, end: index === without ? lines[last]!.end || usualEnd : index === last ? '' : end }));
}

/** The lines of a block with the indentation of the unit they come to; in their own unit they stay as they are. */
function inUnit(lines: readonly TextLine[], { from, to, lesson }: Block, indent: string, unit: UnitSheet): TextLine[] {
    const block = lines.slice(from, to);
    const own = indentOf(lines[lesson]!);
    if (own === indent || unit.lessons.some(({ at }) => at.start.line === lesson)) return block;
    return block.map(({ text, end }) => ({ text: text.startsWith(own) ? indent + text.slice(own.length) : text, end }));
}

interface Around {
    lines: readonly TextLine[];
    blocks: ReadonlyMap<number, Block>;
    course: CourseSheet;
}

function placeFor(to: Destination, own: readonly Block[], around: Around): Place | 'there already' | undefined {
    const { course, blocks } = around;
    if ('by' in to) return stepFrom(to.by, own, around);
    if ('unit' in to) {
        const unit = course.units.find(({ at }) => at.start.line === to.unit);
        return unit && endOf(unit, own, around);
    }
    const unit = unitOf(to.lesson, course);
    const target = blocks.get(to.lesson);
    if (!unit || !target) return undefined;
    if (own.includes(target)) return 'there already';
    const [first] = own;
    const comesFromAbove = first !== undefined && first.lesson < target.lesson && unitOf(first.lesson, course) === unit;
    return { before: comesFromAbove ? target.to : target.from, indent: indentOf(around.lines[target.lesson]!), unit };
}

/** Past the neighbour, or at the edge of a unit into the next one. */
function stepFrom(by: 'up' | 'down', own: readonly Block[], around: Around): Place | 'there already' | undefined {
    const { course, blocks, lines } = around;
    const edge = by === 'up' ? own[0] : own[own.length - 1];
    const unit = edge && unitOf(edge.lesson, course);
    if (!edge || !unit) return undefined;
    const step = by === 'up' ? -1 : 1;
    const at = unit.lessons.findIndex(lesson => lesson.at.start.line === edge.lesson);
    const neighbour = unit.lessons[at + step];
    if (neighbour) {
        const block = blocks.get(neighbour.at.start.line)!;
        return { before: by === 'up' ? block.from : block.to, indent: indentOf(lines[block.lesson]!), unit };
    }
    const next = course.units[course.units.indexOf(unit) + step];
    if (!next) return 'there already';
    const [first] = next.lessons;
    if (by === 'up' || !first) return endOf(next, own, around);
    const block = blocks.get(first.at.start.line)!;
    return { before: block.from, indent: indentOf(lines[block.lesson]!), unit: next };
}

/** Behind the last lesson that stays, or in a unit that has none of its own behind what is written of it. */
function endOf(unit: UnitSheet, own: readonly Block[], { lines, blocks, course }: Around): Place {
    const lessons = unit.lessons.map(({ at }) => blocks.get(at.start.line)!);
    const staying = lessons.filter(block => !own.includes(block)).pop();
    const sibling = staying ?? lessons[0];
    if (sibling) return { before: staying ? staying.to : sibling.from, indent: indentOf(lines[sibling.lesson]!), unit };
    const last = Math.min(Math.max(unit.at.start.line, unit.whole.end.line), lines.length - 1);
    return { before: last + 1, indent: deeper(unit, lines, course), unit };
}

/** The indentation of lessons in a unit that has none: that of what is written of it, else as far in as another unit has them, else two spaces. */
function deeper(unit: UnitSheet, lines: readonly TextLine[], { units }: CourseSheet): string {
    const head = indentOf(lines[unit.at.start.line]!);
    const remark = lines.slice(unit.at.start.line + 1, unit.whole.end.line + 1).find(line => isDeeper(line, head) && !line.text.trim().startsWith('#'));
    if (remark) return indentOf(remark);
    for (const other of units) {
        const [first] = other.lessons;
        const otherHead = indentOf(lines[other.at.start.line]!);
        const inside = first && indentOf(lines[first.at.start.line]!);
        if (inside !== undefined && inside.startsWith(otherHead) && inside.length > otherHead.length) return head + inside.slice(otherHead.length);
    }
    return `${head}  `;
}

function blocksOf(lines: readonly TextLine[], course: CourseSheet): Map<number, Block> {
    const blocks = new Map<number, Block>();
    let above = 0;
    for (const lesson of inOrder(course)) {
        const line = lines[lesson];
        if (line === undefined) continue;
        const own = indentOf(line);
        let from = lesson;
        // What stands deeper may be the text of a remark.
        while (from > above && indentOf(lines[from - 1]!) === own && lines[from - 1]!.text.startsWith('#', own.length)) from--;
        let to = lesson + 1;
        while (to < lines.length && isDeeper(lines[to]!, own)) to++;
        blocks.set(lesson, { from, lesson, to });
        above = to;
    }
    return blocks;
}

function inOrder({ units }: CourseSheet): number[] {
    return units.flatMap(({ lessons }) => lessons.map(({ at }) => at.start.line));
}

function unitOf(lesson: number, { units }: CourseSheet): UnitSheet | undefined {
    return units.find(({ lessons }) => lessons.some(({ at }) => at.start.line === lesson));
}

function linesOf(text: string): TextLine[] {
    const lines = [...text.matchAll(/([^\r\n]*)(\r\n|\r|\n|$)/g)].map(([, own = '', end = '']) => ({ text: own, end }));
    // Behind a last line end stands no line, and a text without one is matched once more at its end.
    return lines.filter(({ text: own, end }, index) => index === 0 || own !== '' || end !== '');
}

function joined(lines: readonly TextLine[]): string {
    return lines.map(({ text, end }) => text + end).join('');
}

function indentOf({ text }: TextLine): string {
    return /^[ \t]*/.exec(text)![0];
}

function isDeeper(line: TextLine, own: string): boolean {
    const indent = indentOf(line);
    return indent.length > own.length && indent.startsWith(own) && line.text.trim() !== '';
}
