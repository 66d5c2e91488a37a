import * as vscode from 'vscode';
import { randomName } from '../random-name.js';
import { panelStyles } from './page-styles.js';

/** The empty page of the brief. Nothing may be loaded but its own script and the brief's stylesheet; nothing in it may run or look otherwise. */
export function pageHtml(webview: vscode.Webview, extensionUri: vscode.Uri): string {
    const nonce = randomName();
    const styles = webview.asWebviewUri(vscode.Uri.joinPath(extensionUri, 'dist/brief.css'));
    const script = webview.asWebviewUri(vscode.Uri.joinPath(extensionUri, 'dist/brief-page.js'));
    const policy = `default-src 'none'; style-src 'nonce-${nonce}' ${webview.cspSource}; script-src 'nonce-${nonce}'; base-uri 'none'; form-action 'none'`;
    return `<!doctype html>
<html lang="${escape(vscode.env.language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escape(vscode.l10n.t('Brief'))}</title>
<link rel="stylesheet" href="${escape(styles.toString())}">
<style nonce="${nonce}">${panelStyles}</style>
</head>
<body>
<nav id="controls" aria-label="${escape(vscode.l10n.t('Which brief is shown'))}" hidden>
<span id="views" role="group" aria-label="${escape(vscode.l10n.t('Week, term or changes'))}"><button type="button" id="show-week" aria-pressed="true">${escape(vscode.l10n.t('Week'))}</button><button type="button" id="show-term" aria-pressed="false">${escape(vscode.l10n.t('Term'))}</button><button type="button" id="show-changes" aria-pressed="false">${escape(vscode.l10n.t('Changes'))}</button></span>
<button type="button" id="previous" data-text="${escape(vscode.l10n.t('Week {0}'))}" data-label="${escape(vscode.l10n.t('Previous week'))}"></button>
<button type="button" id="next" data-text="${escape(vscode.l10n.t('Week {0}'))}" data-label="${escape(vscode.l10n.t('Next week'))}"></button>
<label id="stay-label"><input type="checkbox" id="stay">${escape(vscode.l10n.t('Stay on this week'))}</label>
<label id="class-label"><span>${escape(vscode.l10n.t('Class'))}</span> <select id="class"></select></label>
<button type="button" id="print">${escape(vscode.l10n.t('Print'))}</button>
<button type="button" id="save">${escape(vscode.l10n.t('Save as a file'))}</button>
</nav>
<p id="says" role="status"></p>
<main id="brief" class="brief" lang="en"></main>
<p id="updated" class="brief-live" role="status" aria-live="polite" data-text="${escape(vscode.l10n.t('Brief updated'))}"></p>
<script nonce="${nonce}" src="${escape(script.toString())}"></script>
</body>
</html>`;
}

function escape(text: string): string {
    return text.replace(/[&<>"']/g, character => `&#${character.charCodeAt(0)};`);
}
