/** How this screen looks and speaks: its light and its language, both kept on this device. */
import { chooseLanguage, LANGUAGE_NAMES, LANGUAGES, useLanguage, useMessages } from '../messages/index.ts';
import { RadioField } from '../ui/fields/index.ts';
import { THEMES, useTheme } from './theme.ts';

export function DisplayFields() {
  const { shell } = useMessages();
  const language = useLanguage();
  const [theme, setTheme] = useTheme();
  return (
    <div className="stack">
      <RadioField
        name="theme"
        look="segments"
        label={shell.theme}
        hint={shell.themeHint}
        value={theme}
        onChange={setTheme}
        choices={THEMES.map((each) => ({ value: each, label: shell.themes[each] }))}
      />
      <RadioField
        name="language"
        look="segments"
        label={shell.language}
        value={language}
        onChange={(next) => void chooseLanguage(next)}
        choices={LANGUAGES.map((each) => ({ value: each, label: LANGUAGE_NAMES[each], lang: each }))}
      />
    </div>
  );
}
