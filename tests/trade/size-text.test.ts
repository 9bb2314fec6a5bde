import { describe, expect, test } from 'vitest'
import { readDrive } from '../../src/trade/drive.ts'
import { classInSize, sizeText, threadInSize } from '../../src/trade/size-text.ts'
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
