import type Fraction from 'fraction.js';
import type { PrintSheet } from '@haversack/language/sheets/sheet';
import { thingNamed } from '@haversack/language/sheets/programme';
import { titleFromName } from '@haversack/language/sheets/titles';
import { amountText, comesWhole, figure } from './amounts.js';
import { cautionsOf, youngestIn } from './cautions.js';
import type { Figure, TrailStep } from './figure.js';
import type { ThingFigures, WeekBrief } from './figures.js';
import type { WeekNeed } from './gross.js';
import type { Plan } from './plan.js';
import { readsPlainly, sensiblyUp } from './rounding.js';
import { sourceOf, sourceTitles } from './sources.js';
import { stockOf, toHave, type Stock } from './stock.js';
import { counted, once } from '@haversack/language/facts/wording';

/** A thing of one week with its stock: the working form behind ThingFigures. */
export interface WeekThing {
    need: WeekNeed;
    stock: Stock;
    figures: ThingFigures;
}

export function weekThings(plan: Plan, week: number): WeekThing[] {
    return [...plan.needs(week).values()].map(need => weekThing(plan, week, need));
}

/** Groups in the order of a fetching list; empty ones are left out. */
export function fetchGroups(things: readonly WeekThing[]): WeekBrief['fetch'] {
    return sourceTitles.flatMap(([source, title]) => {
        const own = things.map(t => t.figures).filter(f => f.source === source);
        return own.length > 0 ? [{ source, title, things: own }] : [];
    });
}

export function weekThing(plan: Plan, week: number, need: WeekNeed): WeekThing {
    const { thing, measure, value } = need;
    const stock = stockOf(plan, week, need);
    const heldByKit = plan.holdings.kitsWith(thing.name).length > 0;
    const source = sourceOf(need, heldByKit);
    const said = saidNeed(need, stock);
    const rounding: TrailStep[] = said.equals(value) ? [] : [{ words: `rounded up to ${amountText(said, measure)}` }];
    return {
        need,
        stock,
        figures: {
            name: thing.name,
            title: thing.title,
            kind: thing.kind,
            use: need.use,
            place: { uri: thing.uri, range: thing.at },
            amount: figure(value, measure, [...need.trail, ...rounding], said),
            parts: need.parts.map(name => ({ name, title: titleFromName(name) })),
            days: once(need.uses.map(u => u.meeting.label)),
            lessons: [...new Map(need.uses.map(u => [u.lesson.name, { name: u.lesson.name, title: u.lesson.title }])).values()],
            optional: need.optional,
            or: need.or.map(name => thingNamed(plan.programme, name)?.title ?? name),
            source,
            kept: thing.kept?.parts.length ? thing.kept : undefined,
            atHand: stock.atHandFigure,
            missing: missingFigure(need, stock, source, said),
            isNew: plan.weeksOf(thing.name)[0] === week,
            cautions: cautionsOf(thing, youngestIn(plan.audience.class, plan.audience.course)),
            notes: thing.notes,
            remark: thing.kind === 'print' ? printRemark(thing, Number(value.valueOf())) : undefined
        }
    };
}

/**
 * The amount as people fetch it: what lessons ask for is told as they wrote it, what spares and losses made of it is rounded up,
 * unless that went beyond what is at hand and so looked like a shortage.
 */
function saidNeed({ value, plain, measure }: WeekNeed, { atHand, said }: Stock): Fraction {
    if (value.equals(plain) && readsPlainly(value, measure)) return value;
    const up = sensiblyUp(value, measure);
    const enough = atHand?.gte(value);
    return enough && said?.lt(up) ? value : up;
}

/**
 * What is still to be had. Copies are simply printed. What comes from home or the library is asked for, not missing, unless some
 * of it is known to be at hand already.
 */
function missingFigure(need: WeekNeed, stock: Stock, source: ThingFigures['source'], said: Fraction): Figure | undefined {
    if (!stock.missing || source === 'printed') return undefined;
    if ((source === 'home' || source === 'library') && stock.atHand === undefined) return undefined;
    const { measure } = need;
    const trail: TrailStep[] = [{
        words: `${amountText(said, measure)} needed less ${stock.said ? amountText(stock.said, measure) : 'nothing'} at hand`
    }];
    const whole = toHave(stock.missing, measure);
    for (const words of stock.onTheWay) trail.push({ words });
    return figure(whole, measure, trail, comesWhole(measure) ? whole : said.sub(stock.said ?? 0));
}

/** "7 copies of 2 pages: 14 pages, 7 sheets two-sided". */
function printRemark(print: PrintSheet, copies: number): string {
    const pages = Math.max(1, Math.ceil(print.pages) || 1);
    const all = pages * copies;
    const sheets = (print.twoSided ? Math.ceil(pages / 2) : pages) * copies;
    return `${counted(copies, 'copy', 'copies')} of ${counted(pages, 'page')}: ${counted(all, 'page')}, ${counted(sheets, 'sheet')} ${
        print.twoSided ? 'two-sided' : 'one-sided'}`;
}
