// Node 20 lacks Object.groupBy, which Langium and Chevrotain call.
import 'core-js/actual/object/group-by.js';
import 'core-js/actual/map/group-by.js';
import { Command, CommanderError } from 'commander';
import { briefCommand, type BriefOptions } from './brief-command.js';
import { checkCommand, type CheckOptions } from './check-command.js';
import { CouldNotRun, exitCodes } from './could-not-run.js';
import { wrongCommand } from './wrong-command.js';

const write = (text: string): void => { process.stdout.write(text); };
const tell = (text: string): void => { process.stderr.write(text); };

async function main(): Promise<number> {
    let code: number = exitCodes.fine;
    const program = new Command('haversack')
        .description('Checks a programme of hands-on lessons and writes the week’s teacher brief.')
        .configureOutput({ outputError: () => undefined })
        .exitOverride();
    program.command('check').argument('<path>', 'folder of a programme, or one of its files')
        .description('List what is wrong. Exit code 0: fine, 1: problems found, 2: could not run.')
        .option('--format <format>', 'text or json', 'text')
        .action(async (path: string, options: CheckOptions) => { code = await checkCommand(path, options, write); });
    program.command('brief').argument('<path>', 'folder of a programme, or one of its files')
        .description('Write the brief of a week.')
        .requiredOption('--week <number>', 'which week, counted from 1')
        .option('--class <name>', 'for which class; without it, the first one')
        .option('--format <format>', 'html, md or json; without it, by the ending of --out, else md')
        .option('--out <file>', 'write to a file instead of the terminal')
        .action(async (path: string, options: BriefOptions) => { code = await briefCommand(path, options, write, tell); });
    try {
        await program.parseAsync();
        return code;
    } catch (error) {
        if (error instanceof CommanderError) {
            if (error.exitCode === 0) return exitCodes.fine;
            // Without any command the help has been shown already.
            if (error.code !== 'commander.help') tell(`haversack: ${wrongCommand(error)}\n`);
            return exitCodes.couldNotRun;
        }
        tell(`haversack: ${error instanceof CouldNotRun ? error.message : `something unforeseen went wrong (${(error as Error).message}). Please report it with the text that caused it.`}\n`);
        return exitCodes.couldNotRun;
    }
}

// A closed pipe (`haversack check . | head`) is no fault of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => { if (error.code !== 'EPIPE') throw error; });
main().then(code => { process.exitCode = code; }, () => { process.exitCode = exitCodes.couldNotRun; });
