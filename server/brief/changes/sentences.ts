/** Sentences that the page of changes, its Markdown and its text share, put together from finished figures. */
import type { ChangesFigures, Consequence, LedgerChange, LedgerFigures, LessonChange, MinutesChange } from '../../planning/ledger-figures.js';
import { joined } from '../change-words.js';
import { dayInWords } from '../days.js';
import { plural, sentence } from '../sentences.js';
import { changesWords, consequenceCounts, happenedWords, noLongerTaught } from './words.js';

export interface Finding {
    text: string;
    /** Id of the section that tells more. */
    section?: string;
}

/** "What is changed: Measure and Make, Harbour co-op, autumn" */
export function changesTitle(changes: ChangesFigures): string {
    const of = [changes.course?.title, changes.class?.title].filter(Boolean).join(', ');
    const title = changes.ledger ? changesWords.changes : changesWords.nothing;
    return of === '' ? title : `${title}: ${of}`;
}

/** "written for edition 2" */
export function writtenFor({ edition }: LedgerFigures['adaptations'][number]): string | undefined {
    return edition === undefined ? undefined : `written for edition ${edition}`;
}

/** What a teacher wants to know first, each in a sentence. */
export function summary(ledger: LedgerFigures): Finding[] {
    const idle = ledger.changes.filter(change => change.idle !== undefined).length;
    const found: (Finding | undefined)[] = [
        { text: lessonCounts(ledger.lessons), section: ledger.lessons.length > 0 ? 'changes-lessons' : undefined },
        { text: insteadOf(plural(ledger.minutes.after, 'minute'), 'of lessons', String(ledger.minutes.before), ledger.minutes.after === ledger.minutes.before) },
        { text: meetingsInWords(ledger.meetings) },
        { text: losses(ledger), section: allConsequences(ledger).length > 0 ? 'changes-made' : undefined },
        { text: supplyCounts(ledger.supplies), section: ledger.supplies.length > 0 ? 'changes-supplies' : undefined },
        ...ledger.money.map(money => ({ text: moneyInWords(money) })),
        idle > 0 ? { text: `${plural(idle, 'change')} ${idle === 1 ? 'has' : 'have'} no effect.` } : undefined
    ];
    return found.filter(finding => finding !== undefined);
}

/** "1 lesson left out, 2 changed, 1 moved; 9 as the course has them." */
function lessonCounts(lessons: readonly LessonChange[]): string {
    const count = (happened: LessonChange['happened']): number => lessons.filter(lesson => lesson.happened === happened).length;
    const told = (['left out', 'changed', 'moved', 'new'] as const).map(happened => [count(happened), happenedWords[happened]] as const).filter(([number]) => number > 0)
        .map(([number, words], index) => (index === 0 ? `${plural(number, 'lesson')} ${words}` : `${number} ${words}`));
    const same = count('same');
    if (told.length === 0) return `${plural(same, 'lesson')}, all as the course has them.`;
    return `${told.join(', ')}${same > 0 ? `; ${same} as the course has ${same === 1 ? 'it' : 'them'}` : ''}.`;
}

function insteadOf(after: string, of: string, before: string, same: boolean): string {
    return same ? `${after} ${of}, as before.` : `${after} ${of} instead of ${before}.`;
}

/** "22 meetings with a lesson instead of 24; the last on Thu 3 Dec 2026 instead of Thu 10 Dec 2026." */
function meetingsInWords({ before, after, lastBefore, lastAfter }: LedgerFigures['meetings']): string {
    const now = `${plural(after, 'meeting')} with a lesson`;
    if (lastAfter === undefined) return insteadOf(plural(after, 'meeting'), 'with a lesson', String(before), before === after);
    const last = `the last on ${dayInWords(lastAfter)}`;
    if (before === after && lastBefore === lastAfter) return `${now}, ${last}, as before.`;
    return `${now}${before === after ? ' as before' : ` instead of ${before}`}; ${last}${lastBefore === undefined ? '' : lastBefore === lastAfter ? ' as before' : ` instead of ${dayInWords(lastBefore)}`}.`;
}

function allConsequences({ changes, otherConsequences }: LedgerFigures): Consequence[] {
    return [...changes.flatMap(change => change.consequences), ...otherConsequences];
}

function losses(ledger: LedgerFigures): string {
    const all = allConsequences(ledger);
    if (all.length === 0) return 'Nothing is lost that a later lesson builds on.';
    const counted = new Map<readonly [string, string], Set<string>>();
    for (const consequence of all) {
        const words = consequence.fact ? noLongerTaught : consequenceCounts[consequence.kind];
        counted.set(words, (counted.get(words) ?? new Set()).add(subject(consequence)));
    }
    return sentence([...counted].map(([words, { size }]) => `${size} ${words[size === 1 ? 0 : 1]}`).join('; '));
}

/** One objective that is lost in two ways counts once. */
function subject({ about: { kind, name } }: Consequence): string {
    return `${kind} ${name}`;
}

function supplyCounts(supplies: LedgerFigures['supplies']): string {
    if (supplies.length === 0) return changesWords.sameSupplies;
    const gone = supplies.filter(({ after }) => after === undefined).length;
    const fresh = supplies.filter(({ before }) => before === undefined).length;
    const other = supplies.length - gone - fresh;
    const told = [[other, 'in another amount'], [gone, 'no longer needed'], [fresh, 'new']] as const;
    return sentence(told.filter(([count]) => count > 0).map(([count, words], index) => (index === 0 ? `${plural(count, 'thing')} ${words}` : `${count} ${words}`)).join(', '));
}

