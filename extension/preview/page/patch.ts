/** Makes the page say what the new text says, leaving every element in place that it can: so focus, folds and scrolling stay. */
import type { BriefSection } from '@haversack/server/protocol';

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

/** What is alike at both ends is paired first, so that a line put in between moves none of the others. */
function patchChildren(parent: Element, freshParent: Element): void {
    const old = [...parent.childNodes];
    const fresh = [...freshParent.childNodes];
    let start = 0;
    while (start < old.length && start < fresh.length && alike(old[start]!, fresh[start]!)) {
        patchNode(old[start]!, fresh[start]!);
        start++;
    }
    let oldEnd = old.length;
    let freshEnd = fresh.length;
    while (oldEnd > start && freshEnd > start && alike(old[oldEnd - 1]!, fresh[freshEnd - 1]!)) patchNode(old[--oldEnd]!, fresh[--freshEnd]!);
    const after = old[oldEnd] ?? null;
    for (let i = start; i < freshEnd; i++) {
        if (i < oldEnd) patchNode(old[i]!, fresh[i]!);
        else parent.insertBefore(fresh[i]!, after);
    }
    for (let i = Math.max(start, freshEnd); i < oldEnd; i++) parent.removeChild(old[i]!);
}

function alike(old: Node, fresh: Node): boolean {
    return old.nodeName === fresh.nodeName && old.textContent === fresh.textContent
        && (!(old instanceof Element) || old.id === (fresh as Element).id);
}
