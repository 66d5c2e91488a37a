import type { ComponentChildren, JSX } from 'preact';

/** A line that stands alone, laid out as a step is: its label, then what it says. */
export function Labelled({ label, children }: { label: ComponentChildren; children: ComponentChildren }): JSX.Element {
    return (
        <div class="steps">
            <div class="line"><span class="label">{label}</span><div class="told">{children}</div></div>
        </div>
    );
}
