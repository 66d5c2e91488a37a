import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { importRequest, type ImportAnswer, type ImportColumn, type ImportParams, type ImportRefusal } from '@haversack/server/protocol/imports';
import { chooseSpreadsheet } from './choose-spreadsheet.js';
import type { ImportPreviews } from './import-previews.js';

type Choices = Omit<ImportParams, 'bytes'>;
type Step = 'write' | 'column' | 'class' | 'file' | 'currency';

/** Takes the inventory of a spreadsheet into the programme: shows first what would change, writes it when that is confirmed, as one step to undo. */
export async function importInventory(client: BaseLanguageClient, previews: ImportPreviews): Promise<void> {
    const bytes = await chooseSpreadsheet();
    if (bytes === undefined) return;
    const editor = vscode.window.activeTextEditor;
    const uri = editor && client.code2ProtocolConverter.asUri(editor.document.uri);
    const ask = (choices: Choices): Promise<ImportAnswer | ImportRefusal> => client.sendRequest<ImportAnswer | ImportRefusal>(importRequest, { bytes, uri, ...choices });
    try {
        await chooseAndWrite(ask, previews);
    } finally {
        await previews.close();
    }
}

async function chooseAndWrite(ask: (choices: Choices) => Promise<ImportAnswer | ImportRefusal>, previews: ImportPreviews): Promise<void> {
    let choices: Choices = {};
    const asked = new Set<Step>();
    for (;;) {
        const answer = await ask(choices);
        if ('refusal' in answer) {
            const more = await afterRefusal(answer, choices);
            if (!more) return;
            choices = more;
            continue;
        }
        const first = firstQuestion(answer, asked);
        if (first) {
            asked.add(first);
            choices = await changeChoice(first, answer, choices) ?? choices;
            continue;
        }
        await previews.show(`${answer.summary}\n\n${answer.text}`, answer.files);
        const step = await chooseStep(answer);
        if (!step) return;
        if (step !== 'write') {
            choices = await changeChoice(step, answer, choices) ?? choices;
            continue;
        }
        // Somebody may have typed since the preview was made.
        const now = await ask(choices);
        if ('refusal' in now || !sameFiles(now, answer)) {
            void vscode.window.showInformationMessage(vscode.l10n.t('The files have changed meanwhile. Look at the preview again.'));
            continue;
        }
        return write(now);
    }
}

/** A sheet whose titles were not found can be helped; anything else is told. */
async function afterRefusal({ refusal, columns }: ImportRefusal, choices: Choices): Promise<Choices | undefined> {
    if (!columns || columns.length === 0) {
        void vscode.window.showErrorMessage(refusal);
        return undefined;
    }
    const chosen = await vscode.window.showQuickPick(columns.map(({ letter, heading }) => ({ label: heading || letter, description: heading ? letter : '', letter })), {
        title: vscode.l10n.t('Which column holds the titles of the things?'), placeHolder: refusal, ignoreFocusOut: true
    });
    return chosen && { ...choices, columns: withColumn(choices.columns, { column: chosen.letter, means: 'title' }) };
}

/** What has to be settled before a preview is worth while, each once: whose cupboard, which currency, which file. */
function firstQuestion({ report, choices, files }: ImportAnswer, asked: ReadonlySet<Step>): Step | undefined {
    if (report.asks.includes('class') && choices.classes.length + choices.kits.length > 0 && !asked.has('class')) return 'class';
    if (report.asks.includes('currency') && !asked.has('currency')) return 'currency';
    return choices.files.length > 1 && files.some(({ uri }) => uri === choices.file) && report.rows.some(({ does }) => does === 'new') && !asked.has('file') ? 'file' : undefined;
}

async function chooseStep({ summary, files, choices, report }: ImportAnswer): Promise<Step | undefined> {
    const items: (vscode.QuickPickItem & { step?: Step })[] = [
        files.length > 0 ? { label: vscode.l10n.t('$(check) Write these changes'), step: 'write' } : { label: vscode.l10n.t('$(check) The programme says all this already') },
        { label: vscode.l10n.t('$(symbol-field) Change what a column means'), step: 'column' },
        ...(choices.classes.length + choices.kits.length > 0 && report.columns.some(({ means }) => means === 'on-hand') ? [{ label: vscode.l10n.t('$(archive) Choose who has on hand what is there'), step: 'class' as const }] : []),
        { label: vscode.l10n.t('$(file) Choose the file for new materials'), description: vscode.workspace.asRelativePath(vscode.Uri.parse(choices.file)), step: 'file' },
        { label: vscode.l10n.t('$(credit-card) Choose the currency of prices that do not say theirs'), step: 'currency' },
        { label: vscode.l10n.t('$(close) Leave everything as it is') }
    ];
    const chosen = await vscode.window.showQuickPick(items, { title: vscode.l10n.t('Import an inventory'), placeHolder: vscode.l10n.t('Nothing is written yet. {0}', summary), ignoreFocusOut: true });
    return chosen?.step;
}

