import { URI } from 'langium';
import { changesMarkdown } from '../brief/changes/markdown.js';
import { changesPage } from '../brief/changes/page.js';
import { changesText } from '../brief/changes/text.js';
import { figuresJson } from '../exports/json.js';
import { newPlanningCache } from '../planning/cache.js';
import { planChanges } from '../planning/changes.js';
import { planLedger } from '../planning/ledger.js';
import { deliver, errorsTold, mustKnowClass } from './output.js';
import { chosenFormat, chosenPaper, type PlanOptions, type Write } from './planned.js';
import { readProgramme } from './read-programme.js';
import { todayOf } from './today.js';

/** What its adaptations change for a class: each change with what it breaks, and the term before and after. */
export async function changesCommand(path: string, options: PlanOptions, write: Write, tell: Write): Promise<number> {
    const format = chosenFormat(options, ['text', 'md', 'json', 'html'], 'changes');
    const paper = chosenPaper(options, format);
    const { view: { programme }, problems, root } = await readProgramme(path);
    mustKnowClass(programme, options.class);
    const wanted = { class: options.class };
    const changes = planChanges(programme, wanted, planLedger(programme, wanted, { cache: newPlanningCache(), today: todayOf(options.today) }));
    const text = format === 'html' ? changesPage(changes, { root: URI.file(root).toString(), paper })
        : format === 'md' ? changesMarkdown(changes)
            : format === 'json' ? figuresJson('haversack-changes', { changes })
                : changesText(changes);
    deliver(text, options.out, write, tell);
    return errorsTold(problems, 'the page of changes', tell);
}
