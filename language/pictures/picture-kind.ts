import type { Picture } from './picture.js';
import type { PictureFault, SettingsReader } from './settings-reader.js';

/** Everything the language says about one kind of picture; how it is drawn is the brief's. */
export interface PictureKind<P extends Picture = Picture> {
    kind: P['kind'];
    /** "Ten-frame". */
    title: string;
    /** What it shows, in one sentence for a teacher. */
    says: string;
    /** The legal settings in words. */
    settings: string;
    /** Pictures with their settings as a writer types them, the plainest first; all are legal. */
    examples: readonly [string, ...string[]];
    /** Its settings as data, or what is wrong with them and what would do. */
    read(settings: SettingsReader): P | PictureFault;
    /** Words that may come after these settings. */
    next(settings: readonly string[]): readonly string[];
    /** The text equivalent: one or two sentences that tell what the drawing shows. */
    inWords(picture: P): string;
}

/** Nothing comes after the settings. */
export const noWords = (): readonly string[] => [];
