import type { Problem } from '@haversack/language/checks/check';
import { problemsIn, type Severities } from '@haversack/language/checks/problems-of';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import { allPlanChecks } from './all-plan-checks.js';
import type { PlanFinding } from './plan-check.js';
import type { Term } from './term.js';

/** What the checks of the plan say about all files, by the file's address; files without a problem are left out. */
export function planProblems(view: ProgrammeView, term: Term, severities: Severities = {}): ReadonlyMap<string, readonly Problem[]> {
    const problems = new Map<string, Problem[]>();
    for (const check of allPlanChecks) {
        if (severities[check.code] === 'off') continue;
        for (const [uri, findings] of byFile(check.find(view, term))) {
            const file = view.programme.files.get(uri);
            if (!file) continue;
            problems.set(uri, [...(problems.get(uri) ?? []), ...problemsIn(file, check, findings, severities)]);
        }
    }
    return problems;
}

function byFile(findings: Iterable<PlanFinding>): Map<string, PlanFinding[]> {
    const files = new Map<string, PlanFinding[]>();
    for (const finding of findings) {
        const there = files.get(finding.uri);
        if (there) there.push(finding);
        else files.set(finding.uri, [finding]);
    }
    return files;
}
