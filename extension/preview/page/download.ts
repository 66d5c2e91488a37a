import type { DownloadMessage } from '../messages.js';

/** A browser may ask before it downloads, so the page is kept for a while, in milliseconds. */
const keptMilliseconds = 5 * 60 * 1000;

/** Has the browser download a page. The link stands nowhere in the document: there the editor takes every click on a link for itself. */
export function download({ name, html }: DownloadMessage): void {
    const address = URL.createObjectURL(new Blob([html], { type: 'text/html' }));
    const link = document.createElement('a');
    link.href = address;
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), keptMilliseconds);
}
