import { defineConfig } from 'vitest/config'
import { roomInMemory } from './tests/support/room-in-memory.ts'

const shared = {
  environment: 'node',
  // lowdb and React both look at NODE_ENV: under 'test' lowdb's presets write nothing, under 'production'
  // React leaves out act() and its warnings.
  env: { NODE_ENV: 'development' },
} as const

/** `programs` alone write on the disk, as a user's program does: they wait anyway. */
const inMemory = { ...shared, env: { ...shared.env, TMPDIR: roomInMemory() } }

const busy = [
  'tests/model/{every-order,sequences,acceptance}.test.ts',
  'tests/label/symbol/{damage,real-labels}.test.ts',
  'tests/ui/{random-keys,random-keys-at-the-end,bursts}.test.ts',
  'tests/print/printing.test.ts',
  'tests/scenarios/scenarios.test.ts',
]

/** Programs of their own, most of them in a real terminal (a pty): to the tests it is mostly waiting. */
const programs = [
  'tests/terminal/**/*.test.{ts,tsx}',
  'tests/storage/{kills,mutated-journals}.test.ts',
  'tests/session/eight-at-once.test.ts',
  'tests/hostile/by-chance.test.ts',
]

// Projects run one after the other in the order of their names, each with its larger files first: the small files of
// `unit` come last, so that no worker is left alone with a long one.
export default defineConfig({
  test: {
    // One more than the two processors that this is made for: real terminals mostly wait.
    maxWorkers: 3,
    projects: [
      {
        test: {
          ...inMemory,
          name: 'unit',
          // Files share the modules of their worker: loading them anew for each took longer than its tests. A test that
          // changes what others see (a spy, the environment) puts it back.
          isolate: false,
          restoreMocks: true,
          unstubEnvs: true,
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: [...programs, ...busy],
          testTimeout: 20_000,
          hookTimeout: 20_000,
        },
      },
      {
        // What computes for long does it in workers that do nothing else: in one that has run hundreds of other tests the same
        // code takes up to four times as long (measured).
        test: {
          ...inMemory,
          name: 'busy',
          isolate: false,
          restoreMocks: true,
          unstubEnvs: true,
          include: busy,
          testTimeout: 20_000,
          hookTimeout: 20_000,
        },
      },
      {
        test: {
          ...shared,
          name: 'programs',
          isolate: false,
          include: programs,
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
})
