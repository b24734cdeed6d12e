/** The forms of one counted noun; languages that know more than two forms add theirs. `#` stands for the number. */
export interface Forms {
  one: string;
  other: string;
  zero?: string;
  few?: string;
  many?: string;
}

/** Answers the sentence maker of one language: picks the form that `Intl.PluralRules` names and sets the number in its place. */
export function pluralsOf(language: string): (count: number, forms: Forms) => string {
  const rules = new Intl.PluralRules(language);
  const numbers = new Intl.NumberFormat(language);
  return (count, forms) => {
    const form =
      count === 0 && forms.zero !== undefined ? forms.zero : (forms[rules.select(count) as keyof Forms] ?? forms.other);
    return form.replaceAll('#', numbers.format(count));
  };
}
