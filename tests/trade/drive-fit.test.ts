import { describe, expect, test } from 'vitest'
import { type Drive, driveText, readDrive } from '../../src/trade/drive.ts'
import { driveFits, usualThreads } from '../../src/trade/drive-fit.ts'
import { readThread, type Thread } from '../../src/trade/thread.ts'

function drive(text: string): Drive {
  const reading = readDrive(text)
  if (!reading.understood) throw new Error(`no drive: ${text}`)
  return reading.value
}

function thread(text: string): Thread {
  const reading = readThread(text)
  if (!reading.understood) throw new Error(`no thread: ${text}`)
  return reading.value
}

const sizes = (text: string) => [...new Set(usualThreads(drive(text)).map(({ size }) => size))]

describe('what a wrench may fit', () => {
  // ISO 4014/4017 (across flats of ISO 272), the withdrawn DIN 931/933, ISO 4162 and JIS B 1189 small flange bolts;
  // JIS B 1180 small hexagons and DIN 6921 flange bolts are from memory.
  test.each([
    ['hex 8', ['M5', 'M6']],
    ['hex 10', ['M6', 'M8']],
    ['hex 12', ['M8']],
    ['hex 13', ['M8', 'M10']],
    ['hex 14', ['M10']],
    ['hex 15', ['M12', 'M10']],
    ['hex 16', ['M10']],
    ['hex 17', ['M10', 'M12']],
    ['hex 18', ['M12', 'M14']],
    ['hex 19', ['M12', 'M14']],
    ['hex 21', ['M14', 'M16']],
    ['hex 22', ['M14', 'M16']],
    ['hex 24', ['M16']],
    ['hex 32', ['M22']],
    ['hex 34', ['M22']],
    ['hex 36', ['M24']],
    ['hex 9', []],
    // ASME B18.2.1, hexagon and heavy hexagon heads; nuts of B18.2.2 from memory.
    ['hex 7/16', ['1/4']],
    ['hex 1/2', ['5/16']],
    ['hex 9/16', ['3/8']],
    ['hex 3/4', ['1/2']],
    ['hex 7/8', ['9/16', '1/2']],
    ['hex 1-1/2', ['1']],
    // ISO 4762 cap, ISO 7380 and ISO 10642 heads, ISO 4026 set screws.
    ['hex key 5', ['M6', 'M8', 'M10']],
    ['hex key 14', ['M16', 'M18']],
    // ASME B18.3, cap screws.
    ['hex key 3/16', ['1/4', '5/16']],
    // ISO 14579, and one size smaller by common practice.
    ['T30', ['M6']],
    ['T45', ['M8', 'M10']],
    ['slot', []],
    ['square 8', []],
  ])('%s: %j', (wrench, threads) => {
    expect(sizes(wrench).sort()).toEqual([...threads].sort())
  })

  test('a wrench named JIS fits the JIS series only', () => {
    expect(sizes('JIS 12 hex')).toEqual(['M8'])
    expect(sizes('JIS 13 hex')).toEqual([])
  })

  test('a value from memory says so', () => {
    expect(usualThreads(drive('hex 12'))).toEqual([
      { size: 'M8', series: 'JIS B 1180 small hexagon', fromMemory: true },
    ])
    expect(usualThreads(drive('hex 16')).every(({ fromMemory }) => !fromMemory)).toBe(true)
  })
})

describe('a drive on a thread', () => {
  test.each([
    ['M6x25', 'hex 10', 'ISO 4014/4017/4032 hexagon'],
    ['M6x25', 'hex 8', 'ISO 4162, EN 1662, JIS B 1189 small flange'],
    ['M10', 'hex 17', 'DIN 931/933/934 hexagon (withdrawn)'],
    ['M10x1.25', 'hex 14', 'JIS B 1180 small hexagon'],
    ['M8', 'JIS hex 12', 'JIS B 1180 small hexagon'],
    ['M6', 'hex key 5', 'ISO 4762, JIS B 1176 socket head cap screw'],
    ['M6', 'T30', 'ISO 14579, ISO 14583 hexalobular socket'],
    ['3/8-16', 'hex 9/16', 'ASME B18.2.1 hexagon'],
    ['1/4-28', 'hex key 3/16', 'ASME B18.3 socket head cap screw'],
  ])('%s with %s is in %s', (threadTyped, driveTyped, series) => {
    const fit = driveFits(thread(threadTyped), drive(driveTyped))
    expect(fit.series).toContain(series)
    expect(fit).not.toHaveProperty('question')
  })

  test.each([
    ['M6', 'hex 11', 'drive-unusual', ['hex 10', 'hex 8']],
    ['M8', 'hex 14', 'drive-unusual', ['hex 13', 'hex 10', 'hex 12']],
    ['M8', 'JIS hex 13', 'drive-unusual', ['hex 13', 'hex 10', 'hex 12']],
    ['M6', 'T45', 'drive-unusual', ['T30', 'T27']],
    ['3/8-16', 'hex 3/4', 'drive-unusual', ['hex 9/16']],
    // 1/2 in is 12.70 mm and goes over a 12 mm head, not over a 13 mm one.
    ['M8', 'hex 1/2', 'unit-mix', ['hex 13', 'hex 10', 'hex 12']],
    ['3/8-16', 'hex 14', 'unit-mix', ['hex 9/16']],
    ['M7', 'hex key 1/4', 'unit-mix', []],
  ])('%s with %s: %s, usual are %j', (threadTyped, driveTyped, code, usual) => {
    const { series, question } = driveFits(thread(threadTyped), drive(driveTyped))
    expect(series).toEqual([])
    expect(question).toMatchObject({ code, thread: thread(threadTyped), drive: drive(driveTyped) })
    expect([...new Set(question?.usual.map((each) => driveText(each.drive)))]).toEqual(usual)
  })

  test.each([
    ['M6', 'slot'],
    ['M6', '12-point 8'],
    ['M6', 'square 8'],
    ['M5.5', 'hex 8'],
    ['1/4 NPT', 'hex 14'],
  ])('%s with %s: no table, no question', (threadTyped, driveTyped) => {
    expect(driveFits(thread(threadTyped), drive(driveTyped))).toEqual({ series: [] })
  })
})
