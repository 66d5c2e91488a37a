import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folder, haversack } from './run.js';

const lessons = {
    'drill.lesson': [
        'lesson drill-1 "Sums and names"', '  practice sums "Sums" 6 items', '    sums 2 to 20', '    return to 7 and 8', '    show number-line 0 to 20',
        '  practice names "Names" 4 items', '    name numbers 21 to 99', ''
    ].join('\n'),
    'quiet.lesson': 'lesson quiet-1 "Quiet"\n  activity rest 5 min\n    do: Rest.\n',
    'two.lesson': 'lesson two-1\n  practice lay 5 items\n    arrange digits of 481\nlesson two-2\n  practice bond\n    bonds of 10\n',
    'year.course': 'course year\n  unit one\n    drill-1\n    quiet-1\n    two-1\n    two-2\nclass hill\n  teaches year\n  learners 4\nadaptation more of year for hill\n  add to quiet-1\n    practice added 3 items\n      bonds of 5\n'
};
const programme = folder(lessons);
const practice = (lesson: string, ...args: string[]): ReturnType<typeof haversack> => haversack(['practice', lesson, '--in', programme, ...args]);

interface Json { format: string; practice: { further: boolean; practices: { name: string; first: number; items: { ask: string; answer: string }[] }[] } }
const items = async (...args: string[]): Promise<Json['practice']['practices']> => (JSON.parse((await practice('drill-1', '--format', 'json', ...args)).out) as Json).practice.practices;

