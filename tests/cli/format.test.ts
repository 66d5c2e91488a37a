import { readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folder, haversack } from './run.js';

const loose = 'kit bag\n    holds\n        drum 1\n        hand-bell   2\n';
const laidOut = 'kit bag\n  holds\n    drum       1\n    hand-bell  2\n';
const good = 'lesson a "A"\n  draft\n';

describe.concurrent('format', () => {
    test('lists what is not laid out as usual and writes nothing: exit code 1', async () => {
        const path = folder({ 'a.lesson': good, 'b.kit': loose });
        expect(await haversack(['format', '.'], path)).toEqual({ code: 1, out: 'b.kit\n1 file of 2 not laid out as usual. Add --write to lay them out.\n', err: '' });
        expect(readFileSync(join(path, 'b.kit'), 'utf8')).toBe(loose);
    });

    test('with --write lays out, and touches no other file', async () => {
        const path = folder({ 'a.lesson': good, 'b.kit': loose });
        const before = statSync(join(path, 'a.lesson')).mtimeMs;
        expect(await haversack(['format', '.', '--write'], path)).toEqual({ code: 0, out: 'Laid out b.kit\n1 file of 2 laid out.\n', err: '' });
        expect(readFileSync(join(path, 'b.kit'), 'utf8')).toBe(laidOut);
        expect(statSync(join(path, 'a.lesson')).mtimeMs).toBe(before);
        expect(await haversack(['format', '.'], path)).toEqual({ code: 0, out: '2 files: nothing to lay out.\n', err: '' });
    });

    test('one file alone', async () => {
        const path = folder({ 'a.kit': loose, 'b.kit': loose });
        expect(await haversack(['format', 'b.kit', '--write'], path)).toMatchObject({ code: 0 });
        expect([readFileSync(join(path, 'a.kit'), 'utf8'), readFileSync(join(path, 'b.kit'), 'utf8')]).toEqual([loose, laidOut]);
    });

    test('keeps line ends and a byte order mark', async () => {
        const path = folder({ 'a.kit': `\uFEFF${loose.replaceAll('\n', '\r\n')}` });
        await haversack(['format', path, '--write']);
        expect(readFileSync(join(path, 'a.kit'), 'utf8')).toBe(`\uFEFF${laidOut.replaceAll('\n', '\r\n')}`);
    });

    test('the step can be chosen', async () => {
        const path = folder({ 'a.kit': loose });
        expect(await haversack(['format', path, '--write', '--indent', 'tab'])).toMatchObject({ code: 0 });
        expect(readFileSync(join(path, 'a.kit'), 'utf8')).toBe('kit bag\n\tholds\n\t\tdrum       1\n\t\thand-bell  2\n');
        expect(await haversack(['format', path, '--indent', '4'])).toMatchObject({ code: 1 });
        for (const indent of ['0', '9', 'x', '2.5', '-1']) expect(await haversack(['format', path, `--indent=${indent}`])).toEqual({ code: 2, out: '', err: `haversack: A block cannot go in by '${indent}': give a number of spaces from 1 to 8, or tab.\n` });
    });

    test('tells where lines cannot be read, and leaves their blocks', async () => {
        const text = 'kit bag\n  holds\n    drum   1\n    ,, um\n';
        const path = folder({ 'a.kit': text });
        expect(await haversack(['format', '.', '--write'], path)).toEqual({ code: 0, out: "In 1 file some lines cannot be read; the blocks they stand in stay as they are. 'haversack check' lists them.\n1 file: nothing to lay out.\n", err: '' });
        expect(readFileSync(join(path, 'a.kit'), 'utf8')).toBe(text);
    });

    test('what cannot be done writes nothing at all: exit code 2', async () => {
        const outside = folder({ 'far.kit': loose });
        const path = folder({ 'a.kit': loose });
        symlinkSync(join(outside, 'far.kit'), join(path, 'b.kit'));
        const { code, err } = await haversack(['format', '.', '--write'], path);
        expect(code).toBe(2);
        expect(err).toBe("haversack: b.kit leads outside the programme's folder, so nothing is written.\n");
        expect([readFileSync(join(path, 'a.kit'), 'utf8'), readFileSync(join(outside, 'far.kit'), 'utf8')]).toEqual([loose, loose]);

        const bytes = folder({ 'a.kit': loose });
        writeFileSync(join(bytes, 'b.kit'), Buffer.from([0x6b, 0xff, 0xfe]));
        expect((await haversack(['format', '.', '--write'], bytes)).err).toContain('b.kit is not UTF-8 text.');
        expect(readFileSync(join(bytes, 'a.kit'), 'utf8')).toBe(loose);
        expect((await haversack(['format', join(path, 'nothing')])).err).toMatch(/^haversack: There is nothing at /);
        expect((await haversack(['format', folder({})])).code).toBe(2);
    });

    test('the examples are laid out as usual', async () => {
        expect(await haversack(['format', 'examples/year'])).toMatchObject({ code: 0 });
        expect(await haversack(['format', 'examples/first-steps'])).toMatchObject({ code: 0 });
    });
});
