import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Editor } from './harness.js';
import { session } from './session.js';
import { until } from './until.js';

const path = 'lessons/shake-1.lesson';
const lastNeed = /^ {4}hand-bell .*$/m;
const suggestions = (editor: Editor): Promise<string[]> => editor.page.locator('.suggest-widget.visible .monaco-list-row .label-name').allInnerTexts();
/** The one that Enter takes, once there is one: the list is asked for again after the first letter. */
const chosen = async (editor: Editor): Promise<string> => (await editor.page.locator('.suggest-widget.visible .monaco-list-row.focused .label-name').allInnerTexts()).join();
const signature = (editor: Editor): Promise<number> => editor.page.locator('.parameter-hints-widget.visible').count();

/** Begins a line below the last need, with what is typed there. */
async function typeNeed(editor: Editor, text: string): Promise<void> {
    const lines = (await readFile(join(editor.folder, path), 'utf8')).split('\n');
    await editor.code.goToLine(lines.findIndex(line => lastNeed.test(line)) + 1);
    await editor.code.press('End');
    await editor.page.keyboard.press('Enter');
    await editor.page.keyboard.type(text, { delay: 30 });
}

async function saved(editor: Editor): Promise<string> {
    await editor.save();
    // Formatting on typing sets columns when there is time for it between two keys.
    return (await readFile(join(editor.folder, path), 'utf8')).replace(/ +/g, ' ').replaceAll(' \n', '\n');
}

describe('somebody who types without looking at what is offered', () => {
    const typing = session();

    it('gets no word that nobody typed: Enter behind a blank begins a line', async () => {
        const editor = typing();
        await editor.openFile('shake-1.lesson');
        await editor.code.codeLenses();
        await typeNeed(editor, 'scarf 1 per pair ');
        await until('what may come next', () => suggestions(editor), offered => offered.includes('in kit'));
        await editor.page.keyboard.press('Enter');
        await editor.page.keyboard.type('metal-spoon 1 per group');
        await editor.page.keyboard.press('Escape');
        expect(await saved(editor)).toContain('\n scarf 1 per pair\n metal-spoon 1 per group\n');
    });

    it('has the first suggestion with Enter once a letter is typed', async () => {
        const editor = typing();
        await editor.code.press('End');
        await editor.page.keyboard.type(' n');
        await until('the flag', () => chosen(editor), label => label === 'not in kit');
        await editor.page.keyboard.press('Enter');
        expect(await saved(editor)).toContain('\n metal-spoon 1 per group not in kit\n');
    });

    it('has a name in prose in the same way', async () => {
        const editor = typing();
        await editor.code.press('End');
        await editor.page.keyboard.press('Enter');
        await editor.page.keyboard.press('Shift+Tab');
        await editor.page.keyboard.type('about: With a {');
        await until('names', () => suggestions(editor), offered => offered.length > 1);
        await editor.page.keyboard.type('met');
        await until('the spoon', () => chosen(editor), label => label === 'metal-spoon');
        await editor.page.keyboard.press('Enter');
        expect(await saved(editor)).toContain('\n about: With a {metal-spoon}\n');
    });

    it('sees the lines above again after Enter', async () => {
        const editor = typing();
        await typeNeed(editor, 'glass-bottle 1');
        await until('the help for the line', () => signature(editor), count => count === 1);
        await editor.page.keyboard.press('Escape');
        await editor.page.keyboard.type(' per');
        await until('the help again', () => signature(editor), count => count === 1);
        await editor.page.keyboard.type(' pair');
        await editor.page.keyboard.press('Enter');
        await until('no help on the new line', () => signature(editor), count => count === 0);
    });
});

describe('somebody whose inventory is changed by another program', () => {
    const watching = session();

    it('sees in the colours which names are known', async () => {
        const editor = watching();
        await editor.openFile('shake-1.lesson');
        const line = (await readFile(join(editor.folder, path), 'utf8')).split('\n').findIndex(text => lastNeed.test(text)) + 1;
        await editor.code.goToLine(line);
        const colour = async (): Promise<string> => (await editor.code.colours(line)).find(({ text }) => text.trim().startsWith('hand-bell'))?.colour ?? '';
        const plain = async (): Promise<string> => (await editor.code.colours(line))[0]!.colour;
        await until('the colour of a material', colour, found => found !== '');
        await until('the colour of a material', async () => await colour() !== await plain(), differs => differs);
        const known = await colour();
        const inventory = await readFile(join(editor.folder, 'inventory.kit'), 'utf8');
        await writeFile(join(editor.folder, 'inventory.kit'), inventory.replace('material hand-bell', 'material desk-bell'));
        await until('no colour', colour, found => found !== known);
        await writeFile(join(editor.folder, 'inventory.kit'), inventory);
        await until('the colour again', colour, found => found === known);
    });
});
