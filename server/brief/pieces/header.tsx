import type { JSX } from 'preact';
import type { WeekBrief } from '../../planning/figures.js';
import type { Meeting } from '../../planning/schedule-figures.js';
import { leftOutOfWeek } from '../left-out.js';
import { taughtAt, type TaughtLine as TaughtLineFigures } from '../meetings.js';
import { assumptions, room, weekFacts, weekTitle } from '../sentences.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { placed, Title } from './lead.js';
import { WithChanges } from './with-changes.js';

export function Header({ brief, view }: { brief: WeekBrief; view: View }): JSX.Element {
    const assumed = assumptions(brief);
    return (
        <header id="week">
            <p class="course" {...placed(brief.course.place, view)}>
                <Title place={brief.course.place} view={view} text={brief.course.title} />
                {brief.class && <>, <Title place={brief.class.place} view={view} text={brief.class.title} /></>}
            </p>
            <h1>{weekTitle(brief)}</h1>
            <p class="facts">{weekFacts(brief)}</p>
            <p>{room(brief)}</p>
            {brief.adapted && <WithChanges adaptations={brief.adapted.adaptations} leftOut={leftOutOfWeek(brief)} view={view} />}
            {brief.meetings.length > 0 && (
                <ol class="meetings" aria-label={words.meetings}>
                    {brief.meetings.map(meeting => <MeetingLine meeting={meeting} brief={brief} view={view} />)}
                </ol>
            )}
            {brief.remarks.length > 0 && <ul class="remarks">{brief.remarks.map(remark => <li><bdi>{remark}</bdi></li>)}</ul>}
            {assumed.length > 0 && <p class="assumed">{words.assumed}: {assumed.join(' ')}</p>}
        </header>
    );
}

function MeetingLine({ meeting, brief, view }: { meeting: Meeting; brief: WeekBrief; view: View }): JSX.Element {
    return (
        <li>
            <span class="day">{meeting.date === undefined ? meeting.label : <time dateTime={meeting.date}>{meeting.label}</time>}</span>
            <span>
                {taughtAt(meeting, brief, view).map((line, index) => <>{index > 0 && ', '}<TaughtLine line={line} view={view} /></>)}
                {meeting.free && <span class="quiet" {...placed(meeting.free.place, view)}><Title place={meeting.free.place} view={view} text={meeting.free.words} /></span>}
            </span>
        </li>
    );
}

/** The title leads to the lesson further down; what brought it here, to the line that did. */
function TaughtLine({ line: { title, lesson, remark, because }, view }: { line: TaughtLineFigures; view: View }): JSX.Element {
    const words = <bdi>{title}</bdi>;
    return (
        <>
            {lesson === undefined ? words : <a href={`#${view.lessonId(lesson)}`}>{words}</a>}
            {remark && <span class="quiet" {...placed(because, view)}> (<Title place={because} view={view} text={remark} />)</span>}
        </>
    );
}
