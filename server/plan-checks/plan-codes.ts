import { EmptyFileSystem, URI } from 'langium';
import type { Explained } from '@haversack/language/checks/check';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import { createHaversackServices } from '@haversack/language/module';
import type { FurtherCodes } from '@haversack/language/write-reference';
import { allPlanChecks } from './all-plan-checks.js';
import { planProblems } from './plan-problems.js';
import { termOf } from './plan-term.js';

/** The codes of the plan, for the reference. */
export const planCodes: FurtherCodes = {
    codes: allPlanChecks,
    async problemsIn(text: string, { on, former }: Explained) {
        const view = await viewOf(text);
        const before = former === undefined ? undefined : { programme: (await viewOf(former)).programme, memo: new WeakMap() };
        return planProblems(view, termOf(view, on ?? '', before && { of: () => before })).get(example.toString()) ?? [];
    }
};

const example = URI.parse('file:///example.course');

async function viewOf(text: string): Promise<ProgrammeView> {
    const { shared, haversack } = createHaversackServices(EmptyFileSystem);
    const document = shared.workspace.LangiumDocumentFactory.fromString(text, example);
    shared.workspace.LangiumDocuments.addDocument(document);
    await shared.workspace.DocumentBuilder.build([document]);
    return haversack.sheets.viewOf(example);
}
