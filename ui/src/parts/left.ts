/** Copies that were not kept when their page was left, in this tab only and never written down: some name pupils. */
export const left = new Map<string, { body: unknown; base: unknown }>();
