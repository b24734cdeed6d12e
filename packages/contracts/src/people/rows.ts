import type { Role } from '@rootclock/domain';

export interface PersonRow {
  id: string;
  edition: number;
  name: string;
  email: string;
  role: Role;
  endedAt: string | null;
}
