import { defineConfig } from 'vitest/config';

// Database tests need the node environment: under a DOM shim a stored Blob comes back broken.
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'node',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/app/**'],
        },
      },
      {
        test: { name: 'dom', environment: 'happy-dom', include: ['tests/app/**/*.test.{ts,tsx}'] },
        oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
      },
    ],
  },
});
