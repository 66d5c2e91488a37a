import { DefaultServiceRegistry, type LangiumCoreServices, type URI } from 'langium';

/**
 * Every document is of the one language there is. A file without an ending of ours is known by the editor's word for its language, which is gone as soon as
 * it is closed, while a build that began before still holds it.
 */
export class OneLanguage extends DefaultServiceRegistry {
    override getServices(uri: URI): LangiumCoreServices {
        return this.hasServices(uri) ? super.getServices(uri) : this.all[0]!;
    }

    override hasServices(uri: URI): boolean {
        try {
            super.getServices(uri);
            return true;
        } catch {
            return false;
        }
    }
}
