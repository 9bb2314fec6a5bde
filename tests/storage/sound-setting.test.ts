import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { soundWanted, wantSound } from '../../src/storage/sound-setting.ts'
import { emptyHome } from '../ui/support/bench.ts'

test('what else is set stays beside the bell', () => {
  const home = emptyHome()
  const path = join(home, '.settings.json')
  writeFileSync(path, '{ "other": 1 }')
  wantSound(home, false)
  expect(JSON.parse(readFileSync(path, 'utf8'))).toEqual({ other: 1, sound: false })
  expect(soundWanted(home)).toBe(false)
})

test('what is not legible says nothing, and is written anew', () => {
  const home = emptyHome()
  writeFileSync(join(home, '.settings.json'), 'garbage')
  expect(soundWanted(home)).toBe(true)
  wantSound(home, false)
  expect(soundWanted(home)).toBe(false)
})
