/** The fixture's week as a class is taught it with an adaptation: changes beside a lesson, a part, needs and steps, an added part, lessons left out. */
import type { ChangeFigures, LessonFigures, WeekBrief } from '@haversack/server/planning/figures';
import type { TermFigures } from '@haversack/server/planning/term-figures';
import { week } from './fixture.js';
import { place, prose, step } from './fixture-tools.js';
import { term } from './term-fixture.js';

const change = (line: number, says: string, because?: string): ChangeFigures => ({ says, place: place('harbour.course', line), adaptation: 'Shorter autumn', ...(because === undefined ? {} : { because: prose(because) }) });

export const shorter = change(3, '10 min instead of 15', 'Covered at the market visit.');
export const swapped = change(4, 'lentils instead of dried beans', 'The shop has no {dried-bean}s.\n\nAsk again in spring.');
export const added = change(6, 'added', '**Low tables** are all there is.');
export const joined = change(9, 'joined with “Parcels”');
export const leftOut = change(1, '“Market sums” is left out', 'Covered at the {weigh-2} visit, says <b>nobody</b>.');

function adapted(lesson: LessonFigures, index: number): LessonFigures {
    if (index === 1) return { ...lesson, changes: [joined, change(9, 'moved: after “Which is heavier?”', 'Said already')] };
    if (index > 1) return lesson;
    const [warmUp, activity, ...others] = lesson.parts;
    if (!warmUp || !activity) throw new Error('the fixture has lost its parts');
    return {
        ...lesson,
        needs: lesson.needs.map((need, at) => (at === 1 ? { ...need, changes: [swapped] } : need)),
        parts: [
            warmUp,
            {
                ...activity, minutes: 10, changes: [shorter],
                needs: activity.needs.map(need => ({ ...need, changes: [added] })),
                steps: [...activity.steps.map((one, at) => (at < 2 ? { ...one, changes: [swapped] } : one)), { ...step('note', 'Use the low table.', 7, [], 'harbour.course'), changes: [added] }]
            },
            {
                kind: 'activity', name: 'sing', title: 'Sing', minutes: 5, place: place('harbour.course', 10), cautions: [], needs: [], changes: [added],
                steps: [{ ...step('do', 'Sing the weighing song.', 11, [], 'harbour.course'), changes: [added] }]
            },
            ...others
        ]
    };
}

export const adaptedWeek: WeekBrief = {
    ...week,
    names: { ...week.names, 'weigh-2': { title: 'Heavier than ten cubes', kind: 'lesson', place: place('weighing.lesson', 60) } },
    lessons: week.lessons.map(adapted),
    adapted: {
        adaptations: [{ name: 'shorter-autumn', title: 'Shorter autumn', place: place('harbour.course', 0) }, { name: 'harbour-days', title: 'Harbour days', place: place('harbour.course', 20) }],
        leftOut: [
            { name: 'market-sums', title: 'Market sums', place: place('market-sums.lesson', 0), change: leftOut, before: 'weigh-2' },
            { name: 'last', title: 'What we can measure now', place: place('last.lesson', 0), change: change(2, '“What we can measure now” is left out') }
        ]
    }
};

/** The fixture's term as the same class is taught it. */
export const adaptedTerm: TermFigures = {
    ...term,
    adapted: {
        adaptations: adaptedWeek.adapted?.adaptations ?? [],
        leftOut: [{ name: 'market-sums', title: 'Market sums', place: place('market-sums.lesson', 0), change: leftOut }],
        lessons: [
            { name: 'lesson-4', title: 'A market of parcels', place: place('lesson-4.lesson', 0), changes: [change(8, 'moved to after “Jars that look alike”', 'The market is *early* this year.')] },
            { name: 'harbour-walk', title: 'A walk round the harbour', place: place('harbour-walk.lesson', 0), changes: [change(11, 'brought in'), change(12, '20 min instead of 30')] }
        ],
        names: { 'weigh-2': { title: 'Two bags', kind: 'lesson', place: place('weighing.lesson', 60) } }
    }
};
