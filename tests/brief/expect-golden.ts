import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { expect } from 'vitest';

const folder = new URL('./golden/', import.meta.url);

/** One element to a line, so that a difference can be read; the stylesheet has its own tests. */
export function readable(html: string): string {
    return html.replace(/<style>[^]*?<\/style>/, '<style></style>').replace(/></g, '>\n<');
}

/** Renew the goldens with RENEW_GOLDEN=1, then read the difference before it is committed. */
export function expectGolden(name: string, text: string): void {
    const file = new URL(name, folder);
    if (process.env['RENEW_GOLDEN'] === '1') {
        mkdirSync(folder, { recursive: true });
        writeFileSync(file, text);
    }
    expect(text).toBe(readFileSync(file, 'utf8'));
}
