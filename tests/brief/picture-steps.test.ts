/** `show` lines from a programme's text to the week's brief: in a lesson's steps and a game's, on the page and in Markdown. */
import { beforeAll, expect, test } from 'vitest';
import { briefMarkdown } from '@haversack/server/brief/markdown';
import type { WeekBrief } from '@haversack/server/planning/figures';
import { planWeek } from '@haversack/server/planning/week';
import { briefPage } from '../../server/brief/page.js';
import { briefSections } from '../../server/brief/sections.js';
import { lastView, problemsIn } from '../language/fixture.js';

const programme = `
game jump "Jump and count"
  do: Jump along the line.
  show number-line 0 to 20 mark 7, 12

lesson tens "Tens and ones"
  activity look "Look" 10 min
    do: Look at the frame.
    show ten-frame 8 "Eight <b>"
    ask: How many more to ten?
      expect: Two.
    show ten-frame 8
  game jump 5 min
  checkpoint close "Close" 5 min
    show clock 9:30
    show ten-frame 23
    ask: What time is it?
      expect: Half past nine.

course counting "Counting"
  unit numbers "Numbers"
    tens
`;

let brief: WeekBrief;
beforeAll(async () => {
    await problemsIn({ 'programme.course': programme });
    brief = planWeek(lastView().programme, { week: 1 });
});

test('figures: each picture in its place among the steps, with its words', () => {
    const [look, jump, close] = brief.lessons[0]!.parts;
    expect(look!.steps.map(({ word, picture }) => picture?.text ?? word)).toEqual(['do', 'Ten-frame: 8, as 5 and 3; 2 cells are empty.', 'ask', 'Ten-frame: 8, as 5 and 3; 2 cells are empty.']);
    expect(look!.steps[1]!.picture).toMatchObject({ picture: { kind: 'ten-frame', count: 8 }, title: 'Eight <b>', place: { range: { start: { line: 8 } } } });
    expect(jump!.game!.steps.map(({ picture }) => picture?.picture)).toEqual([undefined, { kind: 'number-line', from: 0, to: 20, by: 1, marks: [7, 12] }]);
    expect(close!.steps[1]!.picture).toMatchObject({ text: 'A ten-frame holds 0 to 20; 23 does not fit. Write: show base-ten 23' });
    expect(close!.steps[1]!.picture!.picture).toBeUndefined();
});

test('page: drawn between the steps around them, the words as a caption, a title that stays text, no id twice', () => {
    const html = briefPage(brief);
    const lesson = briefSections(brief).find(({ id }) => id === 'lesson-tens')!.html;
    expect(lesson.match(/<svg class="picture /g)).toHaveLength(4);
    const order = ['Look at the frame.', 'class="picture ten-frame"', '<b><bdi>Eight &lt;b></bdi></b>', 'How many more to ten?', 'class="picture ten-frame"', 'class="picture number-line"', 'class="picture clock"', '23 does not fit', 'What time is it?'];
    let from = 0;
    for (const piece of order) {
        const at = lesson.indexOf(piece, from);
        expect([piece, at >= 0]).toEqual([piece, true]);
        from = at + piece.length;
    }
    expect(lesson).toContain('<figcaption><bdi>Clock: 9:30, half past nine. The short hour hand stands between 9 and 10, the long minute hand on 6.</bdi></figcaption>');
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
    expect(ids).toEqual([...new Set(ids)]);
});

test('preview: the word leads back to its line', () => {
    const lesson = briefSections(brief, { preview: true }).find(({ id }) => id === 'lesson-tens')!.html;
    expect(lesson).toMatch(/data-line="8"[^>]*><span class="label"><button[^>]*data-line="8"[^>]*>Show<\/button>/);
});

test('Markdown: the words', () => {
    const lines = briefMarkdown(brief).split('\n');
    expect(lines).toContain('- Show: Eight \\<b\\>. Ten-frame: 8, as 5 and 3; 2 cells are empty.');
    expect(lines).toContain('- Show: Number line from 0 to 20 in steps of 1; marked: 7 and 12.');
    expect(lines).toContain('- Show: Clock: 9:30, half past nine. The short hour hand stands between 9 and 10, the long minute hand on 6.');
    expect(lines.join('\n')).toContain('- Show: A ten-frame holds 0 to 20; 23 does not fit.');
});
