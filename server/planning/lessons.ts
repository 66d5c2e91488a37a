import { thingNamed, type Programme } from '@haversack/language/sheets/programme';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import { cautionFigures, cautionsOf, eachOnce } from './cautions.js';
import type { LessonFigures, PartFigures } from './figures.js';
import type { TaughtLesson } from './gross.js';
import { needFigures, partFigures, stepFigures } from './parts.js';
import type { Crowd } from './people.js';

/** One lesson as it is taught: run of the session, needs in numbers, cautions where they belong. */
export function lessonFigures(programme: Programme, crowds: readonly Crowd[], taught: TaughtLesson): LessonFigures {
    const { lesson, meeting, demand } = taught;
    const parts = partsInOrder(programme, crowds, taught);
    return {
        name: lesson.name,
        title: lesson.title,
        place: { uri: lesson.uri, range: lesson.at },
        draft: lesson.draft,
        meeting: meeting.label,
        date: meeting.date,
        minutes: lesson.parts.reduce((total, part) => total + (part.minutes ?? 0), 0),
        minutesIncomplete: lesson.parts.some(part => part.minutes === undefined),
        aim: lesson.steps.filter(s => s.word === 'about').map(s => s.prose),
        steps: stepFigures(lesson.steps.filter(s => s.word !== 'about'), lesson.uri),
        objectives: objectives(programme, lesson),
        follows: lesson.follows.map(({ name }) => ({ name, title: programme.lessons.get(name)?.title ?? name })),
        words: lesson.words.map(w => w.name.replaceAll('-', ' ')),
        needs: demand.lines.filter(l => l.line.slot < 0).map(needFigures),
        notNeeded: lesson.notNeeded.map(({ name }) => ({ name, title: thingNamed(programme, name)?.title ?? name })),
        cautions: lessonCautions(taught, parts),
        parts
    };
}

function partsInOrder(programme: Programme, crowds: readonly Crowd[], { lesson, demand }: TaughtLesson): PartFigures[] {
    let startsAt: number | undefined = 0;
    return lesson.parts.map((part, slot) => {
        const lines = demand.lines.filter(l => l.line.slot === slot);
        const figures = partFigures(part, { programme, crowds, lesson, lines, startsAt });
        startsAt = startsAt === undefined || part.minutes === undefined ? undefined : startsAt + part.minutes;
        return figures;
    });
}

/** The lesson's own cautions, and those of things it needs that no part has claimed. */
function lessonCautions({ lesson, demand }: TaughtLesson, parts: readonly PartFigures[]): LessonFigures['cautions'] {
    const claimed = new Set(parts.flatMap(p => p.cautions.map(c => c.thing)));
    const things = demand.lines.filter(l => l.line.slot < 0 && !claimed.has(l.thing.name)).map(l => l.thing);
    return eachOnce([...cautionFigures(lesson.cautions, lesson.uri), ...things.flatMap(cautionsOf)]);
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
