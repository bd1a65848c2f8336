import { defineConfig } from 'vitest/config';

/**
 * The tests that must notice a change of optics, liquids, joinery or the setting-out: their own. Here and not under the runner's
 * `testFiles`, with which it never puts in a mutant that counts while a module loads, and takes all of those for survivors.
 */
export default defineConfig({
  test: {
    include: [
      'test/optics/*.test.ts',
      'test/liquids/*.test.ts',
      'test/joinery/*.test.ts',
      'test/camera/{expression,figure,setting-out*}.test.ts',
    ],
  },
});
