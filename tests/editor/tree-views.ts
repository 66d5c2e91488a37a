import type { Locator } from 'playwright-core';
import { until } from './until.js';
import type { Workbench } from './workbench.js';

/** The tree under a heading of our view container. The week's heading tells its number. */
const pane = (editor: Workbench, heading: RegExp): Locator => editor.page.locator('.pane').filter({ has: editor.page.locator('.pane-header h3.title').filter({ hasText: heading }) });
export const programme = (editor: Workbench): Locator => pane(editor, /^Programme$/);
export const week = (editor: Workbench): Locator => pane(editor, /^(Week|This week)/);
/** The row of this title, with its amount before it or without. */
export const row = (tree: Locator, title: string): Locator => tree.locator('.monaco-list-row').filter({ has: tree.page().locator('.label-name').getByText(new RegExp(`^(?:\\S.* · )?${title.replace(/[?.()]/g, String.raw`\$&`)}$`)) });
/** Label and description of every row that is on screen, with a bar between. */
export const rows = (tree: Locator): Promise<string[]> => tree.locator('.monaco-list-row').evaluateAll(all => all.map(one =>
    Array.from(one.querySelectorAll('.label-name, .label-description')).map(part => part.textContent).join(' | ')));
export const position = (all: readonly string[], label: string): number => all.findIndex(one => one.startsWith(`${label} |`) || one === label);
export const description = (tree: Locator): Promise<string> => tree.locator('.pane-header .description').innerText();
export const box = (one: Locator): Locator => one.locator('.custom-view-tree-node-item-checkbox');
export const isTicked = async (one: Locator): Promise<boolean> => (await box(one).getAttribute('aria-checked')) === 'true';
/** The week and its minutes. */
export const statusItem = (editor: Workbench): Locator => editor.page.locator('[id$="haversack.week"].statusbar-item, .statusbar-item[id*="haversack.week"]').first();

export async function openTrees(editor: Workbench): Promise<void> {
    await editor.runCommand('View: Show Haversack');
    await programme(editor).waitFor();
}

/** Goes to a week of the list: the clock says which is shown first. */
export async function goToWeek(editor: Workbench, wanted: number): Promise<void> {
    const number = async (): Promise<number> => Number(/\d+/.exec(await week(editor).locator('h3.title').innerText())?.[0] ?? NaN);
    await until('the week', number, Number.isInteger);
    for (let at = await number(); at !== wanted; at = await number()) {
        await editor.runCommand(at < wanted ? 'Next week in the list' : 'Previous week in the list');
        await until('another week', number, now => now !== at);
    }
}
