import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const page = readFileSync('DEVELOPERS.md', 'utf8');

describe('DEVELOPERS.md', () => {
    it('names only folders and files that are there', () => {
        const named = [...page.matchAll(/`((?:language|server|extension|tests|examples)\/[\w./-]*)`/g)].map(([, path]) => path!);
        expect(named.length).toBeGreaterThan(30);
        expect(named.filter(path => !existsSync(path))).toEqual([]);
    });

    it('names only commands that package.json has', () => {
        const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: Record<string, string> };
        const named = [...page.matchAll(/npm run ([\w:-]+)/g)].map(([, name]) => name!);
        expect(named.filter(name => !(name in scripts))).toEqual([]);
    });
});
