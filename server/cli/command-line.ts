import { Command, CommanderError } from 'commander';
import { briefCommand, type BriefOptions } from './brief-command.js';
import { changesCommand } from './changes-command.js';
import { checkCommand, type CheckOptions } from './check-command.js';
import { compareCommand, type CompareOptions } from './compare-command.js';
import { CouldNotRun, exitCodes } from './could-not-run.js';
import { coverageCommand } from './coverage-command.js';
import { formatCommand, type FormatCommandOptions } from './format-command.js';
import { notesCommand, type NotesOptions } from './notes-command.js';
import type { PlanOptions } from './planned.js';
import { practiceCommand, type PracticeOptions } from './practice-command.js';
import { scheduleCommand } from './schedule-command.js';
import { suppliesCommand } from './supplies-command.js';
import { importCommand, type ImportOptions } from './import-command.js';
import { version } from '../version.js';
import { wrongCommand } from './wrong-command.js';

type Write = (text: string) => void;

/** Runs one command line, without the program's name. `write` takes what was asked for, `tell` what went wrong. @returns the exit code */
export async function runCommandLine(args: readonly string[], write: Write, tell: Write): Promise<number> {
    let code: number = exitCodes.fine;
    const program = new Command('haversack')
        .description('Checks a programme of hands-on lessons and writes the week’s teacher brief.')
        .version(version)
        .configureOutput({ outputError: () => undefined, writeOut: write, writeErr: tell })
        .exitOverride();
    program.command('check').argument('<path>', 'folder of a programme, or one of its files')
        .description('List what is wrong. Exit code 0: fine, 1: problems found, 2: could not run.')
        .option('--format <format>', 'text, json or sarif; without it, by the ending of --out, else text')
        .option('--today <date>', 'look at the plan as of this day (year-month-day) instead of today')
        .option('--out <file>', 'write to a file instead of the terminal')
        .action(async (path: string, options: CheckOptions) => { code = await checkCommand(path, options, write, tell); });
    program.command('format').argument('<path>', 'folder of a programme, or one of its files')
        .description('List the files that are not laid out as usual (indentation, columns of amounts, blank lines); with --write, lay them out. No word changes. Exit code 0: all are laid out, 1: some are not, 2: could not run.')
        .option('--indent <step>', 'how far a block goes in: a number of spaces, or tab', '2')
        .option('--write', 'lay the files out instead of listing them')
        .action((path: string, options: FormatCommandOptions) => { code = formatCommand(path, options, write); });
    program.command('brief').argument('<path>', 'folder of a programme, or one of its files')
        .description('Write the brief of a week.')
        .requiredOption('--week <number>', 'which week, counted from 1')
        .option('--class <name>', 'for which class; without it, the first one')
        .option('--format <format>', 'html, md or json; without it, by the ending of --out, else md')
        .option('--paper <size>', 'paper of the page: a4 or letter; without it, what the printer has')
        .option('--today <date>', 'the day from which orders count as late; without it, the machine’s own')
        .option('--out <file>', 'write to a file instead of the terminal')
        .action(async (path: string, options: BriefOptions) => { code = await briefCommand(path, options, write, tell); });
    program.command('notes').argument('<path>', 'folder of a programme, or one of its files')
        .description('Write an outline for walking families through a week aloud, with the minutes it takes.')
        .requiredOption('--week <number>', 'which week, counted from 1')
        .option('--class <name>', 'for which class; without it, the first one')
        .option('--rate <words>', 'words spoken in a minute', '170')
        .option('--format <format>', 'md, text or json; without it, by the ending of --out, else md')
        .option('--today <date>', 'the day from which orders count as late; without it, the machine’s own')
        .option('--out <file>', 'write to a file instead of the terminal')
        .action(async (path: string, options: NotesOptions) => { code = await notesCommand(path, options, write, tell); });
    program.command('compare').argument('<old>', 'the old edition: a folder, or a tag, branch or commit').argument('<new>', 'the new edition: likewise')
        .description('List what changed for a teacher from one edition of a programme to another, and what it means for adaptations. Exit code 0: compared, 1: compared, but some lines could not be read, 2: could not run.')
        .option('--in <folder>', 'folder of the programme of which tags, branches and commits are meant', '.')
        .option('--course <name>', 'only this course')
        .option('--class <name>', 'for which class the term is planned; without it, the first that is taught the course')
        .option('--format <format>', 'text, md, html or json; without it, by the ending of --out, else text')
        .option('--out <file>', 'write to a file instead of the terminal')
        .action(async (old: string, now: string, options: CompareOptions) => { code = await compareCommand(old, now, options, write, tell); });
    program.command('import').argument('<sheet>', 'a spreadsheet: .csv or .xlsx')
        .description('Show what an inventory from a spreadsheet would change in a programme; with --write, change it.')
        .requiredOption('--into <path>', 'folder of the programme')
        .option('--file <name>', 'file in that folder for new materials; without it, the .kit file with most materials')
        .option('--class <name>', 'class that has on hand what the sheet says is there')
        .option('--kit <name>', 'kit that holds it instead')
        .option('--currency <code>', 'currency of prices that do not say theirs, such as USD')
        .option('--sheet <name>', 'sheet of a workbook; without it, the one that looks like an inventory')
        .option('--column <meaning=heading>', 'what a column means, as in title="Item name"; may be given several times', (one: string, others: string[] = []) => [...others, one])
        .option('--write', 'write the changes instead of showing them')
        .option('--format <format>', 'text or json', 'text')
        .action(async (sheet: string, options: ImportOptions) => { code = await importCommand(sheet, options, write); });
    const planCommand = (name: string, description: string): Command => program.command(name).argument('<path>', 'folder of a programme, or one of its files')
        .description(description)
        .option('--class <name>', 'for which class; without it, the first one')
        .option('--out <file>', 'write to a file instead of the terminal');
    planCommand('supplies', 'List what to buy and order and by when, what is short, and what it costs.')
        .option('--week <number>', 'one week only, counted from 1')
        .option('--records', 'also each thing week by week: needed, arriving, missing, bought, left')
        .option('--today <date>', 'the day from which orders count as late; without it, the machine’s own')
        .option('--format <format>', 'text, md, json or csv; without it, by the ending of --out, else text')
        .action(async (path: string, options: PlanOptions) => { code = await suppliesCommand(path, options, write, tell); });
    planCommand('schedule', 'List which lesson is taught on which day, what does not fit and what would help.')
        .option('--today <date>', 'the day to plan from; without it, the machine’s own')
        .option('--format <format>', 'text, md, json, ics or html; without it, by the ending of --out, else text')
        .option('--paper <size>', 'paper of the page: a4 or letter; without it, what the printer has')
        .action(async (path: string, options: PlanOptions) => { code = await scheduleCommand(path, options, write, tell); });
    planCommand('coverage', 'List which lessons introduce, practise and check each objective, the gaps, and what of each framework is met.')
        .option('--format <format>', 'text, md or json; without it, by the ending of --out, else text')
        .action(async (path: string, options: PlanOptions) => { code = await coverageCommand(path, options, write, tell); });
    program.command('practice').argument('<lesson>', 'name of a lesson, or its file')
        .description('Write the practice items of a lesson as a sheet to print, or their answer key.')
        .option('--in <path>', 'folder of the programme in which the lesson is', '.')
        .option('--class <name>', 'as this class is taught it, with its adaptations')
        .option('--practice <name>', 'one practice of the lesson only')
        .option('--more <number>', 'so many further items instead, beyond those of the brief')
        .option('--key', 'the answer key instead of the sheet')
        .option('--format <format>', 'text, md, html or json; without it, by the ending of --out, else text')
        .option('--paper <size>', 'paper of the page: a4 or letter; without it, what the printer has')
        .option('--out <file>', 'write to a file instead of the terminal')
        .action(async (lesson: string, options: PracticeOptions) => { code = await practiceCommand(lesson, options, write, tell); });
    planCommand('changes', 'List what adaptations change for a class: each change with what it breaks, lessons, things, minutes and money before and after.')
        .option('--today <date>', 'the day to plan from; without it, the machine’s own')
        .option('--format <format>', 'text, md, json or html; without it, by the ending of --out, else text')
        .option('--paper <size>', 'paper of the page: a4 or letter; without it, what the printer has')
        .action(async (path: string, options: PlanOptions) => { code = await changesCommand(path, options, write, tell); });
    try {
        await program.parseAsync(args, { from: 'user' });
        return code;
    } catch (error) {
        if (error instanceof CommanderError) {
            if (error.exitCode === 0) return exitCodes.fine;
            // Without any command the help has been shown already.
            if (error.code !== 'commander.help') tell(`haversack: ${wrongCommand(error, args[0])}\n`);
            return exitCodes.couldNotRun;
        }
        tell(`haversack: ${error instanceof CouldNotRun ? error.message : `something unforeseen went wrong (${(error as Error).message}). Please report it with the text that caused it.`}\n`);
        return exitCodes.couldNotRun;
    }
}
