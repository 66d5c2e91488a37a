import { readFileSync } from 'node:fs';
import { expect, test, vi } from 'vitest';
import { allCodes } from '@haversack/language/checks/all-checks';
import { statements } from '@haversack/language/facts/statements';
import { firstExample } from '@haversack/language/reference-words';
import { referenceText } from '@haversack/language/write-reference';
import { planCodes } from '../../server/plan-checks/plan-codes.js';
import { problemsIn } from './fixture.js';

// Every example of the reference is checked; a loaded machine may take seconds for it.
vi.setConfig({ testTimeout: 30_000 });

test('REFERENCE.md is what `npm run reference` writes', async () => {
    const written = readFileSync(new URL('../../language/REFERENCE.md', import.meta.url), 'utf8');
    expect(written).toBe(await referenceText(planCodes));
});

test('the reference shows every statement and every code', async () => {
    const text = await referenceText(planCodes);
    for (const { example } of statements) expect(text).toContain(`| \`${example}\` |`);
    for (const { code, explains } of [...allCodes, ...planCodes.codes]) {
        expect(text).toContain(`### ${code}\n\n`);
        expect(text).toContain(explains);
    }
});

test('its first example has no problem', async () => {
    expect(await problemsIn({ 'first.course': firstExample })).toEqual([]);
});
