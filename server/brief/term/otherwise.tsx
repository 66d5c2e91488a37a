import type { JSX } from 'preact';
import type { TermFigures } from '../../planning/term-figures.js';
import { toldLeftOut } from '../left-out.js';
import { LeftOutLine, OwnChanges } from '../pieces/change.js';
import { placed, Title } from '../pieces/lead.js';
import { Section } from '../pieces/section.js';
import { viewOfNames, type BriefOptions } from '../view.js';
import { termWords } from './words.js';

/** What the class is taught otherwise than the course has it: lessons left out, moved, brought in. */
export function Otherwise({ term, options }: { term: TermFigures; options: BriefOptions }): JSX.Element | null {
    const { adapted } = term;
    if (!adapted || adapted.leftOut.length + adapted.lessons.length === 0) return null;
    const view = viewOfNames(adapted.names, term.class?.title, options);
    return (
        <Section id="term-otherwise" title={termWords.otherwise}>
            {toldLeftOut(adapted.leftOut, adapted.lessons).map(lesson => <LeftOutLine lesson={lesson} view={view} />)}
            {adapted.lessons.length > 0 && (
                <ul class="plain">
                    {adapted.lessons.map(lesson => (
                        <li {...placed(lesson.place, view)}>
                            <Title place={lesson.place} view={view} text={lesson.title} />
                            <OwnChanges changes={lesson.changes} view={view} />
                        </li>
                    ))}
                </ul>
            )}
        </Section>
    );
}
