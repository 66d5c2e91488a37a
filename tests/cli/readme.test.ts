/** Every command of README.md on the examples runs. What it finds may depend on the day, and the spreadsheet has rows to ask about. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folder, haversack } from './run.js';

const page = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8');
const commands = [...page.matchAll(/^node \.build\/cli\/haversack\.cjs (.*examples\/.*)$/gm)].map(([, command]) => command!);

test('there are some', () => expect(commands.length).toBeGreaterThan(9));

test.each(commands)('haversack %s', async command => {
    const desk = folder({});
    const { code, out, err } = await haversack(command.split(' ').map(word => word.replace(/^\.build\//, `${desk}/`)));
    expect(code, err).toBeLessThan(2);
    expect(err.replace(/^Wrote .*\n/, '')).toBe('');
    expect(out + err).not.toBe('');
    expect(out).not.toMatch(/^Nothing is changed/);
});
