import { Cancellation, DefaultDocumentBuilder, DocumentState, OperationCancelled, type AstNode, type BuildOptions, type LangiumDocument, type URI } from 'langium';
import { exportsOf } from '@haversack/language/linking/exports';
import type { NameIndex } from '@haversack/language/linking/name-index';
import type { ProgrammeKey } from '@haversack/language/linking/programmes';

/**
 * Lets no request look at the tree of an older text: one that comes right after a change waits until that change has been
 * taken up, even while another build still runs. And relinks nothing when a change leaves all names as they were: a price
 * edited in the inventory does not touch a thousand lessons; nor does any change touch another programme.
 */
export class HaversackBuilder extends DefaultDocumentBuilder {
    private announced = 0;
    private waiting: (() => void)[] = [];
    private readonly untilEnd = new Set<() => void>();
    private namesChange = true;
    private programmesChange = false;
    /** Files of builds that were cut short: nobody has heard yet that they are done. */
    private readonly untold = new Set<LangiumDocument>();
    private lastChanged: { uris: ReadonlySet<string>; programmes: ReadonlySet<ProgrammeKey> } | undefined;

    /** A change is on its way; `update` will be called for it. */
    announceUpdate(): void {
        this.announced++;
    }

    /** With the next update, files belong to other programmes than before. */
    announceOtherProgrammes(): void {
        this.programmesChange = true;
    }

    override async update(changed: URI[], deleted: URI[], token = Cancellation.CancellationToken.None): Promise<void> {
        let begun = false;
        const begin = (): void => {
            if (!begun) this.takenUp();
            begun = true;
        };
        const listener = this.onUpdate(begin);
        try {
            this.namesChange = this.programmesChange || deleted.length > 0 || !changed.every(uri => this.keepsItsNames(uri));
            await super.update(changed, deleted, token);
        } finally {
            listener.dispose();
            this.programmesChange = false;
            this.lastChanged = undefined;
            begin();
            this.ended();
        }
    }

    override async build<T extends AstNode>(documents: LangiumDocument<T>[], options?: BuildOptions, token?: Cancellation.CancellationToken): Promise<void> {
        try {
            await super.build(documents, options, token);
        } finally {
            this.ended();
        }
    }

    override waitUntil(state: DocumentState, token?: Cancellation.CancellationToken): Promise<void>;
    override waitUntil(state: DocumentState, uri?: URI, token?: Cancellation.CancellationToken): Promise<URI>;
    override async waitUntil(state: DocumentState, uri?: URI | Cancellation.CancellationToken, token?: Cancellation.CancellationToken): Promise<URI | void> {
        const cancel = Cancellation.CancellationToken.is(uri) ? uri : token ?? Cancellation.CancellationToken.None;
        do {
            if (this.announced > 0) await new Promise<void>(resolve => this.waiting.push(resolve));
            if (cancel.isCancellationRequested) throw OperationCancelled;
            // A file that is not relinked leads into the changed one, which must have been read anew too.
            if (this.currentState < state) await this.reached(state, cancel);
        } while (this.announced > 0);
        return Cancellation.CancellationToken.is(uri) ? undefined : super.waitUntil(state, uri, token);
    }

    /** A file that goes while somebody waits for it reaches no state: after each build the waiting one looks again. */
    protected override async awaitDocumentState(state: DocumentState, uri: URI, token: Cancellation.CancellationToken): Promise<URI> {
        for (;;) {
            const document = this.langiumDocuments.getDocument(uri);
            if (!document || document.state >= state || this.currentState >= state || token.isCancellationRequested) return super.awaitDocumentState(state, uri, token);
            await this.reached(state, token);
        }
    }

    /** A file of another language that an editor sends is none of ours. */
    protected override async findChangedUris(changed: URI): Promise<URI[]> {
        return (await super.findChangedUris(changed)).filter(uri => this.serviceRegistry.hasServices(uri));
    }

    protected override shouldRelink(document: LangiumDocument, changedUris: Set<string>): boolean {
        return this.namesChange && (this.programmesChange || this.isOfSameProgramme(document, changedUris)) && super.shouldRelink(document, changedUris);
    }

    private isOfSameProgramme({ uri }: LangiumDocument, changed: ReadonlySet<string>): boolean {
        const { programmes } = this.indexManager as NameIndex;
        if (!programmes.areSeveral) return true;
        if (this.lastChanged?.uris !== changed) this.lastChanged = { uris: changed, programmes: new Set([...changed].map(one => programmes.of(one))) };
        return this.lastChanged.programmes.has(programmes.of(uri));
    }

    /** All checks always run together, so none can be missing; the default asks every file at every change. */
    protected override resultsAreIncomplete(): boolean {
        return false;
    }

    protected override buildDocuments(documents: LangiumDocument[], options: BuildOptions, token: Cancellation.CancellationToken): Promise<void> {
        for (const document of documents) this.untold.add(document);
        return super.buildDocuments(documents, options, token);
    }

    /** Who listens is told of every file that is done, even if the build is cut short right then: the next build would not do it again. */
    protected override notifyDocumentPhase(document: LangiumDocument, state: DocumentState): Promise<void> {
        return super.notifyDocumentPhase(document, state, Cancellation.CancellationToken.None);
    }

    protected override async notifyBuildPhase(documents: LangiumDocument[], state: DocumentState, token: Cancellation.CancellationToken): Promise<void> {
        if (state !== DocumentState.Validated) return super.notifyBuildPhase(documents, state, token);
        await super.notifyBuildPhase([...this.untold].filter(document => document.state === state), state, token);
        this.untold.clear();
    }

    /** Reads the new text of a file once before it is taken up: cheaper by far than relinking all files that name it. */
    private keepsItsNames(uri: URI): boolean {
        const document = this.langiumDocuments.getDocument(uri);
        const text = this.textDocuments?.get(uri)?.getText();
        if (!document || text === undefined || document.state < DocumentState.IndexedReferences) return false;
        const parser = this.serviceRegistry.getServices(uri).parser.LangiumParser;
        return exportsOf(document.parseResult.value) === exportsOf(parser.parse(text).value);
    }

    /** When the build has come so far or ends: where no file is to be built, no phase is told of. */
    private reached(state: DocumentState, token: Cancellation.CancellationToken): Promise<void> {
        return new Promise((resolve, reject) => {
            const stop = (): void => {
                phase.dispose();
                cancelled.dispose();
                this.untilEnd.delete(done);
            };
            const done = (): void => {
                stop();
                resolve();
            };
            const phase = this.onBuildPhase(state, done);
            const cancelled = token.onCancellationRequested(() => {
                stop();
                reject(OperationCancelled);
            });
            this.untilEnd.add(done);
        });
    }

    private ended(): void {
        for (const done of [...this.untilEnd]) done();
    }

    private takenUp(): void {
        this.announced = Math.max(0, this.announced - 1);
        if (this.announced > 0) return;
        const { waiting } = this;
        this.waiting = [];
        for (const resume of waiting) resume();
    }
}
