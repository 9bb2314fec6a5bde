import { expect, test } from 'vitest'
import { workOutSetting } from '../../../src/trade/torque/work-out-setting.ts'

const adapter = { handleMm: 400, adapterMm: 50, angleDegrees: 0 }

test('it is the setting that is held against the range, not the torque', () => {
  // 22 N·m at the fastener are 19.6 on the wrench.
  const range = { leastNm: 20, mostNm: 100 }
  expect(workOutSetting({ newtonMetres: 22, range })).toMatchObject({ settingNm: 22, fault: null })
  const worked = workOutSetting({ newtonMetres: 22, adapter, range })
  expect(worked).toMatchObject({ isPossible: true, fault: 'below-range', leastUsableNm: 20 })
  expect(worked.isPossible && worked.settingNm).toBeCloseTo((22 * 400) / 450, 9)
})

test('without a range nothing is said of it, and without an adapter the torque is the setting', () => {
  expect(workOutSetting({ newtonMetres: 22 })).toEqual({
    isPossible: true,
    settingNm: 22,
    fault: null,
    leastUsableNm: null,
  })
})

test('no setting where there is no lever', () => {
  const folded = { handleMm: 400, adapterMm: 400, angleDegrees: 180 }
  expect(workOutSetting({ newtonMetres: 22, adapter: folded })).toEqual({
    isPossible: false,
    code: 'no-lever',
  })
})
