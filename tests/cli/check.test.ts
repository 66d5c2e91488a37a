import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { firstSteps, folder, haversack } from './run.js';

const broken = 'lesson one "One"\n  materials\n    hand-bel 1 per pair\nmaterial hand-bell\n  reusable\n';

describe.concurrent('check', () => {
    test('a programme without problems: exit code 0', async () => {
        expect(await haversack(['check', firstSteps])).toEqual({ code: 0, out: '10 files with 8 lessons: no problems.\n', err: '' });
    });

    test('problems: exit code 1, one line for each with file, line, column, severity, code and words', async () => {
        const path = folder({ 'one.lesson': broken });
        const { code, out, err } = await haversack(['check', '.'], path);
        expect(code).toBe(1);
        expect(err).toBe('');
        const lines = out.trimEnd().split('\n');
        expect(lines[0]).toBe("one.lesson:3:5 error unknown-name: Lesson one needs 'hand-bel', which is not in any inventory; did you mean 'hand-bell'?");
        expect(lines.at(-1)).toMatch(/^1 file with 1 lesson: \d+ problems?(, \d+ remarks?)?\.$/);
        expect(lines.slice(0, -1).every(line => /^one\.lesson:\d+:\d+ (error|warning|information|hint) [a-z-]+: .+$/.test(line))).toBe(true);
        // No colour codes where nobody looks at a terminal.
        expect(out).not.toContain('\u001b');
    });

    test('hints and information alone are no problems', async () => {
        const path = folder({ 'a.kit': 'material cup\n  reusable\nmaterial mug\n  reusable\n', 'a.lesson': 'lesson a "A"\n  materials\n    cup 1 per pair\n  activity b "B" 5 min\n    do: Lift the {cup}.\n' });
        const { code, out } = await haversack(['check', path]);
        expect(out).toContain(' information unused-thing: ');
        expect(out).toContain('\n2 files with 1 lesson: no problems, 1 remark.\n');
        expect(code).toBe(0);
    });

    test('a byte order mark is no column', async () => {
        const { out } = await haversack(['check', '.'], folder({ 'one.lesson': '\uFEFFlessn one\n' }));
        expect(out).toMatch(/^one\.lesson:1:1 error unknown-statement/);
    });

    test('as JSON, with the titles of the fixes', async () => {
        const { code, out } = await haversack(['check', folder({ 'one.lesson': broken }), '--format', 'json']);
        const answer = JSON.parse(out) as { format: string; version: number; problems: object[] };
        expect(code).toBe(1);
        expect(answer).toMatchObject({ format: 'haversack-check', version: 1 });
        expect(answer.problems[0]).toEqual({
            file: expect.stringMatching(/one\.lesson$/) as string, line: 3, column: 5, severity: 'error', code: 'unknown-name',
            message: "Lesson one needs 'hand-bel', which is not in any inventory; did you mean 'hand-bell'?", fixes: expect.arrayContaining(["Change to 'hand-bell'", "Add 'hand-bel' to the inventory"]) as string[]
        });
        expect(JSON.parse((await haversack(['check', firstSteps, '--format', 'json'])).out)).toEqual({ format: 'haversack-check', version: 1, problems: [] });
    });

    test('to a file, in the format that its ending asks for', async () => {
        const path = folder({ 'one.lesson': broken });
        expect(await haversack(['check', '.', '--out', 'found.sarif'], path)).toEqual({ code: 1, out: '', err: 'Wrote found.sarif\n' });
        expect(JSON.parse(readFileSync(join(path, 'found.sarif'), 'utf8'))).toMatchObject({ version: '2.1.0' });
        expect((await haversack(['check', '.', '--format', 'json', '--out', 'found'], path)).code).toBe(1);
        expect(JSON.parse(readFileSync(join(path, 'found'), 'utf8'))).toMatchObject({ format: 'haversack-check' });
        const { out } = await haversack(['check', '.'], path);
        await haversack(['check', '.', '--out', 'found.txt'], path);
        expect(readFileSync(join(path, 'found.txt'), 'utf8')).toBe(out);
    });

    test('a file instead of a folder: the whole programme is read, that file’s problems are told', async () => {
        const path = folder();
        const file = join(path, 'lessons/listen-1.lesson');
        expect(await haversack(['check', file])).toMatchObject({ code: 0, out: '10 files with 8 lessons: no problems.\n' });
        writeFileSync(file, readFileSync(file, 'utf8').replace('hand-bell     1', 'hand-bel     1'));
        expect((await haversack(['check', join(path, 'lessons/listen-2.lesson')])).code).toBe(0);
        const { code, out } = await haversack(['check', file]);
        expect(code).toBe(1);
        expect(out).toContain('unknown-name');
    });

    test('a folder that is named like a lesson is a folder', async () => {
        const path = folder({});
        mkdirSync(join(path, 'odd.lesson'));
        writeFileSync(join(path, 'odd.lesson', 'one.lesson'), 'lesson one "One"\n');
        expect((await haversack(['check', path])).out).toMatch(/^1 file with 1 lesson|\n1 file with 1 lesson/);
        expect((await haversack(['check', join(path, 'odd.lesson')])).code).not.toBe(2);
    });

    test('hidden folders and installed packages are left alone, a folder named out is not', async () => {
        const path = folder({ 'one.lesson': 'lesson one\n' });
        for (const name of ['.git', 'node_modules', 'out']) {
            mkdirSync(join(path, name));
            writeFileSync(join(path, name, `${name.replace(/\W/g, '')}.lesson`), `lesson ${name.replace(/\W/g, '').replace('_', '-')}\n`);
        }
        expect((await haversack(['check', path])).out).toMatch(/2 files with 2 lessons/);
    });

    test('a link to a file is read', async () => {
        const other = folder({ 'bell.kit': 'material hand-bell\n  reusable\n' });
        const path = folder({ 'one.lesson': 'lesson one\n  materials\n    hand-bell 1 per pair\n' });
        symlinkSync(join(other, 'bell.kit'), join(path, 'linked.kit'));
        symlinkSync(path, join(path, 'round'));
        const { out } = await haversack(['check', path]);
        expect(out).toContain('2 files');
        expect(out).not.toContain('unknown-name');
    });
});

