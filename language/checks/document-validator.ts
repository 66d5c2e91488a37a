import type { DocumentValidator, LangiumDocument } from 'langium';
import type { Diagnostic } from 'vscode-languageserver-types';
import type { HaversackServices } from '../module.js';
import type { FileSheet } from '../sheets/sheet.js';
import type { Problem } from './check.js';
import type { ProgrammeView } from './programme-view.js';
import { checkProblems, textProblems, type Severities } from './problems-of.js';

/** What was found in a file, and what it was found against. */
interface Found {
    view: ProgrammeView;
    sheet: FileSheet;
    /** Those of its text and names: Langium itself looks again when names elsewhere change. */
    text: Problem[];
    all: Problem[];
}

/** Hands Langium everything that is wrong in a file. What was found is kept for the quick fixes. */
export class HaversackDocumentValidator implements DocumentValidator {
    protected severities: Severities = {};
    private found = new WeakMap<LangiumDocument, Found>();

    constructor(private readonly services: HaversackServices) {}

    /** How serious each problem is to be from now on; every file counts as not looked at. */
    setSeverities(severities: Severities): void {
        this.severities = severities;
        this.found = new WeakMap();
    }

    validateDocument(document: LangiumDocument): Promise<Diagnostic[]> {
        return Promise.resolve(this.problemsIn(document).map(toDiagnostic));
    }

    /** Works out all problems of a file against the programme as it is now. */
    problemsIn(document: LangiumDocument): readonly Problem[] {
        const view = this.services.sheets.viewOf(document.uri);
        const sheet = this.services.sheets.sheetOf(document);
        const text = textProblems(document, this.services, view, this.severities);
        const all = [...text, ...checkProblems(sheet, view, this.severities)];
        this.found.set(document, { view, sheet, text, all });
        return all;
    }

    /** Looks again at what other files may have changed; the problems and whether anything was looked at. */
    lookAgain(document: LangiumDocument): { problems: readonly Problem[]; again: boolean } {
        const view = this.services.sheets.viewOf(document.uri);
        const sheet = this.services.sheets.sheetOf(document);
        const last = this.found.get(document);
        if (!last || last.sheet !== sheet) return { problems: this.problemsIn(document), again: true };
        if (last.view === view) return { problems: last.all, again: false };
        const all = [...last.text, ...checkProblems(sheet, view, this.severities)];
        this.found.set(document, { view, sheet, text: last.text, all });
        return { problems: all, again: true };
    }

    /** The problems of the last look. */
    lastProblems(document: LangiumDocument): readonly Problem[] {
        return this.found.get(document)?.all ?? [];
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
