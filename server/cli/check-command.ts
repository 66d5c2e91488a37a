import { URI } from 'langium';
import { allCodes } from '@haversack/language/checks/all-checks';
import type { Problem } from '@haversack/language/checks/check';
import { problemsSarif } from '../exports/sarif.js';
import { allPlanChecks } from '../plan-checks/all-plan-checks.js';
import { planProblems } from '../plan-checks/plan-problems.js';
import { termOf } from '../plan-checks/plan-term.js';
import type { FormerEditions } from '../plan-checks/term.js';
import { toldOnce } from '../plan-checks/told-once.js';
import { version } from '../version.js';
import { exitCodes } from './could-not-run.js';
import { formerEditionsFor } from './former-editions.js';
import { deliver } from './output.js';
import { chosenFormat, type Write } from './planned.js';
import { byLine, readProgramme, type ReadProgramme } from './read-programme.js';
import { todayOf } from './today.js';

export interface CheckOptions {
    format?: string;
    /** ISO date; without it, the machine's own. */
    today?: string;
    out?: string;
}

/** Lists what is wrong in a programme. What needs the plan is looked at for one day. Information and hints are told as remarks and do not count as problems. */
export async function checkCommand(path: string, options: CheckOptions, write: Write, tell: Write): Promise<number> {
    const format = chosenFormat(options, ['text', 'json', 'sarif'], 'check');
    const today = todayOf(options.today);
    const read = await readProgramme(path);
    const programme = withPlan(read, today, await formerEditionsFor(read));
    const counted = programme.problems.filter(({ severity }) => severity === 'error' || severity === 'warning');
    deliver(format === 'json' ? asJson(programme) : format === 'sarif' ? asSarif(programme) : asText(programme, counted.length), options.out, write, tell);
    return counted.length > 0 ? exitCodes.problems : exitCodes.fine;
}

/** Adds what the checks of the plan find, in the order of the lines of each file. */
function withPlan(programme: ReadProgramme, today: string, former: FormerEditions): ReadProgramme {
    const { view, files, problems } = programme;
    const planned = planProblems(view, termOf(view, today, former));
    const all = files.flatMap(uri => toldOnce(problems.filter(problem => problem.uri === uri), planned.get(uri) ?? []).sort(byLine));
    return { ...programme, problems: all };
}

function asText({ problems, view, show }: ReadProgramme, counted: number): string {
    const lines = problems.map(problem => `${show(problem.uri)}:${problem.at.start.line + 1}:${problem.at.start.character + 1} ${problem.severity} ${problem.code}: ${problem.message}`);
    const { files, lessons } = view.programme;
    const read = `${files.size} ${files.size === 1 ? 'file' : 'files'} with ${lessons.size} ${lessons.size === 1 ? 'lesson' : 'lessons'}`;
    const remarks = problems.length - counted;
    const found = `${counted === 0 ? 'no problems' : some(counted, 'problem')}${remarks === 0 ? '' : `, ${some(remarks, 'remark')}`}`;
    return [...lines, `${read}: ${found}.`, ''].join('\n');
}

function some(count: number, what: string): string {
    return `${count} ${what}${count === 1 ? '' : 's'}`;
}

function asJson({ problems, show }: ReadProgramme): string {
    const plain = (problem: Problem): object => ({
        file: show(problem.uri), line: problem.at.start.line + 1, column: problem.at.start.character + 1,
        severity: problem.severity, code: problem.code, message: problem.message, fixes: (problem.fixes ?? []).map(({ title }) => title)
    });
    return `${JSON.stringify({ format: 'haversack-check', version: 1, problems: problems.map(plain) }, undefined, 2)}\n`;
}

function asSarif({ problems, files, textOf }: ReadProgramme): string {
    return problemsSarif(problems, { version, rules: [...allCodes, ...allPlanChecks], root: URI.file(process.cwd()).toString(), files, textOf });
}
