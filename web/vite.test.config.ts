import { defineConfig } from 'vite';

/** Puts the tests of what needs no browser into a file that Node's own test runner runs. */
export default defineConfig({
  build: { ssr: 'test/all.test.ts', outDir: 'dist/test', emptyOutDir: true, target: 'node20', minify: false },
  logLevel: 'warn',
});
