/** Sentences that the term's page and its Markdown share, put together from finished figures. */
import type { ChangeFigures } from '../../planning/figures.js';
import type { FrameworkNode } from '../../planning/coverage-figures.js';
import type { ScheduleProblem } from '../../planning/schedule-figures.js';
import type { OrderFigures, ShortageFigures, SupplyFigures, ThingRecord } from '../../planning/supply-figures.js';
import { monthInWords, spanInWords } from '../days.js';
import { toldLeftOut } from '../left-out.js';
import { plural, sentence } from '../sentences.js';
import type { TermFigures } from '../../planning/term-figures.js';
import { usedUp } from './stock/used-up.js';
import { termWords } from './words.js';

/** "Mon 7 Sep 2026 to Thu 10 Jun 2027, 38 weeks, 144 meetings, 120 lessons" */
export function termFacts({ schedule }: TermFigures): string {
    const meetings = schedule.weeks.flatMap(week => week.meetings);
    const lessons = new Set(meetings.flatMap(meeting => meeting.lessons)).size;
    return [spanInWords(meetings[0]?.date, meetings[meetings.length - 1]?.date), plural(schedule.weeks.length, 'week'), plural(meetings.length, 'meeting'), plural(lessons, 'lesson')]
        .filter(Boolean).join(', ');
}

/** Why the calendar is empty. */
export function noMeetings({ nothingTaught }: TermFigures): string {
    return `${nothingTaught ?? termWords.noLessons}, ${termWords.noMeetings}`;
}

export interface Finding {
    text: string;
    /** Id of the section that tells more. */
    section: string;
}

/** What a lead wants to know first, each in a sentence. */
export function findings({ schedule, supplies, coverage, adapted }: TermFigures): Finding[] {
    const { unplaced } = schedule;
    const leftOut = toldLeftOut(adapted?.leftOut, adapted?.lessons ?? []);
    const late = supplies.orders.filter(order => order.late);
    const { runOut: out } = usedUp(supplies);
    const found: (Finding | undefined)[] = [
        { text: unplaced.length === 0 ? 'Every lesson has its day.' : `${plural(unplaced.length, 'lesson')} ${unplaced.length === 1 ? 'does' : 'do'} not fit.`, section: unplaced.length === 0 ? 'term-calendar' : 'term-left-out' },
        leftOut.length > 0 ? { text: `${plural(leftOut.length, 'lesson')} ${leftOut.length === 1 ? 'is' : 'are'} left out for this class.`, section: 'term-otherwise' } : undefined,
        supplies.shortages.length + supplies.clashes.length > 0
            ? { text: `Short of something at ${plural(meetingsShort(supplies), 'meeting')}.`, section: 'term-short' } : undefined,
        out.length > 0 ? { text: `${plural(out.length, 'thing')} ${out.length === 1 ? 'runs' : 'run'} out during the term.`, section: 'term-stock' } : undefined,
        { text: supplies.orders.length === 0 ? termWords.nothingToBuy : `${plural(supplies.orders.length, 'purchase')}${costInWords(supplies)}.`, section: 'term-buy' },
        late.length > 0 ? { text: `${plural(late.length, 'order')} ${late.length === 1 ? 'is' : 'are'} late.`, section: 'term-buy' } : undefined,
        coverage.gaps.length > 0 ? { text: `${plural(coverage.gaps.length, 'gap')} in what the objectives need.`, section: 'term-coverage' } : undefined
    ];
    return found.filter(finding => finding !== undefined);
}

function meetingsShort({ shortages, clashes }: SupplyFigures): number {
    return new Set([...shortages, ...clashes].map(({ date, meeting }) => date ?? meeting)).size;
}

function costInWords({ costs }: SupplyFigures): string {
    return costs.term.length === 0 ? '' : `, ${costs.term.map(money => money.text).join(' and ')}`;
}

