import { chromium, type Browser } from 'playwright-core';

/** Starts Debian's Chromium (HAVERSACK_CHROMIUM names another one). Without a browser the tests fail: they are never skipped. */
export function startBrowser(): Promise<Browser> {
    return chromium.launch({
        executablePath: process.env['HAVERSACK_CHROMIUM'] ?? '/usr/bin/chromium',
        args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync']
    });
}
