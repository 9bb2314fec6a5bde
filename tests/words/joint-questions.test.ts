import { expect, test } from 'vitest'
import { unitsOf } from '../../src/trade/convert/units.ts'
import { readTorque } from '../../src/trade/quantity.ts'
import { readThread } from '../../src/trade/thread.ts'
import { readFastenerClass } from '../../src/trade/torque/fastener-class.ts'
import { questionTorque } from '../../src/trade/torque/torque-question.ts'
import { jointQuestionText, wrenchText } from '../../src/words/joint-questions.ts'

// The areas of ISO 898-1 and ASME B1.1 times 580 MPa and 120 ksi, worked out by hand.
const look = 'Look at the unit and the manual'
const again = `${look}; if it is right, set it again with "because ..." behind it.`

test.each([
  [
    'M6',
    '8.8',
    '120 Nm',
    `120 Nm is much for M6: 857 % of 14 N·m, which is 0.2 × d × proof load of 11672 N, class 8.8; 120 lbf·in (13.6 N·m) or 120 kgf·cm (11.8 N·m) would be usual. ${again}`,
  ],
  [
    '1/2-13',
    'grade 8',
    '150 lbf·ft',
    `150 lbf·ft is much for 1/2: 106 % of 192 N·m, which is 0.2 × d × proof load of 75744 N, grade 8; 150 N·m would be usual. ${again}`,
  ],
  [
    '3/8-16',
    undefined,
    '50 lbf·ft',
    `50 lbf·ft on 3/8 is more than 55.8 N·m, which is 0.2 × d × proof load of 29299 N, taken as grade 5; 50 N·m would be usual; of the common classes only grade 8 bears it: is it that? ${look}.`,
  ],
  [
    'M8',
    undefined,
    '2.2 Nm',
    `2.2 Nm is little for M8: 6 % of 34 N·m, which is 0.2 × d × proof load of 21233 N, taken as class 8.8; 2.2 kgf·m (21.6 N·m) would be usual. ${again}`,
  ],
])('%s %s, %s', (size, name, typed, says) => {
  const [thread, torque] = [readThread(size), readTorque(typed)]
  const fastenerClass = name === undefined ? undefined : readFastenerClass(name)
  if (!thread.understood || !torque.understood) throw new Error('not understood')
  const question = questionTorque({
    thread: thread.value,
    ...torque.value,
    thenAngle: false,
    ...(fastenerClass?.understood && { fastenerClass: fastenerClass.value }),
  })
  if (!question) throw new Error('no question')
  expect(jointQuestionText('t1', question)).toBe(says)
})

test.each([
  [{ newtonMetres: 40, settingNm: 40, fault: null }, 'set the wrench to 40 N·m'],
  [
    { newtonMetres: 40, settingNm: 35.5556, fault: null },
    'set the wrench to 35.6 N·m for 40 N·m; worked out, the service manual decides',
  ],
  [
    { newtonMetres: 22, settingNm: 19.5556, fault: 'below-range' as const },
    'set the wrench to 19.6 N·m for 22 N·m: below the range of this wrench; worked out, the service manual decides',
  ],
  [
    { newtonMetres: 40, settingNm: null, fault: null },
    'this adapter leaves the wrench no lever: turn it round',
  ],
])('%j: %s', (view, says) => {
  const [unit] = unitsOf.torque
  if (!unit) throw new Error('no unit')
  expect(wrenchText({ ...view, unit, scale: unit })).toBe(says)
})
