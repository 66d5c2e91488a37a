/** What a page of ours may be made of, judged by the tree that a browser's parser makes of it (parse5, which follows the HTML standard). */
import { parse, parseFragment, type DefaultTreeAdapterTypes } from 'parse5';

type Node = DefaultTreeAdapterTypes.Node;
type Element = DefaultTreeAdapterTypes.Element;

const elements = new Set([
    'html', 'head', 'body', 'meta', 'title', 'style', 'main', 'header', 'footer', 'nav', 'section', 'article', 'aside', 'div', 'span', 'p', 'h1', 'h2', 'h3', 'h4', 'h5', 'h6', 'ul', 'ol', 'li', 'dl', 'dt', 'dd', 'table', 'caption', 'thead', 'tbody', 'tfoot', 'tr', 'th', 'td',
    'a', 'em', 'strong', 'b', 'i', 'small', 'code', 'br', 'hr', 'time', 'abbr', 'details', 'summary', 'figure', 'figcaption', 'blockquote', 'del', 'ins', 's', 'button', 'input', 'label', 'kbd', 'mark', 'wbr', 'sup', 'sub', 'colgroup', 'col', 'pre', 'bdi', 'q',
    'svg', 'g', 'path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon', 'text', 'tspan', 'defs', 'pattern', 'clippath', 'desc'
]);
/** Never there, whatever else is: listed apart so that nobody adds them above without thinking. */
const never = new Set(['script', 'iframe', 'object', 'embed', 'link', 'base', 'form', 'img', 'image', 'use', 'foreignobject', 'animate', 'set', 'applet', 'frame', 'template', 'noscript', 'video', 'audio', 'source', 'portal', 'math']);
const attribute = /^(?:id|class|lang|charset|name|content|http-equiv|nonce|title|role|aria-[a-z]+|data-[a-z-]+|datetime|colspan|rowspan|scope|open|type|start|value|hidden|tabindex|for|headers|href|rel|dir|disabled|checked|span|viewbox|width|height|x|y|x1|x2|y1|y2|r|rx|ry|cx|cy|d|dx|dy|points|transform|fill|fill-rule|stroke|stroke-[a-z]+|text-anchor|dominant-baseline|font-size|font-weight|textlength|lengthadjust|patternunits|patterntransform|preserveaspectratio|focusable|xmlns|clip-path|vector-effect|opacity|summary|media)$/;
const address = /^(?:#[^\s]*|https?:\/\/[^\s]*|mailto:[^\s]*)$/i;

/** Each thing in a page that may not be there. */
export function forbidden(html: string, whole: boolean): string[] {
    const found: string[] = [];
    const walk = (node: Node): void => {
        if ('tagName' in node) look(node);
        if ('childNodes' in node) node.childNodes.forEach(walk);
    };
    const look = ({ tagName, attrs }: Element): void => {
        const name = tagName.toLowerCase();
        if (never.has(name) || !elements.has(name)) found.push(`<${name}>`);
        for (const { name: attr, value } of attrs) {
            if (!attribute.test(attr.toLowerCase())) found.push(`<${name} ${attr}>`);
            if (/^(?:href|src|action|formaction|xlink:href|data|poster|background|srcset)$/i.test(attr) && !address.test(value)) found.push(`<${name} ${attr}="${value}">`);
            if (attr === 'http-equiv' && !/^content-security-policy$/i.test(value)) found.push(`<meta http-equiv="${value}">`);
            if (/^(?:fill|stroke|clip-path)$/.test(attr) && /url\((?!#)/i.test(value)) found.push(`<${name} ${attr}="${value}">`);
        }
    };
    walk(whole ? parse(html) : parseFragment(html));
    return found;
}

/** How many elements and attributes a page has: a scan of nothing proves nothing. */
export function sizeOf(html: string): number {
    return (html.match(/<[a-z]/gi) ?? []).length;
}
