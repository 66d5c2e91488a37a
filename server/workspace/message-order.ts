import type { Connection } from 'vscode-languageserver';
import { ErrorCodes, Message, ResponseError, type MessageStrategy } from 'vscode-languageserver-protocol';

const outOfOrder = 'haversack/outOfOrder';

const refusals = {
    'too early': [ErrorCodes.ServerNotInitialized, 'The server waits for initialize.'],
    'too late': [ErrorCodes.InvalidRequest, 'The server has been shut down.'],
    'again': [ErrorCodes.InvalidRequest, 'The server is initialized already.']
} as const;

/**
 * Keeps to the order of the Language Server Protocol (3.17, "Initialize Request" and "Shutdown Request"): before `initialize` and after `shutdown` requests are
 * refused and notifications but `exit` passed over, and nothing is initialized twice. Whoever waits for the files would else wait for ever.
 */
export function inOrder(): MessageStrategy {
    let stage: 'before' | 'initializing' | 'running' | 'after' = 'before';
    const refusalOf = (method: string): keyof typeof refusals | undefined => {
        if (stage === 'after') return 'too late';
        if (method === 'initialize') return stage === 'before' ? undefined : 'again';
        return stage === 'before' ? 'too early' : undefined;
    };
    return {
        handleMessage: (message, next) => {
            if (Message.isRequest(message)) {
                const refusal = refusalOf(message.method);
                if (refusal) return next(Object.assign({}, message, { method: outOfOrder, params: { refusal } }));
                if (message.method === 'initialize') stage = 'initializing';
                if (message.method === 'shutdown') stage = 'after';
            } else if (Message.isNotification(message) && message.method !== 'exit') {
                if (stage === 'before' || stage === 'after' || (message.method === 'initialized' && stage === 'running')) return;
                if (message.method === 'initialized') stage = 'running';
            }
            next(message);
        }
    };
}

/** Answers what came out of order. */
export function refuseOutOfOrder(connection: Connection): void {
    connection.onRequest(outOfOrder, (params: unknown) => {
        const { refusal } = (params ?? {}) as { refusal?: unknown };
        const [code, words] = refusals[refusal as keyof typeof refusals] ?? refusals['too late'];
        return new ResponseError(code, words);
    });
}
