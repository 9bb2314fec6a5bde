import { describe, expect, test } from 'vitest'
import { said } from './said.ts'

const line = (text: string) => {
  const [item = {}] = said(text)
  const { count, name, class: of, drive } = item
  return { count, name, ...(of !== undefined && { class: of }), ...(drive !== undefined && { drive }) }
}

describe('the class of a fastener', () => {
  test.each([
    ['8 M8x45 8.8 hex 13 mount bolts', { count: 8, name: 'mount bolts', class: '8.8', drive: 'hex 13' }],
    ['8 M8x45 8.8 hex bolts', { count: 8, name: 'hex bolts', class: '8.8' }],
    ['8 mount bolts M8x45, 10.9', { count: 8, name: 'mount bolts', class: '10.9' }],
    ['8 mount bolts 10.9', { count: 8, name: 'mount bolts', class: '10.9' }],
    ['8 10.9 mount bolts', { count: 8, name: 'mount bolts', class: '10.9' }],
    ['10.9 bolts', { count: 1, name: 'bolts', class: '10.9' }],
    [
      '4 M10 class 12.9 hex key 8 capscrews',
      { count: 4, name: 'capscrews', class: '12.9', drive: 'hex key 8' },
    ],
    ['4 M10 property class 8.8 bolts', { count: 4, name: 'bolts', class: '8.8' }],
    [
      '6 3/8-16x1-1/2 grade 5 hex 9/16 bolts',
      { count: 6, name: 'bolts', class: 'grade 5', drive: 'hex 9/16' },
    ],
    ['6 3/8-16 gr 8 bolts', { count: 6, name: 'bolts', class: 'grade 8' }],
    ['6 3/8-16 gr.8 bolts', { count: 6, name: 'bolts', class: 'grade 8' }],
    ['2 grade 8 nuts', { count: 2, name: 'nuts', class: 'grade 8' }],
    ['8 M8x45 8,8 mount bolts', { count: 8, name: 'mount bolts', class: '8.8' }],
    ['8 M8x45 8.8', { count: 8, name: 'bolts', class: '8.8' }],
  ])('%s', (text, expected) => expect(line(text)).toEqual(expected))

  test.each([
    ['2 M8x10.9 bolts', { count: 2, name: 'bolts' }],
    ['2 M8 x 10.9 bolts', { count: 2, name: 'bolts' }],
    ['2 M8 bolts 10.9 mm long', { count: 2, name: 'bolts 10.9 mm long' }],
    ['4 4.8 x 13 screws', { count: 4, name: '4.8 x 13 screws' }],
    ['shim 5.6', { count: 1, name: 'shim 5.6' }],
    ['2 washers 4.8', { count: 2, name: 'washers 4.8' }],
    ['2 pins 5.8 long', { count: 2, name: 'pins 5.8 long' }],
    ['grade A gasket', { count: 1, name: 'grade A gasket' }],
    ['class 8.8 bracket', { count: 1, name: 'class 8.8 bracket' }],
    ['8 M8x45 8.8 hex nuts', { count: 8, name: 'hex nuts', class: '8.8' }],
    ['8 M6x25 A2-70 cover screws', { count: 8, name: 'A2-70 cover screws' }],
    ['4 M8 class 10 nuts', { count: 4, name: 'class 10 nuts' }],
  ])('but not in %s', (text, expected) => expect(line(text)).toEqual(expected))
})
