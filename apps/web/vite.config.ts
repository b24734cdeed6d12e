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
  },
  server: {
    host: '127.0.0.1',
    proxy: Object.fromEntries(['/trpc', '/live', '/health', '/ready', '/paper'].map((path) => [path, { target: server, changeOrigin: false }])),
  },
});
