import type { DocumentValidator, LangiumDocument } from 'langium';
import type { Diagnostic } from 'vscode-languageserver-types';
import type { HaversackServices } from '../module.js';
import type { Problem } from './check.js';
import { checkProblems, textProblems, type Severities } from './problems-of.js';

/** Hands Langium everything that is wrong in a file. What was found is kept for the quick fixes. */
export class HaversackDocumentValidator implements DocumentValidator {
    severities: Severities = {};
    private readonly found = new WeakMap<LangiumDocument, Problem[]>();

    constructor(private readonly services: HaversackServices) {}

    validateDocument(document: LangiumDocument): Promise<Diagnostic[]> {
        return Promise.resolve(this.problemsIn(document).map(toDiagnostic));
    }

    /** Works out all problems of a file against the programme as it is now. */
    problemsIn(document: LangiumDocument): Problem[] {
        const { sheets, shared } = this.services;
        const view = sheets.view(shared.workspace.LangiumDocuments);
        const problems = [
            ...textProblems(document, this.services, view, this.severities),
            ...checkProblems(sheets.sheetOf(document), view, this.severities)
        ];
        this.found.set(document, problems);
        return problems;
    }

    /** The problems of the last validation. */
    lastProblems(document: LangiumDocument): readonly Problem[] {
        return this.found.get(document) ?? [];
    }
}

const severityNumbers = { error: 1, warning: 2, information: 3, hint: 4 } as const;

/** The one place that turns a problem into the protocol's form. */
export function toDiagnostic(problem: Problem): Diagnostic {
    return {
        range: problem.at,
        severity: severityNumbers[problem.severity],
        code: problem.code,
        source: 'haversack',
        message: problem.message,
        tags: problem.unused ? [1] : undefined,
        relatedInformation: problem.related?.map(({ message, place }) => ({ message, location: { uri: place.uri, range: place.range } }))
    };
}
