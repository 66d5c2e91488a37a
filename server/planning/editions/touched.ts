import { lessonsBrought, lessonsChanged, partsNamed } from '@haversack/language/sheets/adaptation-names';
import type { AdaptationSheet, PartMention, WrittenChange } from '@haversack/language/sheets/adaptation-sheet';
import { thingNamed } from '@haversack/language/sheets/programme';
import type { LessonSheet, Mention, Need, PartSheet, Place, Prose, Range } from '@haversack/language/sheets/sheet';
import { quoted } from '@haversack/language/facts/wording';
import type { Pair } from './alike.js';
import type { TitlesOfChange } from './change-line.js';
import type { CourseEditions } from './course-editions.js';
import type { Matched } from './matched.js';
import { partTitle } from '../part-title.js';
import { flatSteps, placeIn } from './plain.js';

/** A lesson that a change names, on either side. Both are absent where neither edition has one of that name. */
export interface FoundLesson {
    name: string;
    old?: LessonSheet;
    new?: LessonSheet;
    pair?: Pair<LessonSheet>;
}

export interface FoundPart {
    lesson: FoundLesson;
    name: string;
    old?: PartSheet;
    new?: PartSheet;
    pair?: Pair<PartSheet>;
    /** The lesson of the new edition that it stands in now, where that is another. */
    nowIn?: LessonSheet;
}

/**
 * What one change of an adaptation names, found in both editions. A name means what the old edition calls so; one that the old edition
 * does not know has been written for the new one.
 */
export class Touched {
    /** Names that are written otherwise now, at their places. */
    readonly renames: { at: Range; text: string }[] = [];
    /** Places of names that the old edition knows and the new one does not. */
    readonly former: Range[] = [];
    /** What stands elsewhere now though it is the same, in sentences. */
    readonly elsewhere: string[] = [];
    /** Where the first part that it names stands, or else the first lesson. */
    readonly places: { old?: Place; new?: Place } = {};
    private readonly calls = new Map<Mention, string>();
    private readonly brought: ReadonlySet<string>;

    constructor(readonly course: CourseEditions, adaptation: AdaptationSheet, change: WrittenChange) {
        this.brought = new Set(adaptation.changes.flatMap(one => lessonsBrought(one).map(({ name }) => name)));
        for (const mention of partsNamed(change)) this.notePartPlaces(mention);
        for (const mention of [...lessonsChanged(change), ...lessonsBrought(change)]) this.noteLesson(mention);
        for (const mention of partsNamed(change)) this.notePart(mention);
        if (change.does === 'split lesson') this.notePart({ lesson: change.lesson, part: change.after, at: change.after.at });
        if (change.does === 'add to lesson' && change.anchor) this.notePart({ lesson: change.lesson, part: change.anchor, at: change.anchor.at });
        if (change.does === 'swap thing') {
            for (const mention of [change.thing, change.forThing]) this.callThing(mention);
            if (change.within?.part) this.notePart({ lesson: change.within.lesson, part: change.within.part, at: change.within.part.at });
        }
        if (change.does === 'add to lesson' || change.does === 'add to activity') this.noteAdded(change);
        if (change.because) this.noteProse(change.because);
    }

    get matched(): Matched {
        return this.course.matched;
    }

    called(mention: Mention): string {
        return this.calls.get(mention) ?? mention.name;
    }

    lesson({ name }: Mention): FoundLesson {
        const pair = this.matched.lessonPair(name);
        if (pair) return { name, old: pair.old, new: pair.new, pair };
        const old = this.matched.old.lessons.get(name);
        return old ? { name, old } : { name, new: this.matched.now.lessons.get(name) };
    }

    part({ lesson: lessonMention, part: { name } }: PartMention): FoundPart {
        const lesson = this.lesson(lessonMention);
        const found = (parts: readonly PartSheet[] | undefined): PartSheet | undefined => parts?.find(part => part.name === name);
        const old = found(lesson.old?.parts);
        if (!old || !lesson.pair) return { lesson, name, old, new: found(lesson.new?.parts) };
        const pair = this.matched.partsOf(lesson.pair).pairs.find(one => one.old === old);
        if (pair) return { lesson, name, old, new: pair.new, pair };
        const there = this.course.wandered.find(one => one.pair.old === old);
        return there ? { lesson, name, old, new: there.pair.new, pair: there.pair, nowIn: there.to } : { lesson, name, old };
    }

