import { DocumentState, URI, type LangiumDocument } from 'langium';
import type { LangiumSharedServices } from 'langium/lsp';
import type { Problem } from '@haversack/language/checks/check';
import { toDiagnostic } from '@haversack/language/checks/document-validator';
import type { ProgrammeKey } from '@haversack/language/linking/programmes';
import type { HaversackServerServices } from './services.js';

const sliceMilliseconds = 8;
const quietMilliseconds = 120;
/** After the files, for a plan is made class by class and not in smaller slices. */
const quietBeforePlan = 230;

/**
 * A change in one file can make or mend a problem in another that is not relinked: a material becomes unused, an
 * objective is now checked. The file being typed in has its problems at once; the others are looked at when typing rests, and so
 * is the plan, class by class: that of each programme in which something has changed.
 */
export class IdleChecks {
    private timer: ReturnType<typeof setTimeout> | undefined;
    private round = 0;
    private readonly lastSent = new Map<string, string>();
    /** Files have been linked anew beside the one that was changed. */
    private relinked = false;
    /** The day on which all plans were looked at; undefined where something other than a file may have changed since. */
    private plannedOn: string | undefined;

    constructor(private readonly shared: LangiumSharedServices, private readonly services: HaversackServerServices) {
        const builder = shared.workspace.DocumentBuilder;
        builder.onUpdate((_, deleted) => {
            this.stop();
            for (const uri of deleted) this.forget(uri);
            // Where nothing is to be built, no phase is told of.
            if (deleted.length > 0) this.soon();
        });
        builder.onDocumentPhase(DocumentState.Validated, document => {
            this.lastSent.set(document.uri.toString(), JSON.stringify(document.diagnostics ?? []));
        });
        builder.onBuildPhase(DocumentState.Validated, documents => {
            if (documents.length > 1) this.relinked = true;
            this.soon();
        });
    }

    /** Looks at all files when nothing has changed for a moment. */
    soon(): void {
        this.stop();
        this.later(quietMilliseconds, () => this.lookAtAll());
    }

    /** The same, and all plans too, whether a file has changed or not. */
    soonAnew(): void {
        this.plannedOn = undefined;
        this.soon();
    }

    private later(milliseconds: number, work: () => Promise<void>): void {
        this.timer = setTimeout(() => {
            work().catch((error: unknown) => this.shared.lsp.Connection?.console.error(`The files could not be looked at: ${String(error)}`));
        }, milliseconds);
    }

    private stop(): void {
        clearTimeout(this.timer);
        this.round++;
    }

    private forget(uri: URI): void {
        if (this.lastSent.delete(uri.toString())) void this.shared.lsp.Connection?.sendDiagnostics({ uri: uri.toString(), diagnostics: [] });
    }

    private async lookAtAll(): Promise<void> {
        const round = this.round;
        let since = performance.now();
        for (const document of this.shared.workspace.LangiumDocuments.all.toArray()) {
            if (performance.now() - since > sliceMilliseconds) {
                await new Promise(resolve => setImmediate(resolve));
                since = performance.now();
            }
            if (round !== this.round) return;
            if (document.state === DocumentState.Validated) this.lookAt(document);
        }
        if (this.relinked) this.services.client.askForTokensAgain();
        this.relinked = false;
        this.later(quietBeforePlan, () => this.lookAtPlans(round));
    }

    private async lookAtPlans(round: number): Promise<void> {
        const { programmes, validation: { DocumentValidator }, client, today: { date } } = this.services;
        for (const programme of programmes.all) {
            if (this.plannedOn === date && !DocumentValidator.isBehind(programme)) continue;
            await this.lookAtPlan(programme, round);
            if (round !== this.round) return;
        }
        this.plannedOn = date;
        for (const uri of DocumentValidator.takeUntold()) {
            const document = this.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
            if (document) this.send(document, DocumentValidator.lastProblems(document));
        }
        client.askAgain();
    }

    private async lookAtPlan(programme: ProgrammeKey, round: number): Promise<void> {
        const terms = this.services.terms.at(programme);
        const plans = this.services.plans.at(programme);
        for (const group of terms.classes()) {
            for (const work of [() => plans.schedule(group.name), () => terms.of(group), () => terms.of(group).supplies.late, () => terms.of(group).supplies.shortages, () => terms.of(group).supplies.clashes, () => terms.of(group).ledger]) {
                work();
                await new Promise(resolve => setImmediate(resolve));
                if (round !== this.round) return;
            }
        }
        const term = terms.all();
        this.services.validation.DocumentValidator.lookAtPlan(programme, term);
        terms.lookedAt(term);
    }

    private lookAt(document: LangiumDocument): void {
        const { problems, again } = this.services.validation.DocumentValidator.lookAgain(document);
        if (again) this.send(document, problems);
    }

    private send(document: LangiumDocument, problems: readonly Problem[]): void {
        const diagnostics = problems.map(toDiagnostic);
        const uri = document.uri.toString();
        const text = JSON.stringify(diagnostics);
        if (this.lastSent.get(uri) === text) return;
        this.lastSent.set(uri, text);
        document.diagnostics = diagnostics;
        void this.shared.lsp.Connection?.sendDiagnostics({ uri, diagnostics, version: document.textDocument.version });
    }
}
