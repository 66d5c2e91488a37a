import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { base, edited, renamed } from '../planning/edition-texts.js';
import { commit, git } from './git.js';
import { folder, haversack } from './run.js';

const adaptation = 'adaptation shorter of measure edition 1\n  retime activity weigh-1.two-bags to 10 min\n';
const first = base + adaptation;
const second = edited(first, ['"Measure and Make" edition 1', '"Measure and Make" edition 2'], ['"Two mystery bags" 15 min', '"Two mystery bags" 20 min']);
const calendar = (day: string): string => ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:x', 'BEGIN:VEVENT', 'UID:a@example.org', 'DTSTAMP:20260101T000000Z', `DTSTART;VALUE=DATE:${day}`, 'SUMMARY:Fair', 'END:VEVENT', 'END:VCALENDAR', ''].join('\r\n');

/** A repository whose programme lies in a folder of it. */
let repository: string;
let programme: string;
beforeAll(() => {
    repository = folder({});
    programme = join(repository, 'our programmes', 'mill');
    git(repository, 'init', '-q');
    commit(repository, { 'README': 'Ours.' }, 'before');
    commit(programme, { 'programme.course': first }, 'v1');
    commit(programme, { 'programme.course': second }, 'v2');
});

const compare = (...args: string[]): ReturnType<typeof haversack> => haversack(['compare', ...args]);

describe('two folders', () => {
    test('what changed, with places on both sides', async () => {
        const { code, out, err } = await compare(folder({ 'a.course': first }), folder({ 'a.course': second }));
        expect({ code, err }).toEqual({ code: 0, err: '' });
        expect(out).toContain('Measure and Make, edition 2 beside edition 1\n');
        expect(out).toContain('    - “Two mystery bags”: 20 min instead of 15 min; the lesson takes 30 min instead of 25 min\n      (old: a.course, line 43; new: a.course, line 43)\n');
        expect(out).toContain('    - Conflict: retime activity weigh-1.two-bags to 10 min\n');
    });

    test('nothing changed', async () => {
        const { code, out } = await compare(folder({ 'a.course': first }), folder({ 'b.course': `# In another file.\n${first}` }));
        expect(code).toBe(0);
        expect(out).toContain('Nothing changed for a teacher.\n');
    });

    test('lines that could not be read are told, with another exit code', async () => {
        const { code, out, err } = await compare(folder({ 'a.course': first }), folder({ 'a.course': edited(second, ['  ages 6 to 8', '  ages six to eight']) }));
        expect(code).toBe(1);
        expect(out).toContain('20 min instead of 15 min');
        expect(err).toMatch(/^1 line of .* could not be read: the comparison shows what could be\./);
    });
});

