import { expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { groupedCode, labelCode } from '../../../src/label/code.ts'
import { markerText } from '../../../src/words/label-text/marker-text.ts'
import * as c from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

function marker(no: number, ...commands: Command[]) {
  return markerText(given(...commands).state, no, labelCode(7, no)).slice(1)
}

const bag: Command = { do: 'open-container', kind: 'bag' }
const bolts = c.off(8, 'valve cover bolts', { size: 'M6x25 hex 8' })

test('the code first, in its groups', () => {
  expect(markerText(given(bag).state, 1, labelCode(7, 1))).toEqual([groupedCode(labelCode(7, 1)), 'EMPTY'])
})

test('what, where, and which of how many', () => {
  expect(marker(1, c.strip('Valve cover off'), bolts)).toEqual([
    '8 VALVE COVER BOLTS M6x25',
    '> VALVE COVER, STEP 1',
  ])
  expect(marker(1, c.strip('Valve cover off'), bolts, c.off(1, 'gasket', { singleUse: true }))).toEqual([
    '8 VALVE COVER BOLTS M6x25',
    '> VALVE COVER, STEP 1',
    '1/2',
  ])
})

test('a set with its positions, and what else is in the bag', () => {
  const caps = c.matchedOff(['I1', 'I2', 'I3'], 'cam caps', { into: c.bag(1) })
  expect(marker(1, bag, c.strip('Camshafts off'), caps, c.off(6, 'bolts', { into: c.bag(1) }))).toEqual([
    '3 CAM CAPS @I1–I3 +1 MORE',
    '> CAMSHAFTS, STEP 1',
  ])
})

test('what must not be fitted says so', () => {
  expect(marker(1, c.strip('Cover off'), c.off(1, 'gasket', { singleUse: true }))).toEqual([
    '1 GASKET',
    '> COVER, STEP 1',
    'USED, DO NOT FIT',
  ])
})

test('never more than four lines', () => {
  const more = ['A', 'B', 'C'].flatMap((title) => [
    c.strip(title),
    c.off(2, `bolts ${title}`, { into: c.bag(1) }),
  ])
  expect(marker(1, bag, ...more)).toEqual(['2 BOLTS A +2 MORE', '> STEPS 1, 2, 3'])
})
