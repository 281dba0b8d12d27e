import { createHash } from 'node:crypto';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

/** Writes shell.json, the files the service worker keeps for when there is no connection, and stamps the worker with
 *  their digest, so that a new build is noticed. Alphabets that most pages never ask for are left out. */
function shell(): Plugin {
  return {
    name: 'benchbell-shell',
    apply: 'build',
    generateBundle(_options, bundle) {
      const files = Object.keys(bundle)
        .filter((name) => name !== 'sw.js' && !name.includes('latin-ext') && !name.endsWith('.map'))
        .map((name) => (name === 'index.html' ? '/' : `/${name}`))
        .sort();
      if (!files.includes('/')) files.unshift('/');
      const digest = createHash('sha256').update(JSON.stringify(files)).digest('hex').slice(0, 12);
      const worker = bundle['sw.js'];
      if (worker?.type === 'chunk') worker.code = worker.code.replaceAll('__SHELL__', digest);
      this.emitFile({ type: 'asset', fileName: 'shell.json', source: JSON.stringify({ digest, files }) });
    },
  };
}

export default defineConfig({
  plugins: [svelte(), shell()],
  resolve: process.env.VITEST ? { conditions: ['browser'] } : {},
  build: {
    outDir: '../build/ui',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 1024,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: { index: 'index.html', sw: 'src/offline/worker.ts' },
      output: {
        entryFileNames: (chunk) => (chunk.name === 'sw' ? 'sw.js' : 'assets/[name]-[hash].js'),
      },
    },
  },
  server: { proxy: { '/api': 'http://127.0.0.1:4180' } },
  test: { environment: 'node', include: ['src/**/*.test.ts'] },
});
