import { execFile, spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { promisify } from 'node:util';

const repository = join(import.meta.dirname, '../..');
const server = join(repository, '.build/server/node-server.cjs');

/** How long a condition may take to come true, in milliseconds. */
export const patience = 20_000;

/** What a test's Lua may use: `open` a file, `wait` for a condition, and the problems of a file as plain data. */
const helpers = `
function haversack_step(path)
  local ok, answer = pcall(function() return assert(loadfile(path))() end)
  -- By way of a file: Neovim leaves out the middle of a long answer.
  local file = assert(io.open(path .. '.json', 'w'))
  file:write(vim.json.encode(ok and { answer = answer } or { failed = tostring(answer) }))
  file:close()
  return 'written'
end
function open(name)
  if vim.fn.bufloaded(name) == 1 then vim.cmd('buffer ' .. vim.fn.bufnr(name)) else vim.cmd('edit ' .. name) end
  return vim.api.nvim_get_current_buf()
end
function lines(buffer)
  return vim.api.nvim_buf_get_lines(buffer or 0, 0, -1, false)
end
function wait(what, condition)
  if not vim.wait(${patience}, condition, 20) then error('waited in vain for ' .. what) end
end
function problems(buffer)
  return vim.tbl_map(function(one)
    return { line = one.lnum, character = one.col, severity = one.severity, message = one.message, code = one.code }
  end, vim.diagnostic.get(buffer or 0))
end
-- The place of a text in the current file: its line from 1 and its byte from 0, as Neovim counts.
function go(text)
  for number, line in ipairs(lines()) do
    local at = line:find(text, 1, true)
    if at then
      vim.api.nvim_win_set_cursor(0, { number, at - 1 })
      return number
    end
  end
  error('nowhere: ' .. text)
end
function ask(method, params)
  local answers, wrong = vim.lsp.buf_request_sync(0, method, params or vim.lsp.util.make_position_params(), ${patience})
  if not answers then error(wrong) end
  for _, one in pairs(answers) do
    if one.error then error(vim.inspect(one.error)) end
    return one.result
  end
end
`;

/** Neovim without a screen, set up with the lines of server/EDITORS.md, in a copy of a programme. */
export class Neovim {
    private steps = 0;
    private told = '';

    private constructor(readonly folder: string, private readonly work: string, private readonly address: string, private readonly process: ChildProcess) {
        process.stderr?.on('data', (text: Buffer) => { this.told += text.toString(); });
    }

    /** @throws Error where Neovim is not installed, or does not answer in time */
    static async start(programme: string): Promise<Neovim> {
        if (!existsSync(server)) throw new Error(`${server} is missing. Run "npm run build" first.`);
        const work = mkdtempSync(join(tmpdir(), 'haversack-neovim-'));
        const folder = join(work, 'programme');
        const programs = join(work, 'programs');
        cpSync(programme, folder, { recursive: true });
        mkdirSync(programs);
        writeFileSync(join(programs, 'haversack-server'), `#!/bin/sh\nexec '${process.execPath}' '${server}' "$@"\n`);
        chmodSync(join(programs, 'haversack-server'), 0o755);
        writeFileSync(join(work, 'init.lua'), `${documentedSetUp()}\n${helpers}`);
        const address = join(work, 'socket');
        const started = spawn('nvim', ['--headless', '--clean', '-u', join(work, 'init.lua'), '--listen', address], {
            cwd: folder, stdio: ['ignore', 'ignore', 'pipe'],
            env: { ...process.env, PATH: `${programs}:${process.env.PATH}`, XDG_STATE_HOME: work, XDG_CACHE_HOME: work, XDG_DATA_HOME: work }
        });
        const missing = new Promise<never>((_, fail) => started.once('error', error =>
            fail(new Error(`Neovim could not be started (${error.message}). Run tests/install-neovim.sh first.`))));
        process.once('exit', () => started.kill('SIGKILL'));
        const neovim = new Neovim(folder, work, address, started);
        await Promise.race([neovim.listening(), missing]);
        return neovim;
    }

    /**
     * Runs Lua in the editor, as the body of a function.
     * @returns what it returns, by way of JSON
     * @throws Error with what Lua said, where it failed
     */
    async run<T>(lua: string): Promise<T> {
        const path = join(this.work, `step-${++this.steps}.lua`);
        writeFileSync(path, lua);
        const { stdout, stderr } = await promisify(execFile)('nvim', ['--server', this.address, '--remote-expr', `luaeval("haversack_step('${path}')")`]);
        // Neovim 0.7 writes the answer to either, by whether there is a terminal.
        if ((stdout || stderr).trim() !== 'written') throw new Error(`Neovim answered '${stdout}${stderr}'. It had told: ${this.told}`);
        const outcome = JSON.parse(readFileSync(`${path}.json`, 'utf8')) as { answer?: T; failed?: string };
        if (outcome.failed !== undefined) throw new Error(`${outcome.failed}\nNeovim had told: ${this.told}`);
        return outcome.answer as T;
    }

    /** Presses keys, written as Neovim writes them: "A<C-x><C-o>". */
    async press(keys: string): Promise<void> {
        await promisify(execFile)('nvim', ['--server', this.address, '--remote-send', keys]);
    }

    /** Waits until Lua gives a true answer, between whose askings the editor goes its own way. */
    async until(what: string, lua: string): Promise<void> {
        for (const end = performance.now() + patience; performance.now() < end;) {
            if (await this.run<boolean>(lua)) return;
            await pause(20);
        }
        throw new Error(`Waited in vain for ${what}. Neovim had told: ${this.told}`);
    }

    read(name: string): string {
        return readFileSync(join(this.folder, name), 'utf8');
    }

    async stop(): Promise<void> {
        const gone = once(this.process, 'exit');
        await promisify(execFile)('nvim', ['--server', this.address, '--remote-expr', 'execute("qall!")']).catch(() => undefined);
        const late = setTimeout(() => this.process.kill('SIGKILL'), patience);
        await gone;
        clearTimeout(late);
        rmSync(this.work, { recursive: true, force: true });
    }

    private async listening(): Promise<void> {
        const end = performance.now() + patience;
        while (performance.now() < end) {
            if (existsSync(this.address)) return;
            await pause(20);
        }
        throw new Error(`Neovim does not listen. It had told: ${this.told}`);
    }
}

/** The lines that server/EDITORS.md gives for Neovim. */
function documentedSetUp(): string {
    const page = readFileSync(join(repository, 'server/EDITORS.md'), 'utf8');
    const [, lua] = /```lua\n([\s\S]*?)```/.exec(page) ?? [];
    if (lua === undefined) throw new Error('server/EDITORS.md has no lines for Neovim.');
    return lua;
}
