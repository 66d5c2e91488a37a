// Draws pages of the year's example as PNG for the extension's own page, so that no binary is kept in the repository.
import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { promisify } from 'node:util';
import { chromium } from 'playwright-core';

const year = ['examples/year', '--class', 'millpond', '--today', '2026-10-01', '--format', 'html'];

/** What is drawn: the command that writes the page, and how much of it is seen. */
const pages = {
    'week.png': { command: ['brief', ...year, '--week', '3'], height: 1000 },
    'term.png': { command: ['schedule', ...year], height: 900 }
};

/**
 * @param commandLine the built command line
 * @returns the bytes of each picture by its name; nothing where there is no Chromium (`HAVERSACK_CHROMIUM` names another than Debian's)
 */
export async function drawPages(commandLine, repository) {
    const executablePath = process.env.HAVERSACK_CHROMIUM ?? '/usr/bin/chromium';
    if (!existsSync(executablePath)) return undefined;
    const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'] });
    try {
        const drawn = {};
        for (const [name, { command, height }] of Object.entries(pages)) {
            const { stdout: html } = await promisify(execFile)(process.execPath, [commandLine, ...command], { cwd: repository, maxBuffer: 1e9 });
            const page = await browser.newPage({ viewport: { width: 820, height } });
            await page.setContent(html);
            drawn[name] = await page.screenshot();
            await page.close();
        }
        return drawn;
    } finally {
        await browser.close();
    }
}

/**
 * The text with its pictures in it: nobody keeps them in the repository, so no address leads to them. Where `address` is given, they are published there.
 * @param drawn without it, lines that show a picture are left out
 */
export function withPictures(text, drawn, address) {
    return text.replace(/^!\[([^\]]*)\]\(pictures\/([\w-]+\.png)\)\n\n?/gm, (whole, told, name) => {
        if (!drawn?.[name]) return '';
        return whole.replace(`pictures/${name}`, address ? new URL(name, address).href : `data:image/png;base64,${drawn[name].toString('base64')}`);
    });
}