    /** Whether the course teaches it: on the old side, and on the new side. */
    isTaught({ old, new: now, name }: FoundLesson): { before: boolean; after: boolean } {
        const brought = this.brought.has(name);
        return { before: brought || this.course.before.includes(old!), after: brought || this.course.after.includes(now!) };
    }

    /** The thing's name in the new edition, where the old one has it. */
    newThing(name: string): string {
        return this.matched.newThing(name);
    }

    readonly titles: TitlesOfChange = {
        lesson: name => {
            const { old, new: now } = this.lesson({ name, at: nowhere });
            return (now ?? old)?.title ?? name;
        },
        part: mention => {
            const { old, new: now, name } = this.part(mention);
            return now ? partTitle(this.matched.now, now) : old ? partTitle(this.matched.old, old) : name;
        },
        thing: name => {
            const title = this.matched.titleIn('new')(this.newThing(name));
            return title === this.newThing(name).replaceAll('-', ' ') ? this.matched.titleIn('old')(name) : title;
        }
    };

    private call(mention: Mention, name: string): void {
        if (mention.name === name || this.calls.has(mention)) return;
        this.calls.set(mention, name);
        this.renames.push({ at: mention.at, text: name });
    }

    private callThing(mention: Mention): void {
        const { old, now } = this.matched;
        this.call(mention, this.newThing(mention.name));
        if (thingNamed(old, mention.name) && !thingNamed(now, mention.name)) this.noteFormer(mention);
    }

    private noteFormer({ at }: Mention): void {
        if (!this.former.includes(at)) this.former.push(at);
    }

    private noteLesson(mention: Mention): void {
        const found = this.lesson(mention);
        if (found.old && !this.matched.now.lessons.has(mention.name)) this.noteFormer(mention);
        if (found.new) this.call(mention, found.new.name);
        this.notePlaces(found.old && placeIn(found.old.uri, found.old.at), found.new && placeIn(found.new.uri, found.new.at));
        if (found.pair && found.old!.name !== found.new!.name) this.elsewhere.push(renamed(found.old!, found.new!));
    }

    private notePartPlaces(mention: PartMention): void {
        const { lesson, old, new: now, nowIn } = this.part(mention);
        this.notePlaces(old && lesson.old && placeIn(old.uri ?? lesson.old.uri, old.at), now && placeIn(now.uri ?? (nowIn ?? lesson.new)?.uri ?? '', now.at));
    }

    private notePart(mention: PartMention): void {
        const { lesson, old, new: now, nowIn } = this.part(mention);
        if (lesson.old && !this.matched.now.lessons.has(mention.lesson.name)) this.noteFormer(mention.lesson);
        if (old && !lesson.new?.parts.some(({ name }) => name === old.name)) this.noteFormer(mention.part);
        const home = nowIn ?? lesson.new;
        if (home) this.call(mention.lesson, home.name);
        if (!now || !old) return;
        this.call(mention.part, now.name);
        const title = partTitle(this.matched.now, now);
        if (nowIn) this.elsewhere.push(`${quoted(title)} now stands in ${quoted(nowIn.title)}`);
        else if (old.name !== now.name) this.elsewhere.push(renamed({ name: old.name, title: partTitle(this.matched.old, old) }, { name: now.name, title }));
    }

    private notePlaces(old: Place | undefined, now: Place | undefined): void {
        this.places.old ??= old;
        this.places.new ??= now;
    }

    private noteAdded({ added }: Extract<WrittenChange, { does: 'add to lesson' | 'add to activity' }>): void {
        const needs = (list: readonly Need[]): void => {
            for (const need of list) for (const { thing } of need.options) this.callThing(thing);
        };
        for (const mention of [...added.introduces, ...added.practises, ...added.checks]) this.call(mention, this.matched.newObjective(mention.name));
        needs(added.needs);
        for (const part of added.parts) needs(part.needs);
        for (const step of [...flatSteps(added.steps), ...added.parts.flatMap(part => flatSteps(part.steps))]) this.noteProse(step.prose);
    }

    private noteProse({ parts }: Prose): void {
        for (const part of parts) if ('name' in part) this.call(part, this.matched.newName(part.name));
    }
}

function renamed(old: { name: string; title: string }, now: { name: string; title: string }): string {
    return old.title === now.title ? `${quoted(now.title)} is now written as ${now.name}, not ${old.name}` : `${quoted(old.title)} (${old.name}) is now ${quoted(now.title)} (${now.name})`;
}

const nowhere: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

