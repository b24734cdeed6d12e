import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** While developing, the interfaces are those of a server started beside this one. */
const server = process.env['ROOTCLOCK_SERVER'] ?? 'http://127.0.0.1:4310';

export default defineConfig({
  plugins: [react()],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    // Nothing is inlined: the server's content policy lets in scripts and styles from itself only.
    assetsInlineLimit: 0,
    target: 'es2022',
    rolldownOptions: {
      output: {
        // What every page needs comes in two files instead of twenty: on a bad line each request costs more than its bytes.
        codeSplitting: {
          groups: [
            { name: 'engine', test: /node_modules[\\/](react|react-dom|scheduler|use-sync-external-store|@tanstack|@trpc|idb-keyval|zod)[\\/]/ },
            { name: 'frame', test: /src[\\/](lib|routes|shell[\\/](?!outbox|more-page)|ui[\\/](action[\\/](button|link)|feedback|form|layout))/ },
          ],
        },
      },
    },
  },
  server: {
    host: '127.0.0.1',
    proxy: Object.fromEntries(['/trpc', '/live', '/calendar', '/health', '/ready', '/paper'].map((path) => [path, { target: server, changeOrigin: false }])),
  },
});
