import type { PreviewView } from './messages.js';

/** What saves each page as a file. */
export const saveCommands: Record<PreviewView, string> = { week: 'haversack.brief.save', term: 'haversack.term.save', changes: 'haversack.changes.save' };
