/** Texts that people read of the extension: all gathered for translation, the settings kept true to the checks. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { allCodes } from '@haversack/language/checks/all-checks';
import { allPlanChecks } from '@haversack/server/plan-checks/all-plan-checks';
import { severityProperties, severityTexts, textsIn, textsInSources } from '../../extension/texts.mjs';

const read = (path: string): Record<string, unknown> => JSON.parse(readFileSync(join('extension', path), 'utf8')) as Record<string, unknown>;
interface Setting {
    scope?: string;
    default: unknown;
    enum?: unknown[];
    properties?: Record<string, object>;
    additionalProperties?: unknown;
}
const manifest = read('package.json') as {
    l10n: string;
    capabilities: { untrustedWorkspaces: { supported: unknown; restrictedConfigurations: string[] } };
    contributes: { configuration: { properties: Record<string, Setting> } };
};
const settings = manifest.contributes.configuration.properties;
const codes = [...allCodes, ...allPlanChecks];

describe('texts of the sources', () => {
    it('all stand in the bundle, and no other (npm run l10n)', () => {
        expect(manifest.l10n).toBe('./l10n');
        const texts = textsInSources();
        expect(read('l10n/bundle.l10n.json')).toEqual(Object.fromEntries(texts.map(text => [text, text])));
        expect(texts.length).toBeGreaterThan(80);
        expect(texts).toContain('Stay on this week');
    });

    it('are found wherever they stand, and must stand there whole', () => {
        expect(textsIn('a.ts', "const a = f(vscode.l10n.t('One {0}', l10n.t(`Two`)), { t: t('no') });")).toEqual(['One {0}', 'Two']);
        expect(() => textsIn('a.ts', "\nvscode.l10n.t('One ' + two)")).toThrow('a.ts:2');
        expect(() => textsIn('a.ts', 'vscode.l10n.t(`One ${two}`)')).toThrow('a.ts:1');
    });
});

describe('the settings', () => {
    it('give every check its name, what it is by itself and its heading (npm run l10n)', () => {
        expect(settings['haversack.severities']!.properties).toEqual(severityProperties(codes));
        expect(settings['haversack.severities']!.additionalProperties).toBe(false);
        const texts = Object.fromEntries(Object.entries(read('package.nls.json')).filter(([key]) => key.startsWith('severity.')));
        expect(texts).toEqual(severityTexts(codes));
        expect(Object.keys(texts)).toHaveLength(new Set(codes.map(({ code }) => code)).size);
    });

    it('are few, each with a scope and a default that is one of its values', () => {
        const all = Object.entries(settings);
        expect(all.length).toBeLessThanOrEqual(12);
        for (const [name, { scope, default: normal, enum: values }] of all) {
            expect([name, scope]).toEqual([name, 'window']);
            if (values) expect(values).toContain(normal);
        }
    });

    it('of a folder that is not trusted cannot make problems less serious', () => {
        expect(manifest.capabilities.untrustedWorkspaces).toMatchObject({ supported: 'limited', restrictedConfigurations: ['haversack.severities'] });
    });
});
