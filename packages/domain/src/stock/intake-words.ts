/** In what form plants came in. */
export const INTAKE_FORMS = ['plugs', 'bare-root', 'pots', 'in-ground'] as const;
export type IntakeForm = (typeof INTAKE_FORMS)[number];

/** What can be bought: nobody delivers plants that stand in our ground. */
export const BOUGHT_FORMS = ['plugs', 'bare-root', 'pots'] as const satisfies readonly IntakeForm[];
export type BoughtForm = (typeof BOUGHT_FORMS)[number];
