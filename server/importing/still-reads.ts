import type { LineLexer, ReadingReport } from '@haversack/language/lexer/line-lexer';
import type { ChangedFile } from './import-inventory.js';
import type { Refusal } from './table.js';

/** Makes sure, before anything is shown or written, that the language reads every file at least as well as it did. */
export function stillReads(files: readonly ChangedFile[], lexer: LineLexer): Refusal | undefined {
    const errors = (text: string): number => (lexer.tokenize(text).report as ReadingReport).problems.filter(({ severity }) => severity === 'error').length;
    const worse = files.find(({ before, after }) => errors(after) > errors(before));
    return worse && { refusal: 'The import would write a line that cannot be read, so nothing is written. Please report it with the spreadsheet.' };
}
