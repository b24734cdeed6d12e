/** The frame of the pages before the nursery: its name, its sign, and the form. */
import type { ReactNode } from 'react';
import { PageHeader } from '../../ui/layout/index.ts';
import { PotSign } from '../../ui/sign/index.ts';
import './door.css';

/** The sign as the product's mark: a pot whose roots have come two thirds of the way. */
const MARK = { share: 0.66, past: false, dormant: false, tied: 'none', size: 72 } as const;

export function Door({ title, lead, children }: { title: string; lead: string; children: ReactNode }) {
  return (
    <main className="door">
      <PageHeader kicker="Rootclock" title={title} facts={lead} sign={<PotSign {...MARK} />} />
      {children}
    </main>
  );
}
