import { afterAll, beforeAll, expect, test } from 'vitest';
import type { DocumentLink } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;
beforeAll(async () => { client = await Client.start({ programme: {} }); });
afterAll(() => client.stop());

/** "text → target" of each link of a file. */
async function links(text: string, name = 'a.course'): Promise<string[]> {
    await client.open(name, text);
    const found = await client.connection.sendRequest<DocumentLink[]>('textDocument/documentLink', { textDocument: { uri: client.uri(name) } });
    const told = found.map(({ range, target }) => `${client.inRange(name, range)} → ${target!.replace(client.uri(''), '')}`);
    expect(found.every(({ tooltip }) => tooltip)).toBe(true);
    await client.close(name);
    return told;
}

test('calendars and frameworks, seen from their file', async () => {
    expect(await links('framework state "State" from "frameworks/state.json"\n\nclass harbour\n  off from "calendars/town.ics" named "Holiday"\n  off 2026-11-23 "Harvest"\n')).toEqual([
        'frameworks/state.json → /frameworks/state.json', 'calendars/town.ics → /calendars/town.ics'
    ]);
    expect(await links('framework a from "my files/übung.json"')).toEqual(['my files/übung.json → /my%20files/%C3%BCbung.json']);
});

test('never out of the folder, to another computer, or to an address', async () => {
    const paths = ['../../etc/passwd', '/etc/passwd', '\\\\host\\a.ics', '//host/a.ics', 'file:///etc/a.ics', 'javascript:alert(1).ics', 'http://example.org/a.ics', 'C:/a.ics', 'a%2e%2e/b.ics', ''];
    expect(await links(`class a\n${paths.map(path => `  off from "${path}"`).join('\n')}\n`)).toEqual([]);
});

const prose = (words: string): string => `lesson a\n  about: ${words}\n`;

test('links in every text, where they stand', async () => {
    expect(await links(`material bowl
  reusable
  caution sharp: See [the sheet](https://example.org/sharp).
  note: [one](https://example.org/1) and 🔔 [two](http://example.org/2 "Two")
    and on the next line <https://example.org/3>
lesson a
  about: Write to [us](mailto:co-op@example.org) about {bowl}s, [or](https://example.org/a(b)).
  activity b 5 min
    ask: Why?
      expect: [Because](https://example.org/4)
    note: On a line of its own
      [here](https://example.org/5).
course c
  about: [the course](https://example.org/6)
adaptation d of c
  skip lesson a because: [said here](https://example.org/7)
`)).toEqual([
        'mailto:co-op@example.org → mailto:co-op@example.org', 'https://example.org/a(b) → https://example.org/a(b)', 'https://example.org/4 → https://example.org/4', 'https://example.org/5 → https://example.org/5',
        'https://example.org/sharp → https://example.org/sharp', 'https://example.org/1 → https://example.org/1', 'http://example.org/2 → http://example.org/2', 'https://example.org/3 → https://example.org/3',
        'https://example.org/6 → https://example.org/6', 'https://example.org/7 → https://example.org/7'
    ]);
});

test.each([
    'javascript:alert(1)', 'JaVaScRiPt:alert(1)', 'data:text/html,x', 'file:///etc/passwd', 'vscode:extension/x', 'command:workbench.action.quit', '//example.org', '../a.md', 'ftp://example.org', 'https:/example.org', ''
])('no link to %s', async address => {
    expect(await links(prose(`[x](${address}) <${address}>`))).toEqual([]);
});

test('an escaped bracket begins none, and neither do names in braces', async () => {
    expect(await links(prose('\\[x](https://example.org/1) [x] (https://example.org/2) {https://example.org/3}'))).toEqual([]);
    expect(await links(prose('\\\\[x](https://example.org/1)'))).toEqual(['https://example.org/1 → https://example.org/1']);
});

test('texts made of brackets are read in their turn', async () => {
    for (const text of ['['.repeat(200_000), '[x]('.repeat(50_000), '<a:'.repeat(50_000), `[${'x'.repeat(200_000)}`, `[x](https://${'('.repeat(100_000)}`, `[x](https://e "${'"'.repeat(100_000)}`]) await links(prose(text));
});

test('nothing and no error in a file that cannot be read', async () => {
    expect(await links('off from "a.ics"\n  framework\n    class "\n zzz [x](https://example.org)')).toEqual([]);
});
