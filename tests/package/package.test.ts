import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-jsonrpc/node';
import { libraryExample, Project, repository } from './installed.js';

const project = new Project();
beforeAll(() => project.install());
afterAll(() => project.remove());

const exampleSays = [
    /lessons\/weigh-1\.lesson:4 error .*'gram-cub'/, /Pan balance: 4/, /Gram cubes: 80/, /<!doctype html> 2026-09-07/, /Gram cubes,80,2 packs of 50 at 9\.50 USD,20,19\.00,USD/
];

describe('what is in it', () => {
    const files = (): string[] => readdirSync(project.package, { recursive: true, withFileTypes: true })
        .filter(entry => entry.isFile()).map(entry => join(entry.parentPath, entry.name).slice(project.package.length + 1));

    test('programs, library, types and papers, and nothing else', () => {
        const [types, others] = [files().filter(path => path.startsWith('types/')), files().filter(path => !path.startsWith('types/'))];
        expect(others.sort()).toEqual(['CHANGELOG.md', 'LICENSE', 'README.md', 'THIRD-PARTY-NOTICES.txt', 'dist/haversack-server.cjs', 'dist/haversack.cjs', 'dist/library.js', 'package.json']);
        expect(types.every(path => path.endsWith('.d.ts'))).toBe(true);
    });

    test('nothing leads to a source map or to a folder of the machine it was made on', () => {
        const found = files().filter(path => {
            const text = readFileSync(join(project.package, path), 'utf8');
            return /^\/\/# sourceMappingURL/m.test(text) || text.includes(repository) || text.includes('@haversack/');
        });
        expect(found).toEqual([]);
    });

    test('it needs no other package', () => {
        const manifest = JSON.parse(project.read('node_modules/haversack/package.json')) as Record<string, unknown>;
        expect(manifest.dependencies).toBeUndefined();
        expect(readdirSync(join(project.folder, 'node_modules')).filter(name => !name.startsWith('.'))).toEqual(['haversack']);
    });

    test('what is bundled has its licence told', () => {
        const notices = project.read('node_modules/haversack/THIRD-PARTY-NOTICES.txt');
        for (const name of ['langium', 'chevrotain', 'preact', 'commander', 'ical.js', 'fraction.js', 'vscode-languageserver']) expect(notices).toMatch(new RegExp(`^${name.replace('.', '\\.')} \\d`, 'm'));
    });
});

describe('the command line', () => {
    const haversack = (...args: string[]): ReturnType<Project['run']> => project.run('npx', ['--no-install', 'haversack', ...args]);

    test('finds nothing wrong with the example', async () => {
        expect(await haversack('check', 'first-steps', '--today', '2026-01-01')).toMatchObject({ code: 0 });
    });

    test('finds what is wrong', async () => {
        project.write('wrong/a.lesson', 'lesson a\n  materials\n    drum 1 per pair in kit\n');
        const { code, out } = await haversack('check', 'wrong');
        expect(code).toBe(1);
        expect(out).toContain("'drum'");
    });

    test('says what it could not do', async () => {
        expect(await haversack('check', 'nowhere')).toMatchObject({ code: 2, out: '' });
    });

    test('writes a brief as a page', async () => {
        expect(await haversack('brief', 'first-steps', '--week', '1', '--out', 'week.html')).toMatchObject({ code: 0 });
        expect(project.read('week.html')).toMatch(/^<!doctype html>[\s\S]*Hand bell/);
    });
});

test('the language server answers over standard input and output', async () => {
    const server = spawn(join(project.folder, 'node_modules/.bin/haversack-server'), { cwd: project.folder, stdio: 'pipe' });
    const connection = createMessageConnection(new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin));
    connection.listen();
    const answer = await connection.sendRequest<{ capabilities: Record<string, unknown> }>('initialize', { processId: process.pid, rootUri: null, capabilities: {} });
    expect(answer.capabilities).toMatchObject({ renameProvider: expect.anything() as unknown, completionProvider: expect.anything() as unknown });
    await connection.sendRequest('shutdown');
    const ended = new Promise(resolve => server.once('exit', resolve));
    await connection.sendNotification('exit');
    expect(await ended).toBe(0);
});

