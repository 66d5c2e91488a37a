import type { LangiumSharedServices } from 'langium/lsp';
import type { Severities } from '@haversack/language/checks/problems-of';
import type { IdleChecks } from './idle-checks.js';
import type { HaversackServerServices } from './services.js';

const known = new Set(['off', 'hint', 'information', 'warning', 'error']);

/** Takes over how serious a person wants each problem to be: the setting `haversack.severities`, by code. */
export function followSeveritySettings(shared: LangiumSharedServices, services: HaversackServerServices, checks: IdleChecks): void {
    const { ConfigurationProvider, WorkspaceManager } = shared.workspace;
    const take = (setting: unknown): void => {
        services.validation.DocumentValidator.setSeverities(severitiesIn(setting));
        checks.soon();
    };
    ConfigurationProvider.onConfigurationSectionUpdate(({ section, configuration }) => {
        if (section !== 'haversack') return;
        take((configuration as { severities?: unknown } | null)?.severities);
        // Lenses and hints may have been switched on or off.
        services.client.askAgain();
    });
    void Promise.all([ConfigurationProvider.ready, WorkspaceManager.ready])
        .then(() => ConfigurationProvider.getConfiguration('haversack', 'severities'))
        .then(setting => { if (Object.keys(severitiesIn(setting)).length > 0) take(setting); });
}

/** What is no severity in a settings file is passed over. */
function severitiesIn(setting: unknown): Severities {
    if (typeof setting !== 'object' || setting === null) return {};
    return Object.fromEntries(Object.entries(setting).filter(([, severity]) => known.has(severity as string))) as Severities;
}
