import type { LangiumCoreServices, LangiumDocument } from 'langium';
import type { ReadingReport } from '../lexer/line-lexer.js';
import type { ReadingProblem } from '../lexer/problems.js';
import type { FileSheet, Range } from '../sheets/sheet.js';
import { allChecks } from './all-checks.js';
import type { Check, Explained, Finding, Problem, Severity } from './check.js';
import type { ProgrammeView } from './programme-view.js';
import { parserCode } from './reading.js';
import { unknownNames } from './unknown-name.js';

/** Severities that a person has set, by code. */
export type Severities = Readonly<Record<string, Severity | 'off'>>;

/** What is wrong in the text of one file itself: lines that cannot be read, and names that lead nowhere. */
export function textProblems(document: LangiumDocument, services: LangiumCoreServices, view: ProgrammeView, severities: Severities = {}): Problem[] {
    const uri = document.uri.toString();
    const report = document.parseResult.lexerReport as ReadingReport | undefined;
    return applySeverities([
        ...(report?.problems ?? []).map(problem => fromReading(problem, document)),
        ...document.parseResult.parserErrors.map((error): Problem => ({
            code: parserCode.code, severity: 'error', uri, message: 'This text could not be read. Compare the lines around it with the examples of the reference.',
            at: lineRange((error.token.startLine || 1) - 1)
        })),
        ...unknownNames(document, services.references.ScopeProvider, view.programme)
    ], severities);
}

/** What the checks say about one file. */
export function checkProblems(file: FileSheet, view: ProgrammeView, severities: Severities = {}): Problem[] {
    return allChecks.flatMap(check => (severities[check.code] === 'off' ? [] : problemsIn(file, check, check.find(file, view), severities)));
}

/**
 * What one check found in a file, as problems. A line that is wrong in itself has had its message: what else could be said of it
 * waits until it is mended.
 */
export function problemsIn(file: FileSheet, check: Explained & Pick<Check, 'missing'>, findings: Iterable<Finding>, severities: Severities = {}): Problem[] {
    const drafts = check.missing ? file.lessons.filter(lesson => lesson.draft).map(lesson => lesson.whole) : [];
    const broken = new Set(file.brokenLines);
    const problems: Problem[] = [];
    for (const finding of findings) {
        const { line } = finding.at.start;
        if (broken.has(line)) continue;
        const hint = drafts.some(whole => whole.start.line <= line && line <= whole.end.line);
        problems.push({ ...finding, code: check.code, severity: hint ? 'hint' : finding.severity ?? check.severity, uri: file.uri });
    }
    return applySeverities(problems, severities);
}

function applySeverities(problems: Problem[], severities: Severities): Problem[] {
    return problems.flatMap(problem => {
        const set = severities[problem.code];
        if (set === 'off') return [];
        return set && problem.severity !== 'hint' ? [{ ...problem, severity: set }] : [problem];
    });
}

function fromReading(problem: ReadingProblem, document: LangiumDocument): Problem {
    const range = (offset: number, length: number): Range => ({
        start: document.textDocument.positionAt(offset), end: document.textDocument.positionAt(offset + length)
    });
    const uri = document.uri.toString();
    const { mend } = problem;
    return {
        code: problem.code, severity: problem.severity, uri, message: problem.message, at: range(problem.offset, problem.length),
        fixes: mend && [{ title: mend.title, edits: [{ uri, replace: range(mend.offset, mend.length), text: mend.text }], preferred: true }]
    };
}

function lineRange(line: number): Range {
    return { start: { line, character: 0 }, end: { line, character: 1 } };
}
