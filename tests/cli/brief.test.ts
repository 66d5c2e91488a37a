import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { commandFile, firstSteps, folder, haversack, type Outcome } from './run.js';

const asked = new Map<string, Promise<Outcome>>();

/** The brief of the unchanged example; a command that was run before is not run again, save where it writes a file. */
function brief(...args: string[]): Promise<Outcome> {
    const key = JSON.stringify(args);
    const outcome = asked.get(key) ?? haversack(['brief', firstSteps, ...args]);
    if (!args.includes('--out')) asked.set(key, outcome);
    return outcome;
}

describe.concurrent('brief', () => {
    test('Markdown, where nothing else is asked for', async () => {
        const { code, out, err } = await brief('--week', '1');
        expect({ code, err }).toEqual({ code: 0, err: '' });
        expect(out).toMatch(/^# Week 1 of 9\n/);
        expect((await brief('--week', '1', '--format', 'md')).out).toBe(out);
    });

    test('JSON with its format and version', async () => {
        const { code, out } = await brief('--week', '2', '--format', 'json');
        expect(code).toBe(0);
        expect(JSON.parse(out)).toMatchObject({ format: 'haversack-brief', version: 1, brief: { week: 2 } });
    });

    test('HTML that needs nothing else', async () => {
        const { code, out } = await brief('--week', '2', '--format', 'html');
        expect(code).toBe(0);
        expect(out).toMatch(/^<!doctype html>\n<html lang="en"/);
        expect(out).not.toMatch(/<script|<link|src=|@import|url\(["']?http/);
    });

    test('the same text gives the same brief', async () => {
        const command = ['brief', firstSteps, '--week', '4', '--format', 'html'];
        expect((await haversack(command)).out).toBe((await haversack(command)).out);
    });

    test('for a class', async () => {
        expect((await brief('--week', '1', '--class', 'attic')).out).toBe((await brief('--week', '1')).out);
    });

    test('from one of its files', async () => {
        expect((await haversack(['brief', join(firstSteps, 'lessons/shake-1.lesson'), '--week', '1'])).out).toBe((await brief('--week', '1')).out);
    });

    test.each([['html', /^<!doctype html>/], ['md', /^# Week 1/], ['json', /^\{/]] as const)('to a file, as its ending says: %s', async (ending, begin) => {
        const out = join(folder({}), `week-1.${ending}`);
        expect(await brief('--week', '1', '--out', out)).toEqual({ code: 0, out: '', err: `Wrote ${out}\n` });
        expect(readFileSync(out, 'utf8')).toMatch(begin);
        expect(readFileSync(out, 'utf8')).toBe((await brief('--week', '1', '--format', ending)).out);
    });

    test('errors in the text: the brief of what could be read, a word about it, exit code 1', async () => {
        const path = folder();
        const file = join(path, 'lessons/listen-1.lesson');
        writeFileSync(file, readFileSync(file, 'utf8').replace('hand-bell     1', 'hand-bel     1'));
        const { code, out, err } = await haversack(['brief', path, '--week', '1']);
        expect(code).toBe(1);
        expect(out).toMatch(/^# Week 1 of 9/);
        expect(err).toBe("1 error in the text: the brief shows what could be read. 'haversack check' lists them.\n");
    });

    test('a reader that goes away early is no error', async () => {
        const child = spawn(process.execPath, [commandFile, 'brief', firstSteps, '--week', '2', '--format', 'html'], { stdio: ['ignore', 'pipe', 'pipe'] });
        let err = '';
        child.stderr.on('data', chunk => { err += String(chunk); });
        child.stdout.destroy();
        const [code] = await once(child, 'exit') as [number];
        expect({ code, err }).toEqual({ code: 0, err: '' });
    });
});

describe.concurrent('brief cannot run: exit code 2, one sentence on the error output, nothing on the other', () => {
    test.each([
        ['week 0', ['--week', '0'], "'0' is no week: weeks are counted from 1."],
        ['a word for a week', ['--week', 'two'], "'two' is no week: weeks are counted from 1."],
        ['half a week', ['--week', '1.5'], "'1.5' is no week: weeks are counted from 1."],
        ['a week past the end', ['--week', '99'], 'There is no week 99: the plan has 9 weeks.'],
        ['a week past every number', ['--week', '9'.repeat(400)], 'There is no week'],
        ['an unknown class', ['--week', '1', '--class', 'nobody'], "There is no class 'nobody'. The only class is attic."],
        ['an unknown format', ['--week', '1', '--format', 'pdf'], "There is no format 'pdf' for a brief: use html, md or json."],
        ['an ending that is no format', ['--week', '1', '--out', 'week.docx'], "There is no format 'docx' for a brief: use html, md or json."],
        ['a name of every object for a format', ['--week', '1', '--format', 'constructor'], "There is no format 'constructor' for a brief: use html, md or json."]
    ])('%s', async (_, args, words) => {
        const { code, out, err } = await brief(...args);
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(err).toContain(`haversack: ${words}`);
        expect(err.trimEnd().split('\n')).toHaveLength(1);
        expect(existsSync('week.docx')).toBe(false);
    });

    test.each([
        [['brief', firstSteps], 'Which week? Say it with --week'], [['brief', firstSteps, '--week'], 'Something is missing after --week'],
        [['brief', firstSteps, '--week', '1', '--colour', 'red'], "There is no option '--colour'."], [['brief', '--week', '1'], 'Which programme?'],
        [['brief', firstSteps, '--week', '1', '--clas', 'attic'], "There is no option '--clas'. Did you mean --class?"]
    ])('a wrong command: %j', async (args, says) => {
        const { code, out, err } = await haversack(args);
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(err).toContain(`haversack: ${says}`);
        expect(err.trim().split('\n')).toHaveLength(1);
    });

    test('a negative week', async () => {
        expect((await brief('--week', '-1')).code).toBe(2);
        expect(await brief('--week=-1')).toMatchObject({ code: 2, err: "haversack: '-1' is no week: weeks are counted from 1.\n" });
    });

    test('to a folder that does not exist, and to a folder', async () => {
        const path = folder({});
        const nowhere = join(path, 'none', 'week.html');
        expect(await brief('--week', '1', '--out', nowhere)).toEqual({ code: 2, out: '', err: `haversack: ${nowhere} could not be written: there is no folder ${join(path, 'none')}.\n` });
        mkdirSync(join(path, 'week.html'));
        expect(await brief('--week', '1', '--out', join(path, 'week.html'))).toEqual({ code: 2, out: '', err: `haversack: ${join(path, 'week.html')} could not be written: it is a folder.\n` });
    });

    test('a folder that does not exist, one without lessons, lessons without a course', async () => {
        expect(await haversack(['brief', 'no/such/folder', '--week', '1'])).toMatchObject({ code: 2, err: 'haversack: There is nothing at no/such/folder. Check the path.\n' });
        expect(await haversack(['brief', folder({ 'a.kit': 'material cup\n' }), '--week', '1'])).toMatchObject({ code: 2, err: 'haversack: No lesson of this programme stands in a course, so there is no week to write about.\n' });
        const alone = await haversack(['brief', folder({ 'a.lesson': 'lesson a "A"\n' }), '--week', '1']);
        expect(alone.code === 2 ? alone.err : alone.out).toMatch(/No lesson of this programme stands in a course|Week 1/);
    });
});
