// The licences of the packages whose code is bundled: they ask that their text goes along.
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

/**
 * @param {string[]} folders of the packages
 * @returns {Promise<string>} one text with every package's name, version, licence and licence text
 * @throws Error for a package that names no licence
 */
export async function thirdPartyNotices(folders) {
    const notices = await Promise.all(folders.map(async folder => {
        const { name, version, license } = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8'));
        if (!license) throw new Error(`${name} ${version} names no licence: look it up before it is shipped.`);
        const files = (await readdir(folder)).filter(file => /^(?:licen[cs]e|copying|notice)/i.test(file)).sort();
        const texts = await Promise.all(files.map(file => readFile(join(folder, file), 'utf8')));
        return [`${name} ${version} (${license})`, ...texts.map(text => text.trim())].join('\n\n');
    }));
    return `${['Haversack contains code of these packages.', ...notices].join(`\n\n${'-'.repeat(80)}\n\n`)}\n`;
}
