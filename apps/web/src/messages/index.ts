/**
 * Sentences for people, one typed file per feature and language. A feature adds `en/<feature>.ts` and `es/<feature>.ts`
 * and lists both in the two index files; what is missing in one language does not compile.
 * Only the language in use is loaded. In components call `useMessages()`, elsewhere `messages()`.
 */
import { useSyncExternalStore } from 'react';
import type { Messages } from './en/index.ts';
import { keepLanguage, type Language } from './language.ts';

export type { Messages } from './en/index.ts';
export { LANGUAGES, LANGUAGE_NAMES, preferredLanguage, type Language } from './language.ts';

const loaders: Record<Language, () => Promise<{ messages: Messages }>> = {
  en: () => import('./en/index.ts'),
  es: () => import('./es/index.ts'),
};

let spoken: { language: Language; messages: Messages } | undefined;
const listeners = new Set<() => void>();

/** Loads a language and switches the whole screen to it. */
export async function speak(language: Language): Promise<void> {
  const { messages: loaded } = await loaders[language]();
  spoken = { language, messages: loaded };
  document.documentElement.lang = language;
  for (const listener of listeners) listener();
}

/** The same, and remembered on this device. */
export async function chooseLanguage(language: Language): Promise<void> {
  keepLanguage(language);
  await speak(language);
}

function now(): { language: Language; messages: Messages } {
  if (!spoken) throw new Error('No language has been loaded yet: await speak() before the first screen.');
  return spoken;
}

const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

export const messages = (): Messages => now().messages;
export const language = (): Language => now().language;
export const useMessages = (): Messages => useSyncExternalStore(subscribe, messages);
export const useLanguage = (): Language => useSyncExternalStore(subscribe, language);
