import { describe, expect, test } from 'vitest'
import { driveText, readDrive } from '../../src/trade/drive.ts'
import { classInSize, driveInSize, sizeText, threadInSize } from '../../src/trade/size-text.ts'
import { threadText } from '../../src/trade/thread.ts'
import { classText } from '../../src/trade/torque/fastener-class.ts'
import { fastenerClass, thread } from './said-thread.ts'

function told(size: string): [string | null, string | null] {
  const [of, strong] = [threadInSize(size), classInSize(size)]
  return [of && threadText(of), strong && classText(strong)]
}

describe('what was written is read back', () => {
  test.each([
    ['M8x45', '8.8', 'hex 13', undefined, 'M8x45 8.8 hex 13'],
    ['M8x1x45', undefined, 'hex 13', 'copper washers', 'M8x1x45 hex 13 with copper washers'],
    ['3/8-16x1-1/2', 'grade 5', 'hex 9/16', undefined, '3/8-16x1-1/2 grade 5 hex 9/16'],
    ['1/4 NPT', undefined, undefined, undefined, '1/4 NPT'],
    ['#10-32', 'grade 8', undefined, undefined, '#10-32 grade 8'],
  ])('%s %s %s %s', (size, strong, driven, washers, text) => {
    const drive = driven === undefined ? undefined : readDrive(driven)
    const written = sizeText({
      thread: thread(size),
      fastenerClass: strong === undefined ? undefined : fastenerClass(strong),
      drive: drive?.understood ? drive.value : undefined,
      washers,
    })
    expect(written).toBe(text)
    expect(told(written)).toEqual([size, strong ?? null])
    const read = driveInSize(written)
    expect(read && driveText(read)).toBe(driven ?? null)
  })

  test('nothing said is an empty size', () => expect(sizeText({})).toBe(''))
})

test.each([
  ['hex 13', [null, null]],
  ['2.45', [null, null]],
  ['', [null, null]],
  ['M8x45 class 10.9', ['M8x45', '10.9']],
  ['M8x45 hex 13 8.8', ['M8x45', '8.8']],
  ['M12 5.8 mm pilot', ['M12', null]],
  ['M8x10.9', ['M8x10.9', null]],
])('a size written by hand: %j', (size, expected) => expect(told(size)).toEqual(expected))

test.each([
  ['hex 13', 'hex 13'],
  ['M8x45 8.8 hex 13', 'hex 13'],
  ['M8x45 hex 13 8.8', 'hex 13'],
  ['M8x45 13 mm hex', 'hex 13'],
  ['M10x140 E14', 'E14'],
  ['M12 12-point 14', '12-point 14'],
  ['M12 JIS hex 17', 'JIS hex 17'],
  ['M5x12 hex key 4 with copper washers', 'hex key 4'],
  ['M5x12 with T30 washers', null],
  ['M4 slot', 'slot'],
  ['M8x45', null],
  ['2.45 mm', null],
  ['', null],
])('the drive in %j is %j', (size, expected) => {
  const drive = driveInSize(size)
  expect(drive && driveText(drive)).toBe(expected)
})
