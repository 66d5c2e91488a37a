import type { Locator, Page } from 'playwright-core';
import type { QuickInput } from './quick-input.js';
import { until } from './until.js';

export interface Problem {
    readonly severity: 'error' | 'warning' | 'info';
    /** With line breaks where the message has several lines. */
    readonly message: string;
    /** The name of the file. */
    readonly file: string;
    /** Counted from 1, as the editor shows it. */
    readonly line: number;
    /** Counted from 1, as the editor shows it. */
    readonly column: number;
    /** Who reports it; empty when the panel names nobody. */
    readonly source: string;
    /** Empty when there is none. */
    readonly code: string;
}

export interface ProblemCounts {
    readonly errors: number;
    readonly warnings: number;
}

interface Row {
    readonly index: number;
    readonly last: boolean;
    readonly file?: string;
    readonly problem?: Omit<Problem, 'file'>;
}

/** The Problems panel and its count in the status bar. */
export class ProblemsPanel {
    private readonly panel: Locator;

    constructor(private readonly page: Page, private readonly quickInput: QuickInput) {
        this.panel = page.locator('.markers-panel');
    }

    /** How many errors and warnings the status bar counts in the folder. */
    async counts(): Promise<ProblemCounts> {
        const label = await this.page.locator('#status\\.problems a').getAttribute('aria-label');
        const count = (kind: string): number => Number(new RegExp(`${kind}: (\\d+)`).exec(label ?? '')?.[1] ?? 0);
        return { errors: count('Errors'), warnings: count('Warnings') };
    }

    /** Waits until the status bar counts as many errors and warnings as this. */
    async waitForCounts(errors: number, warnings = 0): Promise<void> {
        await until(`${errors} errors and ${warnings} warnings`, () => this.counts(),
            (found) => found.errors === errors && found.warnings === warnings);
    }

    /**
     * All that the Problems panel lists, in its order, once `accept` is content with it. The panel is opened for it.
     * Without `accept` it is what is listed at this moment, which after a change may still be the old.
     */
    async list(accept: (problems: Problem[]) => boolean = () => true): Promise<Problem[]> {
        if (!(await this.panel.isVisible())) await this.quickInput.runCommand('Problems: Focus on Problems View');
        await this.panel.waitFor();
        return await until('the awaited list of problems', () => this.readAll(), accept);
    }

    /** The panel keeps only the rows on screen in the page, so it is scrolled. By wheel: the arrow keys would open files. */
    private async readAll(): Promise<Problem[]> {
        if (await this.panel.locator('.message-box-container').isVisible()) return [];
        const rows = new Map<number, Row>();
        await this.panel.locator('.monaco-list').first().hover();
        await this.page.mouse.wheel(0, -1_000_000);
        let shown = await until('the first row of the Problems panel', () => this.shownRows(), (found) => found[0]?.index === 0, 3000);
        for (;;) {
            for (const row of shown) rows.set(row.index, row);
            if (shown.some((row) => row.last)) break;
            await this.page.mouse.wheel(0, 100);
            shown = await until('more rows of the Problems panel', () => this.shownRows(), (found) => found.some((row) => !rows.has(row.index)), 3000);
        }
        if (rows.size !== Math.max(...rows.keys()) + 1) throw new Error('The Problems panel changed while it was read.');
        let file = '';
        return [...rows.values()].sort((a, b) => a.index - b.index).flatMap((row) => {
            file = row.file ?? file;
            return row.problem ? [{ ...row.problem, file }] : [];
        });
    }

    /** From top to bottom. */
    private async shownRows(): Promise<Row[]> {
        const rows = await this.panel.locator('.monaco-list-rows > .monaco-list-row').evaluateAll((elements) => elements.map((row): Row => {
            const text = (selector: string): string => Array.from(row.querySelectorAll(selector)).map((part) => part.textContent ?? '').join('\n');
            const shared = { index: Number(row.getAttribute('data-index')), last: row.getAttribute('data-last-element') === 'true' };
            if (row.getAttribute('aria-level') === '1') return { ...shared, file: text('.label-name') };
            const place = /Ln (\d+), Col (\d+)/.exec(text('.marker-line'));
            const icon = row.querySelector('.marker-icon');
            if (place === null || icon === null) return shared;
            const severity = icon.classList.contains('error') ? 'error' : icon.classList.contains('warning') ? 'warning' : 'info';
            return {
                ...shared,
                problem: {
                    severity,
                    message: text('.marker-message'),
                    line: Number(place[1]),
                    column: Number(place[2]),
                    source: text('.marker-source'),
                    code: text('.marker-code'),
                },
            };
        }));
        return rows.sort((a, b) => a.index - b.index);
    }
}
