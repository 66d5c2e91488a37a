/** The preview's page as the extension makes it, for a test that has put a stand-in in the editor's place. */
import { URI } from 'vscode-uri';
import type { Uri, Webview } from 'vscode';
import { pageHtml } from '../../extension/preview/page-html.js';

export function previewHtml(): string {
    const webview = { cspSource: 'https://page.invalid', asWebviewUri: (uri: URI) => uri } as unknown as Webview;
    return pageHtml(webview, URI.parse('https://page.invalid/extension') as unknown as Uri);
}
