import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const source = (name: string): string => fileURLToPath(new URL(`./lib/${name}`, import.meta.url));

/** What compiled notebooks import, from the sources under test. */
const alias = [
  { find: /^fruitodds$/, replacement: source('index.ts') },
  { find: /^fruitodds\/in-language\.js$/, replacement: source('in-language.ts') },
  { find: /^fruitodds\/words\/de\.js$/, replacement: source('words/german/index.ts') },
  { find: /^fruitodds\/words\/es\.js$/, replacement: source('words/spanish/index.ts') },
  { find: /^fruitodds\/words\/fr\.js$/, replacement: source('words/french/index.ts') },
];

export default defineConfig({
  resolve: { alias },
  test: { include: ['test/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 120_000 },
});
