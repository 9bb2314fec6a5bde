import { describe, expect, test } from 'vitest'
import { readLine } from '../../src/lines/read-line.ts'
import { told, topEnd } from './told.ts'

const state = told(...topEnd)

function printed(line: string) {
  const reading = readLine(line, state)
  if (reading.kind !== 'errand' || reading.errand.errand !== 'print') return reading
  return { what: reading.errand.what, how: reading.errand.how }
}

describe('how something is printed', () => {
  test.each([
    ['labels 1', {}],
    ['labels 1 on a4-24', { stock: 'a4-24' }],
    ['labels 1 on A4-24 from 9', { stock: 'a4-24', from: 9 }],
    ['labels 1 from label 9 on a4-24 2 copies', { stock: 'a4-24', from: 9, copies: 2 }],
    ['labels 1 copies 3', { copies: 3 }],
    ['labels 1 to bag.svg', { form: 'svg', to: { target: 'file', path: 'bag.svg' } }],
    [
      'labels 1 to ./out/bag 1.png at 300',
      { form: 'png', dpi: 300, to: { target: 'file', path: './out/bag 1.png' } },
    ],
    [
      'labels 1 to out/bag.bin as label-roll',
      { form: 'label-roll', to: { target: 'file', path: 'out/bag.bin' } },
    ],
    ['labels 1 to -', { to: { target: 'stdout' } }],
    ['labels 1 as receipt-roll to -', { form: 'receipt-roll', to: { target: 'stdout' } }],
    ['labels 1 to tcp 10.0.0.7', { to: { target: 'tcp', host: '10.0.0.7', port: 9100 } }],
    ['labels 1 to tcp bench-printer:9101', { to: { target: 'tcp', host: 'bench-printer', port: 9101 } }],
    ['labels 1 to tcp [fe80::1]:9100', { to: { target: 'tcp', host: 'fe80::1', port: 9100 } }],
    [
      'labels 1 to device /dev/usb/lp0 at 203 dpi',
      { dpi: 203, to: { target: 'device', path: '/dev/usb/lp0' } },
    ],
    ['labels 1 shift 1,5 -0.5 mm', { shift: { x: 1.5, y: -0.5 } }],
    ['labels 1 shift -1 2 on a4-24', { stock: 'a4-24', shift: { x: -1, y: 2 } }],
  ])('%s', (line, how) => {
    expect(printed(line)).toEqual({ what: { print: 'containers', containers: [1] }, how })
  })

  test.each([
    'labels 1 to tcp',
    'labels 1 to tcp host:0',
    'labels 1 to tcp host:70000',
    'labels 1 to tcp a b',
  ])('%s is not understood', (line) => {
    expect(readLine(line, state).kind).toBe('misread')
  })

  test.each([
    'labels 1 at 600',
    'labels 1 loudly',
    'labels 1 as gif',
    'labels the blue one',
    'labels blank',
    'labels blank many',
  ])('%s names what was not understood', (line) => {
    expect(readLine(line, state).kind).toBe('misread')
  })
})

describe('what is printed', () => {
  test.each([
    ['labels 1, 2', { print: 'containers', containers: [1, 2] }],
    ['labels bag 1 and bag 2', { print: 'containers', containers: [1, 2] }],
    ['labels 1..9', { print: 'containers', containers: [1, 2, 3, 4, 5] }],
    ['labels 2, 1..2', { print: 'containers', containers: [2, 1] }],
    ['labels all', { print: 'all-containers' }],
    ['labels step 2', { print: 'containers-of-step', step: 2 }],
    ['labels machine', { print: 'machine' }],
    ['labels calibration', { print: 'calibration' }],
    ['labels blank 24', { print: 'blanks', count: 24 }],
    ['labels blank sheet', { print: 'blanks', count: 'sheet' }],
    ['labels blank again 5..28', { print: 'blanks-again', from: 5, to: 28 }],
    ['labels blank again 5', { print: 'blanks-again', from: 5, to: 5 }],
    ['print plan', { print: 'plan' }],
  ])('%s', (line, what) => {
    expect(printed(line)).toEqual({ what, how: {} })
  })

  test('a template with its layout, arrow and pitch, in any order', () => {
    const what = { print: 'template', layout: '2x4', arrow: 'left', pitch: 32.5 }
    for (const line of [
      'template cam caps laid out 2x4 arrow left pitch 32.5',
      'template cam caps laid out 2x4 pitch 32,5 mm arrow left',
    ])
      expect(printed(line)).toMatchObject({ what })
    expect(printed('template cam caps laid out I1 I2 / I3 I4')).toMatchObject({
      what: { layout: 'I1 I2 / I3 I4', arrow: null, pitch: null },
    })
  })
})
