import * as vscode from 'vscode';
import type { PrintParams } from '@haversack/server/protocol/pages';
import { paperOf } from './paper-of.js';

/** The paper that the person has set. */
export function chosenPaper(): PrintParams['paper'] {
    return paperOf(vscode.workspace.getConfiguration('haversack').get('paper'), Intl.DateTimeFormat().resolvedOptions().locale);
}