describe('the library', () => {
    const compiled = (resolution: 'nodenext' | 'bundler', ...files: string[]): ReturnType<Project['run']> => project.run(process.execPath, [
        join(repository, 'node_modules/typescript/bin/tsc'), '--strict', '--skipLibCheck', 'false', '--noUncheckedIndexedAccess', '--lib', 'ES2023,DOM', '--target', 'ES2022',
        '--module', resolution === 'nodenext' ? 'nodenext' : 'esnext', '--moduleResolution', resolution, '--outDir', 'out', ...files
    ]);
    const example = (): string => libraryExample(project.read('node_modules/haversack/README.md'));

    test.each(['nodenext', 'bundler'] as const)('its types hold by themselves, resolved as by %s', async resolution => {
        project.write('example.ts', example());
        expect(await compiled(resolution, 'example.ts')).toMatchObject({ code: 0, out: '' });
    });

    test('its types refuse what it cannot do', async () => {
        project.write('wrong.ts', "import { planWeek, readProgramme } from 'haversack';\nconst { programme } = await readProgramme({}, { today: '2026-09-01' });\nplanWeek(programme, { week: 'three', today: '2026-09-01' });\nplanWeek(programme, { week: 3, today: '2026-09-01' }).fetch[0]!.things[0]!.amount.nonsense;\n");
        const { code, out } = await compiled('nodenext', 'wrong.ts');
        expect(code).not.toBe(0);
        expect(out).toMatch(/wrong\.ts\(3,23\): error TS2322/);
        expect(out).toMatch(/wrong\.ts\(4,\d+\): error TS2339/);
    });

    test('the example of its README runs in Node', async () => {
        project.write('example.ts', example());
        await compiled('nodenext', 'example.ts');
        const { code, out, err } = await project.run(process.execPath, ['out/example.js']);
        expect(code, err).toBe(0);
        for (const line of exampleSays) expect(out).toMatch(line);
    });

    test('the example of its README runs in a browser', async () => {
        const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
        try {
            const page = await browser.newPage();
            const said: string[] = [];
            const wrong: string[] = [];
            page.on('console', message => said.push(message.text()));
            page.on('pageerror', error => wrong.push(String(error)));
            const script = example().replace("from 'haversack'", "from '/library.js'");
            await page.route('http://haversack.example/**', route => route.fulfill(route.request().url().endsWith('.js')
                ? { contentType: 'text/javascript', body: project.read('node_modules/haversack/dist/library.js') }
                : { contentType: 'text/html', body: `<!doctype html><title>Example</title><script type="module">${script}\ndocument.title = 'Done';</script>` }));
            await page.goto('http://haversack.example/');
            await page.waitForFunction(() => document.title === 'Done');
            expect(wrong).toEqual([]);
            for (const line of exampleSays) expect(said.join('\n')).toMatch(line);
        } finally {
            await browser.close();
        }
    });

    test('only what is meant for it can be imported', async () => {
        const imported = (path: string): ReturnType<Project['run']> => project.run(process.execPath, ['--input-type=module', '--eval', `console.log(Object.keys(await import('${path}')).join())`]);
        expect((await imported('haversack')).out.trim().split(',').sort()).toEqual([
            'briefHtml', 'briefJson', 'briefMarkdown', 'planTerm', 'planWeek', 'readProgramme', 'shoppingList', 'termCalendar', 'termHtml', 'termJson', 'termMarkdown'
        ]);
        expect((await imported('haversack/dist/library.js')).err).toContain('ERR_PACKAGE_PATH_NOT_EXPORTED');
    });
});
