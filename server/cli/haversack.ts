// Node 20 lacks Object.groupBy, which Langium and Chevrotain call.
import 'core-js/actual/object/group-by.js';
import 'core-js/actual/map/group-by.js';
import { runCommandLine } from './command-line.js';
import { exitCodes } from './could-not-run.js';

// A closed pipe (`haversack check . | head`) is no fault of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => { if (error.code !== 'EPIPE') throw error; });
runCommandLine(process.argv.slice(2), text => { process.stdout.write(text); }, text => { process.stderr.write(text); })
    .then(code => { process.exitCode = code; }, () => { process.exitCode = exitCodes.couldNotRun; });
