import type { Place } from '@haversack/language/sheets/sheet';
import type { Consequence } from '../ledger-figures.js';
import { listing, quoted } from '@haversack/language/facts/wording';
import type { Broken } from './consequences.js';
import type { CourseReading, ReadLesson } from './course-reading.js';

const mostNamed = 4;

/** What is broken, as a sentence for a teacher with what it is about. `base` is the course as it is written. */
export function consequenceOf(broken: Broken, base: CourseReading): Consequence {
    const { kind, gone, lessons, users = lessons } = broken;
    return { kind, says: sentence(broken, base), about: aboutOf(broken, base), lessons: users.map(({ name }) => name), ...(gone && { fact: true as const }) };
}

function sentence(broken: Broken, base: CourseReading): string {
    const { programme } = base;
    const { kind, about, behind, lessons, users = [], later, does, gone, stays, asked } = broken;
    const who = inWords(lessons);
    const verb = (one: string, several: string): string => (lessons.length === 1 ? one : several);
    const objective = quoted(programme.objectives.get(about)?.title ?? about);
    const lesson = quoted(programme.lessons.get(about)?.title ?? about);
    const isWaitedFor = later?.name === about || later?.origins.includes(about);
    const afterwards = later && quoted(later.sheet.title);
    switch (kind) {
        case 'no-longer-introduced': return gone
            ? `${objective} is no longer taught: no lesson that is left introduces, practises or checks it.`
            : `No lesson introduces ${objective}${base.introduced.has(about) ? ' any more' : ''}, but ${inWords(users)} ${users.length === 1 ? 'asks' : 'ask'} for it.`;
        case 'no-longer-checked': return `No lesson checks ${objective} any more, so nobody finds out whether the children have got it.`;
        case 'practised-too-early': return `${who} ${verb(does ?? 'practises', 'ask for')} ${objective}, which ${afterwards} now introduces only later.`;
        case 'prerequisite-left-out': return `${who} ${verb('follows', 'follow')} ${lesson}, which is ${base.lastOf.has(about) ? 'left out' : 'not taught in this course'}.`;
        case 'prerequisite-later': return stays ? `${who} ${verb('follows', 'follow')} ${lesson}, which is therefore still taught where it was.`
            : `${who} ${verb('follows', 'follow')} ${lesson}, which now comes later${isWaitedFor ? `, so ${verb('it is', 'they are')} taught only after that` : ''}.`;
        case 'word-not-taught': return `${who} ${verb('uses', 'use')} the word ${quoted(inPlainWords(about))}, which ${later ? `${afterwards} now teaches only later` : 'no lesson teaches any more'}.`;
        case 'builds-on-later': return `${quoted(programme.objectives.get(behind ?? '')?.title ?? '')} builds on ${objective}, which ${later ? `${afterwards} now introduces only later` : asked ? 'no lesson introduces any more' : 'is no longer taught'}.`;
    }
}

function aboutOf({ kind, about }: Broken, base: CourseReading): Consequence['about'] {
    const { programme } = base;
    if (kind === 'word-not-taught') {
        const taught = [base.taughtWords.get(about)?.sheet, ...programme.lessons.values()].find(sheet => sheet?.words.some(({ name }) => name === about));
        const word = taught?.words.find(({ name }) => name === about);
        return { kind: 'word', name: about, title: inPlainWords(about), ...(taught && word && { place: { uri: taught.uri, range: word.at } }) };
    }
    const isLesson = kind === 'prerequisite-left-out' || kind === 'prerequisite-later';
    const sheet = isLesson ? programme.lessons.get(about) : programme.objectives.get(about);
    const place: Place | undefined = sheet && { uri: sheet.uri, range: sheet.at };
    return { kind: isLesson ? 'lesson' : 'objective', name: about, title: sheet?.title ?? about, ...(place && { place }) };
}

function inWords(lessons: readonly ReadLesson[]): string {
    const titles = lessons.map(({ sheet }) => quoted(sheet.title));
    return titles.length <= mostNamed ? listing(titles) : `${titles.slice(0, mostNamed - 1).join(', ')} and ${titles.length - mostNamed + 1} more lessons`;
}

function inPlainWords(name: string): string {
    return name.replaceAll('-', ' ');
}
