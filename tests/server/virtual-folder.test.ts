/** A folder that lies on no disk, with the server as a process: its files come from the client, those on the disk are read as ever. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { filesNotification, type FedFile, type FilesParams } from '../../server/protocol/files.js';
import { Client } from './client.js';

const folder = 'memory://shelf/programme';
const fed = (path: string, text: string): FedFile => ({ uri: `${folder}/${path}`, bytes: Buffer.from(text).toString('base64') });
const lesson = (thing: string): string => `lesson weigh-1 "Two bags"\n  materials\n    ${thing} 2\n  activity two-bags 15 min\n    do: Lift both bags.\n`;

let client: Client;
const send = (params: FilesParams): Promise<void> => client.connection.sendNotification(filesNotification, params);
beforeAll(async () => {
    client = await Client.start({ programme: { 'own.kit': 'material sand-bag "Sand bag"\n' } });
    await client.connection.sendNotification('workspace/didChangeWorkspaceFolders', { event: { added: [{ name: 'programme', uri: folder }], removed: [] } });
    await send({ files: [fed('weigh.lesson', lesson('sand-bag'))], whole: true });
});
afterAll(async () => expect(await client.stop()).toEqual({ code: 0, errors: '' }));

test('is a programme of its own: a material on the disk is none of it', async () => {
    await send({ files: [fed('weigh.lesson', `${lesson('sand-bag')}\n# Sent again.\n`)] });
    await client.until('the missing material', () => client.codes(`${folder}/weigh.lesson`).includes('unknown-name'));
});

test('has the files that are sent, and loses those that go', async () => {
    await send({ files: [fed('bags.kit', 'material sand-bag "Sand bag"\n')] });
    await client.until('the material', () => !client.codes(`${folder}/weigh.lesson`).includes('unknown-name'));
    await send({ gone: [`${folder}/bags.kit`] });
    await client.until('the missing material', () => client.codes(`${folder}/weigh.lesson`).includes('unknown-name'));
});

test('leaves files on the disk to be read there', async () => {
    await client.writeOutside('own.lesson', lesson('sand-bags'));
    await client.until('the name that is wrong', () => client.codes('own.lesson').includes('unknown-name'));
    await client.writeOutside('own.lesson', lesson('sand-bag'));
    await client.until('the name that is right', () => !client.codes('own.lesson').includes('unknown-name'));
});
