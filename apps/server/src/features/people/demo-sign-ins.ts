import type { Role } from '@rootclock/domain';

export interface DemoSignIn {
  name: string;
  role: Role;
  email: string;
  password: string;
}

/**
 * Who can be tried out in the demo nursery. All of them are invented and their addresses cannot exist (RFC 2606 keeps `.example`
 * free); the passwords are no secret, since the sign-in page shows these people to everyone while the nursery is marked as a demo.
 */
export const DEMO_SIGN_INS: readonly DemoSignIn[] = [
  { name: 'Odalys Fennmark', role: 'owner', email: 'owner@demo.example', password: 'demo-owner-pots' },
  { name: 'Teodor Quillby', role: 'grower', email: 'grower@demo.example', password: 'demo-grower-pots' },
  { name: 'Maru Saltgrove', role: 'crew', email: 'crew@demo.example', password: 'demo-crew-pots' },
  { name: 'Isker Lowmeadow', role: 'viewer', email: 'viewer@demo.example', password: 'demo-viewer-pots' },
];
