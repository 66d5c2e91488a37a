// Node 20 lacks Object.groupBy, which Langium and Chevrotain call.
import 'core-js/actual/object/group-by.js';
import 'core-js/actual/map/group-by.js';
import { setFlagsFromString } from 'node:v8';
import { DocumentState } from 'langium';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { startOnDisk } from './start-on-disk.js';
import { inOrder } from './workspace/message-order.js';

/** By how many hundredths the heap may grow before garbage is collected again. */
const letHeapGrow = (percent: number): void => setFlagsFromString(`--heap-growing-percent=${percent}`);

// While the files are read nearly everything stays, so collecting often is in vain. Afterwards a tighter heap keeps a fifth of the
// memory of a large programme free, and keystrokes cost the same.
letHeapGrow(100);
// An editor that starts a program without further words talks to it over its standard input and output.
if (!process.argv.some(word => /^--(?:stdio|node-ipc|socket|pipe)\b/.test(word))) process.argv.push('--stdio');
const { shared } = startOnDisk(createConnection(ProposedFeatures.all, { messageStrategy: inOrder() }));
const firstBuild = shared.workspace.DocumentBuilder.onBuildPhase(DocumentState.Validated, () => {
    firstBuild.dispose();
    letHeapGrow(40);
});
