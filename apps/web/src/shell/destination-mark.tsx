/** The small drawings beside the destinations' words. */
import type { ReactNode } from 'react';
import type { DestinationKey } from '../routes/destinations.ts';

const DRAWINGS: Record<DestinationKey | 'more', ReactNode> = {
  today: <path d="M3 19h18M6.5 15a5.5 5.5 0 0 1 11 0M12 4v3M4.6 8.2l2 2M19.4 8.2l-2 2" />,
  tasks: <path d="M4 5h5v5H4zM4 14h5v5H4zM12.5 7.5H20M12.5 16.5H20M5.4 7.6l1 1L8.6 6" />,
  stock: <path d="M4 8h16M6 8l1.5 12h9L18 8M12 8V3.5M12 5.5c2-.2 3-1 3.3-2.5" />,
  propagation: <path d="M3 10h18v9H3zM9 10v9M15 10v9M6 10V7M12 10V5M18 10V7" />,
  gardens: <path d="M3 20c3-4 6-5 9-5s6 1 9 5M7 14V8M7 8L5 5.5M7 8l2-2.5M16 14V6M16 9l2.5-2M16 7l-2.5-2" />,
  planning: <path d="M4 6h16v14H4zM4 10h16M8 6V3.5M16 6V3.5M8 17v-3.5M12 17v-2M16 17v-5" />,
  plants: <path d="M12 21V9M12 9c0-3.5 2-5.5 6-6 0 4-2 6-6 6zM12 14c0-3-2-4.8-5.5-5C6.5 12.4 8.5 14 12 14z" />,
  people: (
    <path d="M9 10a3 3 0 1 0 0-6 3 3 0 0 0 0 6zM3 20c0-4 2.5-6 6-6s6 2 6 6M17 11a2.5 2.5 0 1 0 0-5M18 14c2 .6 3 2.5 3 5" />
  ),
  settings: <path d="M4 7h9M17 7h3M15 4.5v5M4 17h3M11 17h9M9 14.5v5" />,
  more: <path d="M4 7h16M4 12h16M4 17h16" />,
};

export function DestinationMark({ name }: { name: DestinationKey | 'more' }) {
  return (
    <svg
      className="destination-mark"
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.7"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      {DRAWINGS[name]}
    </svg>
  );
}
