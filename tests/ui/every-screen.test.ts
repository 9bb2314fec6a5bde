import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { EVERY_SCREEN } from './support/every-screen.ts'

test('no screen is missing, and no two have one name', () => {
  const declared = readFileSync(new URL('../../src/ui/navigation.ts', import.meta.url), 'utf8')
  const screens = /export type Screen =\n(.*?)\n\n/s.exec(declared)?.[1] ?? ''
  const names = [...screens.matchAll(/\bat: '([^']+)'/g)].map(([, name]) => name)
  expect(names.length).toBeGreaterThan(30)
  expect(new Set(EVERY_SCREEN.map(({ at }) => at))).toEqual(new Set(names))
  expect(new Set(EVERY_SCREEN.map(({ name }) => name)).size).toBe(EVERY_SCREEN.length)
})
