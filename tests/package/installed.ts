import { execFile } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

export const repository = join(import.meta.dirname, '../..');
const { version } = JSON.parse(readFileSync(join(repository, 'server/package.json'), 'utf8')) as { version: string };
const archive = join(repository, `.build/haversack-${version}.tgz`);

export interface Outcome {
    code: number;
    out: string;
    err: string;
}

/** A project in a folder of its own, with nothing but the packed package in it. */
export class Project {
    readonly folder = mkdtempSync(join(tmpdir(), 'haversack-project-'));
    readonly package = join(this.folder, 'node_modules/haversack');

    /** @throws Error where the package is not made yet, or npm does not install it without asking the network */
    async install(): Promise<void> {
        if (!existsSync(archive)) throw new Error(`${archive} is missing. Run "npm run package:cli" first.`);
        this.write('package.json', JSON.stringify({ name: 'a-project', private: true, type: 'module' }));
        const { code, err } = await this.run('npm', ['install', '--offline', '--no-audit', '--no-fund', archive]);
        if (code !== 0) throw new Error(err);
        cpSync(join(repository, 'examples/first-steps'), join(this.folder, 'first-steps'), { recursive: true });
    }

    write(path: string, text: string): void {
        mkdirSync(dirname(join(this.folder, path)), { recursive: true });
        writeFileSync(join(this.folder, path), text);
    }

    read(path: string): string {
        return readFileSync(join(this.folder, path), 'utf8');
    }

    /** Without the variables by which the test runner's own npm would change this one. */
    run(program: string, args: readonly string[]): Promise<Outcome> {
        const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^(npm_|VITEST|NODE_OPTIONS$|NODE_ENV$)/i.test(name)));
        return new Promise(resolve => {
            const child = execFile(program, args, { cwd: this.folder, env, encoding: 'utf8', maxBuffer: 1e8 }, (error, out, err) => resolve({ code: child.exitCode ?? 1, out, err: err || (error?.message ?? '') }));
        });
    }

    remove(): void {
        rmSync(this.folder, { recursive: true, force: true });
    }
}

/** The example of the library in the package's own README. */
export function libraryExample(readme: string): string {
    const [, example] = /```ts\n([\s\S]*?)```/.exec(readme) ?? [];
    if (example === undefined) throw new Error('The README has no example of the library.');
    return example;
}
