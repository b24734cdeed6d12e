import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
// By its path, since vite packs only such imports into what Node reads of this file.
import { INTERFACES } from '../../packages/contracts/src/interfaces.ts';
import { keptFiles } from './kept-files.ts';
import { packedFiles } from './packed-files.ts';

/** While developing, the interfaces are those of a server started beside this one. */
const server = process.env['ROOTCLOCK_SERVER'] ?? 'http://127.0.0.1:4310';

export default defineConfig({
  plugins: [react(), keptFiles(), packedFiles()],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    // Nothing is inlined: the server's content policy lets in scripts and styles from itself only.
    assetsInlineLimit: 0,
    target: 'es2022',
    rolldownOptions: {
      output: {
        // What every page needs comes in two files instead of twenty, and what nearly every one does in two more: on a bad line each request
        // costs more than its bytes.
        codeSplitting: {
          groups: [
            {
              name: 'engine',
              test: /node_modules[\\/](react|react-dom|scheduler|use-sync-external-store|@tanstack|@trpc|idb-keyval|zod)[\\/]/,
            },
            {
              name: 'frame',
              test: /src[\\/](lib|routes|shell[\\/](?!outbox|entry-words|more-page)|ui[\\/](action[\\/](button|link)|feedback|form|layout))/,
            },
            {
              name: 'controls',
              test: /node_modules[\\/](react-aria|react-aria-components|react-stately|@react-aria|@react-stately|@internationalized)[\\/]/,
            },
            { name: 'ui', test: /src[\\/]ui[\\/](action|fields|overlay|sign|table)[\\/]/ },
          ],
        },
      },
    },
  },
  server: {
    host: '127.0.0.1',
    proxy: Object.fromEntries(INTERFACES.map((step) => [`/${step}`, { target: server, changeOrigin: false }])),
  },
});
