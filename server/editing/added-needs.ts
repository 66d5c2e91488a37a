import type { TextEdit } from 'vscode-languageserver-protocol';
import { textEditsFor } from '@haversack/language/checks/apply-edits';
import { needsToAddAt } from '@haversack/language/checks/need-lines';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { FileSheet } from '@haversack/language/sheets/sheet';

/** What a thing that is named in a text brings to the materials. */
export interface AddedNeed {
    /** "gram-cube 20 per pair in kit". */
    line: string;
    edit: TextEdit;
}

/** Stands for the line while its place is worked out, once for all things that could be named. */
const stand = '\uE000';

/** For each name the line that its mention at a place still lacks; undefined where it lacks none. */
export function addedNeeds(sheet: FileSheet, text: string, line: number, view: ProgrammeView): (name: string) => AddedNeed | undefined {
    const needOf = needsToAddAt(sheet, line, view);
    let place: TextEdit | undefined;
    return name => {
        const need = needOf(name);
        if (!need || !('lines' in need.edit)) return undefined;
        const { edit } = need;
        const { lines: written } = edit;
        if (!place) {
            const lines = written.with(-1, written.at(-1)!.replace(/\S.*$/, stand));
            const [found] = textEditsFor(text, [{ ...edit, lines }]);
            // In the very last line it would stand where the name itself is written: the block then comes before everything else that is said.
            place = found!.range.start.line === line ? textEditsFor(text, [{ ...edit, lines, afterLine: edit.like ?? edit.afterLine }])[0]! : found!;
        }
        return { line: need.line, edit: { range: place.range, newText: place.newText.replace(stand, () => written.at(-1)!.trimStart()) } };
    };
}
