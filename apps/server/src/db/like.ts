/** The pattern of LIKE that finds a text anywhere, with the signs that LIKE would take for wildcards kept as they are. */
export const containing = (text: string): string => `%${text.replaceAll(/[\\%_]/g, String.raw`\$&`)}%`;
