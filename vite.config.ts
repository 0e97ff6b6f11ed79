import { defineConfig } from 'vitest/config';

/** `vite build` makes the page in dist/app, `vite build --mode cli` the command line in dist/cli; vitest reads the same file. */
export default defineConfig(({ mode }) =>
  mode === 'cli'
    ? {
        ssr: { noExternal: true },
        build: {
          ssr: true,
          outDir: 'dist/cli',
          emptyOutDir: true,
          target: 'node20',
          minify: false,
          rollupOptions: { input: { main: 'src/cli/main.ts' }, output: { entryFileNames: '[name].js' } },
        },
      }
    : {
        root: mode === 'production' || mode === 'development' ? 'src/app' : '.',
        base: './',
        worker: { format: 'es' },
        build: { outDir: '../../dist/app', emptyOutDir: true, target: 'es2022' },
        test: {
          // `npm test` runs all but the long simulations (tests/verify) and the timings (tests/bench).
          include: mode === 'verify' || mode === 'bench' ? [`tests/${mode}/**/*.test.ts`] : ['tests/**/*.test.ts'],
          exclude: ['node_modules/**', ...(mode === 'test' ? ['tests/verify/**', 'tests/bench/**'] : [])],
          env: { TZ: 'UTC' },
          testTimeout: mode === 'test' ? 60_000 : 1_200_000,
        },
      },
);
