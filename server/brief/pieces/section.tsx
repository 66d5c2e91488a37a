import type { ComponentChildren, JSX } from 'preact';

/** A part of the brief under its own second-level heading. */
export function Section({ id, title, children }: { id: string; title: string; children: ComponentChildren }): JSX.Element {
    return (
        <section id={id} class="part-of-week" aria-labelledby={`${id}-title`}>
            <h2 id={`${id}-title`}>{title}</h2>
            {children}
        </section>
    );
}
