import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { ProgrammeKey } from '@haversack/language/linking/programmes';
import type { ClassSheet } from '@haversack/language/sheets/sheet';
import { AdaptedCourses } from '../plan-checks/adapted-courses.js';
import { classTermOf } from '../plan-checks/plan-term.js';
import { plannedClasses, type ClassTerm, type Term } from '../plan-checks/term.js';
import { courseMemoOf } from '../planning/ledger.js';
import type { HaversackServerServices } from './services.js';

/** The figures of the terms of a programme's classes as the checks, the hover, lenses and hints read them: kept until a sheet changes. */
export class Terms {
    private looked: readonly ClassTerm[] = [];
    private view: ProgrammeView | undefined;
    private today = '';
    private terms = new Map<string, ClassTerm>();

    constructor(private readonly services: HaversackServerServices, private readonly key: ProgrammeKey) {}

    /** Classes of which a plan says something certain, in the order of the files. */
    classes(): ClassSheet[] {
        return plannedClasses(this.services.sheets.viewAt(this.key));
    }

    of(group: ClassSheet): ClassTerm {
        this.forgetWhatChanged();
        let term = this.terms.get(group.name);
        if (!term) {
            const { plans, sheets } = this.services;
            term = classTermOf(group, sheets.viewAt(this.key).programme, this.today, plans.at(this.key).cache);
            this.terms.set(group.name, term);
        }
        return term;
    }

    all(): Term {
        const { plans, sheets, today: { date } } = this.services;
        const adapted = new AdaptedCourses(sheets.viewAt(this.key), date, courseMemoOf(plans.at(this.key).cache));
        return { today: date, classes: this.classes().map(group => this.of(group)), adapted, former: this.services.formerEditions };
    }

    /** For a client that asks again when told to, those of the last look, so that nothing it asks waits for a plan; else those of now. */
    latest(asksAgain: boolean): readonly ClassTerm[] {
        return asksAgain ? this.looked : this.all().classes;
    }

    /** The plan has been looked at as a whole. */
    lookedAt(term: Term): void {
        this.looked = term.classes;
    }

    private forgetWhatChanged(): void {
        const { sheets, today: { date } } = this.services;
        const view = sheets.viewAt(this.key);
        if (this.view === view && this.today === date) return;
        this.view = view;
        this.today = date;
        this.terms = new Map();
    }
}
