import type { WeekBrief } from '../figures.js';
import type { Cue } from '../speaking-figures.js';
import { counted, listing, once, quoted } from '@haversack/language/facts/wording';
import { isChanged } from './changes.js';
import { ended, say, type Telling } from './cues.js';

/** Welcome and the week at a glance. */
export function welcomeCues({ brief, inWords }: Telling): Cue[] {
    const { lessons, meetings, adapted } = brief;
    return [
        say(`Welcome to ${weekOf(brief)} of ${brief.course.title}`, brief.course.place),
        glance(brief),
        ...meetings.flatMap(meeting => {
            const taught = meeting.taught.map(one => [quoted(one.title), ...(one.piece ? [`part ${one.piece.number} of ${one.piece.of}`] : []), ...(one.why === 'repeat' || one.why === 'revisit' ? ['again'] : [])].join(', '));
            const names = taught.length > 0 ? taught : meeting.lessons.map(name => quoted(lessons.find(lesson => lesson.name === name)?.title ?? name));
            if (names.length + (meeting.free ? 1 : 0) === 0) return [];
            return [say(`${meeting.label}: ${[...(names.length > 0 ? [listing(names)] : []), ...(meeting.free ? [meeting.free.words] : [])].join('; ')}`, meeting.free?.place)];
        }),
        ...brief.remarks.map(remark => say(remark)),
        ...(adapted?.adaptations.length && (adapted.leftOut.length > 0 || lessons.some(isChanged)) ? [say(`Some of this week is changed for this class, by ${listing(adapted.adaptations.map(({ title }) => quoted(title)))}`, adapted.adaptations[0]?.place)] : []),
        ...(adapted?.leftOut ?? []).map(({ title, place, change }) => say(`${quoted(title)} is left out.${change.because ? ` ${ended(inWords(change.because))}` : ''}`, place))
    ];
}

function weekOf({ week, weeks }: WeekBrief): string {
    return week <= weeks ? `week ${week} of ${weeks}` : `week ${week}`;
}

function glance({ lessons, minutes, assumptions }: WeekBrief): Cue {
    if (lessons.length === 0) return say(once(assumptions).find(sentence => /there is no week|no lessons to plan/i.test(sentence)) ?? 'There is no lesson this week');
    // A lesson in two pieces is one lesson.
    const different = new Set(lessons.map(({ name }) => name)).size;
    return say(`We have ${counted(different, 'lesson')}${minutes > 0 ? `, ${counted(minutes, 'minute')} in all` : ''}`);
}
