import { goldensBeside } from '../expect-golden.js';

export const expectGolden = goldensBeside(import.meta.url);

/** One element to a line, so that a difference can be read; the stylesheet has its own tests. */
export function readable(html: string): string {
    return html.replace(/<style>[^]*?<\/style>/, '<style></style>').replace(/></g, '>\n<');
}
