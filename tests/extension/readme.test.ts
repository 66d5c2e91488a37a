/** The extension's own page, and the pictures that are put into it when it is packaged. */
import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { drawPages, withPictures } from '../../extension/draw-pages.mjs';

const page = readFileSync('extension/README.md', 'utf8');
const { contributes } = JSON.parse(readFileSync('extension/package.json', 'utf8')) as { contributes: { keybindings: { key: string; mac?: string }[]; configuration: { properties: object } } };
const texts = JSON.parse(readFileSync('extension/package.nls.json', 'utf8')) as Record<string, string>;
const titles = Object.entries(texts).filter(([key]) => key.startsWith('command.')).map(([, title]) => title);

describe('the page', () => {
    it('names every setting and every key', () => {
        for (const setting of Object.keys(contributes.configuration.properties)) expect(page).toContain(`\`${setting}\``);
        const words = (key: string): string => key.replace(/\b[a-z]+/g, word => word[0]!.toUpperCase() + word.slice(1)).replace('cmd', 'Cmd');
        for (const { key, mac = key } of contributes.keybindings) expect(page).toContain(`| ${words(key)} | ${words(mac)} |`);
    });

    it('names commands as the palette has them', () => {
        const named = [...page.matchAll(/\*\*(?:Haversack: )?((?:Show|Start|Open|Print a|Save a|Save speaking)[^*]*)\*\*/g)].map(([, title]) => title!).filter(title => title !== 'Save as a file');
        expect(named.length).toBeGreaterThan(5);
        expect(named.filter(title => !titles.includes(title))).toEqual([]);
    });

    it('has no link or picture that leads nowhere outside the repository', () => {
        expect([...withPictures(page, undefined).matchAll(/\]\((?!https:)/g)]).toEqual([]);
        expect(page).not.toMatch(/\.svg/);
    });
});

describe('its pictures', () => {
    const drawn = { 'week.png': Buffer.from('week'), 'term.png': Buffer.from('term') };

    it('stand in it, told in words', () => {
        const text = withPictures(page, drawn);
        expect(text).toContain(`](data:image/png;base64,${Buffer.from('week').toString('base64')})`);
        expect([...text.matchAll(/!\[([^\]]{40,})\]\(data:/g)]).toHaveLength(2);
        expect(text).not.toContain('](pictures/');
    });

    it('are linked to where they are published', () => {
        expect(withPictures(page, drawn, 'https://pictures.invalid/a/')).toContain('](https://pictures.invalid/a/week.png)');
    });

    afterEach(() => { vi.unstubAllEnvs(); });

    it('are not drawn where there is no Chromium, and that is no error', async () => {
        vi.stubEnv('HAVERSACK_CHROMIUM', '/nowhere/chromium');
        expect(await drawPages('.build/cli/haversack.cjs', '.')).toBeUndefined();
    });

    it('leave no gap where none could be drawn', () => {
        const text = withPictures(page, undefined);
        expect(text).not.toContain('![');
        expect(text).not.toContain('\n\n\n');
        expect(text.length).toBeGreaterThan(page.length - 500);
    });
});
