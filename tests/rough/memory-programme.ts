/** A programme in memory: one file at a time gets another text, is linked, checked, planned and written out. */
import { EmptyFileSystem, URI, type LangiumDocument } from 'langium';
import type { Problem } from '@haversack/language/checks/check';
import type { HaversackDocumentValidator } from '@haversack/language/checks/document-validator';
import type { ReadingReport } from '@haversack/language/lexer/line-lexer';
import { createHaversackServices } from '@haversack/language/module';
import { gatherProgramme, type Programme } from '@haversack/language/sheets/programme';
import type { CorpusFile } from './corpus.js';

export class MemoryProgramme {
    private readonly services;
    private readonly texts: Map<string, string>;
    private documents: LangiumDocument[] = [];

    private constructor(readonly files: readonly CorpusFile[]) {
        this.texts = new Map(files.map(({ file, text }) => [file, text]));
        this.services = createHaversackServices({
            fileSystemProvider: () => Object.assign(EmptyFileSystem.fileSystemProvider(), { readFile: (uri: URI) => Promise.resolve(this.texts.get(uri.path.slice(1))!) })
        });
    }

    static async of(files: readonly CorpusFile[]): Promise<MemoryProgramme> {
        const programme = new MemoryProgramme(files);
        const { workspace } = programme.services.shared;
        programme.documents = files.map(({ file, text }) => workspace.LangiumDocumentFactory.fromString(text, URI.file(`/${file}`)));
        for (const document of programme.documents) workspace.LangiumDocuments.addDocument(document);
        workspace.DocumentBuilder.updateBuildOptions = { validation: false };
        await workspace.DocumentBuilder.build(programme.documents, { validation: false });
        return programme;
    }

    /** Gives a file another text, until it is given another. */
    async set(file: string, text: string): Promise<void> {
        this.texts.set(file, text);
        await this.services.shared.workspace.DocumentBuilder.update([URI.file(`/${file}`)], []);
    }

    /** The text as it was in the corpus. */
    restore(file: string): Promise<void> {
        return this.set(file, this.files.find(one => one.file === file)!.text);
    }

    document(file: string): LangiumDocument {
        return this.documents.find(({ uri }) => uri.path === `/${file}`)!;
    }

    problemsIn(document: LangiumDocument): readonly Problem[] {
        return (this.services.haversack.validation.DocumentValidator as HaversackDocumentValidator).problemsIn(document);
    }

    get all(): readonly LangiumDocument[] {
        return this.documents;
    }

    programme(): Programme {
        return gatherProgramme(this.documents.map(document => this.services.haversack.sheets.sheetOf(document)));
    }
}

/** What the parser itself complained of in a document: nothing, whatever the text. */
export const parserErrorsOf = (document: LangiumDocument): string[] => document.parseResult.parserErrors.map(({ message }) => message);

export const reportOf = (document: LangiumDocument): ReadingReport => document.parseResult.lexerReport as ReadingReport;
