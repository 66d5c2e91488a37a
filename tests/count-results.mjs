// Adds up what vitest reported in JSON and says it in one line. Fails when a file ran no test or a test was skipped.
import { readFileSync } from 'node:fs';

const reports = process.argv.slice(2).map(path => JSON.parse(readFileSync(path, 'utf8')));
const sum = key => reports.reduce((total, report) => total + report[key], 0);
const passed = sum('numPassedTests');
const failed = sum('numFailedTests');
const skipped = sum('numPendingTests') + sum('numTodoTests');

console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
if (failed > 0 || skipped > 0 || reports.some(report => report.numPassedTests === 0)) process.exitCode = 1;
