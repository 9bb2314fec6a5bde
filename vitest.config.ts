import { defineConfig } from 'vitest/config'

const shared = {
  environment: 'node',
  // lowdb and React both look at NODE_ENV: under 'test' lowdb's presets write nothing, under 'production'
  // React leaves out act() and its warnings.
  env: { NODE_ENV: 'development' },
} as const

const busy = [
  'tests/model/{every-order,sequences,acceptance}.test.ts',
  'tests/label/symbol/damage.test.ts',
  'tests/ui/{random-keys,random-keys-at-the-end,bursts}.test.ts',
  'tests/print/printing.test.ts',
  'tests/scenarios/scenarios.test.ts',
]

export default defineConfig({
  test: {
    // One more than the two processors that this is made for: real terminals mostly wait.
    maxWorkers: 3,
    projects: [
      {
        test: {
          ...shared,
          name: 'unit',
          // Files share the modules of their worker: loading them anew for each took longer than its tests. A test that
          // changes what others see (a spy, the environment) puts it back.
          isolate: false,
          restoreMocks: true,
          unstubEnvs: true,
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/terminal/**', ...busy],
          testTimeout: 20_000,
          hookTimeout: 20_000,
        },
      },
      {
        // What computes for long does it in a worker of its own: in one that has run hundreds of other tests the same code
        // takes up to four times as long (measured).
        test: {
          ...shared,
          name: 'busy',
          restoreMocks: true,
          unstubEnvs: true,
          include: busy,
          testTimeout: 20_000,
          hookTimeout: 20_000,
        },
      },
      {
        // Real terminals (a pty) start a process each.
        test: {
          ...shared,
          name: 'terminal',
          isolate: false,
          include: ['tests/terminal/**/*.test.{ts,tsx}'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
})
