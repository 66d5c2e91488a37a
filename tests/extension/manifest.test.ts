import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const read = (path: string): string => readFileSync(join('extension', path), 'utf8');
const manifest = JSON.parse(read('package.json')) as {
    activationEvents: string[];
    contributes: { commands: { command: string }[]; menus: Record<string, { command: string }[]>; keybindings: { command: string }[]; languages: { extensions: string[] }[] };
};
const texts = JSON.parse(read('package.nls.json')) as Record<string, string>;
const commands = manifest.contributes.commands.map(({ command }) => command).sort();

it('has a text for every placeholder and no text without one', () => {
    const used = [...read('package.json').matchAll(/"%([\w.]+)%"/g)].map(([, key]) => key!);
    expect([...new Set(used)].sort()).toEqual(Object.keys(texts).sort());
});

it('registers every command that it declares, and no other', () => {
    const registered = [...read('start.ts').matchAll(/^ {8}'(haversack\.[\w.]+)':/gm)].map(([, name]) => name!);
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
