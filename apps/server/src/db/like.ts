/** The pattern of LIKE that finds a text anywhere, with the signs that LIKE would take for wildcards kept as they are. */
export const containing = (text: string): string => `%${text.replaceAll(/[\\%_]/g, String.raw`\$&`)}%`;
/** The same for what a text begins with; an index with text_pattern_ops serves it. */
export const beginningWith = (text: string): string => `${text.replaceAll(/[\\%_]/g, String.raw`\$&`)}%`;
