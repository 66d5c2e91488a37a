import type { LangiumSharedServices } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import { isDate } from '@haversack/language/checks/dates';
import type { TermFigures } from '../planning/term-figures.js';
import { termMarkdown } from '../brief/term/markdown.js';
import { termPage } from '../brief/term/page.js';
import { termSections } from '../brief/term/sections.js';
import { termTitle } from '../brief/term/sentences.js';
import { scheduleCalendar, sectionHours, withoutDates } from '../exports/calendar.js';
import { figuresJson } from '../exports/json.js';
import { shoppingList } from '../exports/shopping-list.js';
import { termRequest, type BriefRefusal, type TermAnswer, type TermParams } from '../protocol/pages.js';
import { classAt, classNamed, declarationAt, folderOf, plansFor, problemsIn, unknownClass, withoutKnown } from './asked-for.js';
import { printKinds, printOptions } from './print-params.js';
import { isNumber, isText, isTexts, readParams } from './read-params.js';
import type { HaversackServerServices } from './services.js';

const kinds = { uri: isText, line: isNumber, class: isText, today: isText, known: isTexts, format: isText, before: isText, ...printKinds };

/** Answers the preview and the commands: the whole term of one class. */
export function addTermRequests(connection: Connection, shared: LangiumSharedServices, services: HaversackServerServices): void {
    connection.onRequest(termRequest, async (params: unknown): Promise<TermAnswer | BriefRefusal> => {
        await shared.workspace.WorkspaceManager.ready;
        return shared.workspace.WorkspaceLock.read(() => answerTerm(readParams<TermParams>(params, kinds), services));
    });
}

function answerTerm(params: TermParams, services: HaversackServerServices): TermAnswer | BriefRefusal {
    const plans = plansFor(params, services);
    const named = classNamed(params, plans, services);
    if (plans.current.programme.lessons.size === 0) return { refusal: 'There is no lesson in this folder yet, so there is no term to show.' };
    const unknown = unknownClass(named, plans);
    if (unknown) return unknown;
    const className = named ?? classAt(params, services);
    const today = params.today ?? services.today.date;
    if (!isDate(today)) return { refusal: `'${today}' is no date: write it as year-month-day.` };
    const term = plans.term(className, today);
    const refusal = params.format === 'ics' ? withoutDates(term.schedule) : undefined;
    if (refusal !== undefined) return { refusal };
    const whole = wholeFile(params, term, services);
    return {
        title: termTitle(term),
        sections: whole === undefined ? withoutKnown(termSections(term, { preview: true }), params.known) : [],
        text: whole,
        class: term.schedule.class,
        classes: plans.classes(),
        problems: problemsIn(params.uri, services),
        around: declarationAt(params, services)
    };
}

/** The term as a file of its own; undefined where sections are asked for. */
function wholeFile(params: TermParams, term: TermFigures, services: HaversackServerServices): string | undefined {
    const { schedule, supplies, coverage } = term;
    switch (params.format) {
        case 'html': return termPage(term, { root: folderOf(params, services), ...printOptions(params) });
        case 'md': return termMarkdown(term);
        case 'json': return figuresJson('haversack-term', { schedule, supplies, coverage });
        case 'csv': return shoppingList(supplies);
        case 'ics': return scheduleCalendar(schedule, {
            title: [term.course?.title, term.class?.title].filter(Boolean).join(', '), now: services.today.moment, orders: supplies.orders,
            before: params.before,
            hours: sectionHours(schedule.class === undefined ? [] : plansFor(params, services).current.programme.classes.get(schedule.class)?.sections ?? [])
        });
        default: return undefined;
    }
}
