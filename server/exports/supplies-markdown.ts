import { Outline } from '../markdown/outline.js';
import { plainText } from '../markdown/plain-text.js';
import type { OrderFigures, SupplyFigures } from '../planning/supply-figures.js';
import { clashLine, moneyLine, shortageLine, suppliesOf, whatToBuy } from './supplies-lines.js';

/** Buying and stock of the term as CommonMark: lists only, since CommonMark has no tables. */
export function suppliesMarkdown(supplies: SupplyFigures, week?: number): string {
    const out = new Outline();
    const who = supplies.classTitle ?? 'All lessons';
    out.heading(1, plainText(week === undefined ? `To buy and order: ${who}` : `To buy and order in week ${week}: ${who}`));
    const { orders, shortages, clashes } = suppliesOf(supplies, week);
    if (orders.length === 0) out.paragraph('Nothing to buy.');
    for (const order of orders) writeOrder(out, order);
    if (shortages.length > 0) out.heading(2, 'Short at a meeting');
    for (const s of shortages) {
        out.item(0, plainText(`${s.meeting}, ${s.title}: ${shortageLine(s)}`));
        for (const standIn of s.standIns) out.item(1, plainText(standIn.text));
    }
    if (clashes.length > 0) out.heading(2, 'Two classes, one cupboard');
    for (const c of clashes) {
        out.item(0, plainText(`${c.meeting}, ${c.title}: ${clashLine(c)}`));
    }
    if (week === undefined) {
        out.heading(2, 'Costs');
        out.item(0, plainText(`The whole term: ${moneyLine(supplies.costs.term)}`));
        out.item(0, plainText(`For each learner: ${moneyLine(supplies.costs.perLearner)}`));
        for (const one of supplies.costs.byWeek) if (one.money.length > 0) out.item(0, plainText(`Week ${one.week}: ${moneyLine(one.money)}`));
        if (supplies.costs.unpriced.length > 0) out.item(0, plainText(`Without a price: ${supplies.costs.unpriced.map(u => u.title).join(', ')}`));
    }
    if (supplies.assumptions.length > 0) {
        out.heading(2, 'Taken for granted');
        for (const sentence of supplies.assumptions) out.item(0, plainText(sentence));
    }
    return out.toString();
}

function writeOrder(out: Outline, order: OrderFigures): void {
    out.item(0, `[ ] ${plainText(`${order.title}: ${whatToBuy(order)}${order.cost ? `, ${order.cost.text}` : ''}`)}`);
    for (const line of [order.when, order.late?.words, order.joined, order.leftOver && `left over: ${order.leftOver.text}`]) {
        if (line) out.item(1, plainText(line));
    }
    for (const step of order.net.trail) out.item(1, plainText(step.words));
}
