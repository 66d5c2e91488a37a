import type { JSX } from 'preact';
import type { ChangesFigures, LessonChange, MinutesChange } from '../../planning/ledger-figures.js';
import { MarkBeside, type Mark } from '../drawing/marks.js';
import { placed, Title } from '../pieces/lead.js';
import { Section } from '../pieces/section.js';
import type { View } from '../view.js';
import { happenedInWords, lessonRows, minutesInWords, runInWords } from './sentences.js';
import { changesWords, heads } from './words.js';

const marks: Partial<Record<LessonChange['happened'], Mark>> = { changed: 'changed', moved: 'changed', new: 'added', 'left out': 'left-out' };

/** The course as this class is taught it. */
export function ChangedLessons({ changes: { ledger }, view }: { changes: ChangesFigures; view: View }): JSX.Element | null {
    if (!ledger || ledger.lessons.length === 0) return null;
    const minutes = new Map(ledger.minutes.lessons.map(lesson => [lesson.name, lesson]));
    return (
        <Section id="changes-lessons" title={changesWords.lessons}>
            <table class="before-after">
                <caption>{changesWords.lessonsCaption}</caption>
                <thead><tr><th scope="col">{heads.lesson}</th><th scope="col">{heads.happened}</th><th scope="col">{heads.minutes}</th></tr></thead>
                <tbody>
                    {lessonRows(ledger.lessons).map(row => (row.kind === 'run'
                        ? <Run lessons={row.lessons} minutes={minutes} view={view} />
                        : <LessonLine lesson={row.lesson} minutes={minutes.get(row.lesson.name)} view={view} />))}
                </tbody>
            </table>
        </Section>
    );
}

function LessonLine({ lesson, minutes, view }: { lesson: LessonChange; minutes: MinutesChange | undefined; view: View }): JSX.Element {
    const mark = marks[lesson.happened];
    return (
        <tr {...placed(lesson.place, view)}>
            <th scope="row"><Title place={lesson.place} view={view} text={lesson.title} /></th>
            <td>
                <div class={mark ? 'change' : 'quiet'}>
                    {mark && <MarkBeside mark={mark} />}
                    <div>{happenedInWords(lesson).map(told => <p><bdi>{told}</bdi></p>)}</div>
                </div>
            </td>
            <td class="minutes">{minutesInWords(minutes)}</td>
        </tr>
    );
}

/** Opens to its lessons. */
function Run({ lessons, minutes, view }: { lessons: LessonChange[]; minutes: ReadonlyMap<string, MinutesChange>; view: View }): JSX.Element {
    return (
        <tr>
            <td colSpan={3}>
                <details class="run-of-lessons">
                    <summary class="quiet"><bdi>{runInWords(lessons)}</bdi></summary>
                    <ul class="plain">
                        {lessons.map(lesson => {
                            const time = minutesInWords(minutes.get(lesson.name));
                            return <li {...placed(lesson.place, view)}><Title place={lesson.place} view={view} text={lesson.title} />{time && <span class="quiet">, {time} min</span>}</li>;
                        })}
                    </ul>
                </details>
            </td>
        </tr>
    );
}
