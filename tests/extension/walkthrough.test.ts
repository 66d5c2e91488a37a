import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

interface Step {
    id: string;
    title: string;
    description: string;
    media: { svg: string; altText: string };
    completionEvents: string[];
}
const read = (path: string): string => readFileSync(join('extension', path), 'utf8');
const { contributes } = JSON.parse(read('package.json')) as {
    contributes: { walkthroughs: { id: string; steps: Step[] }[]; commands: { command: string }[]; views?: Record<string, { id: string }[]> };
};
const texts = JSON.parse(read('package.nls.json')) as Record<string, string>;
const textOf = (placeholder: string): string => texts[placeholder.replaceAll('%', '')]!;
const commands = contributes.commands.map(({ command }) => command);
const views = Object.values(contributes.views ?? {}).flat().map(({ id }) => id);
const sources = readdirSync('extension', { recursive: true, encoding: 'utf8' }).filter(name => name.endsWith('.ts')).map(name => read(name)).join('\n');
const [walkthrough, ...others] = contributes.walkthroughs;
const steps = walkthrough!.steps;

it('is one, of five or six steps', () => {
    expect(others).toEqual([]);
    expect([5, 6]).toContain(steps.length);
});

it('is opened by the name that it has', () => {
    expect(sources).toContain(`#${walkthrough!.id}`);
});

describe.each(steps.map(step => [step.id, step] as const))('the step %s', (_id, { title, description, media, completionEvents }) => {
    it('completes itself by what the extension has', () => {
        expect(completionEvents.length).toBeGreaterThan(0);
        for (const event of completionEvents) {
            const [kind, name = ''] = event.split(':') as [string, string?];
            if (kind === 'onCommand') expect(commands).toContain(name);
            else if (kind === 'onView') expect(views).toContain(name);
            else {
                expect(kind).toBe('onContext');
                const made = name.startsWith('haversack.firstSteps.') ? `done('${name.slice('haversack.firstSteps.'.length)}')` : `'${name}'`;
                expect(sources).toContain(made);
            }
        }
    });

    it('leads only to commands that there are', () => {
        const led = [...textOf(description).matchAll(/\(command:(haversack\.[\w.]+)/g)].map(([, name]) => name!);
        for (const name of led) expect(name.endsWith('.focus') && views.includes(name.replace(/\.focus$/, '')) || commands.includes(name)).toBe(true);
        expect(textOf(description)).toContain('](command:');
        expect(textOf(title)).toMatch(/^[A-Z]/);
        // Seen in the editor: it shows marks for code in a step as they are written.
        expect(textOf(description)).not.toContain('`');
    });

    it('has a picture of theme colours alone, told in words, with no small letters', () => {
        expect(textOf(media.altText).length).toBeGreaterThan(20);
        expect(existsSync(join('extension', media.svg))).toBe(true);
        const svg = read(media.svg);
        const colours = [...svg.matchAll(/\b(?:fill|stroke)="([^"]*)"/g)].map(([, colour]) => colour!);
        expect(colours.length).toBeGreaterThan(5);
        expect(colours.filter(colour => colour !== 'none' && !colour.startsWith('var(--vscode-'))).toEqual([]);
        // Drawn 480 wide and shown at 350 or more: 18 is 13 pixels at least.
        for (const [, size] of svg.matchAll(/font-size="([\d.]+)"/g)) expect(Number(size)).toBeGreaterThanOrEqual(18);
        expect(svg).not.toMatch(/<style|style=|<script|<image|href/);
    });
});
