/** Builds sheets for tests as a file would declare them, each line at a place of its own. */
import { gatherProgramme, type Programme } from '@haversack/language/sheets/programme';
import type {
    AdaptationSheet, Amount, BookSheet, ClassSheet, CourseSheet, FileSheet, GameSheet, Held, KitSheet, LessonSheet, MaterialSheet, Mention,
    Need, PartSheet, Per, PrintSheet, Prose, Range, Step, StepWord, Weekday
} from '@haversack/language/sheets/sheet';

let line = 0;

export function range(): Range {
    line += 1;
    return { start: { line, character: 0 }, end: { line, character: 10 } };
}

export const uri = 'file:///demo/all.course';
export const mention = (name: string): Mention => ({ name, at: range() });
const titled = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1).replaceAll('-', ' ');
const declared = (name: string) => ({ name, title: titled(name), uri, at: range(), whole: range() });

/** "20", "150 g", "1 1/2 cup", "4 fl oz": number first, then an optional unit. */
export function amount(text: string): Amount {
    const parts = /^([\d./]+(?: \d+\/\d+)?)(?: (.+))?$/.exec(text);
    return { value: parts?.[1] ?? text, unit: parts?.[2], at: range() };
}

export function prose(text: string): Prose {
    const parts = text.split(/(\{[^}]+\})/).filter(Boolean)
        .map(part => (part.startsWith('{') ? { name: part.slice(1, -1), at: range() } : { text: part }));
    return { parts, at: range() };
}

export const step = (word: StepWord, text: string, under: Step[] = []): Step => ({ word, prose: prose(text), under, at: range() });

export function material(name: string, more: Partial<MaterialSheet> = {}): MaterialSheet {
    return { ...declared(name), kind: 'material', use: 'reusable', parts: [], packs: [], standIns: [], cautions: [], notes: [], ...more };
}
export const reusable = (name: string, more: Partial<MaterialSheet> = {}) => material(name, { use: 'reusable', ...more });
export const consumable = (name: string, more: Partial<MaterialSheet> = {}) => material(name, { use: 'consumable', ...more });
export const measured = (unit: string) => ({ measured: { unit, at: range() } });
export const counted = (one: string, many: string) => ({ counted: { one, many, at: range() } });
export const percent = (value: string) => ({ percent: value, at: range() });
export const days = (count: number) => ({ days: count, at: range() });
export const pack = (text: string, cost?: string) =>
    ({ amount: amount(text), cost: cost === undefined ? undefined : { value: cost, currency: 'USD', at: range() }, at: range() });

export const print = (name: string, pages = 1, twoSided = false): PrintSheet =>
    ({ ...declared(name), kind: 'print', pages, twoSided, cautions: [], notes: [] });
export const book = (name: string, more: Partial<BookSheet> = {}): BookSheet => ({ ...declared(name), kind: 'book', notes: [], ...more });
export const game = (name: string, needs: Need[], players?: [number, number?], more: Partial<GameSheet> = {}): GameSheet => ({
    ...declared(name), kind: 'game', needs, steps: [], cautions: [],
    players: players && { from: players[0], to: players[1], at: range() }, ...more
});
export const held = (name: string, text?: string, arriving?: string): Held => ({
    thing: mention(name), amount: text === undefined ? undefined : amount(text),
    arriving: arriving === undefined ? undefined : { date: arriving, at: range() }, at: range()
});
export const kit = (name: string, ...holds: [string, string?][]): KitSheet =>
    ({ ...declared(name), kind: 'kit', holds: holds.map(([thing, text]) => held(thing, text)), notes: [] });

const whos: Record<string, Per> = { learner: { who: 'learner' }, pair: { who: 'pair' }, adult: { who: 'adult' }, class: { who: 'class' }, group: { who: 'group' } };

/** `need('gram-cube', '20', 'pair')`; "a or b" and "cards (ones, tens)" as in the language; `per` "group of 3" too. */
export function need(things: string, text?: string, per?: string, more: Partial<Need> = {}): Need {
    const options = things.split(' or ').map(option => {
        const [, name = option, parts] = /^(\S+?)(?: \((.+)\))?$/.exec(option) ?? [];
        return { thing: mention(name), parts: parts?.split(', ').map(mention) ?? [] };
    });
    const size = /^group of (\d+)$/.exec(per ?? '')?.[1];
    return {
        options, optional: false, at: range(),
        amount: text === undefined ? undefined : amount(text),
        per: size === undefined ? whos[per ?? ''] : { who: 'group', size: Number(size) },
        ...more
    };
}

export function part(kind: PartSheet['kind'], name: string, more: Partial<PartSheet> = {}): PartSheet {
    return { kind, name, title: titled(name), at: range(), head: range(), whole: range(), minutes: 10, steps: [], needs: [], cautions: [], ...more };
}
export const activity = (name: string, needs: Need[] = [], more: Partial<PartSheet> = {}) => part('activity', name, { needs, ...more });

export function lesson(name: string, needs: Need[] = [], parts: PartSheet[] = [], more: Partial<LessonSheet> = {}): LessonSheet {
    return {
        ...declared(name), kind: 'lesson', draft: false, steps: [], follows: [], introduces: [], practises: [], checks: [],
        needs, notNeeded: [], words: [], cautions: [], parts, ...more
    };
}

export function course(name: string, lessons: string[], more: Partial<CourseSheet> = {}): CourseSheet {
    return { ...declared(name), kind: 'course', uses: [], units: [{ ...declared('unit'), lessons: lessons.map(mention) }], ...more };
}

export function klass(name: string, teaches: string | undefined, learners: number | undefined, more: Partial<ClassSheet> = {}): ClassSheet {
    return {
        ...declared(name), kind: 'class', teaches: teaches === undefined ? undefined : mention(teaches),
        learners: learners === undefined ? undefined : { count: learners, at: range() },
        sections: [], kits: [], onHand: [], onOrder: [], meets: [], fixed: [], sharesWith: [], off: [], offFrom: [], present: [], log: [], notes: [], ...more
    };
}
export const meets = (...names: Weekday[]) => names.map(day => ({ day, at: range() }));
export const on = (date: string) => ({ date, at: range() });
export const off = (from: string, to?: string, title?: string) => ({ from: on(from), to: to === undefined ? undefined : on(to), title, at: range() });
export const section = (name: string, learners?: number, clock?: string, more: Partial<ClassSheet['sections'][number]> = {}) =>
    ({ name, title: titled(name), at: range(), learners, clock, ...more });

export function adaptation(name: string, more: Partial<AdaptationSheet> = {}): AdaptationSheet {
    return { ...declared(name), kind: 'adaptation', changes: [{ does: 'skip lesson', lesson: mention('l'), head: range(), at: range() }], notes: [], ...more };
}

type Declaration = AdaptationSheet | MaterialSheet | PrintSheet | BookSheet | GameSheet | KitSheet | LessonSheet | CourseSheet | ClassSheet;

export function file(...declarations: Declaration[]): FileSheet {
    const of = <K extends Declaration['kind']>(kind: K) => declarations.filter((d): d is Extract<Declaration, { kind: K }> => d.kind === kind);
    return {
        uri, materials: of('material'), prints: of('print'), books: of('book'), games: of('game'), kits: of('kit'),
        lessons: of('lesson'), objectives: [], frameworks: [], courses: of('course'), classes: of('class'), adaptations: of('adaptation'), unreadable: []
    };
}
export const programme = (...declarations: Declaration[]): Programme => gatherProgramme([file(...declarations)]);
