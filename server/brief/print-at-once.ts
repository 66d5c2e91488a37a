/** A page that opens the browser's print window by itself. Its one script never changes and holds nothing of anyone's text, so the policy can name it by its digest. */
export const printScript = "addEventListener('load', () => print());";

/** What the policy allows beyond a page without a script: this script, no other, and none in an attribute or an address. The digest is SHA-256 in base64 (Content Security Policy Level 3, section 2.3.1). */
export const printPolicy = "script-src 'sha256-jU9MAAT9vbWWAuIru1dmUF6oIRQGTBJx4I6mjdBmv+g='";

/** For the screen alone, where the print window was closed or did not come. */
export const printHint = '<aside class="print-hint" aria-label="How to print">To print this page, press Ctrl+P (Cmd+P on a Mac).</aside>\n';

export const printHintStyles = `
.print-hint { max-width: 46rem; margin: 0 auto; padding: .7rem 1.25rem; border-block-end: 1px solid currentcolor; font-family: system-ui, sans-serif; }
@media print { .print-hint { display: none; } }
`;
