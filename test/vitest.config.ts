import { defineConfig } from 'vitest/config';

/**
 * Two runs, one after the other. Tests of the page come last and one file at a time: each has a browser, which keeps
 * several cores busy by itself, and what it measures in time must not be taken away by a neighbour.
 */
export default defineConfig({
  test: {
    // a build of a whole camera draws and binds its book, on slow machines too
    testTimeout: 90_000,
    hookTimeout: 180_000,
    projects: [
      {
        extends: true,
        test: { name: 'core', include: ['test/**/*.test.ts'], exclude: ['test/page/**'], sequence: { groupOrder: 0 } },
      },
      {
        extends: true,
        test: {
          name: 'page',
          include: ['test/page/**/*.test.ts'],
          maxWorkers: 1,
          sequence: { groupOrder: 1 },
          // a camera is built twice for one test, on the page and by the command line
          testTimeout: 400_000,
          // what must come on a page comes when it comes; it is not drawn within the second that is usual
          expect: { poll: { timeout: 20_000 } },
        },
      },
    ],
  },
});
