import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const read = (path: string): string => readFileSync(join('extension', path), 'utf8');
const manifest = JSON.parse(read('package.json')) as {
    activationEvents: string[];
    contributes: { commands: { command: string; title: string; category: string }[]; menus: Record<string, { command: string; when?: string }[]>; keybindings: { command: string; key: string; mac: string; when?: string }[]; views: Record<string, { id: string }[]>; viewsWelcome: { view: string; contents: string }[]; languages: { extensions: string[] }[] };
};
const texts = JSON.parse(read('package.nls.json')) as Record<string, string>;
const commands = manifest.contributes.commands.map(({ command }) => command).sort();

it('has a text for every placeholder and no text without one', () => {
    const used = [...read('package.json').matchAll(/"%([\w.-]+)%"/g)].map(([, key]) => key!);
    expect([...new Set(used)].sort()).toEqual(Object.keys(texts).sort());
});

it('registers every command that it declares, and no other', () => {
    const registered = ['start.ts', 'trees/tree-views.ts'].flatMap(file => [...read(file).matchAll(/^ {8}'(haversack\.[\w.]+)':/gm)].map(([, name]) => name!));
    expect(registered.sort()).toEqual(commands);
});

it('names only declared commands in menus and keys', () => {
    const named = [...Object.values(manifest.contributes.menus).flat(), ...manifest.contributes.keybindings].map(({ command }) => command);
    expect(named.filter(command => !commands.includes(command))).toEqual([]);
});

it('starts for every kind of file of the language', () => {
    for (const ending of manifest.contributes.languages[0]!.extensions) expect(manifest.activationEvents).toContain(`workspaceContains:**/*${ending}`);
});

it('points only to files that are there or are drawn when it is packaged', () => {
    const paths = [...read('package.json').matchAll(/"\.\/((?!dist)[\w./-]+)"/g)].map(([, path]) => path!);
    expect(paths.length).toBeGreaterThan(3);
    expect(paths.filter(path => !existsSync(join('extension', path)))).toEqual([]);
});

it('keeps few keys, each a chord on Ctrl+K that works only where its command does', () => {
    const keys = manifest.contributes.keybindings.filter(({ when }) => !when?.includes('focusedView'));
    expect(keys.length).toBeLessThanOrEqual(4);
    expect(new Set(keys.map(({ key, when }) => `${key} ${when}`)).size).toBe(keys.length);
    for (const { key, mac, when } of keys) {
        // Chords that VS Code 1.91 leaves free: looked up in the key codes of its workbench, Ctrl+K with B (32) and with Shift+B (1056).
        expect(['ctrl+k b', 'ctrl+k shift+b']).toContain(key);
        expect(mac).toBe(key.replace('ctrl', 'cmd'));
        expect(when).toMatch(/haversack/);
    }
});

it('has keys of a tree only while the tree has the keyboard', () => {
    const keys = manifest.contributes.keybindings.filter(({ when }) => when?.includes('focusedView'));
    expect(keys.map(({ key }) => key)).toEqual(['alt+up', 'alt+down', 'space']);
    for (const { when } of keys) expect(when).toMatch(/^focusedView == 'haversack\.(programme|week)' && listFocus && !inputFocus/);
});

it('has for every view a welcome with one main button, or words alone', () => {
    for (const { contents } of manifest.contributes.viewsWelcome) {
        const text = texts[contents.slice(1, -1)]!;
        // A line that is a link and nothing else becomes a button.
        expect(text.split('\n').filter(line => /^\[[^\]]+\]\([^)]+\)$/.test(line)).length).toBeLessThanOrEqual(1);
        for (const [, command] of text.matchAll(/\(command:(haversack[\w.]+)\)/g)) expect(commands).toContain(command);
    }
    const views = Object.values(manifest.contributes.views).flat().map(({ id }) => id);
    expect([...new Set(manifest.contributes.viewsWelcome.map(({ view }) => view))].sort()).toEqual(views.sort());
});

it('offers every command in the palette under one category', () => {
    for (const { command, title, category } of manifest.contributes.commands) {
        const palette = manifest.contributes.menus['commandPalette']!.filter(entry => entry.command === command);
        expect(palette.length).toBeLessThanOrEqual(1);
        // What belongs to one row of a tree is reached there, by its menu, which the keyboard opens too.
        if (palette[0]?.when === 'false') expect(Object.entries(manifest.contributes.menus).some(([menu, entries]) => menu.startsWith('view/item/') && entries.some(entry => entry.command === command))).toBe(true);
        expect([title.startsWith('%'), category]).toEqual([true, 'Haversack']);
    }
});
