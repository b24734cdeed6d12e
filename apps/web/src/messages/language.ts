/** The languages a crew can work in. A language is whole or it does not compile. */
export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

/** What each language calls itself: a reader looks for their own, whatever the screen speaks now. */
export const LANGUAGE_NAMES: Record<Language, string> = { en: 'English', es: 'Español' };

const KEPT_AS = 'rootclock.language';

const isLanguage = (text: string | null | undefined): text is Language =>
  LANGUAGES.some((language) => language === text);

/** The language chosen on this device, else the first one the browser asks for that is known, else English. */
export function preferredLanguage(): Language {
  const chosen = localStorage.getItem(KEPT_AS);
  if (isLanguage(chosen)) return chosen;
  return navigator.languages.map((tag) => tag.split('-')[0]).find(isLanguage) ?? 'en';
}

export function keepLanguage(language: Language): void {
  localStorage.setItem(KEPT_AS, language);
}
