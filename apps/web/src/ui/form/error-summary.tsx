/** ErrorSummary: what has to be put right, each line leading to its field. Empty, it is not there. */
import { useEffect, useState, type ReactNode, type Ref } from 'react';
import { useMessages } from '../../messages/index.ts';
import { fieldId } from './form-context.ts';

export interface ErrorSummaryProps {
  ref: Ref<HTMLDivElement>;
  formId: string;
  errors: Readonly<Record<string, string>>;
  problem: ReactNode;
  labels: ReadonlyMap<string, string>;
}

export function ErrorSummary({ ref, formId, errors, problem, labels }: ErrorSummaryProps) {
  const { ui } = useMessages();
  // Fields leave their labels in an effect, so the lines in their order are known one render later.
  const [known, setKnown] = useState<readonly string[]>([]);
  useEffect(() => {
    const now = [...labels.keys()];
    setKnown((before) => (before.join() === now.join() ? before : now));
  }, [labels, errors]);
  const places = Object.keys(errors).sort((a, b) => known.indexOf(a) - known.indexOf(b));
  const lines = places.map((name) => ({ name, sentence: errors[name], label: labels.get(name) }));
  const count = lines.length + (problem ? 1 : 0);
  return (
    <div
      ref={ref}
      tabIndex={-1}
      hidden={count === 0}
      className="error-summary"
      role="group"
      aria-label={ui.problems(count)}
    >
      {count > 0 && (
        <>
          <p className="error-summary-title">{ui.problems(count)}</p>
          {problem && <div>{problem}</div>}
          {lines.length > 0 && (
            <ul>
              {lines.map(({ name, sentence, label }) => (
                <li key={name}>
                  {label === undefined ? (
                    sentence
                  ) : (
                    <a
                      href={`#${fieldId(formId, name)}`}
                      onClick={(event) => {
                        event.preventDefault();
                        document.getElementById(fieldId(formId, name))?.focus();
                      }}
                    >
                      {label}: {sentence}
                    </a>
                  )}
                </li>
              ))}
            </ul>
          )}
        </>
      )}
    </div>
  );
}
