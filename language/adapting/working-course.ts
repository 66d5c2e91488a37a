import type { AdaptationSheet, ChangeMark, PartMention, WrittenChange } from '../sheets/adaptation-sheet.js';
import { thingNamed, type Programme } from '../sheets/programme.js';
import type { CourseSheet, GameSheet, LessonSheet, Mention, PartSheet, Place, Range, ThingSheet } from '../sheets/sheet.js';
import { titleFromName } from '../sheets/titles.js';
import type { AppliedChange } from './adapted.js';
import { isUsedUp } from './exact-amounts.js';
import type { AdaptingMemo } from './memo.js';
import { quoted } from '../facts/wording.js';
import { type Titles } from './words.js';

/** Of a lesson that is changed more often than anybody does, only so many steps on its way are kept: each is a whole lesson. */
const mostStepsKept = 200;

/** A line of the course as it is taught now. */
export interface Taught {
    name: string;
    mention: Mention;
    /** Lessons that it was made of, as the course calls them. */
    madeOf: readonly string[];
    /** Of a piece: the title of the whole lesson. */
    whole?: string;
}

/** One change with where it stands. */
export interface Line {
    adaptation: AdaptationSheet;
    change: WrittenChange;
    place: Place;
}

/** What came of a change: lessons of the adapted course that it touched, or why it changes nothing. */
export type Outcome = { touched: string[]; says?: string } | Idle;

export interface Idle {
    idle: string;
    /** The name of the line that it is about, where it is about one. */
    at?: Range;
    unknown?: boolean;
}

/** Where a part stands now. */
export interface FoundPart {
    lesson: string;
    index: number;
    part: PartSheet;
}

/** A course while changes are made to it, one after another. Nothing of the programme is changed in place. */
export class WorkingCourse implements Titles {
    /** By unit of the course; only `take` and `put` change it. */
    readonly units: Taught[][];
    private inOrder: readonly Taught[] | undefined;
    readonly changes: AppliedChange[] = [];
    readonly leftOut = new Map<string, AppliedChange>();
    /** Swaps of a thing everywhere, with the games that they change, for lessons and activities that come later. */
    readonly swaps: { line: Line; games: ReadonlySet<string> }[] = [];
    readonly games = new Map<string, GameSheet>();
    /** Lessons that are others than in the programme, by their name now. */
    readonly sheets = new Map<string, LessonSheet>();
    private readonly timesChanged = new Map<string, number>();

    constructor(readonly programme: Programme, readonly base: CourseSheet, readonly memo: AdaptingMemo) {
        this.units = base.units.map(({ lessons }) => lessons.map(mention => ({ name: mention.name, mention, madeOf: [mention.name] })));
    }

    /** True for what is gone after use. */
    readonly usedUp = (name: string): boolean => isUsedUp(this.thingNamed(name));

    /** What these lessons and their parts need. */
    thingsIn(sheets: readonly LessonSheet[]): (ThingSheet | undefined)[] {
        const names = new Set(sheets.flatMap(({ needs, parts }) => [...needs, ...parts.flatMap(part => part.needs)].flatMap(({ options }) => options.map(({ thing }) => thing.name))));
        return [...names].map(name => this.thingNamed(name));
    }

    /** Every lesson of the course in its order; one that the course names twice is there twice. */
    all(): readonly Taught[] {
        return (this.inOrder ??= this.units.flat());
    }

    sheet(name: string): LessonSheet | undefined {
        return this.sheets.get(name) ?? this.programme.lessons.get(name);
    }

    gameNamed(name: string): GameSheet | undefined {
        return this.games.get(name) ?? this.programme.games.get(name);
    }

    thingNamed(name: string): ThingSheet | undefined {
        return thingNamed(this.programme, name);
    }

    /** What is taught now of a lesson as the course calls it: nothing, itself, its pieces, or the lesson it is joined to. */
    meant(name: string): readonly Taught[] {
        return this.all().filter(({ madeOf }) => (madeOf.length === 1 ? madeOf[0] === name : madeOf.includes(name)));
    }

    /** Why nothing is taught of a lesson. */
    missing({ name, at }: Mention): Idle {
        if (!this.programme.lessons.has(name)) return { idle: `no lesson is called “${name}”`, unknown: true, at };
        const title = quoted(this.lesson(name));
        return { at, idle: this.leftOut.has(name) ? `another change already leaves out ${title}` : `the course ${quoted(this.base.title)} does not teach ${title}` };
    }

    /** The part as it stands now, several where it was split; first at home, then wherever it was brought. */
    parts({ lesson, part }: Pick<PartMention, 'lesson' | 'part'>): FoundPart[] {
        const home = new Set(this.meant(lesson.name).map(({ name }) => name));
        const at = (names: Iterable<string>, fits: (sheet: LessonSheet, own: PartSheet) => boolean): FoundPart[] => [...names].flatMap(name => {
            const sheet = this.sheet(name);
            return sheet ? sheet.parts.flatMap((own, index) => (fits(sheet, own) ? [{ lesson: name, index, part: own }] : [])) : [];
        });
        const isIt = (sheet: LessonSheet, own: PartSheet): boolean => originsOf(own, sheet.name).some(from => from.lesson === lesson.name && from.part === part.name);
        const found = at(home, isIt);
        if (found.length > 0) return found;
        const taught = new Set(this.all().map(({ name }) => name));
        const elsewhere = at([...this.sheets.keys()].filter(name => taught.has(name)), isIt);
        return elsewhere.length > 0 ? elsewhere : at(home, (_, own) => own.name === part.name);
    }

