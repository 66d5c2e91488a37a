/** Where a spreadsheet is looked for, with a stand-in for the editor. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { URI } from 'vscode-uri';
import { given, resetStandIn, window, workspace } from './vscode-stand-in.js';

vi.mock('vscode', () => import('./vscode-stand-in.js'));
const { chooseSpreadsheet } = await import('../../extension/commands/choose-spreadsheet.js');

const [desktop, web] = [1, 2];
beforeEach(resetStandIn);
afterEach(() => {
    vi.restoreAllMocks();
    workspace.workspaceFolders = [];
});

it.each<[string, number, string | undefined, boolean | undefined, { offered: string[] | undefined; from: string | undefined }]>([
    ['on the desktop', desktop, 'file:///home/someone/year', true, { offered: undefined, from: undefined }],
    ['of a desktop’s folder far away', desktop, 'memory:/year', true, { offered: undefined, from: undefined }],
    ['in a browser, of a folder of the device', web, 'file:///year', true, { offered: undefined, from: undefined }],
    ['in a browser without a folder', web, undefined, true, { offered: undefined, from: undefined }],
    ['in a browser, of a folder on no disk', web, 'memory:/year', true, { offered: ['On this device', 'In the folder that is open'], from: 'file:///' }],
    ['in a browser that reads no files of the device', web, 'memory:/year', undefined, { offered: ['In the folder that is open'], from: 'memory:/year' }]
])('%s', async (_, uiKind, folder, reads, wanted) => {
    given.uiKind = uiKind;
    workspace.workspaceFolders = folder === undefined ? [] : [{ uri: URI.parse(folder) }];
    vi.spyOn(workspace.fs, 'isWritableFileSystem').mockReturnValue(reads);
    const asked = vi.spyOn(window, 'showQuickPick');
    const dialog = vi.spyOn(window, 'showOpenDialog');
    expect(await chooseSpreadsheet()).toBeUndefined();
    const offered = asked.mock.calls[0]?.[0] as { label: string }[] | undefined;
    expect({ offered: offered?.map(({ label }) => label), from: dialog.mock.calls[0]![0].defaultUri?.toString() }).toEqual(wanted);
});

it('asks for no file where nobody says where', async () => {
    given.uiKind = web;
    workspace.workspaceFolders = [{ uri: URI.parse('memory:/year') }];
    vi.spyOn(window, 'showQuickPick').mockResolvedValue(undefined);
    const dialog = vi.spyOn(window, 'showOpenDialog');
    expect(await chooseSpreadsheet()).toBeUndefined();
    expect(dialog).not.toHaveBeenCalled();
});