/** "To buy: 24.10 EUR instead of 26.20 EUR (2.10 EUR less)." */
export function moneyInWords({ before, after, difference }: LedgerFigures['money'][number]): string {
    const [now, then] = [after?.text ?? 'nothing', before?.text ?? 'nothing'];
    return now === then ? `To buy: ${now}, as before.` : `To buy: ${now} instead of ${then} (${difference}).`;
}

/** A run of lessons that stay as they are is told as one. */
export type LessonRow = { kind: 'one'; lesson: LessonChange } | { kind: 'run'; lessons: LessonChange[] };

/** So many unchanged lessons in a row are put together. */
const run = 3;

export function lessonRows(lessons: readonly LessonChange[]): LessonRow[] {
    const rows: LessonRow[] = [];
    for (let from = 0; from < lessons.length;) {
        let to = from;
        while (lessons[to]?.happened === 'same') to++;
        if (to - from >= run) rows.push({ kind: 'run', lessons: lessons.slice(from, to) });
        else rows.push(...lessons.slice(from, Math.max(to, from + 1)).map(lesson => ({ kind: 'one' as const, lesson })));
        from = Math.max(to, from + 1);
    }
    return rows;
}

/** "14 lessons as the course has them: “Which is heavier?” to “Market sums”" */
export function runInWords(lessons: readonly LessonChange[]): string {
    return `${lessons.length} lessons as the course has them: “${lessons[0]?.title ?? ''}” to “${lessons[lessons.length - 1]?.title ?? ''}”`;
}

/** What happens to a lesson, beside its title: the changes to it, or a word where they say no more. */
export function happenedInWords({ title, happened, says }: LessonChange): string[] {
    const more = says.filter(one => one !== `“${title}” is left out`).map(one => besideTitle(one, `“${title}”`));
    return more.length > 0 ? more : [happenedWords[happened]];
}

/** "now comes before “Small stories”" of "“Marks in fives” now comes before “Small stories”", where that title stands beside it. */
function besideTitle(says: string, title: string): string {
    const added = `To ${title} is added: `;
    if (says.startsWith(added)) return `added: ${says.slice(added.length)}`;
    const own = says.startsWith(`${title} `) ? says.slice(title.length + 1) : says.replace(/^To (?=“)/, 'to ');
    return own.replaceAll(` of ${title}`, '').replaceAll(` in ${title}`, '');
}

/** What happens to a lesson with its minutes, on one line: "left out (40 min less)", "now comes before “Halves” (30 min)". */
export function lessonInWords(lesson: LessonChange, minutes: MinutesChange | undefined): string {
    const happened = happenedInWords(lesson).join('; ');
    const { before, after } = minutes ?? {};
    if (after === undefined) return before ? `${happened} (${before} min less)` : happened;
    return happened.includes(`takes ${after} min`) ? happened : `${happened} (${minutesInWords(minutes)} min)`;
}

/** "All lessons together take 398 min instead of 446." Nothing where the change takes and gives no time. */
export function changeMinutes({ minutes }: LedgerChange): string | undefined {
    return minutes && minutes.before !== minutes.after ? `All lessons together take ${minutes.after} min instead of ${minutes.before}.` : undefined;
}

/** "40 instead of 48", "40 less" of a lesson that is left out; nothing where nobody knows. */
export function minutesInWords(minutes: MinutesChange | undefined): string {
    if (!minutes) return '';
    const { before, after } = minutes;
    if (before === after) return after === undefined ? '' : String(after);
    if (before === undefined) return String(after);
    return after === undefined ? `${before} less` : `${after} instead of ${before}`;
}

export interface UnchangedWords {
    why: string;
    /** An adaptation to begin with, for a class and course that are there. */
    lines: string[];
}

/** Where no adaptation applies: that nothing is changed, and how somebody would change something. */
export function unchanged({ course, class: group, example }: ChangesFigures): UnchangedWords {
    const why = course === undefined ? 'No course is declared, so there is nothing to adapt.'
        : group === undefined ? `No adaptation changes “${course.title}”: it is taught as it is written.`
            : `No adaptation applies to “${group.title}”: it is taught “${course.title}” as the course is written.`;
    if (course === undefined) return { why, lines: [] };
    return {
        why,
        lines: [
            `adaptation ${group?.name ?? course.name}-changes of ${course.name}${group ? ` for ${group.name}` : ''}`,
            `  skip lesson ${example?.name ?? 'lesson-name'} because: Why this class leaves it out.`
        ]
    };
}

/** "“Shorter autumn” (written for edition 2) and “Harbour days”" */
export function adaptationsInWords({ adaptations }: LedgerFigures): string {
    return joined(adaptations).map(({ before, item }) => `${before}“${item.title}”${writtenFor(item) === undefined ? '' : ` (${writtenFor(item)})`}`).join('');
}

export interface OfAdaptation {
    adaptation?: LedgerFigures['adaptations'][number];
    changes: LedgerChange[];
}

/** In the order in which they are made. */
export function byAdaptation(ledger: LedgerFigures): OfAdaptation[] {
    const groups = new Map<string, OfAdaptation>();
    for (const change of ledger.changes) {
        const { name } = change.adaptation;
        const group = groups.get(name) ?? { adaptation: ledger.adaptations.find(one => one.name === name), changes: [] };
        group.changes.push(change);
        groups.set(name, group);
    }
    return [...groups.values()];
}
