// Node 20 lacks Object.groupBy, which Langium and Chevrotain call.
import 'core-js/actual/object/group-by.js';
import 'core-js/actual/map/group-by.js';
import { setFlagsFromString } from 'node:v8';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { NodeFiles } from './node-files.js';
import { startServer } from './start-server.js';

// A large programme leaves a fifth less in memory when the heap may grow by four tenths between collections; keystrokes cost the same.
setFlagsFromString('--heap-growing-percent=40');

startServer(createConnection(ProposedFeatures.all), () => new NodeFiles());
