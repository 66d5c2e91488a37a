import { afterEach, describe, expect, test, vi } from 'vitest';
import { Client } from './client.js';

const programme = {
    'a.kit': 'material spoon\n  reusable\n\nmaterial bell\n  reusable\n',
    'a.lesson': 'lesson one\n  materials\n    spoon 1 per pair\n  activity tap 5 min\n    do: Tap with the {spoon}.\n',
    'a.course': 'course music\n  unit all\n    one\n'
};

let client: Client | undefined;
afterEach(() => client?.stop());

const severityOf = (code: string): number | undefined => client!.problems('a.kit').find(problem => problem.code === code)?.severity;
const soon = (check: () => void): Promise<void> => vi.waitFor(check, { timeout: 10_000, interval: 20 });

describe('how serious a problem is', () => {
    test('is as the reference says without a setting', async () => {
        client = await Client.start({ programme });
        await soon(() => expect(severityOf('unused-thing')).toBe(3));
    });

    test('is as set when the server starts', async () => {
        client = await Client.start({ programme, settings: { severities: { 'unused-thing': 'error' } } });
        await soon(() => expect(severityOf('unused-thing')).toBe(1));
    });

    test('changes with the setting, without a change of text; what is no severity is passed over', async () => {
        client = await Client.start({ programme });
        await soon(() => expect(severityOf('unused-thing')).toBe(3));
        const set = (severities: unknown): Promise<void> => client!.connection.sendNotification('workspace/didChangeConfiguration', { settings: { haversack: { severities } } });
        await set({ 'unused-thing': 'warning' });
        await soon(() => expect(severityOf('unused-thing')).toBe(2));
        await set({ 'unused-thing': 'off' });
        await soon(() => expect(severityOf('unused-thing')).toBeUndefined());
        await set({ 'unused-thing': 'loud' });
        await soon(() => expect(severityOf('unused-thing')).toBe(3));
    });
});
