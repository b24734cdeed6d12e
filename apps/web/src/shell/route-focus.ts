/** A new page takes focus at its heading, so that a screen reader says where it is and the keyboard goes on from there. */
import { useRouter } from '@tanstack/react-router';
import { useEffect } from 'react';

export const PAGE_ID = 'page';

export function useRouteFocus(): void {
  const router = useRouter();
  useEffect(
    () =>
      router.subscribe('onRendered', ({ fromLocation, toLocation }) => {
        // A changed filter or page of a list is no new page, and the first page belongs to the browser.
        if (!fromLocation || fromLocation.pathname === toLocation.pathname) return;
        const page = document.getElementById(PAGE_ID);
        const target = page?.querySelector<HTMLElement>('h1') ?? page;
        target?.focus({ preventScroll: true });
      }),
    [router],
  );
}