describe.concurrent('practice', () => {
    test('the sheet has the items and no answer; the key has both', async () => {
        const [sums] = await items('--practice', 'sums');
        const sheet = await practice('drill-1', '--practice', 'sums');
        const key = await practice('drill-1', '--practice', 'sums', '--key');
        expect(sheet).toMatchObject({ code: 0, err: '' });
        for (const [index, { ask, answer }] of sums!.items.entries()) {
            expect(sheet.out).toContain(`${index + 1}. ${ask.replace('?', '____')}\n`);
            expect(key.out).toContain(`${index + 1}. ${ask.replace('?', answer)}\n`);
        }
        expect(sheet.out).toMatch(/^Sums\nSums and names\n\nName: _+ {2}Date: _+\n/);
        expect(key.out).toMatch(/^Answer key: Sums\nSums and names\n\n6 items: sums 2 to 20; return to 7 and 8\.\n/);
        expect(sums!.items.filter(({ ask }) => ask === '7 + 8 = ?')).toHaveLength(2);
    });

    test('all practices of the lesson, or the one that is named', async () => {
        expect((await items()).map(({ name, items: some }) => [name, some.length])).toEqual([['sums', 6], ['names', 4]]);
        expect((await items('--practice', 'names')).map(({ name }) => name)).toEqual(['names']);
    });

    test('further items go on where those of the brief end, and repeat none of them', async () => {
        const [first] = await items('--practice', 'names');
        const [more] = await items('--practice', 'names', '--more', '75');
        expect(more).toMatchObject({ first: 5 });
        // 79 numbers from 21 to 99.
        expect(new Set([...first!.items, ...more!.items].map(({ ask }) => ask)).size).toBe(79);
        expect((await practice('drill-1', '--practice', 'names', '--more', '20')).out).toMatch(/^Names\nSums and names, further items\n[^]*\n {4}_+\n24\. .*\n {4}_+\n$/);
    });

    test('the same again, each time and from its file', async () => {
        const { out } = await practice('drill-1');
        expect((await practice('drill-1')).out).toBe(out);
        expect((await haversack(['practice', join(programme, 'drill.lesson')])).out).toBe(out);
        expect((await haversack(['practice', 'drill-1'], programme)).out).toBe(out);
    });

    test('the items are those of the brief', async () => {
        const brief = (await haversack(['brief', programme, '--week', '1', '--format', 'md'])).out;
        for (const { items: some } of await items()) for (const { ask } of some) expect(brief).toContain(`. ${ask}\n`);
    });

    test('as a class is taught the lesson', async () => {
        expect(await practice('quiet-1', '--class', 'hill', '--key')).toMatchObject({ code: 0, out: expect.stringMatching(/3 items: bonds of 5\./) as string });
        expect((await practice('quiet-1')).err).toContain("No practice items can be made for lesson 'quiet-1'");
    });

    test('a lesson that is split or joined for a class keeps its items: in the brief, as the class is taught it, and as it is written', async () => {
        const at = folder({
            'a.lesson': [
                'lesson weigh-5 "Five"', '  activity x 5 min', '    do: Begin.', '  practice say "Say" 6 items 10 min', '    name numbers 11 to 99', '    return to 67',
                '  activity y 5 min', '    do: Go on.', '  practice add "Add" 5 items', '    sums 2 to 20', '',
                'lesson weigh-6 "Six"', '  activity z 5 min', '    do: Rest.', '  practice say "Say more" 4 items', '    write numbers 11 to 99', '',
                'lesson weigh-7 "Seven"', '  activity w 5 min', '    do: Begin.', '  practice long "Long" 8 items 10 min', '    differences 0 to 20', ''
            ].join('\n'),
            'a.course': ['course year', '  unit one', '    weigh-5', '    weigh-6', '    weigh-7', '', ...['split', 'joined'].flatMap(name => [`class ${name}`, '  teaches year', '  learners 4', '']),
                'adaptation parts of year for split', '  split weigh-5 after x', '  split activity weigh-7.long after 5 min', '', 'adaptation one of year for joined', '  join weigh-5 with weigh-6', ''].join('\n')
        });
        const asks = async (name: string, ...args: string[]): Promise<Record<string, string[]>> => {
            const { out, err } = await haversack(['practice', name, '--in', at, '--format', 'json', ...args]);
            expect(err).toBe('');
            return Object.fromEntries((JSON.parse(out) as Json).practice.practices.map(one => [one.name, one.items.map(({ ask }) => ask)]));
        };
        const [five, six, seven] = [await asks('weigh-5'), await asks('weigh-6'), await asks('weigh-7')];
        expect([five.say!.length, five.add!.length, six.say!.length, seven.long!.length]).toEqual([6, 5, 4, 8]);
        const brief = async (name: string): Promise<string> => (await haversack(['brief', at, '--week', '1', '--class', name, '--format', 'md'])).out;
        const listed = (items: readonly string[]): string => items.map((ask, index) => `${index + 1}. ${ask}\n`).join('');

        expect(await asks('weigh-5', '--class', 'split')).toEqual(five);
        expect(await asks('weigh-5-part-2', '--class', 'split')).toEqual(five);
        const split = await brief('split');
        expect(split).toContain('Five, part 2');
        for (const items of [five.say!, five.add!]) expect(split).toContain(listed(items));
        // A split practice goes on in its second piece, and further items begin behind both.
        expect(await asks('weigh-7', '--class', 'split')).toEqual({ long: seven.long!.slice(0, 4), 'long-part-2': seven.long!.slice(4) });
        for (const items of [seven.long!.slice(0, 4), seven.long!.slice(4)]) expect(split).toContain(listed(items));
        expect(await asks('weigh-7', '--class', 'split', '--more', '9')).toEqual(await asks('weigh-7', '--more', '9'));

        const joined = await asks('weigh-6', '--class', 'joined');
        expect(joined).toEqual({ ...five, 'say-2': six.say });
        expect(await asks('weigh-5', '--class', 'joined')).toEqual(joined);
        for (const items of [five.say!, five.add!, six.say!]) expect(await brief('joined')).toContain(listed(items));
        expect((await haversack(['practice', join(at, 'a.lesson'), '--class', 'joined'])).err).toContain('has several lessons');
    });

    test.each([['html', /^<!doctype html>/, /<script|<link|src=|@import|url\(["']?http/], ['md', /^# Sums\n/, /<|\?/]] as const)('%s to a file, sheet and key apart', async (format, begin, without) => {
        const at = folder({});
        const [sheet, key] = [join(at, `sheet.${format}`), join(at, `key.${format}`)];
        expect(await practice('drill-1', '--out', sheet)).toEqual({ code: 0, out: '', err: `Wrote ${sheet}\n` });
        expect(await practice('drill-1', '--key', '--out', key)).toMatchObject({ code: 0 });
        expect(readFileSync(sheet, 'utf8')).toMatch(begin);
        expect(readFileSync(sheet, 'utf8')).not.toMatch(without);
        expect(readFileSync(sheet, 'utf8')).not.toContain('Answer key');
        expect(readFileSync(key, 'utf8')).toContain('Answer key: Sums');
    });

    test('JSON for programs', async () => {
        expect(JSON.parse((await practice('drill-1', '--format', 'json', '--more', '2')).out)).toMatchObject({ format: 'haversack-practice', version: 1, practice: { further: true, lesson: { name: 'drill-1' } } });
    });

    test('an error in the lesson: what can be made, a word about it, exit code 1', async () => {
        const at = folder({ 'a.lesson': 'lesson a\n  practice p 12 items\n    arrange digits of 481\n', 'b.lesson': 'lesson b\n  practice p 4 items\n    bonds of 10\n' });
        const { code, out, err } = await haversack(['practice', 'a', '--in', at]);
        expect(code).toBe(1);
        expect(out.trim().split('\n').pop()).toMatch(/^5\. Arrange 4, 8 and 1 to make /);
        expect(err).toBe("1 error in the text: the sheet shows what could be read. 'haversack check' lists them.\n");
        expect((await haversack(['practice', 'b', '--in', at])).code).toBe(0);
    });
});

describe.concurrent('practice cannot run: exit code 2, one sentence', () => {
    test.each([
        [['drill-1', '--practice', 'song'], "Lesson 'drill-1' has no practice 'song' with items. It has sums, names."],
        [['dril-1'], `There is no lesson 'dril-1' in ${programme}. Did you mean drill-1?`], [['nobody-knows-it'], 'Give the folder of the programme with --in.'],
        [['drill-1', '--more', '0'], "'0' is no number of items"], [['drill-1', '--more', '1.5'], "'1.5' is no number of items"], [['drill-1', '--more', '9'.repeat(300)], 'ask for 200 at most'],
        [['drill-1', '--format', 'pdf'], "There is no format 'pdf' for practice: use text, md, html or json."], [['drill-1', '--class', 'nobody'], "There is no class 'nobody'. The only class is hill."],
        [['quiet-1'], "No practice items can be made for lesson 'quiet-1'"]
    ])('%j', async (args, says) => {
        const { code, out, err } = await practice(args[0]!, ...args.slice(1));
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(err).toContain(says);
        expect(err.trimEnd().split('\n')).toHaveLength(1);
    });

    test('a file with several lessons, a file without any, no lesson at all', async () => {
        expect((await haversack(['practice', join(programme, 'two.lesson')])).err).toContain('has several lessons with practice: two-1, two-2. Name one');
        expect((await haversack(['practice', join(programme, 'year.course')])).err).toContain('There is no lesson in');
        expect((await haversack(['practice'])).err).toContain('Which lesson? Give its name or its file');
    });
});
