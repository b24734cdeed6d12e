/** The entry of the app: look, language, then the first page. */
import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './ui/styles/tokens.css';
import './ui/styles/themes.css';
import './ui/styles/base.css';
import { queryClient } from './lib/api/index.ts';
import { followSessions } from './lib/session/index.ts';
import { preferredLanguage, speak } from './messages/index.ts';
import { router } from './routes/index.ts';
import { followDevice } from './shell/theme.ts';

const root = document.getElementById('root');
if (!root) throw new Error('The page has no place for the app.');

followDevice();
followSessions();
await speak(preferredLanguage());
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queryClient}>
      <RouterProvider router={router} />
    </QueryClientProvider>
  </StrictMode>,
);
