import type { JSX } from 'preact';
import type { LessonFigures } from '../../planning/figures.js';
import { placeCautions } from '../caution-places.js';
import { placeChanges } from '../change-places.js';
import { Changes } from '../pieces/change.js';
import { placed, Title } from '../pieces/lead.js';
import { ProseText } from '../pieces/prose.js';
import { lessonFacts } from '../sentences.js';
import type { View } from '../view.js';
import { objectiveLabels, words } from '../words.js';
import { MinutesBar } from './minutes-bar.js';
import { Needs } from './needs.js';
import { Part } from './part.js';
import { Steps } from './step.js';

export function Lesson({ lesson, id, view }: { lesson: LessonFigures; id: string; view: View }): JSX.Element {
    const cautions = placeCautions(lesson);
    const changes = placeChanges(lesson);
    // A lesson's `about` is its aim; it is told once.
    const steps = lesson.aim.length ? lesson.steps.filter(step => step.word !== 'about') : lesson.steps;
    return (
        <section id={id} class="lesson" aria-labelledby={`${id}-title`} {...placed(lesson.place, view)}>
            <h2 id={`${id}-title`}><Title place={lesson.place} view={view} text={lesson.title} /></h2>
            <p class="facts">{lessonFacts(lesson)}</p>
            <Changes told={changes.get(lesson)} view={view} />
            {lesson.draft && <p class="quiet">{words.draft}</p>}
            <Aim lesson={lesson} view={view} />
            {lesson.needs.length > 0 && <div class="uses"><h3>{words.uses}</h3><Needs needs={lesson.needs} changes={changes} view={view} /></div>}
            {lesson.notNeeded.length > 0 && <p class="quiet">{words.notNeeded}: <bdi>{lesson.notNeeded.map(thing => thing.title).join(', ')}</bdi></p>}
            <MinutesBar lesson={lesson} id={id} />
            <Steps steps={steps} first={cautions.lesson} cautions={cautions.steps} changes={changes} view={view} />
            {lesson.parts.map((part, index) => <Part part={part} lesson={lesson.name} number={index + 1} cautions={cautions} changes={changes} view={view} />)}
        </section>
    );
}

/** What the lesson is for: its aim in the writer's words, its objectives, its words and what it builds on. */
function Aim({ lesson, view }: { lesson: LessonFigures; view: View }): JSX.Element | null {
    const { aim, objectives, follows } = lesson;
    if (aim.length + objectives.length + follows.length + lesson.words.length === 0) return null;
    return (
        <ul class="steps">
            {aim.length > 0 && <li class="step"><span class="label">{words.aim}</span><div class="told">{aim.map(prose => <ProseText prose={prose} view={view} />)}</div></li>}
            {objectives.map(objective => (
                <li class="step" {...placed(objective.place, view)}>
                    <span class="label">{objectiveLabels[objective.does]}</span>
                    <p class="told"><Title place={objective.place} view={view} text={objective.title} /></p>
                </li>
            ))}
            {lesson.words.length > 0 && <li class="step"><span class="label">{words.words}</span><p class="told"><bdi>{lesson.words.join(', ')}</bdi></p></li>}
            {follows.length > 0 && <li class="step"><span class="label">{words.follows}</span><p class="told"><bdi>{follows.map(lessonBefore => lessonBefore.title).join(', ')}</bdi></p></li>}
        </ul>
    );
}
