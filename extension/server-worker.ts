import { BrowserMessageReader, BrowserMessageWriter, type Message, type MessageTransports } from 'vscode-languageclient/browser';
import { randomName } from './random-name.js';

/** Runs the server in a worker, in a new one each time it is started, and tells the client when it has died. */
export class ServerWorker {
    private last: Worker | undefined;

    /** @param address of the server's script */
    constructor(private readonly address: string) {}

    start(): Promise<MessageTransports> {
        this.end();
        const name = `haversack-${randomName()}`;
        const worker = new Worker(this.address, { name });
        this.last = worker;
        const reader = new ClosingReader(worker);
        // Of a worker that was never heard this says that its script could not be loaded; one that was heard lives on.
        worker.addEventListener('error', () => { if (!reader.heard) reader.close(); });
        const listening = reader.listen((message: Message) => {
            if (!('id' in message)) return;
            listening.dispose();
            void death(name).then(() => { if (this.last === worker) reader.close(); });
        });
        return Promise.resolve({ reader, writer: new BrowserMessageWriter(worker) });
    }

    end(): void {
        this.last?.terminate();
        this.last = undefined;
    }
}

/** A reader that can be told that nothing more will come. */
class ClosingReader extends BrowserMessageReader {
    heard = false;

    constructor(worker: Worker) {
        super(worker);
        this.listen(() => { this.heard = true; });
    }

    close(): void {
        this.fireClose();
    }
}

const looks = 100;
const betweenLooks = 100;

/**
 * Settles when the worker with this name is no more. It holds a lock for as long as it lives: the browser tells nothing else of a worker that
 * it ended, and the editor passes no error on. Never settles where the browser has no locks.
 */
async function death(name: string): Promise<void> {
    const { locks } = navigator;
    for (let look = 0; locks && look < looks; look++) {
        const { held } = await locks.query();
        // An editor may put words of its own before the name.
        const lock = held?.find(one => one.name?.endsWith(name))?.name;
        if (lock !== undefined) return locks.request(lock, () => undefined);
        await new Promise(resolve => setTimeout(resolve, betweenLooks));
    }
    return new Promise(() => undefined);
}
