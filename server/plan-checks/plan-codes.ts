import { EmptyFileSystem, URI } from 'langium';
import type { Explained } from '@haversack/language/checks/check';
import { createHaversackServices } from '@haversack/language/module';
import type { FurtherCodes } from '@haversack/language/write-reference';
import { allPlanChecks } from './all-plan-checks.js';
import { planProblems } from './plan-problems.js';
import { termOf } from './plan-term.js';

/** The codes of the plan, for the reference. */
export const planCodes: FurtherCodes = {
    codes: allPlanChecks,
    async problemsIn(text: string, { on }: Explained) {
        const { shared, haversack } = createHaversackServices(EmptyFileSystem);
        const document = shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse('file:///example.course'));
        shared.workspace.LangiumDocuments.addDocument(document);
        await shared.workspace.DocumentBuilder.build([document]);
        const { view } = haversack.sheets;
        return planProblems(view, termOf(view, on ?? '')).get(document.uri.toString()) ?? [];
    }
};
