import type { promises as contracts } from '@rootclock/contracts';

export interface LineCardProps {
  order: contracts.OrderPage;
  line: contracts.OrderLineRow;
  mayChange: boolean;
}
