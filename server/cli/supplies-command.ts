import { figuresJson } from '../exports/json.js';
import { shoppingList } from '../exports/shopping-list.js';
import { suppliesMarkdown } from '../exports/supplies-markdown.js';
import { suppliesText } from '../exports/supplies-text.js';
import { planSupplies } from '../planning/supplies/plan-supplies.js';
import { deliver, errorsTold } from './output.js';
import { chosenFormat, planned, weekOf, type PlanOptions, type Write } from './planned.js';
import { todayOf } from './today.js';

/** What the class has, lacks and should buy, over the term or in one week. */
export async function suppliesCommand(path: string, options: PlanOptions, write: Write, tell: Write): Promise<number> {
    const format = chosenFormat(options, ['text', 'md', 'json', 'csv'], 'supplies');
    const today = todayOf(options.today);
    const { read, schedule } = await planned(path, options);
    const week = weekOf(options.week, schedule);
    const supplies = planSupplies(read.view.programme, { class: options.class }, { schedule, today });
    const text = format === 'csv' ? shoppingList(supplies, week)
        : format === 'md' ? suppliesMarkdown(supplies, week)
            : format === 'json' ? figuresJson('haversack-supplies', { supplies })
                : suppliesText(supplies, { week, records: options.records });
    deliver(text, options.out, write, tell);
    return errorsTold(read.problems, 'the list', tell);
}
