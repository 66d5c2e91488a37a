/** A second real client: Debian's Neovim, which knows no semantic tokens, no inlay hints and no pull diagnostics. */
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Neovim } from './neovim.js';

const firstSteps = join(import.meta.dirname, '../../examples/first-steps');

interface Told {
    line: number;
    character: number;
    severity: number;
    message: string;
    code?: string;
}

let editor: Neovim;
beforeAll(async () => { editor = await Neovim.start(firstSteps); });
afterAll(() => editor.stop());

describe('problems', () => {
    test('an unknown material is told at its line, in words', async () => {
        const told = await editor.run<Told[]>(`
            open('lessons/listen-1.lesson')
            local number = go('hand-bell')
            vim.api.nvim_buf_set_lines(0, number - 1, number, false, { '    hand-bel     1 per group    in kit' })
            wait('the problem', function() return #problems() > 0 end)
            return problems()
        `);
        const unknown = told.filter(({ message }) => message.includes("'hand-bel'"));
        expect(unknown).toHaveLength(1);
        expect(unknown[0]).toMatchObject({ character: 4, severity: 1 });
        expect(unknown[0]!.message).toContain('hand-bell');
    });

    test('its mend is offered and made, and the problem goes', async () => {
        const answer = await editor.run<{ titles: string[]; line: string; left: Told[] }>(`
            local number = go('hand-bel')
            local params = vim.lsp.util.make_range_params()
            params.context = { diagnostics = vim.lsp.diagnostic.get_line_diagnostics(0, number - 1) }
            local actions = ask('textDocument/codeAction', params)
            local titles = vim.tbl_map(function(one) return one.title end, actions)
            for _, action in ipairs(actions) do
                if action.title:find("Change to 'hand-bell'", 1, true) then
                    local whole = action.edit and action or ask('codeAction/resolve', action)
                    vim.lsp.util.apply_workspace_edit(whole.edit, 'utf-16')
                end
            end
            wait('the problem to go', function() return #problems() == 0 end)
            return { titles = titles, line = lines()[number], left = problems() }
        `);
        expect(answer.titles).toContain("Change to 'hand-bell'");
        expect(answer.line).toBe('    hand-bell     1 per group    in kit');
        expect(answer.left).toEqual([]);
    });
});

describe('completion', () => {
    /** What omni-completion offers at the end of a line that is put in below a text. */
    const offersIn = (below: string, line: string): Promise<string[]> => editor.run<string[]>(`
        open('lessons/listen-1.lesson')
        local number = go(${JSON.stringify(below)})
        vim.api.nvim_buf_set_lines(0, number, number, false, { ${JSON.stringify(line)} })
        vim.api.nvim_win_set_cursor(0, { number + 1, #${JSON.stringify(line)} })
        local params = vim.lsp.util.make_position_params()
        params.position.character = #${JSON.stringify(line)}
        local answer = ask('textDocument/completion', params)
        local matches = vim.lsp.util.text_document_completion_list_to_complete_items(answer, '')
        vim.api.nvim_buf_set_lines(0, number, number + 1, false, {})
        return vim.tbl_map(function(one) return one.word end, matches)
    `);

    test('offers the inventory in a need', async () => {
        const words = await offersIn('  materials', '    ');
        expect(words).toEqual(expect.arrayContaining(['rice', 'rubber-band', 'tissue-box']));
    });

    test('offers names after a brace in prose', async () => {
        const words = await offersIn('    do: Rub', '      Ring the {');
        expect(words.join(' ')).toContain('hand-bell');
        expect(words.join(' ')).toContain('wooden-spoon');
    });

    test('its keys take the chosen name into the text', async () => {
        await editor.run(`
            open('lessons/listen-1.lesson')
            local number = go('  materials')
            vim.api.nvim_buf_set_lines(0, number, number, false, { '    r' })
            vim.api.nvim_win_set_cursor(0, { number + 1, 4 })
        `);
        await editor.press('A<C-x><C-o>');
        await editor.until('the offers', 'return vim.fn.pumvisible() == 1');
        await editor.press('<C-y><Esc>');
        await editor.until('the end of typing', "return vim.api.nvim_get_mode().mode == 'n'");
        const line = await editor.run<string>(`
            local line = vim.api.nvim_get_current_line()
            vim.cmd('silent delete')
            return line
        `);
        expect(line).toMatch(/^ {4}(?:rice|rubber-band)\b/);
    });
});

