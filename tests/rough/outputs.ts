/** Everything that the tool writes about a programme, as the command line and the preview write it. */
import { scheduleCalendar, sectionHours, withoutDates } from '@haversack/server/exports/calendar';
import { briefJson } from '@haversack/server/exports/brief-json';
import { coverageMarkdown } from '@haversack/server/exports/coverage-markdown';
import { coverageText } from '@haversack/server/exports/coverage-text';
import { editionMarkdown } from '@haversack/server/exports/edition-markdown';
import { editionText } from '@haversack/server/exports/edition-text';
import { figuresJson } from '@haversack/server/exports/json';
import { scheduleMarkdown } from '@haversack/server/exports/schedule-markdown';
import { scheduleText } from '@haversack/server/exports/schedule-text';
import { shoppingList } from '@haversack/server/exports/shopping-list';
import { suppliesMarkdown } from '@haversack/server/exports/supplies-markdown';
import { suppliesText } from '@haversack/server/exports/supplies-text';
import type { Programme } from '@haversack/language/sheets/programme';
import { changesMarkdown } from '@haversack/server/brief/changes/markdown';
import { changesText } from '@haversack/server/brief/changes/text';
import { printScript } from '@haversack/server/brief/print-at-once';
import { briefMarkdown } from '@haversack/server/brief/markdown';
import { practiceSheetMarkdown } from '@haversack/server/brief/practice-sheet/markdown';
import { practiceSheetText } from '@haversack/server/brief/practice-sheet/text';
import { proseOf } from '@haversack/server/brief/prose-in-words';
import { notesMarkdown } from '@haversack/server/brief/speaking/markdown';
import { notesText } from '@haversack/server/brief/speaking/text';
import { termMarkdown } from '@haversack/server/brief/term/markdown';
import { newPlanningCache } from '@haversack/server/planning/cache';
import { planChanges } from '@haversack/server/planning/changes';
import { planCoverage } from '@haversack/server/planning/coverage';
import { compareEditions } from '@haversack/server/planning/editions/compare-editions';
import { planLedger } from '@haversack/server/planning/ledger';
import { planPracticeSheet, practicesOf } from '@haversack/server/planning/practice';
import { planSchedule } from '@haversack/server/planning/schedule';
import { speakingNotes } from '@haversack/server/planning/speaking';
import { planSupplies } from '@haversack/server/planning/supplies/plan-supplies';
import { planTerm } from '@haversack/server/planning/term';
import { planWeek } from '@haversack/server/planning/week';
import { changesPage } from '../../server/brief/changes/page.js';
import { changesSections } from '../../server/brief/changes/sections.js';
import { editionPage } from '../../server/brief/editions/page.js';
import { briefPage } from '../../server/brief/page.js';
import { practiceSheetPage } from '../../server/brief/practice-sheet/page.js';
import { briefSections } from '../../server/brief/sections.js';
import { termPage } from '../../server/brief/term/page.js';
import { termSections } from '../../server/brief/term/sections.js';

export interface Output {
    what: string;
    /** Of a page to print, the script that prints is left out of the text, and must have been there once. */
    kind: 'html' | 'sections' | 'md' | 'text' | 'json' | 'csv' | 'ics';
    /** Sections of the preview come as one text, one after another. */
    text: string;
}

const today = '2026-09-01';
const root = 'file:///';

/** A second script stays in the page, where the scan finds it. */
function withoutPrintScript(page: string): string {
    const tag = `<script>${printScript}</script>`;
    const at = page.lastIndexOf(tag);
    return at < 0 ? '<script>the page to print has no script that prints</script>' : page.slice(0, at) + page.slice(at + tag.length);
}

