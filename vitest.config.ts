import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const door = fileURLToPath(new URL('./lib/index.ts', import.meta.url));

export default defineConfig({
  resolve: { alias: [{ find: /^fruitodds$/, replacement: door }] },
  test: { include: ['test/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 120_000 },
});
