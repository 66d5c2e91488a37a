/** Makes the page say what the new text says, leaving every element in place that it can: so focus, folds and scrolling stay. */
import type { BriefSection } from '@haversack/server/protocol/pages';

/** Attributes that the reader or the cursor set, not the text. */
const keptAttributes = new Set(['open', 'aria-current']);

/**
 * @param sections all sections in order; without html they are on the page already
 * @returns whether anything changed
 */
export function showSections(main: Element, sections: readonly BriefSection[]): boolean {
    const present = new Map([...main.children].map(child => [child.id, child]));
    let changed = false;
    let next: Element | null = main.firstElementChild;
    for (const { id, html } of sections) {
        let element = present.get(id);
        present.delete(id);
        if (html !== undefined) {
            const fresh = elementOf(html);
            if (element) patchNode(element, fresh);
            else element = fresh;
            changed = true;
        }
        if (!element) continue;
        if (element === next) next = element.nextElementSibling;
        else main.insertBefore(element, next);
    }
    for (const gone of present.values()) {
        gone.remove();
        changed = true;
    }
    return changed;
}

function elementOf(html: string): Element {
    const template = document.createElement('template');
    template.innerHTML = html;
    return template.content.firstElementChild ?? document.createElement('section');
}

function patchNode(old: Node, fresh: Node): void {
    if (old.nodeType !== fresh.nodeType || old.nodeName !== fresh.nodeName) {
        old.parentNode?.replaceChild(fresh, old);
    } else if (old instanceof Element && fresh instanceof Element) {
        patchAttributes(old, fresh);
        patchChildren(old, fresh);
    } else if (old.nodeValue !== fresh.nodeValue) {
        old.nodeValue = fresh.nodeValue;
    }
}

function patchAttributes(old: Element, fresh: Element): void {
    for (const { name } of [...old.attributes]) {
        if (!fresh.hasAttribute(name) && !keptAttributes.has(name)) old.removeAttribute(name);
    }
    for (const { name, value } of [...fresh.attributes]) {
        if (!keptAttributes.has(name) && old.getAttribute(name) !== value) old.setAttribute(name, value);
    }
}

/** Children that say the same are paired; those in the gaps between are paired in order, so that a changed figure stays in its line. */
function patchChildren(parent: Element, freshParent: Element): void {
    const old = [...parent.childNodes];
    const fresh = [...freshParent.childNodes];
    let oldFrom = 0;
    let freshFrom = 0;
    for (const [oldTo, freshTo] of [...sameOnes(old.map(sayings), fresh.map(sayings)), [old.length, fresh.length] as const]) {
        const after = old[oldTo] ?? null;
        for (; freshFrom < freshTo; oldFrom++, freshFrom++) {
            if (oldFrom < oldTo) patchNode(old[oldFrom]!, fresh[freshFrom]!);
            else parent.insertBefore(fresh[freshFrom]!, after);
        }
        for (; oldFrom < oldTo; oldFrom++) parent.removeChild(old[oldFrom]!);
        if (after && freshTo < fresh.length) patchNode(after, fresh[freshTo]!);
        oldFrom = oldTo + 1;
        freshFrom = freshTo + 1;
    }
}

/** Kind, id and text of a node: its lines in the source may differ. */
function sayings(node: Node): string {
    return `${node.nodeName} ${node instanceof Element ? node.id : ''} ${node.textContent}`;
}

/** Pairs of indices of a longest common subsequence, in order; equal beginnings and ends are taken without looking further. */
function sameOnes(a: readonly string[], b: readonly string[]): [number, number][] {
    let start = 0;
    while (start < a.length && start < b.length && a[start] === b[start]) start++;
    let end = 0;
    while (end < a.length - start && end < b.length - start && a[a.length - 1 - end] === b[b.length - 1 - end]) end++;
    const rows = a.length - start - end;
    const columns = b.length - start - end;
    const longest = Array.from({ length: rows + 1 }, () => new Uint16Array(columns + 1));
    for (let i = rows - 1; i >= 0; i--) {
        for (let j = columns - 1; j >= 0; j--) {
            longest[i]![j] = a[start + i] === b[start + j] ? longest[i + 1]![j + 1]! + 1 : Math.max(longest[i + 1]![j]!, longest[i]![j + 1]!);
        }
    }
    const pairs: [number, number][] = Array.from({ length: start }, (_, index) => [index, index]);
    for (let i = 0, j = 0; i < rows && j < columns;) {
        if (a[start + i] === b[start + j]) pairs.push([start + i++, start + j++]);
        else if (longest[i + 1]![j]! >= longest[i]![j + 1]!) i++;
        else j++;
    }
    for (let index = end; index > 0; index--) pairs.push([a.length - index, b.length - index]);
    return pairs;
}
