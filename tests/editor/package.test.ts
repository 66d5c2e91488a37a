/** What is in the extension's package, read as a zip archive (APPNOTE 6.3, section 4.3.12), and its page in the editor. */
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { inflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { repository, session } from './session.js';
import { until } from './until.js';

const path = join(repository, '.build/haversack.vsix');
const archive = readFileSync(path);

interface Entry {
    name: string;
    read(): string;
}

/** The entries of the central directory. */
function entries(): Entry[] {
    const end = archive.lastIndexOf(Buffer.from('PK\u0005\u0006', 'latin1'));
    const found: Entry[] = [];
    for (let at = archive.readUInt32LE(end + 16); found.length < archive.readUInt16LE(end + 10);) {
        const [nameLength, extra, comment] = [28, 30, 32].map(offset => archive.readUInt16LE(at + offset)) as [number, number, number];
        const [method, size, local] = [archive.readUInt16LE(at + 10), archive.readUInt32LE(at + 20), archive.readUInt32LE(at + 42)];
        const name = archive.toString('utf8', at + 46, at + 46 + nameLength);
        const read = (): string => {
            const start = local + 30 + archive.readUInt16LE(local + 26) + archive.readUInt16LE(local + 28);
            const bytes = archive.subarray(start, start + size);
            return (method === 0 ? bytes : inflateRawSync(bytes)).toString('utf8');
        };
        found.push({ name, read });
        at += 46 + nameLength + extra + comment;
    }
    return found;
}

const all = entries();
const textOf = (name: string): string => all.find(entry => entry.name === `extension/${name}`)!.read();

describe('the package', () => {
    it('holds what the extension needs and nothing else', () => {
        const folders = ['dist', 'l10n', 'media', 'new-programme', 'syntaxes', 'walkthrough'];
        const files = ['package.json', 'package.nls.json', 'readme.md', 'changelog.md', 'LICENSE.txt', 'THIRD-PARTY-NOTICES.txt', 'language-configuration.json'];
        const own = all.map(({ name }) => name).filter(name => name.startsWith('extension/')).map(name => name.slice('extension/'.length));
        expect(own.filter(name => !files.includes(name) && !folders.includes(name.split('/')[0]!))).toEqual([]);
        expect(own.filter(name => /\.map$|\.[cm]?ts$|test|node_modules|^dist\/.*\/|\.ya?ml$/.test(name))).toEqual([]);
        expect(files.filter(name => !own.includes(name))).toEqual([]);
        expect(own.filter(name => name.startsWith('walkthrough/')).length).toBe(6);
    });

    it('is under 2 MB, without the way to its sources', () => {
        expect(statSync(path).size).toBeLessThan(2 * 1024 * 1024);
        for (const { name, read } of all.filter(entry => entry.name.startsWith('extension/dist/'))) expect([name, /sourceMappingURL=/.test(read())]).toEqual([name, false]);
    });

    it('has every file that its manifest names', () => {
        const named = [...textOf('package.json').matchAll(/"(?:\.\/)?((?:dist|media|walkthrough|syntaxes|l10n)\/[\w./-]+)"/g)].map(([, file]) => file!);
        expect(named.length).toBeGreaterThan(10);
        const endings = ['', '.js', '.cjs'];
        expect(named.filter(file => !endings.some(ending => all.some(({ name }) => name === `extension/${file}${ending}`)))).toEqual([]);
    });

    it('has its pictures in the page, each told in words', () => {
        const pictures = [...textOf('readme.md').matchAll(/!\[([^\]]*)\]\(data:image\/png;base64,([A-Za-z0-9+/=]+)\)/g)];
        expect(pictures).toHaveLength(2);
        for (const [, words, bytes] of pictures) {
            expect(words!.length).toBeGreaterThan(40);
            expect(Buffer.from(bytes!, 'base64').subarray(1, 4).toString('latin1')).toBe('PNG');
        }
    });
});

describe('the extension’s page in the editor', () => {
    const reading = session();

    it('shows its icon and its pictures', async () => {
        const editor = reading();
        await editor.runCommand('Extensions: Show Enabled Extensions');
        await editor.page.locator('.extension-list-item').filter({ hasText: 'Haversack' }).click();
        const icon = editor.page.locator('.extension-editor .header img.icon, .extension-editor .icon-container img');
        await until('the icon', () => icon.first().evaluate(image => (image as HTMLImageElement).naturalWidth), width => width > 0);
        const pictures = editor.webview().locator('img');
        await until('the pictures', () => pictures.evaluateAll(images => images.map(image => (image as HTMLImageElement).naturalWidth)), widths => widths.length === 2 && widths.every(width => width > 500));
        await editor.screenshot('extension-page');
    });

    it('offers its settings, those of the checks one by one', async () => {
        const editor = reading();
        await editor.runCommand('Preferences: Open Settings (UI)');
        await editor.page.keyboard.type('@ext:haversack-workshop.haversack');
        const labels = editor.page.locator('.settings-editor .setting-item-label');
        await until('the settings', () => labels.allTextContents(), texts => texts.includes('Paper') && texts.includes('Severities') && !texts.includes('Font Size'));
        await editor.screenshot('settings');
        await editor.page.locator('.settings-editor').getByRole('button', { name: 'Add Item' }).last().click();
        await editor.page.locator('.settings-editor .setting-list-object-key').last().waitFor();
        await editor.screenshot('settings-severities');
    });
});