describe.concurrent('check cannot run: exit code 2, one sentence on the error output, nothing on the other', () => {
    const refused = async (args: string[], cwd?: string): Promise<string> => {
        const { code, out, err } = await haversack(args, cwd);
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(err.trimEnd().split('\n')).toHaveLength(1);
        expect(err).not.toMatch(/unforeseen|node:|at .*\(/);
        return err.trimEnd();
    };

    test('a path that does not exist', async () => {
        expect(await refused(['check', 'no/such/folder'])).toBe('haversack: There is nothing at no/such/folder. Check the path.');
    });

    test('an empty folder', async () => {
        const path = folder({});
        expect(await refused(['check', path])).toBe(`haversack: There is no .lesson, .kit or .course file in ${path}. Give the folder of a programme.`);
    });

    test('a file of another kind', async () => {
        const path = folder({ 'notes.txt': 'lesson one\n' });
        expect(await refused(['check', 'notes.txt'], path)).toBe('haversack: notes.txt is no .lesson, .kit or .course file.');
    });

    test('a file that cannot be written', async () => {
        expect(await refused(['check', firstSteps, '--out', 'no/such/found.sarif'])).toBe('haversack: no/such/found.sarif could not be written: there is no folder no/such.');
        expect(await refused(['check', firstSteps, '--out', 'found.html'])).toContain("There is no format 'html' for check");
    });

    test('an unknown format', async () => {
        expect(await refused(['check', firstSteps, '--format', 'xml'])).toBe("haversack: There is no format 'xml' for check: use text, json or sarif.");
    });

    // Latin-1 text: é is the single byte E9, which is no UTF-8 (RFC 3629, section 3).
    test('a file that is not UTF-8', async () => {
        const path = folder({ 'one.lesson': Buffer.from('lesson one "Caf\u00e9"\n', 'latin1') });
        expect(await refused(['check', '.'], path)).toBe('haversack: one.lesson is not UTF-8 text. Open it in an editor and save it with the encoding UTF-8.');
    });

    // A link that leads nowhere, for who runs the tests may be root, whom no permission stops.
    test('a file that cannot be read', async () => {
        const path = folder({ 'one.lesson': 'lesson one\n' });
        symlinkSync(join(path, 'gone.kit'), join(path, 'things.kit'));
        expect(await refused(['check', '.'], path)).toBe('haversack: things.kit could not be read: it does not exist.');
    });

    test.each([
        [['check', firstSteps, '--frobnicate'], "There is no option '--frobnicate'."],
        [['format'], 'Which programme? Give the path of its folder, as in: haversack format examples/year'],
        [['check'], 'Which programme? Give the path of its folder, as in: haversack check examples/year'], [['notes', firstSteps], 'Which week? Say it with --week, as in: haversack notes examples/year --week 3'],
        [['chek', firstSteps], "There is no command 'chek'. Did you mean check?"], [['check', firstSteps, firstSteps], 'One path is enough']
    ])('a wrong command: %j', async (args, says) => {
        const { code, out, err } = await haversack(args);
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(err).toContain(`haversack: ${says}`);
        expect(err.trim().split('\n')).toHaveLength(1);
    });

    test('no command at all: how it is used', async () => {
        const { code, out, err } = await haversack([]);
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(err).toMatch(/^Usage: haversack/);
    });
});

test('help: exit code 0', async () => {
    expect(await haversack(['--help'])).toMatchObject({ code: 0, err: '' });
    expect((await haversack(['check', '--help'])).out).toContain('Exit code 0: fine, 1: problems found, 2: could not run.');
});
