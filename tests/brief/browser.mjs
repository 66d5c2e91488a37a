/** Starts Debian's Chromium for the tests and pictures of the brief; HAVERSACK_CHROMIUM names another one. */
import { chromium } from 'playwright-core';

export function startBrowser() {
    return chromium.launch({
        executablePath: process.env['HAVERSACK_CHROMIUM'] ?? '/usr/bin/chromium',
        args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync']
    });
}
