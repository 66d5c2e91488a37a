/** Whose week the trees are about, with a stand-in for the editor and the brief. */
import { beforeEach, expect, it, vi } from 'vitest';
import { URI } from 'vscode-uri';
import type { BriefPanel, ShownBrief } from '../../extension/preview/brief-panel.js';
import { EventEmitter, resetStandIn, window } from './vscode-stand-in.js';

vi.mock('vscode', () => import('./vscode-stand-in.js'));
const { Shown } = await import('../../extension/trees/shown.js');

const client = { code2ProtocolConverter: { asUri: (uri: unknown) => String(uri) } } as unknown as Parameters<InstanceType<typeof Shown>['place']>[0];
let shows: EventEmitter<ShownBrief>;
let wished: string[];
let shown: InstanceType<typeof Shown>;
beforeEach(() => {
    resetStandIn();
    shows = new EventEmitter<ShownBrief>();
    wished = [];
    shown = new Shown({ onDidShow: shows.event, useClass: (name: string) => { wished.push(name); } } as unknown as BriefPanel);
});

it('follows the brief', () => {
    shows.fire({ uri: 'file:///a/x.lesson', class: 'harbour', week: 3 });
    expect(shown).toMatchObject({ class: 'harbour', week: 3 });
    expect(shown.place(client)).toEqual({ programme: undefined, uri: 'file:///a/x.lesson' });
    shows.fire({ uri: 'file:///a/x.lesson', class: 'harbour' });
    expect(shown.week).toBe(3);
});

it('takes the brief along to a class of the same programme', () => {
    shows.fire({ uri: 'file:///a/x.lesson', class: 'harbour', week: 3 });
    shown.chooseClass('file:///a', 'millpond');
    expect(wished).toEqual(['millpond']);
    shows.fire({ uri: 'file:///a/x.lesson', class: 'millpond', week: 2 });
    expect(shown).toMatchObject({ class: 'millpond', week: 2, programme: undefined });
});

it('stays with a class of another programme that was chosen, until the brief is about another file', () => {
    shows.fire({ uri: 'file:///a/x.lesson', class: 'harbour', week: 3 });
    shown.chooseClass('file:///b', 'attic');
    shows.fire({ uri: 'file:///a/x.lesson', class: 'harbour', week: 3 });
    expect(shown).toMatchObject({ class: 'attic', programme: 'file:///b', week: undefined });
    shows.fire({ uri: 'file:///a/y.lesson', class: 'harbour', week: 4 });
    expect(shown).toMatchObject({ class: 'harbour', programme: undefined, week: 4 });
});

it('is about the programme of the text where no brief was shown', () => {
    const document = { languageId: 'haversack', uri: URI.parse('file:///b/y.lesson') };
    window.activeTextEditor = { document };
    expect(shown.place(client)).toEqual({ programme: undefined, uri: 'file:///b/y.lesson' });
    document.languageId = 'plaintext';
    expect(shown.place(client)).toEqual({ programme: undefined, uri: undefined });
});
