/** The preview's page in a language that nobody speaks: every text comes through the bundle. */
import { beforeEach, expect, it, vi } from 'vitest';
import { readFileSync } from 'node:fs';
import { given, resetStandIn } from './vscode-stand-in.js';

vi.mock('vscode', () => import('./vscode-stand-in.js'));
const { previewHtml } = await import('./page-html.js');

const bundle = JSON.parse(readFileSync('extension/l10n/bundle.l10n.json', 'utf8')) as Record<string, string>;
/** Each text longer, as in many languages, and between marks; what is to be filled in stays. */
const translation = Object.fromEntries(Object.keys(bundle).map(text => [text, `[${text.replace(/[aeiou]/g, '$&\u0301$&')}]`]));

beforeEach(() => {
    resetStandIn();
    given.l10n = text => translation[text] ?? text;
});

it('has no text of its own', () => {
    const body = previewHtml().replace(/<style[^]*?<\/style>/g, '');
    const shown = [...body.matchAll(/>([^<]+)</g)].map(([, text]) => text!.trim()).filter(text => text !== '');
    const told = [...body.matchAll(/(?:aria-label|title|placeholder|alt|data-text|data-label)="([^"]*)"/g)].map(([, text]) => text!);
    expect(shown.length).toBeGreaterThan(6);
    expect(told.length).toBeGreaterThan(5);
    expect([...shown, ...told].filter(text => !/^\[.*\]$/.test(text))).toEqual([]);
    expect(told.filter(text => text.includes('{0}')).length).toBe(2);
});

it('keeps a translation from becoming markup', () => {
    given.l10n = () => '"><script>alert(1)</script>\'';
    const html = previewHtml();
    expect(html.match(/<script/g)).toHaveLength(1);
    expect(html).not.toContain('alert(1)</script>');
});
