import { expect, test } from 'vitest'
import { Bell } from '../../../src/ui/desk/bell.ts'
import { SIGNS } from '../../../src/ui/signs.ts'

function bellOf(hasSound: boolean) {
  const home = { sound: hasSound }
  const rings: number[] = []
  const shelf = {
    hasSound: () => home.sound,
    setSound(isWanted: boolean) {
      home.sound = isWanted
    },
  }
  return { bell: new Bell(shelf, (times) => rings.push(times)), home, rings }
}

test('one is done, two say look, three say refused', () => {
  const { bell, rings } = bellOf(true)
  for (const sign of [SIGNS.recorded, SIGNS.notUnderstood, SIGNS.refused]) bell.say(sign)
  expect(rings).toEqual([1, 2, 3])
})

test('is silent where that is wanted in the home, and rings once when it is turned on', () => {
  const { bell, home, rings } = bellOf(false)
  bell.say(SIGNS.refused)
  expect(rings).toEqual([])
  bell.turn()
  expect(home.sound).toBe(true)
  expect(rings).toEqual([1])
  bell.turn(false)
  expect(home.sound).toBe(false)
  bell.say(SIGNS.refused)
  expect(rings).toEqual([1])
})

test('is silent from now on also where the disk does not keep the wish', () => {
  const rings: number[] = []
  const shelf = {
    hasSound: () => true,
    setSound() {
      throw new Error('no space left')
    },
  }
  const bell = new Bell(shelf, (times) => rings.push(times))
  expect(() => bell.turn(false)).toThrow('no space left')
  bell.say(SIGNS.recorded)
  expect(rings).toEqual([])
})
