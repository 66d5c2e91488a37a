import { coverageMarkdown } from '../exports/coverage-markdown.js';
import { coverageText } from '../exports/coverage-text.js';
import { figuresJson } from '../exports/json.js';
import { planCoverage } from '../planning/coverage.js';
import { deliver, errorsTold } from './output.js';
import { chosenFormat, planned, type PlanOptions, type Write } from './planned.js';

/** Which lesson introduces, practises and checks which objective, and the share of each framework. */
export async function coverageCommand(path: string, options: PlanOptions, write: Write, tell: Write): Promise<number> {
    const format = chosenFormat(options, ['text', 'md', 'json'], 'coverage');
    const { read, schedule } = await planned(path, options);
    const coverage = planCoverage(read.view.programme, { class: options.class }, { schedule });
    const text = format === 'md' ? coverageMarkdown(coverage) : format === 'json' ? figuresJson('haversack-coverage', { coverage }) : coverageText(coverage);
    deliver(text, options.out, write, tell);
    return errorsTold(read.problems, 'the coverage', tell);
}