export function termAssumptions({ schedule, supplies, coverage }: TermFigures): string[] {
    return [...new Set([...schedule.assumptions, ...supplies.assumptions, ...coverage.assumptions])];
}

/** "At the start 400 g, needed 1410 g, safety stock 50 g." */
export function openingWords(record: ThingRecord): string {
    return sentence([
        record.opening ? `at the start ${record.opening.text}` : 'nothing known at the start',
        `needed ${record.need.text}`,
        record.safety && `${termWords.safety} ${record.safety.text}`
    ].filter(Boolean).join(', '));
}

/** What does not hold in the plan. An overrun is told by the lessons that have no day. */
export function otherProblems(problems: readonly ScheduleProblem[]): ScheduleProblem[] {
    return problems.filter(problem => problem.kind !== 'term-overrun');
}

export interface OrderGroup {
    /** "Late", "November 2026", or "Week 3" where there are no dates. */
    title: string;
    orders: OrderFigures[];
}

/** By the month of the last day to order or to buy, what is late first. Weeks are told by dates: classes of one cupboard count them differently. */
export function orderGroups({ orders }: SupplyFigures): OrderGroup[] {
    const groups = new Map<string, OrderFigures[]>();
    for (const order of [...orders].sort((a, b) => compare(dueOn(a), dueOn(b)))) {
        const due = dueOn(order);
        const title = order.late ? termWords.late : due !== undefined ? monthInWords(due) : order.orderWeek < 1 ? termWords.beforeTerm : `Week ${order.orderWeek}`;
        groups.set(title, [...(groups.get(title) ?? []), order]);
    }
    return [...groups].map(([title, of]) => ({ title, orders: of })).sort((a, b) => Number(b.title === termWords.late) - Number(a.title === termWords.late));
}

function dueOn(order: OrderFigures): string | undefined {
    return order.orderBy ?? order.neededBy;
}

/** ISO dates in order, none last. */
function compare(one: string | undefined, other: string | undefined): number {
    if (one === undefined || other === undefined) return Number(one === undefined) - Number(other === undefined);
    return one < other ? -1 : one > other ? 1 : 0;
}

/** "80 needed, 60 at hand." */
export function shortageWords({ needed, atHand }: Pick<ShortageFigures, 'needed' | 'atHand'>): string {
    return `${needed.text} needed, ${atHand.text} at hand.`;
}

/** The name of a strand; objectives of none are the others, or all there are. */
export function strandTitle(title: string | undefined, strands: number): string {
    return title?.replace(/^\p{Ll}/u, first => first.toUpperCase()) ?? (strands > 1 ? termWords.otherObjectives : termWords.objectives);
}

/** "M.1 Compares and orders masses" */
export function nodeTitle({ code, statement }: FrameworkNode): string {
    return [code, statement].filter(Boolean).join(' ');
}

/** Items without children at or under a node that nothing meets. */
export function unmetItems(node: FrameworkNode): FrameworkNode[] {
    if (node.children.length === 0) return node.met ? [] : [node];
    return node.children.flatMap(unmetItems);
}

/** "2 of 3 items are met" */
export function shareWords({ leaves, leavesMet }: FrameworkNode): string {
    return `${leavesMet} of ${plural(leaves, 'item')} ${leaves === 1 ? 'is' : 'are'} met`;
}

/** "The term: Measure and Make, Harbour co-op, autumn" */
export function termTitle(term: TermFigures): string {
    const of = [term.course?.title, term.class?.title].filter(Boolean).join(', ');
    return of === '' ? termWords.term : `${termWords.term}: ${of}`;
}

/** What is changed of a lesson as a whole, for the calendar in words: "moved to after “Which is heavier?”". */
export function changesOf({ adapted }: Pick<TermFigures, 'adapted'>, lesson: string): ChangeFigures[] {
    return adapted?.lessons.find(({ name }) => name === lesson)?.changes ?? [];
}
