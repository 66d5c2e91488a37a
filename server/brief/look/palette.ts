/**
 * The brief's colours by what they are for. Nothing is told by colour alone; text stands at 4.5:1 and drawn marks at 3:1 or more
 * (WCAG 2.2, 1.4.3 and 1.4.11), which tests/brief/contrast.test.ts computes.
 */
export interface Palette {
    paper: string;
    /** Text. */
    ink: string;
    /** Text of lesser weight. */
    quiet: string;
    /** Outlines that must be seen: boxes to tick, pieces of the bar, the edge of a caution. */
    rule: string;
    /** Lines that only separate; nothing depends on seeing them. */
    hair: string;
    /** Ground of the bar's pieces, and the drawing on it. */
    ground: string;
    thread: string;
    link: string;
    focus: string;
}

export const light: Palette = {
    paper: '#fcfbf8',
    ink: '#262420',
    quiet: '#5b564d',
    rule: '#6f695e',
    hair: '#dcd7cc',
    ground: '#f1eee7',
    thread: '#857e72',
    link: '#2f4f6b',
    focus: '#1d4e7a'
};

export const dark: Palette = {
    paper: '#201f1d',
    ink: '#ece8df',
    quiet: '#b9b3a7',
    rule: '#a59e91',
    hair: '#45413a',
    ground: '#2b2926',
    thread: '#8f897d',
    link: '#b4cde3',
    focus: '#9cc4e8'
};

export const print: Palette = {
    paper: '#ffffff',
    ink: '#000000',
    quiet: '#333333',
    rule: '#333333',
    hair: '#999999',
    ground: '#ffffff',
    thread: '#666666',
    link: '#000000',
    focus: '#000000'
};

/** The reader's own high-contrast colours (CSS Color 4, system colours). */
const forced: Palette = {
    paper: 'Canvas',
    ink: 'CanvasText',
    quiet: 'CanvasText',
    rule: 'CanvasText',
    hair: 'CanvasText',
    ground: 'Canvas',
    thread: 'CanvasText',
    link: 'LinkText',
    focus: 'Highlight'
};

/** The editor's theme, with the light palette where a host has no such variable. */
const editor: Palette = {
    paper: `var(--vscode-editor-background, ${light.paper})`,
    ink: `var(--vscode-editor-foreground, ${light.ink})`,
    quiet: `var(--vscode-descriptionForeground, ${light.quiet})`,
    rule: `var(--vscode-descriptionForeground, ${light.rule})`,
    hair: `var(--vscode-contrastBorder, var(--vscode-panel-border, ${light.hair}))`,
    ground: `var(--vscode-editor-background, ${light.ground})`,
    thread: `var(--vscode-descriptionForeground, ${light.thread})`,
    link: `var(--vscode-textLink-foreground, ${light.link})`,
    focus: `var(--vscode-focusBorder, ${light.focus})`
};

function properties(palette: Palette): string {
    return Object.entries(palette).map(([name, colour]) => `--${name}: ${colour};`).join(' ');
}

const forcedAndPrint = `
@media (forced-colors: active) { :root:root:root .brief { ${properties(forced)} } }
@media print { :root:root:root .brief { color-scheme: light; ${properties(print)} } }
`;

/** For a page of its own: follows the reader's setting unless `data-theme` on the root element says otherwise. */
export const pageColours = `
html { background: ${light.paper}; }
.brief { ${properties(light)} }
:root { color-scheme: light dark; }
:root[data-theme="light"] { color-scheme: light; }
:root[data-theme="dark"] { color-scheme: dark; }
@media (prefers-color-scheme: dark) { :root:not([data-theme="light"]) .brief { ${properties(dark)} } }
:root[data-theme="dark"] .brief { ${properties(dark)} }
@media (prefers-color-scheme: dark) { :root:not([data-theme="light"]) { background: ${dark.paper}; } }
:root[data-theme="dark"] { background: ${dark.paper}; }
@media (forced-colors: active) { :root, :root[data-theme] { background: Canvas; } }
@media print { :root, :root[data-theme], :root:not([data-theme="light"]) { background: none; } }
${forcedAndPrint}`;

export const editorColours = `.brief { ${properties(editor)} }\n${forcedAndPrint}`;
