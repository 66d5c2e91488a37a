import { setTimeout as pause } from 'node:timers/promises';

/** How long a step may take before the test fails, in milliseconds: a busy machine with two cores, not a quiet one. */
export const patience = 30_000;

/**
 * Asks again until the answer is accepted, for conditions that Playwright cannot wait on by itself.
 * @param what what is awaited, for the message of the error
 * @returns the accepted answer
 * @throws Error with the last answer (or the last error of `ask`) when time is up
 */
export async function until<T>(what: string, ask: () => Promise<T>, accept: (answer: T) => boolean, timeout = patience): Promise<T> {
    const end = performance.now() + timeout;
    for (;;) {
        let last: string;
        try {
            const answer = await ask();
            if (accept(answer)) return answer;
            last = JSON.stringify(answer, null, 2);
        } catch (error) {
            last = String(error);
        }
        if (performance.now() > end) throw new Error(`Waited ${timeout} ms for ${what}. Last seen: ${last}`);
        await pause(50);
    }
}
