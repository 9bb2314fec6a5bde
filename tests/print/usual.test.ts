import { mkdirSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { HowPrinted } from '../../src/lines/errand.ts'
import { keepUsual, usualHow } from '../../src/print/usual.ts'
import { benchWithJob } from '../cli/support/bench.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'

const roll: HowPrinted = { stock: 'roll-64x34', to: { target: 'tcp', host: '192.0.2.20', port: 9100 } }

test('what is usual is kept, and the new takes the place of the old', () => {
  const home = temporaryFolder()
  keepUsual(home, { stock: 'a4-24', shift: { x: 1.5, y: -0.5 } })
  keepUsual(home, roll)
  expect(usualHow(home)).toEqual(roll)
  expect(readdirSync(home)).toHaveLength(1)
})

test('a device may have the longest name that a line holds', async () => {
  const on = benchWithJob()
  const path = `/dev/${'usb-printer/'.repeat(38)}lp0`
  expect(await on.send(`labels usual to device ${path}`)).toMatchObject({ code: 0 })
  expect(usualHow(on.home).to).toEqual({ target: 'device', path })
})

test('where it cannot be kept, what was kept stays and nothing lies about', () => {
  const home = temporaryFolder()
  // A folder in its place: the last step, the renaming, fails.
  mkdirSync(join(home, '.printing.json', 'mine'), { recursive: true })
  expect(() => keepUsual(home, roll)).toThrow()
  expect(readdirSync(home)).toEqual(['.printing.json'])
  expect(usualHow(home)).toEqual({})
})
