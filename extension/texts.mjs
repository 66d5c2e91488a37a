// What people read of the extension, gathered: texts in its sources for translation, and the setting of severities out of the tables of the checks.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const here = fileURLToPath(new URL('.', import.meta.url));

/** @returns every text that is given to `vscode.l10n.t`, in order of the alphabet */
export function textsInSources() {
    const files = readdirSync(here, { recursive: true, encoding: 'utf8' }).filter(name => name.endsWith('.ts') && !name.includes('node_modules'));
    const texts = files.flatMap(name => textsIn(name, readFileSync(join(here, name), 'utf8')));
    return [...new Set(texts)].sort();
}

/** @throws Error for a text that is put together where it is used: nobody could translate it */
export function textsIn(name, source) {
    const file = ts.createSourceFile(name, source, ts.ScriptTarget.Latest, true);
    const texts = [];
    const look = node => {
        if (ts.isCallExpression(node) && /(?:^|\.)l10n\.t$/.test(node.expression.getText(file))) {
            const [text] = node.arguments;
            if (!text || !ts.isStringLiteralLike(text)) {
                throw new Error(`${name}:${file.getLineAndCharacterOfPosition(node.getStart()).line + 1}: a text to translate must stand there as it is`);
            }
            texts.push(text.text);
        }
        ts.forEachChild(node, look);
    };
    look(file);
    return texts;
}

/** The part of the manifest that describes `haversack.severities`: every code, with what it is without the setting. */
export function severityProperties(codes) {
    return Object.fromEntries(codes.map(({ code, severity }) => [code, { type: 'string', enum: ['off', 'hint', 'information', 'warning', 'error'], default: severity, description: `%severity.${code}%` }]));
}

/** Its texts, by placeholder: the reference's heading of each code, and how serious it is without the setting. */
export function severityTexts(codes) {
    return Object.fromEntries(codes.map(({ code, title, severity }) => [`severity.${code}`, `${title} (${severity})`]));
}