describe('names', () => {
    test('a rename changes every file, and they are written', async () => {
        const before = ['inventory.kit', 'lessons/listen-1.lesson', 'lessons/concert-1.lesson'].map(name => editor.read(name));
        expect(before.every(text => /\bhand-bell\b/.test(text))).toBe(true);
        await editor.run(`
            open('lessons/listen-1.lesson')
            go('hand-bell')
            vim.lsp.buf.rename('table-bell')
            wait('the new name', function() return table.concat(lines()):find('table-bell', 1, true) ~= nil end)
            vim.cmd('silent wall')
        `);
        const after = ['inventory.kit', 'lessons/listen-1.lesson', 'lessons/concert-1.lesson'].map(name => editor.read(name));
        // A remark may say anything, so the name in it is left.
        const renamed = (text: string): string => text.replaceAll(/^(?!#).*$/gm, line => line.replaceAll(/\bhand-bell\b/g, 'table-bell'));
        expect(after).toEqual(before.map(renamed));
    });

    test('nothing is wrong afterwards but what still has the old name', async () => {
        const told = await editor.run<Told[]>(`
            open('lessons/listen-1.lesson')
            local last = #lines()
            vim.api.nvim_buf_set_lines(0, last, last, false, { '    do: Ring the {hand-bell}.' })
            -- While the files come one after another, names of some do not fit those of others.
            wait('this problem alone', function() return #problems() == 1 and #vim.diagnostic.get() == 1 end)
            local told = vim.tbl_map(function(one) return { message = one.message } end, vim.diagnostic.get())
            vim.api.nvim_buf_set_lines(0, last, last + 1, false, {})
            wait('the problem to go', function() return #vim.diagnostic.get() == 0 end)
            return told
        `);
        expect(told.map(({ message }) => message)).toEqual([expect.stringContaining('hand-bell')]);
    });

    test('a name leads to where it is declared', async () => {
        await editor.run(`
            open('lessons/listen-1.lesson')
            go('table-bell')
            vim.lsp.buf.definition()
        `);
        await editor.until('the inventory', "return vim.fn.expand('%:t') == 'inventory.kit'");
        expect(await editor.run('return vim.api.nvim_get_current_line()')).toBe('material table-bell "Hand bell"');
    });

    test('hover tells about it', async () => {
        const text = await editor.run<string>(`
            open('lessons/listen-1.lesson')
            go('table-bell')
            return table.concat(vim.lsp.util.convert_input_to_markdown_lines(ask('textDocument/hover').contents), '\\n')
        `);
        expect(text).toContain('Hand bell');
    });
});

describe('formatting', () => {
    test('lays a file out and keeps what it says', async () => {
        const { before, after, again } = await editor.run<Record<'before' | 'after' | 'again', string[]>>(`
            open('lessons/travel-1.lesson')
            local before = lines()
            local crooked = vim.tbl_map(function(line) return (line:gsub('^%s+', '%0%0')) .. '  ' end, before)
            vim.api.nvim_buf_set_lines(0, 0, -1, false, crooked)
            vim.lsp.buf.formatting_sync(nil, 20000)
            local after = lines()
            vim.lsp.buf.formatting_sync(nil, 20000)
            return { before = before, after = after, again = lines() }
        `);
        expect(after).toEqual(before);
        expect(again).toEqual(after);
    });
});
