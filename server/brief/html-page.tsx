import { renderToString } from 'preact-render-to-string';
import { paperStyles, type Paper } from './look/paper.css.js';
import { printHint, printHintStyles, printPolicy, printScript } from './print-at-once.js';
import type { RenderedSection } from './rendered-section.js';
import { pageStyles } from './styles.js';

export interface PageOptions {
    /** `auto` (the default) follows the reader's own setting. Print is always dark on white. */
    theme?: 'auto' | 'light' | 'dark';
    /** Address of the programme's folder: places are given relative to it. */
    root?: string;
    /** Styles of this kind of page alone, after those that all share. */
    styles?: string;
    /** The paper it is printed on; without it, what the printer has. */
    paper?: Paper;
    /** Opens the browser's print window as soon as the page is there, and says what to do where it does not open. */
    printing?: boolean;
}

/** Nothing may be loaded and no script may run; styles are the page's own. */
const policy = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/** Sections as one HTML file that needs nothing else: no script (but the one that prints, where that is wanted), no font, no picture. */
export function htmlPage(title: string, sections: readonly RenderedSection[], { theme: wanted, styles = '', paper, printing = false }: PageOptions): string {
    const theme = wanted === 'light' || wanted === 'dark' ? ` data-theme="${wanted}"` : '';
    const head = renderToString(
        <>
            <meta charSet="utf-8" />
            <meta http-equiv="Content-Security-Policy" content={printing ? `${policy}; ${printPolicy}` : policy} />
            <meta name="viewport" content="width=device-width, initial-scale=1" />
            <meta name="referrer" content="no-referrer" />
            <title>{title}</title>
        </>
    );
    const body = sections.map(section => section.html).join('\n');
    return `<!doctype html>\n<html lang="en"${theme}>\n<head>${head}<style>\n${pageStyles()}${styles}${paperStyles(paper)}${printing ? printHintStyles : ''}</style></head>\n<body>\n${printing ? printHint : ''}<main class="brief">\n${body}\n</main>\n${printing ? `<script>${printScript}</script>\n` : ''}</body>\n</html>\n`;
}
