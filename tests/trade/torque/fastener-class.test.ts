import { describe, expect, test } from 'vitest'
import { classText, proofStressMpa, readFastenerClass } from '../../../src/trade/torque/fastener-class.ts'
import { stressAreaMm2 } from '../../../src/trade/torque/stress-area.ts'
import { fastenerClass, thread } from '../said-thread.ts'

function proofLoad(size: string, name: string): number | null {
  const of = thread(size)
  const stress = proofStressMpa(fastenerClass(name), of.diameterMm)
  return stress === null ? null : stress * (stressAreaMm2(of) ?? Number.NaN)
}

describe('what is read', () => {
  test.each([
    ['10.9', '10.9'],
    ['class 8.8', '8.8'],
    ['cl. 8.8', '8.8'],
    ['CL8.8', '8.8'],
    ['property class 12.9', '12.9'],
    ['8,8', '8.8'],
    [' 4.6 ', '4.6'],
    ['grade 5', 'grade 5'],
    ['Gr. 8', 'grade 8'],
    ['gr 8', 'grade 8'],
    ['gr2', 'grade 2'],
    ['SAE 5', 'grade 5'],
    ['SAE grade 8', 'grade 8'],
    // Common use: a property class is often called a grade.
    ['grade 10.9', '10.9'],
  ])('%j: %s', (typed, text) => {
    const reading = readFastenerClass(typed)
    expect(reading.understood && classText(reading.value)).toBe(text)
    expect(readFastenerClass(text)).toEqual(reading)
  })

  test.each([
    ['', 'empty', '8.8'],
    ['strong', 'form', '8.8'],
    ['8', 'form', '8.8'],
    ['10.8', 'class', '10.9'],
    ['14.9', 'class', '12.9'],
    ['class 9.9', 'class', '9.8'],
    ['grade 3', 'grade', 'grade 2'],
    ['grade 9', 'grade', 'grade 8'],
    ['grade', 'form', 'grade 5'],
    ['8.8.8', 'form', '8.8'],
  ])('%j is not understood: %s, nearest %s', (typed, code, nearest) => {
    expect(readFastenerClass(typed)).toMatchObject({ understood: false, code, nearest })
    expect(readFastenerClass(nearest).understood).toBe(true)
  })
})

describe('proof loads in N', () => {
  // EN ISO 898-1, proof loads of coarse threads, read in two reprints. The table rounds: M6 8.8 prints 11 600 for 11 658.
  const rows: [string, number, number, number][] = [
    ['M4', 5100, 7290, 8520],
    ['M5', 8230, 11800, 13800],
    ['M6', 11600, 16700, 19500],
    ['M8', 21200, 30400, 35500],
    ['M10', 33700, 48100, 56300],
    ['M12', 48900, 70000, 81800],
    ['M14', 66700, 95500, 112000],
    ['M16', 91000, 130000, 152000],
    ['M18', 115000, 159000, 186000],
    ['M20', 147000, 203000, 238000],
    ['M22', 182000, 252000, 294000],
    ['M24', 212000, 293000, 342000],
  ]
  test.each(
    rows.flatMap(([size, a, b, c]) => [
      [size, '8.8', a] as const,
      [size, '10.9', b] as const,
      [size, '12.9', c] as const,
    ]),
  )('%s %s: %d', (size, name, published) => {
    expect(Math.abs((proofLoad(size, name) ?? 0) / published - 1)).toBeLessThan(0.01)
  })

  // SAE J429 proof stresses with the areas of ASME B1.1, in lbf, worked out by hand from the printed values.
  test.each([
    ['1/4-20', 'grade 5', 2703],
    ['1/4-20', 'grade 8', 3816],
    ['3/8-16', 'grade 5', 6588],
    ['3/8-16', 'grade 8', 9300],
    ['1/2-13', 'grade 5', 12062],
    ['1/2-13', 'grade 8', 17028],
    ['3/4-16', 'grade 5', 31705],
  ])('%s %s: %d lbf', (size, name, pounds) => {
    expect(Math.abs((proofLoad(size, name) ?? 0) / (pounds * 4.4482216152605) - 1)).toBeLessThan(0.005)
  })
})

describe('where the proof stress changes with the size', () => {
  test.each([
    // ISO 898-1: class 8.8 up to and above 16 mm.
    ['M16', '8.8', 580],
    ['M18', '8.8', 600],
    // SAE J429, ksi, as reprinted from Shigley and Mischke, Mechanical Engineering Design, 5th edition, p. 341.
    ['3/4-16', 'grade 2', 55 * 6.894757],
    ['7/8-9', 'grade 2', 33 * 6.894757],
    ['1-8', 'grade 5', 85 * 6.894757],
    ['1-1/8-7', 'grade 5', 74 * 6.894757],
    ['1-1/2-6', 'grade 8', 120 * 6.894757],
    // ISO 898-1, from memory.
    ['M8', '4.6', 225],
    ['M8', '4.8', 310],
    ['M8', '5.6', 280],
    ['M8', '5.8', 380],
    ['M8', '6.8', 440],
    ['M16', '9.8', 650],
    ['M8', '10.9', 830],
    ['M8', '12.9', 970],
  ])('%s %s: %d MPa', (size, name, mpa) => {
    expect(proofStressMpa(fastenerClass(name), thread(size).diameterMm)).toBeCloseTo(mpa, 3)
  })

  test.each([
    ['M18', '9.8'],
    ['M42', '10.9'],
    ['1-3/4-5', 'grade 8'],
  ])('%s %s: the standard does not go so far', (size, name) => {
    expect(proofStressMpa(fastenerClass(name), thread(size).diameterMm)).toBeNull()
  })
})
