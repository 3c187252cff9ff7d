import react from '@vitejs/plugin-react';
import { resolve } from 'node:path';
import { defineConfig } from 'vite';
import { describedLaws } from './tools/describedLaws.mjs';

export default defineConfig({
  root: resolve(import.meta.dirname, 'src/web'),
  base: '/',
  plugins: [describedLaws(), react()],
  worker: { format: 'es', plugins: () => [describedLaws()] },
  build: {
    outDir: resolve(import.meta.dirname, 'dist/web'),
    emptyOutDir: true,
    manifest: true,
  },
  server: {
    // While developing the screens, the data comes from `npm start` running beside.
    proxy: { '/api': process.env['LONGSECOND_API'] ?? 'http://127.0.0.1:4460' },
  },
});
