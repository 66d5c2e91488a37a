import { Cancellation, DefaultDocumentBuilder, OperationCancelled, type DocumentState, type URI } from 'langium';

/**
 * Lets no request look at the tree of an older text: one that comes right after a change waits until that change has been
 * taken up, even while another build still runs.
 */
export class HaversackBuilder extends DefaultDocumentBuilder {
    private announced = 0;
    private waiting: (() => void)[] = [];

    /** A change is on its way; `update` will be called for it. */
    announceUpdate(): void {
        this.announced++;
    }

    override async update(changed: URI[], deleted: URI[], token = Cancellation.CancellationToken.None): Promise<void> {
        let begun = false;
        const begin = (): void => {
            if (!begun) this.takenUp();
            begun = true;
        };
        const listener = this.onUpdate(begin);
        try {
            await super.update(changed, deleted, token);
        } finally {
            listener.dispose();
            begin();
        }
    }

    override waitUntil(state: DocumentState, token?: Cancellation.CancellationToken): Promise<void>;
    override waitUntil(state: DocumentState, uri?: URI, token?: Cancellation.CancellationToken): Promise<URI>;
    override async waitUntil(state: DocumentState, uri?: URI | Cancellation.CancellationToken, token?: Cancellation.CancellationToken): Promise<URI | void> {
        const cancel = Cancellation.CancellationToken.is(uri) ? uri : token ?? Cancellation.CancellationToken.None;
        if (this.announced > 0) await new Promise<void>(resolve => this.waiting.push(resolve));
        if (cancel.isCancellationRequested) throw OperationCancelled;
        return Cancellation.CancellationToken.is(uri) ? super.waitUntil(state, uri) : super.waitUntil(state, uri, token);
    }

    private takenUp(): void {
        this.announced = Math.max(0, this.announced - 1);
        if (this.announced > 0) return;
        const { waiting } = this;
        this.waiting = [];
        for (const resume of waiting) resume();
    }
}