describe('two revisions', () => {
    test.each([['v1', 'v2'], ['v2~1', 'main'], ['HEAD^', 'HEAD']])('%s and %s', async (old, now) => {
        const { code, out, err } = await compare(old, now, '--in', programme);
        expect({ code, err }).toEqual({ code: 0, err: '' });
        expect(out).toContain(`Old: “${old}”. New: “${now}”.`);
        expect(out).toContain('“Two mystery bags”: 20 min instead of 15 min');
        expect(out).toContain('(old: programme.course, line 43; new: programme.course, line 43)');
    });

    test('a revision and the folder as it is now', async () => {
        const { out } = await haversack(['compare', 'v1', '.'], programme);
        expect(out).toContain('Old: “v1”. New: “.”.');
        expect(out).toContain('“Two mystery bags”: 20 min instead of 15 min');
    });

    test('a course, a class, a format and a file', async () => {
        const file = join(folder({}), 'changes.html');
        expect(await compare('v1', 'v2', '--in', programme, '--course', 'measure', '--class', 'harbour', '--out', file)).toEqual({ code: 0, out: '', err: `Wrote ${file}\n` });
        expect(readFileSync(file, 'utf8')).toMatch(/^<!doctype html>/);
        expect((await compare('v1', 'v2', '--in', programme, '--format', 'md')).out).toMatch(/^# Measure and Make, edition 2 beside edition 1\n/);
        expect(JSON.parse((await compare('v1', 'v2', '--in', programme, '--format', 'json')).out)).toMatchObject({
            format: 'haversack-comparison', version: 1, old: 'v1', new: 'v2', comparison: { courses: [{ old: { edition: '1' }, new: { edition: '2' } }] }
        });
    });

    test('calendars are those of each revision', async () => {
        const own = folder({});
        git(own, 'init', '-q');
        const text = edited(base, ['  meets mon', '  meets mon\n  off from "calendars/town.ics"']);
        commit(own, { 'a.course': text, 'calendars/town.ics': calendar('20260907') }, 'one');
        commit(own, { 'calendars/town.ics': calendar('20250101') }, 'two');
        const { out } = await compare('one', 'two', '--in', own);
        expect(out).toContain('Last lesson: Mon 28 Sep (2026-09-28) instead of Mon 5 Oct (2026-10-05)');
    });

    test('a renamed lesson in a renamed file', async () => {
        const own = folder({});
        git(own, 'init', '-q');
        commit(own, { 'a.course': base }, 'one');
        commit(own, { 'a.course': undefined, 'b.course': renamed(base, 'weigh-3', 'market-1') }, 'two');
        const { out } = await compare('one', 'two', '--in', own);
        expect(out).toContain('“Market sums” is now written as market-1, not weigh-3');
        expect(out).toContain('(old: a.course, line 65; new: b.course, line 65)');
    });
});

describe('what cannot be compared is told in one sentence', () => {
    const refusals: [what: string, args: () => string[], says: RegExp][] = [
        ['an unknown revision', () => ['v1', 'v7', '--in', programme], /^haversack: There is no revision 'v7' in the git repository of .*mill, and no folder of that name\.\n$/],
        ['a range', () => ['v1..v2', 'v2', '--in', programme], /There is no revision 'v1\.\.v2'/],
        ['what looks like an option', () => ['--in', programme, '--', '--output=x', 'v2'], /There is no revision '--output=x'/],
        ['an option', () => ['v1', '--output=x', '--in', programme], /There is no option '--output=x'/],
        ['a name with a line break', () => ['v1\nv2', 'v2', '--in', programme], /There is no revision 'v1\?v2'/],
        ['nothing', () => ['', 'v2', '--in', programme], /There is no revision ''/],
        ['a file of a revision', () => ['v1:our programmes/mill/programme.course', 'v2', '--in', programme], /There is no revision/],
        ['a folder that the revision does not have', () => ['before', 'v2', '--in', programme], /The revision 'before' does not have the folder .*mill\.\n$/],
        ['a folder in no repository', () => ['v1', 'v2', '--in', folder({ 'a.course': base })], /lies in no git repository\. Name two folders, or say with --in where the programme is\.\n$/],
        ['no folder', () => ['v1', 'v2', '--in', '/nowhere/at/all'], /There is no folder \/nowhere\/at\/all\./],
        ['an unknown course', () => ['v1', 'v2', '--in', programme, '--course', 'mesure'], /There is no course 'mesure' in either edition\. There is measure\.\n$/],
        ['an unknown class', () => ['v1', 'v2', '--in', programme, '--class', 'habour'], /There is no class 'habour' in either edition\. There is harbour\.\n$/],
        ['one edition alone', () => ['v1'], /Which two editions\? Name two folders, or two tags, branches or commits/],
        ['three editions', () => ['v1', 'v2', 'v3'], /Which two editions\?/],
        ['an unknown format', () => ['v1', 'v2', '--in', programme, '--format', 'csv'], /There is no format 'csv' for a comparison: use text, md, html or json\.\n$/]
    ];
    test.each(refusals)('%s', async (_, args, says) => {
        const { code, out, err } = await compare(...args());
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(err).toMatch(says);
        expect(err.trimEnd().split('\n')).toHaveLength(1);
        expect(existsSync('x')).toBe(false);
    });

    test('no git on this computer', async () => {
        const path = process.env['PATH'];
        process.env['PATH'] = '/nonexistent';
        try {
            const { code, err } = await compare('v1', 'v2', '--in', programme);
            expect({ code, err }).toEqual({ code: 2, err: 'haversack: Git was not found on this computer: install it, or name two folders.\n' });
        } finally {
            process.env['PATH'] = path;
        }
    });

    test('a repository without any commit', async () => {
        const own = folder({ 'a.course': base });
        git(own, 'init', '-q');
        const { code, err } = await compare('HEAD', 'HEAD', '--in', own);
        expect(code).toBe(2);
        expect(err).toMatch(/There is no revision 'HEAD'/);
    });
});

/** Gives the last commit a signature, which is checked by the program that the settings name. */
function sign(own: string): void {
    const [head = '', ...message] = git(own, 'cat-file', 'commit', 'HEAD').split('\n\n');
    const signed = `${head}\ngpgsig -----BEGIN PGP SIGNATURE-----\n \n x\n -----END PGP SIGNATURE-----\n\n${message.join('\n\n')}`;
    const file = join(own, '.git/signed');
    writeFileSync(file, signed);
    git(own, 'update-ref', 'HEAD', git(own, 'hash-object', '-t', 'commit', '-w', file).trim());
}

describe('hostile repositories', () => {
    test('no program of the repository’s own settings is started', async () => {
        const own = folder({});
        const seen = join(own, 'seen');
        git(own, 'init', '-q');
        const script = join(own, 'run.sh');
        writeFileSync(script, `#!/bin/sh\ntouch '${seen}'\n`);
        chmodSync(script, 0o755);
        writeFileSync(join(own, '.gitattributes'), '*.course diff=own filter=own\n');
        commit(own, { 'a.course': first }, 'one');
        commit(own, { 'a.course': second }, 'two');
        for (const setting of ['core.fsmonitor', 'core.pager', 'pager.log', 'diff.external', 'diff.own.textconv', 'diff.own.command', 'filter.own.smudge', 'gpg.program', 'core.sshCommand', 'core.editor', 'alias.cat-file', 'credential.helper']) {
            git(own, 'config', setting, setting === 'alias.cat-file' ? `!${script}` : script);
        }
        git(own, 'config', 'log.showSignature', 'true');
        sign(own);
        mkdirSync(join(own, '.git/hooks'), { recursive: true });
        for (const hook of ['post-checkout', 'reference-transaction', 'post-index-change', 'fsmonitor-watchman']) {
            writeFileSync(join(own, '.git/hooks', hook), `#!/bin/sh\ntouch '${seen}'\n`);
            chmodSync(join(own, '.git/hooks', hook), 0o755);
        }
        // Git as it is usually called does start one: the trap works.
        git(own, 'log', '-1');
        expect(existsSync(seen)).toBe(true);
        rmSync(seen);
        expect((await compare('one', 'HEAD', '--in', own)).code).toBe(0);
        // With a former edition to look up.
        expect((await haversack(['check', own, '--today', '2026-09-01'])).out).toContain('change-in-conflict');
        expect(existsSync(seen)).toBe(false);
    });

    test('nothing is fetched, though an object is missing and the repository says where to get it', async () => {
        const own = folder({});
        const seen = join(own, 'seen');
        git(own, 'init', '-q');
        commit(own, { 'a.course': first }, 'one');
        const blob = git(own, 'rev-parse', 'one:a.course').trim();
        const settings = { 'core.repositoryFormatVersion': '1', 'extensions.partialClone': 'origin', 'remote.origin.promisor': 'true', 'remote.origin.url': `ext::touch ${seen}`, 'protocol.ext.allow': 'always' };
        for (const [name, value] of Object.entries(settings)) git(own, 'config', name, value);
        rmSync(join(own, '.git/objects', blob.slice(0, 2), blob.slice(2)));
        expect(() => git(own, 'cat-file', 'blob', blob)).toThrow();
        expect(existsSync(seen)).toBe(true);
        rmSync(seen);
        const { code, err } = await compare('one', 'one', '--in', own);
        expect(code).toBe(2);
        expect(err).toMatch(/^haversack: [^\n]+\n$/);
        expect(existsSync(seen)).toBe(false);
    });

    test('GIT_DIR in the environment does not send it elsewhere', async () => {
        process.env['GIT_DIR'] = join(repository, '.git');
        try {
            expect((await compare('v1', 'v2', '--in', folder({ 'a.course': base }))).err).toMatch(/lies in no git repository/);
        } finally {
            delete process.env['GIT_DIR'];
        }
    });

    test('links are not followed, hidden folders not read, names may be strange', async () => {
        const own = folder({});
        git(own, 'init', '-q');
        commit(own, { 'a [b]*.course': base, '.hidden/x.course': 'course hidden\n', 'node_modules/y.course': 'course packed\n' }, 'one');
        symlinkSync('/etc/passwd', join(own, 'link.course'));
        commit(own, { 'ümläut é.lesson': 'lesson spare\n' }, 'two');
        const { code, out } = await compare('one', 'two', '--in', own);
        expect(code).toBe(0);
        expect(out).toContain('Nothing changed for a teacher.');
        expect(out).not.toMatch(/hidden|packed/);
    });

    test('a huge file is refused and not read', async () => {
        const own = folder({});
        git(own, 'init', '-q');
        commit(own, { 'a.course': base }, 'one');
        commit(own, { 'huge.lesson': '#'.repeat(9 * 1024 * 1024) }, 'two');
        expect((await compare('one', 'two', '--in', own)).err).toBe("haversack: The file huge.lesson in the revision 'two' is larger than 8 MB and is not read.\n");
        expect((await compare('one', 'one', '--in', own)).code).toBe(0);
    });

    test('what is no text is refused', async () => {
        const own = folder({});
        git(own, 'init', '-q');
        writeFileSync(join(own, 'a.course'), Uint8Array.from([0x63, 0xff, 0xfe, 0x00]));
        commit(own, {}, 'one');
        expect((await compare('one', 'one', '--in', own)).err).toBe("haversack: a.course in the revision 'one' is not UTF-8 text.\n");
    });
});

describe('check looks former editions up in the history', () => {
    test('a conflict, and nothing of it where there is no history', async () => {
        const { out } = await haversack(['check', programme, '--today', '2026-09-01']);
        expect(out).toMatch(/programme\.course:\d+:3 warning change-in-conflict: .*“Two mystery bags”: 20 min instead of 15 min/);
        const { out: alone } = await haversack(['check', folder({ 'programme.course': second }), '--today', '2026-09-01']);
        expect(alone).toMatch(/information course-edition-changed: .*`haversack compare` with a copy of edition 1/);
        expect(alone).not.toContain('change-in-conflict');
    });

    test('the last state of the former edition counts, not its first', async () => {
        const own = folder({});
        git(own, 'init', '-q');
        commit(own, { 'a.course': base + adaptation, 'other.lesson': 'lesson z\n' });
        // Still edition 1, and already at the new length.
        commit(own, { 'a.course': edited(first, ['"Two mystery bags" 15 min', '"Two mystery bags" 20 min']) });
        commit(own, { 'other.lesson': 'lesson z "Z"\n' });
        commit(own, { 'a.course': second });
        commit(own, { 'other.lesson': 'lesson z "Still z"\n' });
        const { out } = await haversack(['check', own, '--today', '2026-09-01']);
        expect(out).not.toContain('change-in-conflict');
        expect(out).toMatch(/course-edition-changed: .*All of them still apply/);
    });

    test('whatever the repository’s own settings would have git tell', async () => {
        const own = folder({});
        const inside = join(own, 'ünser', 'mill');
        git(own, 'init', '-q');
        commit(inside, { 'a.course': first });
        writeFileSync(join(inside, 'a.course'), second);
        const settings = {
            'log.showRoot': 'false', 'log.follow': 'true', 'log.diffMerges': 'off', 'log.date': 'relative', 'diff.relative': 'true', 'diff.orderFile': 'no-such-file',
            'diff.submodule': 'log', 'diff.renames': 'copies', 'color.ui': 'always', 'core.quotePath': 'true'
        };
        for (const [setting, value] of Object.entries(settings)) git(own, 'config', setting, value);
        expect((await haversack(['check', inside, '--today', '2026-09-01'])).out).toContain('change-in-conflict');
    });

    test('an edition that is not committed yet', async () => {
        const own = folder({});
        git(own, 'init', '-q');
        commit(own, { 'a.course': first });
        writeFileSync(join(own, 'a.course'), second);
        expect((await haversack(['check', own, '--today', '2026-09-01'])).out).toContain('change-in-conflict');
    });
});
