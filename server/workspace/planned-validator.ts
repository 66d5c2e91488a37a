import type { LangiumDocument } from 'langium';
import type { Diagnostic } from 'vscode-languageserver-types';
import type { Problem } from '@haversack/language/checks/check';
import { HaversackDocumentValidator, toDiagnostic } from '@haversack/language/checks/document-validator';
import type { Severities } from '@haversack/language/checks/problems-of';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { ProgrammeKey } from '@haversack/language/linking/programmes';
import { planProblems } from '../plan-checks/plan-problems.js';
import type { Term } from '../plan-checks/term.js';
import { toldOnce } from '../plan-checks/told-once.js';
import { carryProblems } from './carry-problems.js';
import type { HaversackServerServices } from './services.js';

/** What the checks of the plan found when they last looked. */
interface Planned {
    view: ProgrammeView;
    problems: ReadonlyMap<string, readonly Problem[]>;
    /** The texts in which they were found. */
    texts: ReadonlyMap<string, string>;
}

/**
 * Adds to the problems of a file those of the plan. The plan is looked at when typing rests; until then what it found last stays with
 * its lines, so that nothing flickers and no keystroke waits for a plan.
 */
export class PlannedValidator extends HaversackDocumentValidator {
    private readonly planned = new Map<ProgrammeKey, Planned>();
    private readonly untold = new Set<string>();

    constructor(private readonly server: HaversackServerServices) {
        super(server);
    }

    override setSeverities(severities: Severities): void {
        super.setSeverities(severities);
        for (const programme of [...this.planned.keys()]) this.forget(programme);
    }

    override validateDocument(document: LangiumDocument): Promise<Diagnostic[]> {
        return Promise.resolve(toldOnce(this.problemsIn(document), this.planProblemsIn(document)).map(toDiagnostic));
    }

    override lookAgain(document: LangiumDocument): ReturnType<HaversackDocumentValidator['lookAgain']> {
        const { problems, again } = super.lookAgain(document);
        return { problems: toldOnce(problems, this.planProblemsIn(document)), again };
    }

    override lastProblems(document: LangiumDocument): readonly Problem[] {
        return toldOnce(super.lastProblems(document), this.planProblemsIn(document));
    }

    /** True until the plan of the programme as it is now has been looked at. */
    isBehind(programme: ProgrammeKey): boolean {
        return this.planned.get(programme)?.view !== this.server.sheets.viewAt(programme);
    }

    /** Looks at the plan of a programme. */
    lookAtPlan(programme: ProgrammeKey, term: Term): void {
        const view = this.server.sheets.viewAt(programme);
        this.forget(programme);
        const problems = planProblems(view, term, this.severities);
        const documents = this.server.shared.workspace.LangiumDocuments.all.filter(({ uri }) => problems.has(uri.toString()));
        const texts = new Map(documents.map((document): [string, string] => [document.uri.toString(), document.textDocument.getText()]));
        for (const uri of problems.keys()) this.untold.add(uri);
        this.planned.set(programme, { view, problems, texts });
    }

    /** The addresses of files of which the plan may say something else than when they were last asked for. */
    takeUntold(): string[] {
        const files = [...this.untold];
        this.untold.clear();
        return files;
    }

    /** What was found in programmes that are closed no longer counts. */
    forgetClosed(): void {
        const { all } = this.server.programmes;
        for (const programme of this.planned.keys()) if (!all.includes(programme)) this.forget(programme);
    }

    private forget(programme: ProgrammeKey): void {
        for (const uri of this.planned.get(programme)?.problems.keys() ?? []) this.untold.add(uri);
        this.planned.delete(programme);
    }

    private planProblemsIn(document: LangiumDocument): readonly Problem[] {
        const programme = this.server.programmes.of(document.uri);
        const planned = this.planned.get(programme);
        const uri = document.uri.toString();
        const problems = planned?.problems.get(uri);
        if (!planned || !problems) return [];
        return !this.isBehind(programme) ? problems : carryProblems(problems, planned.texts.get(uri) ?? '', document.textDocument.getText());
    }
}
