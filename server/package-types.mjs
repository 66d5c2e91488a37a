// The library's types as declarations that stand alone: only those files that the entry leads to, with imports between the packages of this repository made relative.
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join, relative } from 'node:path';

const specifiers = /(\bfrom\s*|\bimport\s*\(\s*)(['"])([^'"]+)\2/g;

/**
 * @param {string} types folder of the declarations that tsc made, a folder for each package
 * @param {string} entry path of the entry's declarations within it
 * @param {string} target folder to write into, where the packages' folders keep their names
 * @throws Error for an import of anything outside the repository, since the package has no dependencies
 */
export async function packageTypes(types, entry, target) {
    const waiting = [entry];
    const seen = new Set(waiting);
    for (const path of waiting) {
        const text = await readFile(join(types, path), 'utf8');
        const alone = text.replace(specifiers, (_, before, quote, named) => {
            const file = declarationsOf(named, path);
            if (!seen.has(file)) {
                seen.add(file);
                waiting.push(file);
            }
            const way = relative(dirname(path), file).replace(/\.d\.ts$/, '.js');
            return `${before}${quote}${way.startsWith('.') ? way : `./${way}`}${quote}`;
        }).replace(/^import '[^']+';\n/gm, '').replace(/\n\/\/# sourceMappingURL=.*\n?$/, '\n');
        await mkdir(dirname(join(target, path)), { recursive: true });
        await writeFile(join(target, path), alone);
    }
}

function declarationsOf(named, from) {
    if (named.startsWith('.')) return join(dirname(from), named.replace(/\.js$/, '.d.ts'));
    const [, inHouse] = /^@haversack\/(.+)$/.exec(named) ?? [];
    if (inHouse === undefined) throw new Error(`${from} imports types of ${named}, which the package does not depend on.`);
    return `${inHouse}.d.ts`;
}
