import { onOneLine } from '../markdown/one-line.js';
import type { SupplyFigures, ThingRecord } from '../planning/supply-figures.js';
import { clashLine, moneyLine, shortageLine, suppliesOf, whatToBuy } from './supplies-lines.js';
import { textTable } from './text-table.js';

/** Which part of the term: all of it, or one week. */
export interface SuppliesScope {
    week?: number;
    /** Also the record of every thing, week by week. */
    records?: boolean;
}

/** Stock and buying for a terminal, in the order in which somebody acts on it. */
export function suppliesText(supplies: SupplyFigures, scope: SuppliesScope = {}): string {
    const { orders, shortages, clashes } = suppliesOf(supplies, scope.week);
    const lines = [title(supplies, scope), ''];
    const block = (heading: string, content: readonly string[], otherwise?: string): void => {
        if (content.length === 0 && otherwise === undefined) return;
        lines.push(heading, ...(content.length > 0 ? content : [otherwise ?? '']).map(line => `  ${line}`), '');
    };
    block('Buy and order', orders.length === 0 ? [] : textTable(
        [{ title: 'order by' }, { title: 'needed' }, { title: 'week', number: true }, { title: 'thing' }, { title: 'short in all', number: true }, { title: 'buy' }, { title: 'cost', number: true }],
        orders.map(o => [o.orderBy ?? 'on the day', o.neededBy ?? '', String(o.week), o.title, o.net.text, whatToBuy(o), o.cost?.text ?? 'no price'])
    ), 'Nothing to buy.');
    block('Too late to order in time', orders.flatMap(o => (o.late ? [onOneLine(`${o.title}: ${o.late.words}`)] : [])));
    block('One order for several weeks', orders.flatMap(o => (o.joined ? [onOneLine(`${o.title}, needed ${o.neededBy ?? `in week ${o.week}`}: ${o.joined}`)] : [])));
    block('Short at a meeting', shortages.map(s => onOneLine(`${s.meeting}: ${s.title}, ${shortageLine(s)}${s.standIns.map(i => `; ${i.text}`).join('')}`)));
    block('Two classes, one cupboard', clashes.map(c => onOneLine(`${c.meeting}: ${c.title}, ${clashLine(c)}`)));
    block('Costs', costLines(supplies, scope));
    if (scope.records) for (const thing of supplies.things) block(recordTitle(thing), record(thing, scope));
    block('Taken for granted', supplies.assumptions.map(onOneLine));
    return `${lines.join('\n').trimEnd()}\n`;
}

function title({ classTitle, learners, weeks }: SupplyFigures, { week }: SuppliesScope): string {
    return `${onOneLine(classTitle ?? 'No class')}: ${learners} ${learners === 1 ? 'learner' : 'learners'}, ${week === undefined ? `${weeks.length} ${weeks.length === 1 ? 'week' : 'weeks'}` : `week ${week}`}`;
}

function costLines({ costs }: SupplyFigures, { week }: SuppliesScope): string[] {
    const unpriced = costs.unpriced.length > 0 ? [`without a price: ${costs.unpriced.map(u => onOneLine(u.title)).join(', ')}`] : [];
    if (week !== undefined) return [`week ${week}: ${moneyLine(costs.byWeek.find(w => w.week === week)?.money ?? [])}`];
    return [...costs.byWeek.filter(w => w.money.length > 0).map(w => `week ${w.week}: ${moneyLine(w.money)}`), `whole term: ${moneyLine(costs.term)}`, `for each learner: ${moneyLine(costs.perLearner)}`, ...unpriced];
}

function recordTitle(thing: ThingRecord): string {
    const facts = [thing.opening && `${thing.opening.text} at hand at the start`, thing.safety && `keep ${thing.safety.text}`, thing.runsOut?.text];
    return onOneLine([thing.title, ...facts.filter(Boolean)].join('; '));
}

function record(thing: ThingRecord, { week }: SuppliesScope): string[] {
    return textTable(
        [{ title: 'week', number: true }, { title: 'needed', number: true }, { title: 'arriving', number: true }, { title: 'missing', number: true }, { title: 'bought', number: true }, { title: 'to order', number: true }, { title: 'left', number: true }],
        thing.weeks.filter(w => week === undefined || w.week === week).map(w => [String(w.week), w.gross.text, w.scheduled.text, w.net.text, w.receipts.text, w.releases.text, w.onHand.text])
    );
}
