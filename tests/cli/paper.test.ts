import { join } from 'node:path';
import { expect, test } from 'vitest';
import { firstSteps, haversack } from './run.js';

const lesson = join(firstSteps, 'lessons/shake-1.lesson');
const commands: [string, string[]][] = [
    ['brief', ['brief', firstSteps, '--week', '1']], ['schedule', ['schedule', firstSteps]], ['changes', ['changes', firstSteps]]
];

/** The sizes of CSS Paged Media Module Level 3, section 7.1, as the page asks for them. */
const sizeOf = (html: string): string | undefined => /@page \{ size: (\w+); \}/.exec(html)?.[1];

test.each(commands)('%s: the paper that is named, and none that is not', async (_name, command) => {
    const page = async (...paper: string[]): Promise<string | undefined> => sizeOf((await haversack([...command, '--format', 'html', ...paper])).out);
    expect(await page('--paper', 'a4')).toBe('A4');
    expect(await page('--paper', 'Letter')).toBe('letter');
    expect(await page()).toBeUndefined();
});

test('another paper is refused in words, and so is paper for what is no page', async () => {
    expect(await haversack(['brief', firstSteps, '--week', '1', '--format', 'html', '--paper', 'a5'])).toMatchObject({ code: 2, out: '', err: "haversack: There is no paper 'a5': use a4 or letter.\n" });
    const { code, err } = await haversack(['practice', lesson, '--paper', 'a4']);
    expect([code, err]).toEqual([2, 'haversack: --paper is for a page to print: ask for it with --format html.\n']);
});
