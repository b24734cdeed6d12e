/** The entry of the app: look, language, then the first page. */
import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './ui/styles/tokens.css';
import './ui/styles/themes.css';
import './ui/styles/base.css';
import { queryClient, trpc } from './lib/api/index.ts';
import { keptReads } from './lib/kept-reads/index.ts';
import { paths } from './lib/paths.ts';
import { followSessions } from './lib/session-turns.ts';
import { preferredLanguage, speak } from './messages/index.ts';
import { router } from './routes/index.ts';
import { followDevice } from './shell/theme.ts';
import { keepShell, whenQuiet } from './worker/keep-shell.ts';

const root = document.getElementById('root');
if (!root) throw new Error('The page has no place for the app.');

followDevice();
followSessions();
// Language, person and first page travel at the same time: on a bad line each wait for another costs more than its bytes.
const spoken = speak(preferredLanguage());
const { pathname } = window.location;
// At the door there is nobody yet.
if (![paths.signIn(), paths.firstOwner()].includes(pathname))
  void queryClient.prefetchQuery(trpc.people.me.queryOptions());
const [pages] = router.getMatchedRoutes(pathname);
for (const page of pages) void router.loadRouteChunk(page);
void whenQuiet(queryClient).then(() => Promise.all([keepShell(), keptReads.sweep()]));
await spoken;
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queryClient}>
      <RouterProvider router={router} />
    </QueryClientProvider>
  </StrictMode>,
);
