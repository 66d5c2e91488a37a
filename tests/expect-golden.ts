import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { expect } from 'vitest';

/** Compares with files of `golden/` beside a test. Renew them with RENEW_GOLDEN=1, then read the difference before it is committed. `test` is the test's address. */
export function goldensBeside(test: string): (name: string, text: string) => void {
    const folder = new URL('./golden/', test);
    return (name, text) => {
        const file = new URL(name, folder);
        if (process.env['RENEW_GOLDEN'] === '1') {
            mkdirSync(folder, { recursive: true });
            writeFileSync(file, text);
        }
        expect(text).toBe(readFileSync(file, 'utf8'));
    };
}