/** A week's brief and notes, the term, the changes, coverage, supplies, practice and a comparison with another edition. */
export function outputsOf(programme: Programme, other?: Programme, wanted: { class?: string; week?: number } = {}): Output[] {
    const whose = { class: wanted.class };
    const outputs: Output[] = [];
    const add = (what: string, kind: Output['kind'], text: string): void => { outputs.push({ what, kind, text }); };
    const schedule = planSchedule(programme, whose);
    const term = planTerm(programme, whose, { schedule, today, cache: newPlanningCache() });
    add('term', 'html', termPage(term, { root }));
    add('term to print', 'html', withoutPrintScript(termPage(term, { root, printing: true, paper: 'a4' })));
    add('term', 'sections', termSections(term, { preview: true }).map(({ html }) => html).join(''));
    add('term', 'md', termMarkdown(term));
    add('term', 'json', figuresJson('haversack-term', { term }));
    add('schedule', 'md', scheduleMarkdown(schedule, 'Title'));
    add('schedule', 'text', scheduleText(schedule, 'Title'));
    const supplies = planSupplies(programme, whose, { schedule, today });
    if (withoutDates(schedule) === undefined) {
        const sections = programme.classes.get(schedule.class ?? '')?.sections ?? [];
        add('schedule', 'ics', scheduleCalendar(schedule, { title: programme.courses.get(schedule.course ?? '')?.title ?? 'All', orders: supplies.orders, now: '2026-09-01T08:00:00Z', hours: sectionHours(sections) }));
    }
    add('supplies', 'csv', shoppingList(supplies));
    add('supplies', 'md', suppliesMarkdown(supplies));
    add('supplies', 'text', suppliesText(supplies, { records: true }));
    const coverage = planCoverage(programme, whose, { schedule });
    add('coverage', 'md', coverageMarkdown(coverage));
    add('coverage', 'text', coverageText(coverage));
    const changes = planChanges(programme, whose, planLedger(programme, whose, { cache: newPlanningCache(), today }));
    add('changes', 'html', changesPage(changes, { root }));
    add('changes to print', 'html', withoutPrintScript(changesPage(changes, { root, printing: true })));
    add('changes', 'sections', changesSections(changes, { preview: true }).map(({ html }) => html).join(''));
    add('changes', 'md', changesMarkdown(changes));
    add('changes', 'text', changesText(changes));
    const { weeks } = schedule;
    if (weeks.length > 0) {
        const week = Math.min(wanted.week ?? 1, weeks.length);
        const brief = planWeek(programme, { ...whose, week }, { schedule, today });
        add('brief', 'html', briefPage(brief, { root }));
        add('brief to print', 'html', withoutPrintScript(briefPage(brief, { root, printing: true, paper: 'letter' })));
        add('brief', 'sections', briefSections(brief, { preview: true }).map(({ html }) => html).join(''));
        add('brief', 'md', briefMarkdown(brief));
        add('brief', 'json', briefJson(brief));
        const notes = speakingNotes(brief, { inWords: proseOf(brief) });
        add('notes', 'md', notesMarkdown(notes));
        add('notes', 'text', notesText(notes));
    }
    const practised = [...programme.lessons.values()].find(lesson => practicesOf(lesson).length > 0);
    if (practised) {
        const sheet = planPracticeSheet(practised, { more: 3 });
        for (const key of [false, true]) {
            add('practice', 'html', practiceSheetPage(sheet, { key, root }));
            add('practice to print', 'html', withoutPrintScript(practiceSheetPage(sheet, { key, root, printing: true })));
            add('practice', 'md', practiceSheetMarkdown(sheet, key));
            add('practice', 'text', practiceSheetText(sheet, key));
        }
        add('practice', 'json', figuresJson('haversack-practice', { practice: sheet }));
    }
    if (other) {
        const comparison = compareEditions(other, programme, {});
        const names = { old: { name: 'old', root }, new: { name: 'new', root } };
        add('comparison', 'html', editionPage(comparison, names));
        add('comparison', 'md', editionMarkdown(comparison, names));
        add('comparison', 'text', editionText(comparison, names));
        add('comparison', 'json', figuresJson('haversack-comparison', { comparison }));
    }
    return outputs;
}
