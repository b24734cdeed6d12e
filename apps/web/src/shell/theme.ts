/** How bright the notebook is. `auto` follows the device: its dark setting, or its wish for more contrast. Kept on the device. */
import { useState } from 'react';
import { onDevice } from '../lib/remember.ts';

export const THEMES = ['auto', 'light', 'dark', 'outdoor'] as const;
export type Theme = (typeof THEMES)[number];

const KEY = 'theme';
const dark = window.matchMedia('(prefers-color-scheme: dark)');
const contrast = window.matchMedia('(prefers-contrast: more)');

export function chosenTheme(): Theme {
  const kept = onDevice.read(KEY);
  return THEMES.find((theme) => theme === kept) ?? 'auto';
}

export function applyTheme(theme: Theme): void {
  const shown = theme !== 'auto' ? theme : contrast.matches ? 'outdoor' : dark.matches ? 'dark' : 'light';
  document.documentElement.dataset['theme'] = shown;
  const paper = getComputedStyle(document.documentElement).getPropertyValue('--paper').trim();
  document.querySelector('meta[name="theme-color"]')?.setAttribute('content', paper);
}

/** Follows the device for as long as the app runs. */
export function followDevice(): void {
  const again = () => applyTheme(chosenTheme());
  dark.addEventListener('change', again);
  contrast.addEventListener('change', again);
  again();
}

export function useTheme(): [Theme, (theme: Theme) => void] {
  const [theme, setTheme] = useState(chosenTheme);
  return [
    theme,
    (next) => {
      onDevice.keep(KEY, next);
      applyTheme(next);
      setTheme(next);
    },
  ];
}
