/**
 * StandingMark: how far a figure can be trusted, in words beside it. What a published source says is marked quietly; what is
 * remembered, assumed or missing is underlined with dots so that nobody takes it for published.
 */
import type { Standing } from '@rootclock/domain';
import { useMessages } from '../../messages/index.ts';
import './standing-mark.css';

const FIRM: readonly Standing[] = ['confirmed', 'derived'];

export interface StandingMarkProps {
  standing: Standing;
  /** Where the value can be read again. */
  source?: string | null;
}

export function StandingMark({ standing, source }: StandingMarkProps) {
  const { ui } = useMessages();
  return (
    <span className={`standing ${FIRM.includes(standing) ? 'standing-firm' : 'standing-soft'}`}>
      {ui.standing[standing]}
      {source && <span className="standing-source">: {source}</span>}
    </span>
  );
}
