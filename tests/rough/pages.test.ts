/** Every page and every text that the tool writes, with hostile titles, prose, links and names of files: an allow-list of elements, attributes and addresses. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { everything, Tally } from './chance.js';
import { small } from './corpus.js';
import { hostileProse } from './hostile-words.js';
import { MemoryProgramme } from './memory-programme.js';
import { outputsOf } from './outputs.js';
import { forbidden, sizeOf } from './page-rules.js';
import { RawServer } from './raw-server.js';

vi.setConfig({ testTimeout: 3_600_000 });

/** Every title, every prose and every word of reason in a programme says this. A line break ends a line of the language, and a quotation mark a title. */
function saying(hostile: string): { file: string; text: string }[] {
    const line = hostile.replace(/[\r\n]+/g, ' ');
    const title = line.replace(/["“”]/g, "'");
    return small.map(({ file, text }) => ({
        file,
        text: text.replace(/"[^"\n]*"/g, () => `"${title}"`).replace(/^(\s*(?:about|do|ask|expect|watch|help|note|why|instead|ready when|because):?) .*$/gm, (_, head: string) => `${head} ${line}`).replace(/ because: .*$/gm, () => ` because: ${line}`)
    }));
}

const few = everything ? hostileProse : hostileProse.filter((_, index) => index % 110 === 0);

test('hostile words in every title and every prose, in every page', async () => {
    const tally = new Tally();
    let elements = 0;
    let shown = 0;
    for (const hostile of few) {
        const programme = (await MemoryProgramme.of(saying(hostile))).programme();
        for (const { what, kind, text } of outputsOf(programme, programme, { week: 1 })) {
            if (kind === 'html' || kind === 'sections') {
                expect({ hostile, what, kind, forbidden: forbidden(text, kind === 'html') }).toEqual({ hostile, what, kind, forbidden: [] });
                elements += sizeOf(text);
                if (text.includes('alert(1)')) shown++;
            } else if (kind === 'md') {
                // Raw HTML stays text, and no address but a permitted one stands in a link.
                expect({ hostile, what, raw: /(?<![\\`])<(?:script|img|svg|iframe|style|a |base|meta|form|link|object|details|body|input|math|template|noscript|\?|!)/i.exec(withoutCode(text))?.[0] }).toEqual({ hostile, what, raw: undefined });
                expect({ hostile, what, link: /(?<!\\)\]\(\s*<?(?!https?:|mailto:|#)[^)]*/i.exec(withoutCode(text))?.[0] }).toEqual({ hostile, what, link: undefined });
            } else if (kind === 'ics') {
                expect(text.split('\r\n').filter(one => one !== '' && !/^(?:[A-Z-]+[;:]| )/.test(one))).toEqual([]);
            } else if (kind === 'json') JSON.parse(text);
            tally.add(`${what} ${kind}`);
        }
    }
    console.log(`${few.length} hostile texts in every title and prose: ${tally.total} outputs scanned (${tally}), ${elements} elements in pages.`);
    expect(elements).toBeGreaterThan(few.length * 1000);
    expect(shown).toBeGreaterThan(0);
});

function withoutCode(markdown: string): string {
    return markdown.replace(/(`+)(?!`)[\s\S]*?[^`]\1(?!`)/g, '');
}

const allNames = ['<img src=x onerror=alert(1)>.lesson', '" onmouseover="alert(1).lesson', "'><script>alert(1)<.lesson", 'javascript:alert(1).lesson', 'a%22%3E%3Cscript%3E.lesson', '‮nossel.lesson', '=1+1.lesson', '#frag?query&x=<b>.lesson', '</style><script>.lesson'];

test('hostile names of files and folders, in every page', async () => {
    const tally = new Tally();
    const names = everything ? allNames : allNames.slice(0, 1);
    for (const name of names) {
        const files = small.map(({ file, text }) => ({ file: file === 'lessons/listen-1.lesson' ? name : file, text }));
        const programme = (await MemoryProgramme.of(files)).programme();
        for (const { what, kind, text } of outputsOf(programme, programme, { week: 1 })) {
            if (kind !== 'html' && kind !== 'sections') continue;
            expect({ name, what, kind, forbidden: forbidden(text, kind === 'html') }).toEqual({ name, what, kind, forbidden: [] });
            tally.add(what);
        }
    }
    console.log(`${names.length} hostile names of files: ${tally.total} pages scanned, ${tally}.`);
    expect(tally.total).toBeGreaterThan(names.length * 5);
});

test('the scan finds what it looks for', () => {
    for (const bad of ['<script>1</script>', '<p onclick="x">a</p>', '<a href="javascript:x">a</a>', '<a href="JAVA&#115;cript:x">a</a>', '<svg><use href="#a"/></svg>', '<p style="x">a</p>', '<img src="x">', '<a href="//evil">a</a>', '<a href="command:x">a</a>']) expect({ bad, found: forbidden(bad, false).length > 0 }).toEqual({ bad, found: true });
    expect(forbidden('<p id="a" class="b"><a href="https://example.org/">c</a></p>', false)).toEqual([]);
});

test('hostile titles and prose in what an editor shows at the cursor', async () => {
    const tally = new Tally();
    for (const hostile of everything ? hostileProse : few.slice(0, 1)) {
        const server = new RawServer();
        const files = saying(hostile);
        for (const { file, text } of files) writeFileSync(join(server.folder, file), text);
        await server.initialize();
        let id = 0;
        for (const { file, text } of files) {
            const uri = `${server.root}/${file}`;
            server.send({ method: 'textDocument/didOpen', params: { textDocument: { uri, languageId: 'haversack', version: 1, text } } });
            for (const [line, words] of text.split('\n').entries()) {
                const character = words.search(/\S/);
                if (character < 0 || line % 3 !== 0) continue;
                for (const at of [character, Math.min(words.length, character + 12)]) {
                    const { result } = await server.ask(id++, 'textDocument/hover', { textDocument: { uri }, position: { line, character: at } });
                    const contents = (result as { contents?: { value?: string } } | null)?.contents?.value;
                    if (contents === undefined) continue;
                    tally.add('hover');
                    const said = withoutCode(contents);
                    expect({ hostile, said, raw: /(?<![\\`])<(?!\/?br>)[a-z!?/]/i.test(said) }).toEqual({ hostile, said, raw: false });
                    expect({ hostile, link: /(?<!\\)\]\(\s*<?(?!https?:|mailto:|#|file:\/\/\/|data:image\/svg\+xml;base64,)[^)]*/i.exec(said)?.[0] }).toEqual({ hostile, link: undefined });
                }
            }
        }
        await server.ask('shutdown', 'shutdown');
        expect({ code: await server.exit(), errors: server.errors }).toEqual({ code: 0, errors: '' });
    }
    console.log(`${tally} with hostile titles and prose.`);
    expect(tally.total).toBeGreaterThan(5);
});
