/** Every regular expression in the sources, with where it stands. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

export interface Expression {
    literal: string;
    /** "server/brief/prose.ts:38". */
    place: string;
}

const repository = join(import.meta.dirname, '../..');

export function expressionsIn(folders: readonly string[]): { literals: Expression[]; built: Expression[] } {
    const literals: Expression[] = [];
    const built: Expression[] = [];
    for (const folder of folders) for (const name of readdirSync(join(repository, folder), { recursive: true, encoding: 'utf8' }).sort()) {
        if (!/\.tsx?$/.test(name) || /node_modules|generated|\.d\.ts$/.test(name)) continue;
        const file = `${folder}/${name}`;
        const source = ts.createSourceFile(file, readFileSync(join(repository, file), 'utf8'), ts.ScriptTarget.Latest, true);
        const visit = (node: ts.Node): void => {
            const place = `${file}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1}`;
            if (ts.isRegularExpressionLiteral(node)) literals.push({ literal: node.text, place });
            else if ((ts.isNewExpression(node) || ts.isCallExpression(node)) && node.expression.getText() === 'RegExp') built.push({ literal: node.getText(), place });
            ts.forEachChild(node, visit);
        };
        visit(source);
    }
    return { literals, built };
}
