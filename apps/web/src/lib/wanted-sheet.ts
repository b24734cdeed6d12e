/**
 * The sheet that a link asked for: `?do=count` behind a page's address opens it at once, so that a task leads to the very entry that ends it. Closing it
 * takes the word from the address, and going back does not open it again.
 */
import { useNavigate, useSearch } from '@tanstack/react-router';
import { useCallback, useState } from 'react';

export function useWantedSheet<Name extends string>(
  isName: (word: string) => word is Name,
): [Name | null, (name: Name | null) => void] {
  const { do: wanted }: { do?: unknown } = useSearch({ strict: false });
  const navigate = useNavigate();
  const [name, setName] = useState<Name | null>(typeof wanted === 'string' && isName(wanted) ? wanted : null);
  const set = useCallback(
    (next: Name | null) => {
      setName(next);
      if (next === null)
        void navigate({
          to: '.',
          search: ({ do: _done, ...rest }: Record<string, unknown>) => rest,
          replace: true,
          resetScroll: false,
        });
    },
    [navigate],
  );
  return [name, set];
}
