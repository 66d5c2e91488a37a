import { Outline } from '../markdown/outline.js';
import { plainText } from '../markdown/plain-text.js';
import type { MoneyFigure, OrderFigures, SupplyFigures } from '../planning/supply-figures.js';
import { inOrder } from './shopping-list.js';

/** Buying and stock of the term as CommonMark: lists only, since CommonMark has no tables. */
export function suppliesMarkdown(supplies: SupplyFigures, week?: number): string {
    const out = new Outline();
    const who = supplies.classTitle ?? 'All lessons';
    out.heading(1, plainText(week === undefined ? `To buy and order: ${who}` : `To buy and order in week ${week}: ${who}`));
    const orders = inOrder(supplies.orders.filter(o => week === undefined || o.week === week));
    if (orders.length === 0) out.paragraph('Nothing to buy.');
    for (const order of orders) writeOrder(out, order);
    const shortages = supplies.shortages.filter(s => week === undefined || s.week === week);
    if (shortages.length > 0) out.heading(2, 'Short at a meeting');
    for (const s of shortages) {
        out.item(0, plainText(`${s.meeting}, ${s.title}: ${s.needed.text} needed, ${s.atHand.text} at hand, ${s.missing.text} missing`));
        for (const standIn of s.standIns) out.item(1, plainText(standIn.text));
    }
    const clashes = supplies.clashes.filter(c => week === undefined || isIn(c.date, supplies, week));
    if (clashes.length > 0) out.heading(2, 'Two classes, one cupboard');
    for (const c of clashes) {
        out.item(0, plainText(`${c.meeting}, ${c.title}: ${c.classes.map(k => `${k.needed.text} for ${k.title}`).join(' and ')}; ${c.atHand.text} at hand, ${c.missing.text} missing`));
    }
    if (week === undefined) {
        out.heading(2, 'Costs');
        out.item(0, `The whole term: ${money(supplies.costs.term)}`);
        out.item(0, `For each learner: ${money(supplies.costs.perLearner)}`);
        for (const one of supplies.costs.byWeek) if (one.money.length > 0) out.item(0, `Week ${one.week}: ${money(one.money)}`);
        if (supplies.costs.unpriced.length > 0) out.item(0, plainText(`Without a price: ${supplies.costs.unpriced.map(u => u.title).join(', ')}`));
    }
    if (supplies.assumptions.length > 0) {
        out.heading(2, 'Taken for granted');
        for (const sentence of supplies.assumptions) out.item(0, plainText(sentence));
    }
    return out.toString();
}

function writeOrder(out: Outline, order: OrderFigures): void {
    const buy = order.packs.map(p => p.text).join(' and ') || order.bought.text;
    out.item(0, `[ ] ${plainText(`${order.title}: ${buy}${order.cost ? `, ${order.cost.text}` : ''}`)}`);
    for (const line of [order.when, order.late?.words, order.joined, order.leftOver && `left over: ${order.leftOver.text}`]) {
        if (line) out.item(1, plainText(line));
    }
    for (const step of order.net.trail) out.item(1, plainText(step.words));
}

function isIn(date: string, { weeks }: SupplyFigures, number: number): boolean {
    const week = weeks.find(w => w.number === number);
    return week?.from !== undefined && week.to !== undefined && week.from <= date && date <= week.to;
}

function money(sums: readonly MoneyFigure[]): string {
    return plainText(sums.map(m => m.text).join(' and ') || 'nothing');
}
