import { renderToString } from 'preact-render-to-string';
import type { RenderedSection } from './rendered-section.js';
import { pageStyles } from './styles.js';

export interface PageOptions {
    /** `auto` (the default) follows the reader's own setting. Print is always dark on white. */
    theme?: 'auto' | 'light' | 'dark';
    /** Address of the programme's folder: places are given relative to it. */
    root?: string;
    /** Styles of this kind of page alone, after those that all share. */
    styles?: string;
}

/** Nothing may be loaded and no script may run; styles are the page's own. */
const policy = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/** Sections as one HTML file that needs nothing else: no script, no font, no picture. */
export function htmlPage(title: string, sections: readonly RenderedSection[], { theme: wanted, styles = '' }: PageOptions): string {
    const theme = wanted === 'light' || wanted === 'dark' ? ` data-theme="${wanted}"` : '';
    const head = renderToString(
        <>
            <meta charSet="utf-8" />
            <meta http-equiv="Content-Security-Policy" content={policy} />
            <meta name="viewport" content="width=device-width, initial-scale=1" />
            <meta name="referrer" content="no-referrer" />
            <title>{title}</title>
        </>
    );
    const body = sections.map(section => section.html).join('\n');
    return `<!doctype html>\n<html lang="en"${theme}>\n<head>${head}<style>\n${pageStyles()}${styles}</style></head>\n<body>\n<main class="brief">\n${body}\n</main>\n</body>\n</html>\n`;
}
