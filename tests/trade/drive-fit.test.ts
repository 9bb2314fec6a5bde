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
      {
        size: 'M8',
        series: 'JIS B 1180 small hexagon',
        inShort: 'JIS B 1180 small hexagon',
        fromMemory: true,
      },
    ])
    expect(usualThreads(drive('hex 16')).every(({ fromMemory }) => !fromMemory)).toBe(true)
  })
})

const iso = 'ISO 4014/4017/4032 hexagon'
const din = 'DIN 931/933/934 hexagon (withdrawn)'
const smallFlange = 'ISO 4162, EN 1662, JIS B 1189 small flange'
const flange = 'EN 1665 flange'
const jis = 'JIS B 1180 small hexagon'
const cap = 'ISO 4762, JIS B 1176 socket head cap screw'

describe('what the series print for each thread, across flats in mm', () => {
  // ISO 272 as used by ISO 4014/4017; DIN 931/933/934; JIS B 1189 (ISO 4162); EN 1665, without M10, where a copy of it
  // prints a largest size of 16.00 beside a smallest of 14.73; JIS B 1180 from memory; ISO 4762 and JIS B 1176.
  test.each<[string, ...(number | undefined)[]]>([
    ['M3', 5.5, 5.5, undefined, undefined, undefined, 2.5],
    ['M4', 7, 7, undefined, undefined, undefined, 3],
    ['M5', 8, 8, 7, 8, undefined, 4],
    ['M6', 10, 10, 8, 10, 10, 5],
    ['M8', 13, 13, 10, 13, 12, 6],
    ['M10', 16, 17, 13, undefined, 14, 8],
    ['M12', 18, 19, 15, 18, 17, 10],
    ['M14', 21, 22, 18, 21, 19, 12],
    ['M16', 24, 24, 21, 24, 22, 14],
    ['M18', 27, 27, undefined, undefined, undefined, 14],
    ['M20', 30, 30, undefined, 30, undefined, 17],
    ['M22', 34, 32],
    ['M24', 36, 36, undefined, undefined, undefined, 19],
  ])('%s: %d by ISO, %d by DIN, %d, %d and %d with flanges and small hexagons, key %d', (size, ...flats) => {
    for (const [i, series] of [iso, din, smallFlange, flange, jis].entries())
      if (flats[i] !== undefined)
        expect(driveFits(thread(size), drive(`hex ${flats[i]}`)).series).toContain(series)
    if (flats[5] !== undefined)
      expect(driveFits(thread(size), drive(`hex key ${flats[5]}`)).series).toContain(cap)
  })
})

describe('what the inch series print for each thread', () => {
  // ASME B18.2.1 hexagon and heavy hexagon, ASME B18.3 socket head cap screws.
  test.each<[string, ...(string | undefined)[]]>([
    ['#10-32', undefined, undefined, '5/32'],
    ['1/4-20', '7/16', undefined, '3/16'],
    ['5/16-18', '1/2', undefined, '1/4'],
    ['3/8-16', '9/16', undefined, '5/16'],
    ['7/16-14', '5/8', undefined, '3/8'],
    ['1/2-13', '3/4', '7/8', '3/8'],
    ['9/16-12', '13/16'],
    ['5/8-11', '15/16', '1-1/16', '1/2'],
    ['3/4-10', '1-1/8', '1-1/4', '5/8'],
    ['7/8-9', '1-5/16', '1-7/16'],
    ['1-8', '1-1/2', '1-5/8'],
  ])('%s: hex %s, heavy %s, key %s', (size, hex, heavy, key) => {
    const seriesOf = (text: string) => driveFits(thread(size), drive(text)).series
    if (hex !== undefined) expect(seriesOf(`hex ${hex}`)).toContain('ASME B18.2.1 hexagon')
    if (heavy !== undefined) expect(seriesOf(`hex ${heavy}`)).toContain('ASME B18.2.1 heavy hexagon')
    if (key !== undefined) expect(seriesOf(`hex key ${key}`)).toContain('ASME B18.3 socket head cap screw')
  })

  // 1 in = 25.4 mm: how near inch wrenches come to metric ones.
  test.each([
    ['7/16', 11.11],
    ['1/2', 12.7],
    ['9/16', 14.29],
    ['5/8', 15.875],
    ['11/16', 17.46],
    ['3/4', 19.05],
    ['13/16', 20.64],
    ['7/8', 22.23],
    ['15/16', 23.81],
  ])('hex %s measures %d mm', (inch, mm) => {
    const read = drive(`hex ${inch}`)
    expect(Math.abs(('acrossFlatsMm' in read ? read.acrossFlatsMm : 0) - mm)).toBeLessThan(0.01)
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
    ['M8', 'hex 14', ['M10 JIS B 1180 small hexagon']],
    ['M6', 'hex 11', ['M7 DIN 931 hexagon, withdrawn']],
    ['M6', 'T45', ['M8 ISO 14579', 'M10 common practice']],
    ['3/8-16', 'hex 3/4', ['1/2 ASME B18.2.1 hexagon', '1/2 ASME B18.2.2 hexagon nut']],
    ['M8', 'hex 1/2', ['5/16 ASME B18.2.1 hexagon', '5/16 ASME B18.2.2 hexagon nut']],
    ['M8', 'hex 9', []],
  ])('%s with %s: the question names where it belongs, %j', (threadTyped, driveTyped, belongs) => {
    const { question } = driveFits(thread(threadTyped), drive(driveTyped))
    expect(question?.elsewhere.map(({ size, inShort }) => `${size} ${inShort}`)).toEqual(belongs)
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
