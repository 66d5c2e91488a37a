import type { JSX } from 'preact';
import type { WeekBrief } from '../../planning/figures.js';
import type { Meeting } from '../../planning/schedule-figures.js';
import { assumptions, room, weekFacts, weekTitle } from '../sentences.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { placed, Title } from './lead.js';

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
                {meeting.lessons.map((name, index) => {
                    const at = brief.lessons.findIndex(lesson => lesson.name === name);
                    const title = <bdi>{brief.lessons[at]?.title ?? view.titleOf(name)}</bdi>;
                    return <>{index > 0 && ', '}{at < 0 ? title : <a href={`#${view.lessonId(at)}`}>{title}</a>}</>;
                })}
            </span>
        </li>
    );
}
