import type { CommanderError } from 'commander';

/** What is wrong with a command and what to write instead, in one sentence or two; `command` is the one that was asked for. */
export function wrongCommand({ code, message }: CommanderError, command = ''): string {
    const [, word = ''] = /'([^']*)'/.exec(message) ?? [];
    const meant = /Did you mean ([\w-]+)\?/.exec(message)?.[1];
    const orElse = meant === undefined ? '' : ` Did you mean ${meant}?`;
    const importing = /'(?:sheet|--into <path>)'/.test(message) ? 'Which spreadsheet, and into which programme? Write both, as in: haversack import inventory.csv --into examples/year' : undefined;
    const practising = message.includes("argument 'lesson'") ? 'Which lesson? Give its name or its file, as in: haversack practice tens-3 --in examples/year' : undefined;
    const comparing = /argument '(?:old|new)'|for 'compare'/.test(message) ? 'Which two editions? Name two folders, or two tags, branches or commits, as in: haversack compare spring HEAD --in examples/year' : undefined;
    const sentences: Record<string, string> = {
        'commander.missingArgument': `Which programme? Give the path of its folder, as in: haversack ${command} examples/year`,
        'commander.excessArguments': 'One path is enough: give the folder of one programme.',
        'commander.missingMandatoryOptionValue': `Which week? Say it with --week, as in: haversack ${command} examples/year --week 3`,
        'commander.optionMissingArgument': `Something is missing after ${word.split(' ')[0]}: ${word}.`,
        'commander.unknownOption': `There is no option '${word}'.${orElse}`,
        'commander.unknownCommand': `There is no command '${word}'.${orElse}`
    };
    return `${importing ?? practising ?? comparing ?? sentences[code] ?? message.replace(/^error: /, '')} ('haversack --help' lists what there is.)`;
}
