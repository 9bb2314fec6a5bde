import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Desk } from '../../src/ui/desk/desk.ts'
import type { Size } from '../../src/ui/layout.ts'
import { frameRows } from '../../src/ui/screens/frame.tsx'
import { textOf } from '../../src/ui/text/line.ts'
import { EVERY_SCREEN } from './support/every-screen.ts'

/** To be read in review: `npx vitest run tests/ui/frames.test.ts --update` writes them anew. */
const folder = `${import.meta.dirname}/frames`

const usual: Size = { width: 80, height: 24 }
const wide: Size = { width: 120, height: 40 }

const seenWide = [
  'now, waiting',
  'off, a new bag',
  'lies, all of it',
  'back, blocked',
  'step, tighten',
  'due',
]
const seenLarge = ['off, a full bag', 'step, fit', 'step, tighten', 'scan, fits now', 'scan, not compared']

describe.each(EVERY_SCREEN)('$name', ({ name, open }) => {
  test('is what was reviewed', async () => {
    const desk = await open(usual)
    await expectReviewed(name, desk, usual)
    if (seenLarge.includes(name)) {
      desk.press({ text: '*' })
      await expectReviewed(`${name}, large`, desk, usual)
    }
  })
})

test.each(EVERY_SCREEN.filter(({ name }) => seenWide.includes(name)))(
  '$name on a wide terminal is what was reviewed',
  async ({ name, open }) => {
    await expectReviewed(`${name}, wide`, await open(wide), wide)
  },
)

test('no frame is left of a screen that is not there any more', () => {
  const names = [
    ...EVERY_SCREEN.map(({ name }) => name),
    ...seenWide.map((name) => `${name}, wide`),
    ...seenLarge.map((name) => `${name}, large`),
  ]
  expect(readdirSync(folder).sort()).toEqual(names.map(fileOf).sort())
})

async function expectReviewed(name: string, desk: Desk, size: Size): Promise<void> {
  const rows = frameRows(desk, size).rows.map((row) => textOf(row).trimEnd())
  await expect([name, ...rows, ''].join('\n')).toMatchFileSnapshot(`${folder}/${fileOf(name)}`)
}

function fileOf(name: string): string {
  return `${name.replace(/[^a-z0-9]+/g, '-')}.txt`
}
