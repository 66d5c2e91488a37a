import { changesOf } from './change-figures.js';
import { thingNamed, type Programme } from '@haversack/language/sheets/programme';
import type { Youngest } from '@haversack/language/facts/caution-ages';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import { cautionFigures, cautionsOf, eachOnce } from './cautions.js';
import { isUsedUp, useOf, type LineDemand } from './demand.js';
import type { LessonFigures, PartFigures } from './figures.js';
import type { TaughtLesson } from './gross.js';
import { needFigures, partFigures, stepFigures } from './parts.js';
import type { Crowd } from './people.js';
import { pieceOf } from './supplies/pieces.js';

/**
 * One lesson as it is taught: run of the session, needs in numbers, cautions where they belong. Of a lesson that is split, the parts
 * of this piece; a part that is repeated by itself is a short entry with its own things.
 */
export function lessonFigures(programme: Programme, crowds: readonly Crowd[], taught: TaughtLesson, youngest?: Youngest): LessonFigures {
    const { lesson, meeting, demand, taught: piece } = taught;
    const slots = piece.parts ?? lesson.parts.map((_, slot) => slot);
    const sheets = slots.flatMap(slot => lesson.parts[slot] ?? []);
    const parts = partsInOrder(programme, crowds, taught, slots, youngest);
    const isAgain = piece.parts !== undefined && (piece.why === 'repeat' || piece.why === 'revisit');
    const needed = pieceOf(piece, lesson, name => programme.games.get(name));
    const takes = (l: LineDemand): boolean => needed?.takes(l.line, l.thing.name, isUsedUp(useOf(l.thing, l.measure))) ?? true;
    const isLater = isAgain || (piece.piece?.number ?? 1) > 1;
    return {
        name: lesson.name,
        title: lesson.title,
        place: { uri: lesson.uri, range: lesson.at },
        draft: lesson.draft,
        meeting: meeting.label,
        date: meeting.date,
        piece: piece.piece,
        why: piece.why,
        remark: piece.remark,
        minutes: sheets.reduce((total, part) => total + (part.minutes ?? 0), 0),
        minutesIncomplete: sheets.some(part => part.minutes === undefined),
        aim: isAgain ? [] : lesson.steps.filter(s => s.word === 'about').map(s => s.prose),
        steps: isLater ? [] : stepFigures(lesson.steps.filter(s => s.word !== 'about'), lesson.uri),
        objectives: isAgain ? [] : objectives(programme, lesson),
        follows: isLater ? [] : lesson.follows.map(({ name }) => ({ name, title: programme.lessons.get(name)?.title ?? name })),
        words: isLater ? [] : lesson.words.map(w => w.name.replaceAll('-', ' ')),
        needs: demand.lines.filter(l => l.line.slot < 0 && takes(l)).map(needFigures),
        notNeeded: isAgain ? [] : lesson.notNeeded.map(({ name }) => ({ name, title: thingNamed(programme, name)?.title ?? name })),
        ...changesOf(isAgain ? undefined : lesson.adapted),
        cautions: lessonCautions(taught, parts, takes, youngest),
        parts
    };
}

function partsInOrder(programme: Programme, crowds: readonly Crowd[], { lesson, demand }: TaughtLesson, slots: readonly number[], youngest: Youngest | undefined): PartFigures[] {
    let startsAt: number | undefined = 0;
    return slots.flatMap(slot => {
        const part = lesson.parts[slot];
        if (!part) return [];
        const lines = demand.lines.filter(l => l.line.slot === slot);
        const figures = partFigures(part, { programme, crowds, lesson, lines, startsAt, youngest });
        startsAt = startsAt === undefined || part.minutes === undefined ? undefined : startsAt + part.minutes;
        return [figures];
    });
}

/** The lesson's own cautions, and those of things it needs that no part has claimed. */
function lessonCautions(
    { lesson, demand }: TaughtLesson, parts: readonly PartFigures[], takes: (line: LineDemand) => boolean, youngest: Youngest | undefined
): LessonFigures['cautions'] {
    const claimed = new Set(parts.flatMap(p => p.cautions.map(c => c.thing)));
    const things = demand.lines.filter(l => l.line.slot < 0 && takes(l) && !claimed.has(l.thing.name)).map(l => l.thing);
    return eachOnce([...cautionFigures(lesson.cautions, lesson.uri, youngest), ...things.flatMap(thing => cautionsOf(thing, youngest))]);
}

function objectives(programme: Programme, lesson: LessonSheet): LessonFigures['objectives'] {
    const lines = [
        ...lesson.introduces.map(m => ['introduces', m.name] as const),
        ...lesson.practises.map(m => ['practises', m.name] as const),
        ...lesson.checks.map(m => ['checks', m.name] as const)
    ];
    return lines.map(([does, name]) => {
        const sheet = programme.objectives.get(name);
        return { does, name, title: sheet?.title ?? name, place: sheet && { uri: sheet.uri, range: sheet.at } };
    });
}
