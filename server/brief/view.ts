/** What every piece of the brief's HTML needs to know about the whole: options, titles of names, anchors, addresses. */
import type { LessonFigures, NameFigures, Place, ThingFigures, WeekBrief } from '../planning/figures.js';
import { shortTitle, titleInSentence, type SentencePlace } from './title-in-sentence.js';

export interface BriefOptions {
    /** In the preview every line's title or step word is a button that leads back to its source, and addresses are whole. */
    preview?: boolean;
    /** Address of the programme's folder; outside the preview places are given relative to it, else by file name only. */
    root?: string;
}

export interface View {
    preview: boolean;
    /** The title a name in braces stands for; the name itself where it is unknown. */
    titleOf(name: string): string;
    /** The title as it reads inside a sentence. */
    inSentence(name: string, place?: SentencePlace): string;
    /** Where a name is declared. */
    placeOf(name: string): Place | undefined;
    factOf(name: string): string | undefined;
    /** Id of the element of this brief that tells most about a name. */
    anchorOf(name: string): string | undefined;
    /** Id of a line of the fetch list; a name that stands there twice has one id, at its first line. */
    thingId(thing: ThingFigures): string | undefined;
    /** Unique id of the section of the lesson at this index of the week. */
    lessonId(index: number): string;
    address(place: Place): string;
    /** "weighing.lesson, line 12", for people. */
    addressInWords(place: Place): string;
    /** What the class is called inside a sentence ("Harbour co-op"); absent where there is none. */
    className?: string;
}

export function makeView(brief: WeekBrief, options: BriefOptions): View {
    const lessonIds = uniqueIds(brief.lessons.map(lesson => `lesson-${asId(lesson.name)}`));
    const lessons = new Map<string, string>();
    brief.lessons.forEach((lesson: LessonFigures, index) => {
        if (!lessons.has(lesson.name)) lessons.set(lesson.name, lessonIds[index] ?? '');
    });
    const things = new Map<string, ThingFigures>();
    for (const thing of brief.fetch.flatMap(group => group.things)) {
        if (!things.has(thing.name)) things.set(thing.name, thing);
    }
    const thingId = (thing: ThingFigures | undefined) =>
        thing && things.get(thing.name) === thing ? `thing-${asId(thing.name)}` : undefined;
    const isLesson = (name: string): boolean => Object.hasOwn(brief.names, name) && brief.names[name]?.kind === 'lesson';
    return {
        ...viewOfNames(brief.names, brief.class?.title, options),
        anchorOf: name => (isLesson(name) ? lessons.get(name) : thingId(things.get(name))),
        thingId,
        lessonId: index => lessonIds[index] ?? `lesson-${index}`
    };
}

/** For a page that tells of names, not of a week. */
export function viewOfNames(names: Record<string, NameFigures>, classTitle: string | undefined, options: BriefOptions): View {
    const known = (name: string): NameFigures | undefined => (Object.hasOwn(names, name) ? names[name] : undefined);
    return {
        ...viewWithoutNames(options),
        titleOf: name => known(name)?.title ?? name,
        inSentence: (name, place) => titleInSentence(name, known(name)?.title ?? name, known(name)?.kind, place),
        placeOf: name => known(name)?.place,
        factOf: name => known(name)?.fact,
        className: classTitle === undefined ? undefined : shortTitle(classTitle)
    };
}

/** For figures that hold every title themselves: no name in braces stands in them. */
export function viewWithoutNames(options: BriefOptions): View {
    return {
        preview: options.preview === true,
        titleOf: name => name,
        inSentence: name => name,
        placeOf: () => undefined,
        factOf: () => undefined,
        anchorOf: () => undefined,
        thingId: () => undefined,
        lessonId: index => `lesson-${index}`,
        address: place => (options.preview ? place.uri : shortAddress(place.uri, options.root)),
        addressInWords: place => `${readable(shortAddress(place.uri, options.root))}, line ${place.range.start.line + 1}`
    };
}

/** An id from any text: what is not a letter, digit or hyphen becomes its code in hexadecimal. */
export function asId(text: string): string {
    return text.replace(/[^A-Za-z0-9-]/gu, character => `_${(character.codePointAt(0) ?? 0).toString(16)}`);
}

function uniqueIds(ids: string[]): string[] {
    const taken = new Set<string>();
    return ids.map(id => {
        let unique = id;
        for (let again = 2; taken.has(unique); again++) unique = `${id}_${again}`;
        taken.add(unique);
        return unique;
    });
}

/** A shared page must not tell where on somebody's machine the programme lies. */
function shortAddress(uri: string, root: string | undefined): string {
    const folder = root === undefined || root.endsWith('/') ? root : `${root}/`;
    return folder && uri.startsWith(folder) ? uri.slice(folder.length) : uri.slice(uri.lastIndexOf('/') + 1);
}

function readable(address: string): string {
    try {
        return decodeURIComponent(address);
    } catch {
        return address;
    }
}
