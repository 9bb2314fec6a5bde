import { defineConfig } from 'vitest/config'

const shared = {
  environment: 'node',
  // lowdb and React both look at NODE_ENV: under 'test' lowdb's presets write nothing, under 'production'
  // React leaves out act() and its warnings.
  env: { NODE_ENV: 'development' },
} as const

export default defineConfig({
  test: {
    maxWorkers: 2,
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
          exclude: ['tests/terminal/**'],
          testTimeout: 20_000,
          hookTimeout: 20_000,
        },
      },
      {
        // Real terminals (a pty) start a process each.
        test: {
          ...shared,
          name: 'terminal',
          include: ['tests/terminal/**/*.test.{ts,tsx}'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
})