    /** Why a part is not there. */
    missingPart({ lesson, part }: Pick<PartMention, 'lesson' | 'part'>): Idle {
        const whole = this.programme.lessons.get(lesson.name);
        if (!whole || this.meant(lesson.name).length === 0) return this.missing(lesson);
        const title = `${quoted(this.part({ lesson, part }))} of ${quoted(this.lesson(lesson.name))}`;
        if (whole.parts.some(({ name }) => name === part.name)) return { idle: `another change already leaves out ${title}`, at: part.at };
        return { at: part.at, idle: `${quoted(whole.title)} has no part “${part.name}”`, unknown: true };
    }

    /** Changes a lesson; `make` hangs on the lesson and the inputs alone. */
    change(name: string, inputs: readonly unknown[], make: (sheet: LessonSheet) => LessonSheet): boolean {
        const sheet = this.sheet(name);
        if (!sheet) return false;
        const before = this.timesChanged.get(name) ?? 0;
        this.timesChanged.set(name, before + 1);
        const made = before < mostStepsKept ? this.memo.of(sheet, inputs, () => make(sheet)) : make(sheet);
        if (made === sheet) return false;
        this.sheets.set(name, made);
        return true;
    }

    /** Takes lines of the course out, wherever they stand. */
    take(lines: ReadonlySet<Taught>): void {
        this.units.forEach((unit, i) => { if (unit.some(taught => lines.has(taught))) this.units[i] = unit.filter(taught => !lines.has(taught)); });
        this.inOrder = undefined;
    }

    /** Puts lines beside another; behind the last of several, before the first. */
    put(lines: readonly Taught[], side: 'after' | 'before', anchors: readonly Taught[]): void {
        const anchor = side === 'after' ? anchors.at(-1) : anchors[0];
        for (const unit of this.units) {
            const index = anchor ? unit.indexOf(anchor) : -1;
            if (index < 0) continue;
            unit.splice(side === 'after' ? index + 1 : index, 0, ...lines);
            this.inOrder = undefined;
            return;
        }
    }

    /** What earlier changes touched is called otherwise now. */
    renamed(from: string, to: readonly string[]): void {
        for (const change of this.changes) {
            if (change.touched.includes(from)) change.touched = [...new Set(change.touched.flatMap(name => (name === from ? to : [name])))];
        }
    }

    /** A change that was made before touches a lesson that came later. */
    reaches(change: WrittenChange, name: string, says: string): void {
        const applied = this.changes.find(other => other.change === change);
        if (!applied) return;
        delete applied.idle;
        delete applied.idleAt;
        Object.assign(applied, { says, touched: [...new Set([...applied.touched, name])] });
    }

    lesson(name: string): string {
        return this.programme.lessons.get(name)?.title ?? this.sheet(name)?.title ?? titleFromName(name);
    }

    part({ lesson, part }: Pick<PartMention, 'lesson' | 'part'>): string {
        const own = this.programme.lessons.get(lesson.name)?.parts.find(({ name }) => name === part.name) ?? this.parts({ lesson, part })[0]?.part;
        return own ? this.partTitle(own) : this.programme.games.get(part.name)?.title ?? titleFromName(part.name);
    }

    /** A game is called as the game is. */
    partTitle(part: PartSheet): string {
        return (part.kind === 'game' ? this.gameNamed(part.name)?.title : undefined) ?? part.title;
    }

    thing(name: string): string {
        return this.thingNamed(name)?.title ?? titleFromName(name);
    }

    objective(name: string): string {
        return this.programme.objectives.get(name)?.title ?? titleFromName(name);
    }
}

/** What a part was written as. */
export function originsOf(part: PartSheet, lesson: string): { lesson: string; part: string }[] {
    return part.from ?? [{ lesson, part: part.name }];
}

export function markOf({ change, place, adaptation }: Line, says: string): ChangeMark {
    return { says, ...(change.because && { because: change.because }), place, adaptation: { name: adaptation.name, title: adaptation.title } };
}

/** With one mark more. */
export function marked<T extends { adapted?: ChangeMark[] }>(sheet: T, mark: ChangeMark): T {
    return { ...sheet, adapted: [...sheet.adapted ?? [], mark] };
}

/** A line brought from one file into a sheet of another says so. */
export function fromFile<T extends { uri?: string }>(line: T, from: string, into: string): T {
    const uri = line.uri ?? from;
    if (uri === into && line.uri === undefined) return line;
    return uri === into ? without(line, 'uri') as T : { ...line, uri };
}

/** The same without some of what it may say. */
export function without<T extends object, K extends keyof T>(sheet: T, ...keys: K[]): Omit<T, K> {
    const rest: Partial<T> = { ...sheet };
    for (const key of keys) delete rest[key];
    return rest as Omit<T, K>;
}
