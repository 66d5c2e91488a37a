/** Paths that leave the folder of the programme, by every door there is: each is refused, and nothing of what lies outside comes in. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { resolvePath } from '@haversack/language/attachments/attachment-path';
import { runCommandLine } from '@haversack/server/cli/command-line';
import { NodeAttachments } from '../../server/node-attachments.js';
import { readPageMessage, readState } from '../../extension/preview/messages.js';
import { everything } from './chance.js';
import { small } from './corpus.js';
import { hostilePaths } from './hostile-words.js';

vi.setConfig({ testTimeout: 120_000 });

/** `npm test` takes a few where every one runs a command. */
const some = <T>(all: readonly T[]): readonly T[] => all.filter((_, index) => everything || index % 24 === 0);

const secret = 'SECRET-THAT-LIES-OUTSIDE';
let outside = '';
let folder = '';
beforeAll(() => {
    const base = mkdtempSync(join(tmpdir(), 'haversack-paths-'));
    [outside, folder] = [join(base, 'outside'), join(base, 'programme')];
    for (const path of [outside, join(folder, 'lessons'), join(folder, 'sub')]) mkdirSync(path, { recursive: true });
    for (const { file, text } of small) writeFileSync(join(folder, file), text);
    const calendar = `BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\nBEGIN:VEVENT\r\nUID:1\r\nDTSTAMP:20260101T000000Z\r\nDTSTART;VALUE=DATE:20261010\r\nSUMMARY:${secret}\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n`;
    for (const path of [join(outside, 'x.ics'), join(base, 'x.ics')]) writeFileSync(path, calendar);
    symlinkSync(join(outside, 'x.ics'), join(folder, 'linked.ics'));
    symlinkSync(join(outside, 'x.ics'), join(folder, 'sub/linked.ics'));
    symlinkSync(outside, join(folder, 'away'));
});
afterAll(() => rmSync(join(folder, '..'), { recursive: true, force: true }));

const run = async (...args: string[]): Promise<{ code: number; out: string; err: string }> => {
    const outcome = { code: 0, out: '', err: '' };
    outcome.code = await runCommandLine(args, text => { outcome.out += text; }, text => { outcome.err += text; });
    return outcome;
};

test('calendars and frameworks that a programme names', () => {
    const root = pathToFileURL(folder).href;
    const reader = new NodeAttachments();
    let refused = 0;
    let inside = 0;
    for (const naming of ['programme.course', 'sub/deep.course', 'a%20b.course']) for (const path of hostilePaths) {
        const found = resolvePath(`${root}/${naming}`, path, [root]);
        if ('wrong' in found) {
            expect(found.wrong).toMatch(/^[A-Z].*\.$/s);
            refused++;
            continue;
        }
        expect({ path, uri: found.uri.startsWith(`${root}/`) || found.uri === root, dots: /(?:^|\/)(?:\.|%2e){2}(?:\/|$)/i.test(found.uri) }).toEqual({ path, uri: true, dots: false });
        expect({ path, read: JSON.stringify(reader.read(found.uri, found.within)).includes(secret) }).toEqual({ path, read: false });
        expect(JSON.stringify(reader.list(found.uri, found.within))).not.toContain('x.ics');
        inside++;
    }
    console.log(`${refused} paths in a programme refused; ${inside} stay inside, and what they lead to is not there or is refused.`);
    expect(refused).toBeGreaterThan(60);
});

test('calendars that are named, through the whole command line', async () => {
    let told = 0;
    for (const path of some(hostilePaths.filter(one => !/["“”\r\n]/.test(one) && one.length < 500))) {
        writeFileSync(join(folder, 'away.course'), `class away "Away"\n  teaches cupboard-orchestra\n  learners 4\n  starts 2026-10-03\n  meets sat\n  off from "${path}"\n`);
        const check = await run('check', folder, '--today', '2026-09-01');
        const schedule = await run('schedule', folder, '--class', 'away', '--format', 'json');
        expect({ path, code: check.code, leaks: (check.out + schedule.out + schedule.err).includes(secret) }).toEqual({ path, code: 1, leaks: false });
        told++;
    }
    rmSync(join(folder, 'away.course'));
    console.log(`${told} paths named in a class: each is a problem, and none is read.`);
});

test('what an import writes', async () => {
    const sheet = join(outside, 'sheet.csv');
    const before = readdirSync(join(folder, '..'), { recursive: true }).length;
    let refused = 0;
    for (const [index, path] of some(hostilePaths.filter(one => /[/\\]/.test(one))).entries()) {
        const file = `${path}.kit`;
        writeFileSync(sheet, `title,on hand\nBeads of kind ${index},4\n`);
        const { code, out, err } = await run('import', sheet, '--into', folder, '--file', file, '--write');
        if (code === 2) refused++;
        else expect({ path, lies: readFileSync(join(folder, file), 'utf8').length > 0, out, err }).toMatchObject({ path, lies: true });
    }
    const after = readdirSync(join(folder, '..'), { recursive: true, encoding: 'utf8' });
    expect(after.filter(name => name.endsWith('.kit') && !name.startsWith('programme/'))).toEqual([]);
    console.log(`${refused} targets of an import refused; ${after.length - before} files made, all inside.`);
    expect(refused).toBeGreaterThan(everything ? 20 : 0);
});

test('revisions and folders that git would take for options', async () => {
    const marks = ['--help', '-c', '--upload-pack=touch x', '--output=/tmp/haversack-pwned', '-O/tmp/x', '--exec=id', 'HEAD --output=x', '--git-dir=/', '@{-1}', ':/x', 'HEAD:../../etc/passwd', '..', 'HEAD..', '^HEAD', 'refs/../x', '$(id)', '`id`', 'a\0b', '\n--help', '-'];
    for (const mark of some(marks)) for (const args of [['compare', '--in', folder, '--', mark, 'HEAD'], ['compare', '--in', folder, '--', 'HEAD', mark], ['compare', '--in', mark, 'HEAD', 'HEAD'], ['compare', 'HEAD', 'HEAD', '--in', mark]]) {
        const { code, out } = await run(...args);
        expect({ args, code, out }).toEqual({ args, code: 2, out: '' });
    }
    expect(readdirSync(tmpdir())).not.toContain('haversack-pwned');
    console.log(`${some(marks).length * 4} revisions and folders that look like options: refused.`);
});

test('what the page of the preview may ask to be opened is judged by its shape alone here; the folder is asked in open-source.ts', () => {
    const bad: unknown[] = [undefined, null, 1, 'open', [], { type: 'open' }, { type: 'open', uri: 1, line: 1 }, { type: 'open', uri: 'file:///x.kit', line: -1 }, { type: 'open', uri: 'file:///x.kit', line: 0.5 }, { type: 'open', uri: 'x'.repeat(5000), line: 1 }, { type: 'eval', code: '1' }, { type: 'command', command: 'x' }, { type: 'step', by: 2 }, { type: '__proto__' }, { type: 'practice', lesson: {} }, { type: 'class', name: 1 }, { type: 'view', view: 'x' }];
    for (const message of bad) expect({ message, read: readPageMessage(message) }).toEqual({ message, read: undefined });
    for (const state of bad) expect(() => readState(state)).not.toThrow();
    console.log(`${bad.length} messages of a page that are none: passed over.`);
});
