import * as vscode from 'vscode';
import type { GatherThing } from '@haversack/server/protocol/programme';
import { openCommand } from './source-place.js';
import type { Standing } from './ticks.js';
import type { WeekRow } from './week-rows.js';

const icons: Readonly<Record<string, string>> = { kit: 'briefcase', home: 'home', shop: 'tag', library: 'library', printed: 'file' };

/** A row as the editor shows it: the box says whether a thing was gathered, and so do the words for a screen reader. */
export function itemOf(row: WeekRow): vscode.TreeItem {
    const { None, Expanded } = vscode.TreeItemCollapsibleState;
    const item = new vscode.TreeItem('', row.kind === 'group' || row.kind === 'buying' ? Expanded : None);
    item.id = row.id;
    item.contextValue = row.kind;
    switch (row.kind) {
        case 'group':
            return say(item, row.title, [vscode.l10n.t('{0} of {1}', row.gathered, row.children.length)], { icon: icons[row.id] });
        case 'buying':
            return say(item, vscode.l10n.t('To buy or order'), [String(row.children.length)], { icon: 'credit-card' });
        case 'buy': {
            const { title, what, when, cost, late, ahead, at } = row.thing;
            item.command = openCommand(at);
            const facts = [...(late === undefined ? [] : [vscode.l10n.t('late')]), what, ...(ahead ? [vscode.l10n.t('for later, order now')] : []), when];
            return say(item, title, facts, { icon: late === undefined ? 'package' : 'warning', more: [late ?? '', cost ?? ''] });
        }
        case 'thing': return thingItem(item, row.thing, row.standing);
    }
}

function thingItem(item: vscode.TreeItem, thing: GatherThing, { gathered, was }: Standing): vscode.TreeItem {
    const { title, amount, days, lessons, optional, or, atHand, missing, remark, at } = thing;
    item.command = openCommand(at);
    const spoken = gathered ? vscode.l10n.t('gathered') : was === undefined ? vscode.l10n.t('not gathered yet') : vscode.l10n.t('look again: it was ticked for {0}, now it is {1}', was, amount);
    item.checkboxState = {
        state: gathered ? vscode.TreeItemCheckboxState.Checked : vscode.TreeItemCheckboxState.Unchecked,
        tooltip: gathered ? vscode.l10n.t('Gathered: untick') : vscode.l10n.t('Tick when it is gathered'),
        accessibilityInformation: { label: `${title}, ${spoken}` }
    };
    const facts = [
        ...(was === undefined ? [] : [vscode.l10n.t('was {0}, now {1}', was, amount)]), ...(optional ? [vscode.l10n.t('optional')] : []),
        ...(missing === undefined ? [] : [vscode.l10n.t('{0} missing', missing)]), days.join(', ')
    ];
    const more = [
        remark ?? '', atHand === undefined ? '' : vscode.l10n.t('{0} at hand', atHand), or.length > 0 ? vscode.l10n.t('Instead would do: {0}', or.join(', ')) : '',
        vscode.l10n.t('For {0}', lessons.join(', '))
    ];
    // The amount comes first: a narrow side bar cuts off what comes last.
    return say(item, `${amount} · ${title}`, facts, { more, spoken });
}

function say(item: vscode.TreeItem, label: string, facts: readonly string[], { icon, more = [], spoken }: { icon?: string; more?: string[]; spoken?: string }): vscode.TreeItem {
    const told = facts.filter(fact => fact !== '');
    item.label = label;
    item.description = told.join(' · ');
    item.tooltip = [label, item.description, ...more].filter(line => line !== '').join('\n');
    item.accessibilityInformation = { label: [label, ...(spoken === undefined ? [] : [spoken]), ...told].join(', ') };
    if (icon !== undefined) item.iconPath = new vscode.ThemeIcon(icon);
    return item;
}
