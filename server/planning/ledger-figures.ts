import type { Place, Prose } from '@haversack/language/sheets/sheet';
import type { MoneyFigure } from './supply-figures.js';
import type { Figure } from './figure.js';
import type { NameFigures } from './figures.js';

/** What an adaptation does to a class's term: each change with its consequences, and the figures before and after. */
export interface LedgerFigures {
    course: { name: string; title: string; place: Place };
    class?: { name: string; title: string; place: Place };
    adaptations: { name: string; title: string; place: Place; edition?: string; notes?: Prose[] }[];
    changes: LedgerChange[];
    /** Those that no change brings about by itself. */
    otherConsequences: Consequence[];
    minutes: { before: number; after: number; lessons: MinutesChange[] };
    /** Meetings with a lesson, and the ISO date of the last one where there are dates. */
    meetings: { before: number; after: number; lastBefore?: string; lastAfter?: string };
    /** Over the whole term; things whose amount stays the same are left out. */
    supplies: SupplyChange[];
    /** For each currency in which one of the two sides has a price. */
    money: { currency: string; before?: MoneyFigure; after?: MoneyFigure; difference: string }[];
    /** Lessons of the adapted course in order, with what happened to each; those left out stand where they stood. */
    lessons: LessonChange[];
    assumptions: string[];
}

export interface LedgerChange {
    adaptation: { name: string; title: string };
    place: Place;
    says: string;
    because?: Prose;
    /** Why it changes nothing. */
    idle?: string;
    consequences: Consequence[];
    /** Of all lessons together, before this change and with it. */
    minutes?: { before: number; after: number };
}

export type ConsequenceKind =
    | 'no-longer-introduced' | 'no-longer-checked' | 'practised-too-early' | 'prerequisite-left-out' | 'prerequisite-later' | 'word-not-taught' | 'builds-on-later';

export interface Consequence {
    kind: ConsequenceKind;
    /** A whole sentence for a teacher: what is lost or broken, and where. */
    says: string;
    /** The objective, lesson or word it is about. */
    about: { kind: 'objective' | 'lesson' | 'word'; name: string; title: string; place?: Place };
    /** Names of lessons it shows in. */
    lessons: string[];
    /** Something to know and nothing to mend: an objective of which nothing is left. */
    fact?: true;
}

export interface MinutesChange {
    name: string;
    title: string;
    place: Place;
    /** Absent where the lesson is not taught on that side. */
    before?: number;
    after?: number;
}

export interface SupplyChange {
    name: string;
    title: string;
    place: Place;
    before?: Figure;
    after?: Figure;
    /** "no longer needed", "new", "40 fewer", "1.2 kg more". */
    difference: string;
}

export interface LessonChange {
    name: string;
    title: string;
    place: Place;
    happened: 'same' | 'left out' | 'changed' | 'moved' | 'new';
    /** What changed in it, in words. */
    says: string[];
}

/** What the page of changes shows: the ledger, or, where no adaptation applies, of what there would be one. */
export interface ChangesFigures {
    course?: { name: string; title: string; place: Place };
    class?: { name: string; title: string; place: Place };
    ledger?: LedgerFigures;
    /** A lesson of the course, for an example of what could be written. */
    example?: { name: string; title: string };
    /** Titles for every name that stands in braces in a reason. */
    names: Record<string, NameFigures>;
}
