import { expect, test } from 'vitest';
import { exampleFiles } from './examples.js';
import { nameOf, problemsAfter, problemsIn } from './fixture.js';

/** Slips of the hand that leave a line wrong in itself; none takes a true fact away. */
const slips: ((line: string) => string)[] = [
    line => line.replace(/\S/, 'xqz $&'),
    line => line.replace(/\S/, ''),
    line => line.replace(/[a-z]/, letter => letter.toUpperCase()),
    line => `${line} ~~ 3`,
    line => ` ${line}`
];

test('a slip in a line is told of in its own declaration and nowhere else', async () => {
    const files = exampleFiles('first-steps');
    await problemsIn(files);
    const elsewhere: string[] = [];
    let told = 0;
    for (const [name, text] of Object.entries(files)) {
        const lines = text.split('\n');
        for (const [index, line] of lines.entries()) {
            if (line.trim() === '' || line.trim().startsWith('#')) continue;
            const slipped = slips[index % slips.length]!(line);
            const first = lines.findLastIndex((other, at) => at <= index && /^\S/.test(other));
            const next = lines.findIndex((other, at) => at > index && /^[a-z]/.test(other));
            const problems = await problemsAfter(name, lines.with(index, slipped).join('\n'));
            for (const { uri, at, code, message } of problems) {
                const own = nameOf(uri) === name && at.start.line >= first && (next < 0 || at.start.line < next);
                if (own) told++;
                else elsewhere.push(`"${slipped.trim()}" (${name}:${index + 1}) gave ${nameOf(uri)}:${at.start.line + 1} ${code}: ${message}`);
            }
        }
        await problemsAfter(name, text);
    }
    expect(elsewhere).toEqual([]);
    expect(told).toBeGreaterThan(100);
}, 120_000);
