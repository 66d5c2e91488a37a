/** Reads a file that stands beside a programme as the tool does, by its ending. */
import { daysOffIn, readCalendar } from '@haversack/language/attachments/calendar-file';
import { readFramework } from '@haversack/language/attachments/framework-file';
import { gatherProgramme } from '@haversack/language/sheets/programme';
import { importTable, readSpreadsheet } from '../../server/importing/import-inventory.js';
import { reportText } from '../../server/importing/import-report.js';

export async function readAttachment(file: string, text: string): Promise<unknown> {
    if (file.endsWith('.ics')) {
        const read = readCalendar(text);
        return read.state === 'calendar' ? daysOffIn(read.calendar, '2026-08-01', '2027-07-31') : read;
    }
    if (file.endsWith('.json')) return readFramework(text);
    const table = await readSpreadsheet(new TextEncoder().encode(text));
    if ('refusal' in table) return table;
    const done = importTable(gatherProgramme([]), () => '', table, { file: 'file:///inventory.kit', currency: 'USD' });
    return 'refusal' in done ? done : [done.files, reportText(done.report)];
}