async function changeChoice(step: Step, answer: ImportAnswer, choices: Choices): Promise<Choices | undefined> {
    if (step === 'column') return changeColumn(answer, choices);
    if (step === 'class') return changeHolder(answer, choices);
    if (step === 'file') return changeFile(answer, choices);
    const currency = await vscode.window.showInputBox({
        title: vscode.l10n.t('Currency of prices that do not say theirs'), prompt: vscode.l10n.t('A code of three letters, such as USD or EUR'), value: choices.currency, ignoreFocusOut: true,
        validateInput: text => (/^[A-Za-z]{3}$/.test(text.trim()) || text.trim() === '' ? undefined : vscode.l10n.t('A code of three letters, such as USD or EUR'))
    });
    return currency === undefined ? undefined : { ...choices, currency: currency.trim().toUpperCase() || undefined };
}

async function changeColumn({ report, choices: { meanings } }: ImportAnswer, choices: Choices): Promise<Choices | undefined> {
    const words = new Map(meanings.map(({ means, words: inWords }) => [means, inWords]));
    const column = await vscode.window.showQuickPick(
        report.columns.map(({ letter, heading, means, why }) => ({ label: heading || letter, description: `${words.get(means) ?? means} (${why})`, letter })),
        { title: vscode.l10n.t('Which column?'), ignoreFocusOut: true }
    );
    if (!column) return undefined;
    const meaning = await vscode.window.showQuickPick(meanings.map(({ means, words: label }) => ({ label, means })), { title: vscode.l10n.t('What does "{0}" mean?', column.label), ignoreFocusOut: true });
    return meaning && { ...choices, columns: withColumn(choices.columns, { column: column.letter, means: meaning.means }) };
}

/** A column has one meaning, and but for notes a meaning has one column. */
function withColumn(columns: readonly ImportColumn[] = [], added: ImportColumn): ImportColumn[] {
    return [...columns.filter(({ column, means }) => column !== added.column && (means !== added.means || means === 'note' || means === 'unused')), added];
}

async function changeHolder({ choices: { classes, kits } }: ImportAnswer, choices: Choices): Promise<Choices | undefined> {
    const chosen = await vscode.window.showQuickPick([
        ...classes.map(({ name, title }) => ({ label: title, description: vscode.l10n.t('on hand of class {0}', name), to: { class: name, kit: undefined } })),
        ...kits.map(({ name, title }) => ({ label: title, description: vscode.l10n.t('in kit {0}', name), to: { class: undefined, kit: name } })),
        { label: vscode.l10n.t('Leave out what is on hand'), description: '', to: { class: undefined, kit: undefined } }
    ], { title: vscode.l10n.t('Who has on hand what the spreadsheet says is there?'), ignoreFocusOut: true });
    return chosen && { ...choices, ...chosen.to };
}

async function changeFile({ choices: { files, file } }: ImportAnswer, choices: Choices): Promise<Choices | undefined> {
    const chosen = await vscode.window.showQuickPick(
        files.map(uri => ({ label: vscode.workspace.asRelativePath(vscode.Uri.parse(uri)), description: uri === file ? vscode.l10n.t('as now') : '', uri })),
        { title: vscode.l10n.t('File for new materials'), ignoreFocusOut: true }
    );
    return chosen && { ...choices, file: chosen.uri };
}

function sameFiles(one: ImportAnswer, other: ImportAnswer): boolean {
    return one.files.length === other.files.length && one.files.every(({ uri, after }, index) => uri === other.files[index]!.uri && after === other.files[index]!.after);
}

async function write({ files, summary }: ImportAnswer): Promise<void> {
    const edit = new vscode.WorkspaceEdit();
    for (const { uri, isNew, after, edits } of files) {
        const file = vscode.Uri.parse(uri);
        if (isNew) edit.createFile(file, { overwrite: false, contents: new TextEncoder().encode(after) });
        else edit.set(file, edits.map(({ range: { start, end }, newText }) => new vscode.TextEdit(new vscode.Range(start.line, start.character, end.line, end.character), newText)));
    }
    if (await vscode.workspace.applyEdit(edit)) vscode.window.setStatusBarMessage(vscode.l10n.t('The inventory is imported: {0}', summary), 8000);
    else void vscode.window.showErrorMessage(vscode.l10n.t('The inventory could not be written. Is one of the files read-only?'));
}
