/**
 * What the page in the editor has beside the brief: the row of controls, the line that says why it is old, the cursor's mark. Some themes
 * give lesser text the colour of all text, so it is mixed here.
 */
export const panelStyles = `
html { scroll-padding-block: 4rem 2rem; }
body { padding: 0; font-size: 1rem; background: var(--vscode-editor-background); color: var(--vscode-editor-foreground); }
#controls:not([hidden]) {
  position: sticky; inset-block-start: 0; z-index: 1; display: flex; flex-wrap: wrap; align-items: center; gap: .35rem .9rem;
  padding: .4rem 1rem; font-size: .85rem; font-family: var(--vscode-font-family);
  background: var(--vscode-editor-background); border-block-end: 1px solid var(--vscode-contrastBorder, var(--vscode-panel-border));
}
#controls button, #controls select {
  font: inherit; min-height: 1.6rem; padding: .1rem .55rem; border-radius: 3px; cursor: pointer;
  color: var(--vscode-button-secondaryForeground); background: var(--vscode-button-secondaryBackground);
  border: 1px solid var(--vscode-contrastBorder, transparent);
}
#controls select {
  color: var(--vscode-dropdown-foreground); background: var(--vscode-dropdown-background);
  border-color: var(--vscode-contrastBorder, var(--vscode-dropdown-border)); max-width: 100%;
}
#controls button:hover:enabled { background: var(--vscode-button-secondaryHoverBackground); }
#views { display: inline-flex; }
#views button { border-radius: 0; border: 1px solid var(--vscode-contrastBorder, var(--vscode-descriptionForeground)); }
#views button + button { border-inline-start: 0; }
#views [aria-pressed="true"] { font-weight: 600; text-decoration: underline; text-underline-offset: .2em; }
#controls button:disabled { opacity: .55; cursor: default; }
#controls label { display: inline-flex; align-items: center; gap: .35rem; }
#controls :focus-visible { outline: 2px solid var(--vscode-focusBorder, currentcolor); outline-offset: 1px; position: relative; z-index: 1; }
#controls input { margin: 0; width: 1rem; height: 1rem; accent-color: var(--vscode-focusBorder); }
#controls [hidden] { display: none; }
#says {
  position: fixed; inset-inline: 0; inset-block-end: 0; z-index: 1; margin: 0; padding: .45rem 1rem; font-family: var(--vscode-font-family); font-size: .9rem;
  background: var(--vscode-editor-background); border-block-start: .3rem double currentcolor;
}
#says:empty { display: none; }
.brief { --quiet: color-mix(in srgb, var(--ink) 76%, var(--paper)); }
.vscode-high-contrast .brief { --quiet: var(--ink); }
.brief:not(.leads) button.lead { cursor: text; }
.brief:not(.leads) button.lead:hover { text-decoration: none; }
.brief [aria-current] { position: relative; }
.brief [aria-current]::after {
  content: ""; position: absolute; inset-block: .15rem; inset-inline-start: -.7rem; border-inline-start: .2rem solid var(--focus);
}
.brief .made > [aria-current]::after { inset-inline-start: -2.3rem; }
.brief.leads .drawing [data-line] { cursor: pointer; }
.brief .drawing [aria-current] > .cell, .brief .drawing .day:has([aria-current]) > .cell, .brief .drawing [aria-current] > .touch { stroke: var(--focus); stroke-width: 2.5; }
.brief-live { position: absolute; width: 1px; height: 1px; margin: 0; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.brief .save-practice { font: inherit; font-size: .9rem; min-height: 1.5rem; margin-block-start: .4rem; padding: 0; border: 0; background: none; color: var(--link); text-decoration: underline; text-underline-offset: .15em; cursor: pointer; }
@media print { #controls:not([hidden]), #says, .brief-live, .brief .save-practice { display: none; } .brief [aria-current]::after { display: none; } }
`;
