// Node 20 lacks Object.groupBy, which Langium and Chevrotain call.
import 'core-js/actual/object/group-by.js';
import 'core-js/actual/map/group-by.js';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { NodeFiles } from './node-files.js';
import { startServer } from './start-server.js';

startServer(createConnection(ProposedFeatures.all), () => new NodeFiles());
